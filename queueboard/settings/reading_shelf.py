"""What the shop does about boxes that nobody fetches, and about call-backs, read from a table that may be missing."""

from itertools import pairwise

from queueboard.settings.fields import Table
from queueboard.settings.shelf_shape import Shelf

MOST_DAYS, MOST_NOTICES = 3650, 12


def read_shelf(whole: Table) -> Shelf:
    """The shop's own days; what is not written is as in Shelf."""
    usual = Shelf()
    if not whole.has("shelf"):
        return usual
    table = whole.table("shelf")
    table.only("notice_days", "long_days", "redo_days", "last_checked")
    return Shelf(
        notice_days=_notice_days(table) if table.has("notice_days") else usual.notice_days,
        long_days=_days(table, "long_days", 1, usual.long_days),
        redo_days=_days(table, "redo_days", 0, usual.redo_days),
        last_checked=table.day("last_checked") if table.has("last_checked") else None,
    )


def _days(table: Table, key: str, fewest: int, usual: int) -> int:
    return table.whole(key, fewest, MOST_DAYS, "days") if table.has(key) else usual


def _notice_days(table: Table) -> tuple[int, ...]:
    """Whole numbers of days that rise."""
    typed = table.list_of("notice_days")
    days = tuple(each for each in typed if isinstance(each, int) and not isinstance(each, bool))
    rising = all(earlier < later for earlier, later in pairwise((0, *days, MOST_DAYS + 1)))
    if len(days) < len(typed) or len(days) > MOST_NOTICES or not rising:
        raise table.wrong(
            f"notice_days are up to {MOST_NOTICES} whole numbers of days from 1 to {MOST_DAYS}, "
            "each larger than the one before, like [7, 21, 42]",
            "notice_days",
        )
    return days
