"""What the shop's numbers say about one knife: its process and its hands-on minutes."""

from typing import Protocol

from queueboard.settings.shapes import Kind, Process, Settings
from queueboard.values.knife import Knife
from queueboard.words import Condition, Edge


def process_of(settings: Settings, kind: Kind, edge: Edge) -> Process:
    """The process for a knife of this kind with this edge.

    A kind's own process is meant for its usual edge. With any other edge, the process of that edge comes first (a
    serrated chef's knife never goes the plain way); where the shop has none for it, the kind's own holds.
    """
    name = kind.process if edge is kind.edge else settings.edges.get(edge, kind.process)
    return settings.process(name)


def minutes_of(settings: Settings, kind_name: str, edge: Edge, condition: Condition) -> int | None:
    """Hands-on minutes of one knife, at least 1; None where the shop declines it, or has no such kind (any more).

    With an edge that its kind does not usually have, a knife takes as long as its kind, or as the quickest kind made
    with that edge in the same process, whichever is longer; what those kinds decline is declined (common practice, no
    source).
    """
    kind = settings.kind(kind_name)
    own = kind.minutes.get(condition) if kind else None
    if kind is None or own is None or edge is kind.edge:
        return own
    process = process_of(settings, kind, edge)
    alike = [other for other in settings.kinds if other.edge is edge and other.process == process.name]
    if not alike:
        return own
    known = [other.minutes[condition] for other in alike if condition in other.minutes]
    return max(own, min(known)) if known else None


class Sort(Protocol):
    """What of a knife its process and minutes hang on."""

    @property
    def kind(self) -> str:
        """Its kind, as it was typed."""

    @property
    def edge(self) -> Edge:
        """How its edge is made."""

    @property
    def condition(self) -> Condition:
        """As it came in."""


def knife_minutes(settings: Settings, knife: Sort) -> int:
    """Hands-on minutes of a knife.

    A condition the shop usually declines, or a kind it no longer has, counts as the longest the settings know for
    that kind, or for any.
    """
    minutes = minutes_of(settings, knife.kind, knife.edge, knife.condition)
    if minutes is not None:
        return minutes
    kind = settings.kind(knife.kind)
    kinds = settings.kinds if kind is None else (kind,)
    return max(longest for one in kinds for longest in one.minutes.values())


def knife_process(settings: Settings, knife: Sort) -> Process:
    """The process of a knife; that of a kind the shop no longer has is the first one."""
    kind = settings.kind(knife.kind)
    return settings.processes[0] if kind is None else process_of(settings, kind, knife.edge)


def line_of(settings: Settings, knife: Knife) -> int | None:
    """The most push that any spot of a knife may need, in grams-force; None for what is tested by cutting."""
    kind = settings.kind(knife.kind)
    return settings.gauge.edges[knife.edge] if kind is None else settings.gauge.line_gf(kind, knife.edge)
