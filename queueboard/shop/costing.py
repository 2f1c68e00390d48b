"""What a box would come to while it is still being typed."""

from collections.abc import Sequence

from queueboard.errors import TypedError
from queueboard.intake.adding_up import with_apart
from queueboard.money.estimate import estimate
from queueboard.settings.shapes import Settings
from queueboard.values.new import NewKnife
from queueboard.values.totals import Totals
from queueboard.words import CameBy


def would_come_to(
    settings: Settings,
    knives: Sequence[NewKnife],
    *,
    note_says: int | None,
    came_by: CameBy,
    rush: bool,
    shop_ships: bool,
) -> Totals:
    """The sums of a box as receiving would store it: those beyond the note are priced apart until the yes."""
    try:
        knives = with_apart(knives, note_says)
    except TypedError:
        knives = tuple(knives)  # receiving asks which are meant; until then all of them count
    return estimate(settings, knives, came_by=came_by, rush=rush, shop_ships=shop_ships)
