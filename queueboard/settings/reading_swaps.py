"""What the shop does with swap sets of kitchens, read from a table that may be missing."""

from queueboard.settings.fields import Table, decimal_of, written
from queueboard.settings.swaps_shape import Swaps

MOST_DAYS, MOST_MM = 365, 50
UM_PER_MM = 1000


def read_swaps(whole: Table) -> Swaps:
    """The shop's choices; what is not written is as in Swaps."""
    usual = Swaps()
    if not whole.has("swaps"):
        return usual
    table = whole.table("swaps")
    table.only("on", "waiting_days", "free_nick_mm")
    days = table.whole("waiting_days", 0, MOST_DAYS, "days") if table.has("waiting_days") else usual.waiting_days
    return Swaps(
        on=table.yes("on") if table.has("on") else usual.on,
        waiting_days=days,
        free_nick_um=_free_nick_um(table) if table.has("free_nick_mm") else usual.free_nick_um,
    )


def _free_nick_um(table: Table) -> int:
    value = table.need("free_nick_mm")
    number = decimal_of(value)
    if number is None or not 0 <= number <= MOST_MM or number * UM_PER_MM != int(number * UM_PER_MM):
        raise table.wrong(
            f"free_nick_mm is a number of millimetres from 0 to {MOST_MM} like 0.5, not {written(value)}",
            "free_nick_mm",
        )
    return int(number * UM_PER_MM)
