"""Trays: the knives of one box that move together, and what a person may leave behind."""

import re

from queueboard.errors import TypedError
from queueboard.shop.picture import BoxPicture
from queueboard.slotted import dataclass
from queueboard.values.knife import Knife
from queueboard.words import ON_BOARD, Column

ON = (Column.RECEIVED, Column.ON_BENCH, Column.TESTING)
"""Where the tray that moves on is looked for: from the left, so that a box in the morning begins with what waits."""

BACK = (Column.TESTING, Column.ON_BENCH, Column.READY)
"""Where the tray that moves back is looked for: what did not test OK comes first."""

TO_READY = (Column.ON_BENCH, Column.TESTING, Column.RECEIVED)
"""Where the tray that goes straight to ready is looked for: the work in hand before what is not begun."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tray:
    """Knives of one box that stand in the same place, and where they could go."""

    box_id: int
    number: int
    source: tuple[Column, ...]
    to: Column
    knives: tuple[Knife, ...]
    """Those that can move, by tag."""
    held: tuple[Knife, ...]
    """Those that cannot: waiting, declined, looked for, or beyond the customer's note until the yes to the count."""
    elsewhere: tuple[Knife, ...]
    """The box's other knives, which stay where they are whatever is typed."""

    @property
    def places(self) -> str:
        """Where they stand: on bench; on bench and testing."""
        return " and ".join(column.value for column in self.source)

    @property
    def is_test(self) -> bool:
        """True when its move to ready is the daily test: what is typed then is not OK."""
        return self.source == (Column.TESTING,) and self.to is Column.READY

    @property
    def asked(self) -> tuple[Knife, ...]:
        """Those that go no further than the test, since the gauge is asked for them."""
        return tuple(k for k in self.knives if self.to is Column.READY and k.stops_at_test)

    def going(self, staying: frozenset[int]) -> tuple[Knife, ...]:
        """The knives that move when these numbers stay."""
        return tuple(knife for knife in self.knives if knife.number not in staying)


def movable(knife: Knife) -> bool:
    """True when nothing holds the knife where it is."""
    return knife.declined is None and knife.waiting_for is None and not knife.looking_for and not knife.apart


def due_at_test(knife: Knife, to: Column) -> bool:
    """True for a move that the test decides: on from it where the gauge is asked, back from it once it came back."""
    if knife.column is not Column.TESTING or not movable(knife):
        return False
    return knife.gauge is not None if to is Column.READY else to is Column.ON_BENCH and knife.rework > 0


def step_from(column: Column, by: int) -> Column | None:
    """The column one on (1) or one back (-1); None at the ends of the board."""
    place = ON_BOARD.index(column) + by
    return ON_BOARD[place] if 0 <= place < len(ON_BOARD) else None


def _tray(box: BoxPicture, source: tuple[Column, ...], to: Column) -> Tray:
    here = tuple(knife for knife in box.on_hand if knife.column in source)
    return Tray(
        box_id=box.box.id,
        number=box.box.number,
        source=source,
        to=to,
        knives=tuple(knife for knife in here if movable(knife)),
        held=tuple(knife for knife in here if not movable(knife)),
        elsewhere=tuple(knife for knife in box.knives if knife not in here),
    )


def trays_by(box: BoxPicture, by: int, first: Column | None = None) -> tuple[Tray, ...]:
    """The trays that could move on (1) or back (-1), the likeliest first; *first* is the column the cursor is in."""
    wanted = sorted(ON if by > 0 else BACK, key=lambda column: column is not first)
    trays = ((column, step_from(column, by)) for column in wanted)
    return tuple(tray for column, to in trays if to is not None and (tray := _tray(box, (column,), to)).knives)


def trays_to_ready(box: BoxPicture, first: Column | None = None) -> tuple[Tray, ...]:
    """The trays that could go straight to ready: bench and testing together, each alone, what is not begun."""
    alone = [(column,) for column in sorted(TO_READY, key=lambda column: column is not first)]
    both = [(Column.ON_BENCH, Column.TESTING)]
    order = [*alone, *both] if first is not None else [*both, *alone]
    trays = [tray for source in order if (tray := _tray(box, source, Column.READY)).knives]
    different: dict[tuple[int, ...], Tray] = {}
    for tray in trays:
        different.setdefault(tuple(knife.id for knife in tray.knives), tray)
    return tuple(different.values())


def read_staying(text: str, tray: Tray) -> frozenset[int]:
    """The knife numbers that stay, typed with any sign between them: 3 7, 3.7, 3,7.

    A knife of the box that is not in the tray may be named too. Raises TypedError for a number no knife of it has.
    """
    numbers = frozenset(int(part) for part in re.findall(r"[0-9]{1,4}", text))
    strange = sorted(numbers - {knife.number for knife in (*tray.knives, *tray.held, *tray.elsewhere)})
    if strange:
        tags = ", ".join(f"{tray.number}-{number}" for number in strange)
        raise TypedError(f"There is no knife {tags}. Type numbers of knives that stay, or Enter.")
    return numbers


def stay_anyway(staying: frozenset[int], tray: Tray) -> str:
    """What to say of knives named to stay that are not in the tray; empty when all named are in it."""
    named = [knife for knife in tray.elsewhere if knife.number in staying]
    said = ", ".join(f"{knife.tag} {_stands(knife.column)}" for knife in named)
    return f"{said}; {'it stays' if len(named) == 1 else 'they stay'} anyway." if named else ""


def _stands(column: Column) -> str:
    """Where a knife is, after its tag."""
    if column in (Column.RECEIVED, Column.TESTING):
        return f"stands in {column.value}"
    return f"stands {column.value}" if column is Column.ON_BENCH else f"is {column.value}"
