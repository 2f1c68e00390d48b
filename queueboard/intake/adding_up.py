"""Where the knives of a box are, as a sum that adds up at all times; and which of them stand beyond a note."""

from collections.abc import Sequence
from dataclasses import replace

from queueboard.errors import TypedError
from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.found import MovedKnife, Off
from queueboard.values.knife import Knife
from queueboard.values.new import NewKnife


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxSum:
    """counted in + added + moved in = gone + moved out + on hand + struck + to the found knives."""

    counted: int
    """Counted when the box was opened; nothing changes it."""
    added: int
    """Brought later for this box."""
    moved_in: int
    """Moves out of other boxes; a knife that comes back counts again."""
    gone: int
    moved_out: int
    on_hand: int
    struck: int
    """Of those counted, typed by mistake and never there."""
    found: int
    """Of those counted, not the customer's: they lie with the found knives."""

    @property
    def came(self) -> int:
        """All that ever came into the box."""
        return self.counted + self.added + self.moved_in

    @property
    def is_where(self) -> int:
        """All of which is known what became of it."""
        return self.gone + self.moved_out + self.on_hand + self.struck + self.found

    @property
    def adds_up(self) -> bool:
        """True when none is lost and none is there twice."""
        return self.came == self.is_where

    @property
    def plain(self) -> bool:
        """True as long as nothing but coming in and going happened to it."""
        return not (self.added or self.moved_in or self.moved_out or self.struck or self.found)


def add_up(box: Box, knives: Sequence[Knife], moves: Sequence[MovedKnife], off: Off) -> BoxSum:
    """The sum of a box: its knives as they are now, every move of those that ever were in it, those taken off.

    moves may hold those of other boxes' knives too. A knife added later counts where it came in first.
    """
    home: dict[int, MovedKnife] = {}
    for move in moves:
        home.setdefault(move.knife_id, move)
    added_here = sum(knife.added_at is not None and knife.id not in home for knife in knives)
    added_and_moved = sum(first.added and first.from_box_id == box.id for first in home.values())
    return BoxSum(
        counted=box.counted,
        added=added_here + added_and_moved,
        moved_in=sum(move.to_box_id == box.id for move in moves),
        gone=sum(not knife.on_hand for knife in knives),
        moved_out=sum(move.from_box_id == box.id for move in moves),
        on_hand=sum(knife.on_hand for knife in knives),
        struck=off.struck,
        found=off.found,
    )


def with_apart(knives: Sequence[NewKnife], note_says: int | None) -> tuple[NewKnife, ...]:
    """The knives with those beyond the note marked to be priced apart: those typed so, else the last ones.

    TypedError where others were typed apart than are beyond the note.
    """
    beyond = 0 if note_says is None else max(0, len(knives) - note_says)
    marked = sum(knife.apart for knife in knives)
    if marked and marked != beyond:
        raise TypedError(
            f"{marked} typed as apart, and {beyond} beyond the note: “apart” is for what the note does not say."
        )
    if marked or not beyond:
        return tuple(knives)
    first = len(knives) - beyond
    return tuple(replace(knife, apart=place >= first) for place, knife in enumerate(knives))
