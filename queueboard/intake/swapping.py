"""What is missing of a set, and which printed tags were never used or used twice: pure counts."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from queueboard.errors import TypedError
from queueboard.values.swapped import SetKind


def taken(kind: SetKind, counted: int) -> SetKind:
    """Knives counted at the kitchen come in dull; what was there and is not counted is missing, or comes back.

    TypedError for more than were there or missing.
    """
    if not 0 <= counted <= kind.kitchen + kind.missing:
        raise TypedError(
            f"{counted} {kind.kind} counted, but {kind.kitchen} are with the kitchen and {kind.missing} missing. "
            "Count again; a knife of another set or of their own goes into a box of its own."
        )
    return replace(
        kind, kitchen=0, dull=kind.dull + counted, missing=kind.missing + kind.kitchen - counted
    )


def brought(kind: SetKind) -> SetKind:
    """What is clean goes to the kitchen."""
    return replace(kind, kitchen=kind.kitchen + kind.clean, clean=0)


def unused(first: int, last: int, used: Iterable[int]) -> tuple[tuple[int, int], ...]:
    """The tags from first to last that were never used, as spans with both ends."""
    known = set(used)
    spans: list[tuple[int, int]] = []
    for tag in range(first, last + 1):
        if tag in known:
            continue
        if spans and spans[-1][1] == tag - 1:
            spans[-1] = spans[-1][0], tag
        else:
            spans.append((tag, tag))
    return tuple(spans)


def doubled(used: Sequence[int]) -> tuple[int, ...]:
    """The tags that were given out more than once, in order."""
    return tuple(sorted(tag for tag, times in Counter(used).items() if times > 1))


def by_kind(kinds: Iterable[str]) -> Mapping[str, int]:
    """How many of each kind."""
    return Counter(kinds)
