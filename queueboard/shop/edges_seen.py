"""What all readings of the shop show: before and after of the same knives, and the chart of a process."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta

from queueboard.edges.change import Change, change
from queueboard.edges.drift import Limits, Mark, limits_of, signals
from queueboard.edges.summary import mean
from queueboard.records.belts import fitted_belts, stable_row
from queueboard.records.edge_reads import SINCE, ReadKnife, read_knives
from queueboard.records.instants import from_us, to_us
from queueboard.settings.rules import knife_process
from queueboard.settings.shapes import Process
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in
from queueboard.shop.wobbling import WobbleNow, wobble_in
from queueboard.slotted import dataclass
from queueboard.values.fitted import FittedBelt

A_YEAR = 365
"""Days of readings that are shown where no belt says since when."""

FEWEST_STABLE = 10
"""Knives of a stable period before its limits are drawn, as in the handbook's example."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRow:
    """Before and after of some knives or of one spot."""

    name: str
    pairs_gf: tuple[tuple[float, float], ...]
    """What was read before, and after."""
    change: Change | None
    """None for fewer than six pairs."""

    @property
    def pairs(self) -> int:
        """How many were read both times."""
        return len(self.pairs_gf)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangesSeen:
    """Before and after of all knives that were read both times at the same spots."""

    whole: ChangeRow
    """One pair a knife: the mean of its spots."""
    kinds: tuple[ChangeRow, ...]
    spots: tuple[ChangeRow, ...]
    wobble: WobbleNow


def changes_of(knives: Iterable[ReadKnife], wobble: WobbleNow) -> ChangesSeen:
    """What the work did to all knives that were read, by kind and by spot; those with most pairs first."""
    by_kind: defaultdict[str, list[tuple[float, float]]] = defaultdict(list)
    by_spot: defaultdict[str, list[tuple[float, float]]] = defaultdict(list)
    for one in knives:
        both = [(one.before[spot], one.last_after[spot]) for spot in one.before if spot in one.last_after]
        if one.pair_whole:
            by_kind[one.knife.kind].append((mean([b for b, _ in both]), mean([a for _, a in both])))
        for spot in one.before:
            if spot in one.last_after:
                by_spot[spot].append((one.before[spot], one.last_after[spot]))
    every = [pair for pairs in by_kind.values() for pair in pairs]
    gf = wobble.gf  # the mean of several spots wobbles less; so no interval is too narrow
    return ChangesSeen(
        whole=_row("all knives", every, gf), kinds=_rows(by_kind, gf), spots=_rows(by_spot, gf), wobble=wobble
    )


def _rows(groups: Mapping[str, list[tuple[float, float]]], gf: float) -> tuple[ChangeRow, ...]:
    return tuple(_row(name, pairs, gf) for name, pairs in sorted(groups.items(), key=lambda x: (-len(x[1]), x[0])))


def _row(name: str, pairs: list[tuple[float, float]], gf: float) -> ChangeRow:
    return ChangeRow(name=name, pairs_gf=tuple(pairs), change=change(pairs, gf))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartSeen:
    """The readings of a process after the work, one figure a knife, in the order of reading."""

    process: str
    since: datetime | None
    """When the belt was fitted whose step comes last; None: no belt of it is known, and a year is shown."""
    belt: str
    finest: str
    """The step that comes last; empty for a process without belts."""
    readings_gf: tuple[float, ...]
    """Means of each knife's spots at its first test."""
    read_at: tuple[datetime, ...]
    tags: tuple[str, ...]
    limits: Limits | None
    """None until a stable period with at least ten knives was set."""
    stable_knives: int
    """Knives in the stable period; 0 when none was set."""
    marks: tuple[Mark, ...]
    wobble: WobbleNow


def charts_seen(shop: Shop, now: datetime) -> tuple[ChartSeen, ...]:
    """The chart of each process of which a knife was read lately, in the order of the settings."""
    with shop.reading() as database:
        settings = settings_in(database)
        wobble = wobble_in(database)
        belts = {(belt.process, belt.step): belt for belt in fitted_belts(database)}
        stable = {process.name: stable_row(database, process.name) for process in settings.processes}
        last = {p.name: belts.get((p.name, p.belts[-1].label)) if p.belts else None for p in settings.processes}
        read: defaultdict[str, list[ReadKnife]] = defaultdict(list)
        year_us = to_us(now - timedelta(days=A_YEAR))
        since = {name: year_us if belt is None else to_us(belt.fitted_at) for name, belt in last.items()}
        good = (to_us(first) for _, first, _ in filter(None, stable.values()))
        for one in read_knives(database, SINCE, min([*since.values(), *good], default=year_us)):
            if one.first_whole:
                read[knife_process(settings, one.knife).name].append(one)
    return tuple(
        _chart(process, last[process.name], since[process.name], read[process.name], stable[process.name], wobble)
        for process in settings.processes
        if read[process.name]
    )


def _chart(
    process: Process,
    belt: FittedBelt | None,
    since_us: int,
    knives: list[ReadKnife],
    stable: tuple[int, datetime, datetime] | None,
    wobble: WobbleNow,
) -> ChartSeen:
    shown = [one for one in knives if one.read_us >= since_us]
    good = [] if stable is None else [o for o in knives if to_us(stable[1]) <= o.read_us <= to_us(stable[2])]
    limits = limits_of(_means(good)) if len(good) >= FEWEST_STABLE else None
    readings = _means(shown)
    return ChartSeen(
        process=process.name,
        since=None if belt is None else belt.fitted_at,
        belt="" if belt is None else belt.label,
        finest=process.belts[-1].label if process.belts else "",
        readings_gf=readings,
        read_at=tuple(from_us(one.read_us) for one in shown),
        tags=tuple(one.knife.tag for one in shown),
        limits=limits,
        stable_knives=len(good),
        marks=() if limits is None else signals(readings, limits),
        wobble=wobble,
    )


def _means(knives: Iterable[ReadKnife]) -> tuple[float, ...]:
    return tuple(mean(list(one.first_after.values())) for one in knives)
