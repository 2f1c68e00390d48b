"""Tags that were printed before a market day, held against those that were used there."""

from collections import Counter
from collections.abc import Sequence

from queueboard.errors import TypedError
from queueboard.settings.market_shape import HIGHEST_TAG, MOST_TAGS
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TagsUsed:
    """What became of the tags of one day; every list rises."""

    used: tuple[int, ...]
    """Each printed tag that was used, once."""
    gaps: tuple[int, ...]
    """Printed and never used, though a later one was: lost, spoiled, or somebody who was not typed."""
    left: tuple[int, ...]
    """Printed and behind the last that was used: still on the pad."""
    duplicates: tuple[int, ...]
    """Typed for more than one customer, printed or not."""
    not_printed: tuple[int, ...]
    """Typed, and never printed for this day."""


def doubled(typed: Sequence[int | None]) -> tuple[int, ...]:
    """The tags that were typed more than once, rising; a line without a tag is none."""
    return tuple(sorted(tag for tag, count in Counter(typed).items() if count > 1 and tag is not None))


def hold_against(first: int, last: int, typed: Sequence[int]) -> TagsUsed:
    """The tags from first to last, both printed, against those typed, in any order.

    TypedError for a range that cannot have been printed.
    """
    if not 1 <= first <= last <= HIGHEST_TAG:
        raise TypedError(f"Tags {first} to {last} cannot be; type the lowest first, from 1 to {HIGHEST_TAG}.")
    if last - first >= MOST_TAGS:
        raise TypedError(f"Tags {first} to {last} are {last - first + 1}; at most {MOST_TAGS} are printed for one day.")
    printed, times = range(first, last + 1), Counter(typed)
    used = tuple(tag for tag in printed if tag in times)
    highest = used[-1] if used else first - 1
    return TagsUsed(
        used=used,
        gaps=tuple(tag for tag in printed if tag < highest and tag not in times),
        left=tuple(range(highest + 1, last + 1)),
        duplicates=doubled(typed),
        not_printed=tuple(sorted(tag for tag in times if tag not in printed)),
    )
