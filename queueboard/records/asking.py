"""Single questions to the shop file that operations and the picture put."""

from datetime import date
from typing import Literal

from queueboard.priced_words import MoneySort
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.reading import BOX, box_of
from queueboard.values.box import Box


def box_by_id(database: ShopDatabase, box_id: int) -> Box | None:
    """One box, open or closed."""
    found = database.rows(f"{BOX} WHERE id = ?", (box_id,))
    return box_of(found[0]) if found else None


def open_box(database: ShopDatabase, number: int) -> Box:
    """The open box with this number, which was stored before; StopIteration where there is none."""
    return next(box_of(row) for row in database.rows(f"{BOX} WHERE closed_us IS NULL AND number = ?", (number,)))


def newest_opened(database: ShopDatabase, customer_id: int | None) -> Box | None:
    """The box of a customer, or of anybody, that came in last and was opened."""
    found = database.rows(
        f"{BOX} WHERE opened = 1 AND EXISTS (SELECT 1 FROM knife k WHERE k.box_id = box.id) "
        "AND (? IS NULL OR customer_id = ?) ORDER BY id DESC LIMIT 1",
        (customer_id, customer_id),
    )
    return box_of(found[0]) if found else None


def newest_box_number(database: ShopDatabase) -> int | None:
    """The number of the box that came in last."""
    return _number(database.one("SELECT number FROM box ORDER BY id DESC LIMIT 1"))


def open_numbers(database: ShopDatabase) -> frozenset[int]:
    """The numbers of all open boxes."""
    return _ids(database, "SELECT number FROM box WHERE closed_us IS NULL")


def boxes_of_customer(database: ShopDatabase, customer_id: int) -> tuple[int, ...]:
    """Ids of all boxes a customer ever brought."""
    return tuple(sorted(_ids(database, "SELECT id FROM box WHERE customer_id = ?", customer_id)))


def announced_alike(
    database: ShopDatabase, customer_id: int, knives: int | None, on: date | None, note: str
) -> int | None:
    """The number of a box of this customer that is, or was, expected with so many knives, for that day, with that note.

    The newest; None when there is none.
    """
    found = database.one(
        "SELECT number FROM box WHERE customer_id = ? AND coalesce(expected_knives, -1) = ? "
        "AND coalesce(expected_on, '') = ? AND note = ? "
        "ORDER BY id DESC LIMIT 1",
        (customer_id, -1 if knives is None else knives, "" if on is None else on.isoformat(), note),
    )
    return _number(found)


def paid_cents(database: ShopDatabase, box_id: int) -> int:
    """All money taken for a box, less what was given back."""
    sql = "SELECT SUM(CASE sort WHEN ? THEN -cents ELSE cents END) FROM payment WHERE box_id = ?"
    return _number(database.one(sql, (MoneySort.REFUND.value, box_id))) or 0


def settled_as(database: ShopDatabase, box_id: int) -> str | None:
    """How the money stood when the box last went, as stored; None when nothing of it ever went."""
    settled = database.one(
        "SELECT settled FROM close_out WHERE box_id = ? AND finished_us IS NOT NULL ORDER BY finished_us DESC, id DESC",
        (box_id,),
    )
    return None if settled is None else str(settled)


def ticks_of(
    database: ShopDatabase, close_out_id: int, column: Literal["knife_id", "thing_id"] | None = None, of: int = 0
) -> tuple[int, ...]:
    """Ids of the ticks of a close-out: all, or those of one knife or thing."""
    if column is None:
        return tuple(sorted(_ids(database, "SELECT id FROM tick WHERE close_out_id = ?", close_out_id)))
    return tuple(_ids(database, f"SELECT id FROM tick WHERE close_out_id = ? AND {column} = ?", close_out_id, of))


def ticks_of_knife(database: ShopDatabase, knife_id: int) -> tuple[int, ...]:
    """Ids of the ticks of a knife in whatever close-out."""
    return tuple(sorted(_ids(database, "SELECT id FROM tick WHERE knife_id = ?", knife_id)))


def settings_id(database: ShopDatabase) -> int | None:
    """The id of the settings in force; None in a file that was never finished being made."""
    return _number(database.one("SELECT max(id) FROM settings"))


def settings_id_at(database: ShopDatabase, at_us: int) -> int:
    """The id of the settings that were in force at an instant; before there were any, of the first."""
    then = _number(database.one("SELECT max(id) FROM settings WHERE taken_us <= ?", (at_us,)))
    return then or _number(database.one("SELECT min(id) FROM settings")) or 0


def settings_now(database: ShopDatabase) -> tuple[int, str]:
    """The id and the text of the settings in force; 0 in a file that was never finished being made."""
    rows = database.rows("SELECT id, text FROM settings ORDER BY id DESC LIMIT 1") or ((0, None),)
    return _number(rows[0][0]) or 0, str(rows[0][1])


def settings_text(database: ShopDatabase) -> str:
    """The text of the settings in force."""
    return settings_now(database)[1]


def text_of_settings(database: ShopDatabase, of_settings: int) -> str:
    """The text of some settings."""
    return str(database.one("SELECT text FROM settings WHERE id = ?", (of_settings,)))


def closed_days(database: ShopDatabase, of_settings: int) -> dict[date, str]:
    """The public holidays filled in with these settings."""
    rows = database.rows("SELECT day, name FROM closed_day WHERE settings_id = ? ORDER BY day", (of_settings,))
    return {date.fromisoformat(str(day)): str(name) for day, name in rows}


def fixed_order(database: ShopDatabase, day: date) -> str | None:
    """The day list's order as it was last fixed for a day, as stored; None when it was not."""
    stored = database.one("SELECT knife_ids FROM day_order WHERE day = ? ORDER BY id DESC LIMIT 1", (day.isoformat(),))
    return None if stored is None else str(stored)


def finished_runs(database: ShopDatabase) -> tuple[int, int]:
    """How many runs at the bench are finished, and the sum of their versions: they change with what can be learned."""
    count, versions = database.rows("SELECT count(*), sum(row_version) FROM bench_run WHERE finished_us IS NOT NULL")[0]
    return _number(count) or 0, _number(versions) or 0


def boxes_said(database: ShopDatabase, day: date) -> frozenset[int]:
    """Ids of the boxes of which something was said on a day."""
    return _ids(database, "SELECT box_id FROM said WHERE day = ?", day.isoformat())


def _number(cell: Cell) -> int | None:
    return None if cell is None else int(cell)


def _ids(database: ShopDatabase, sql: str, *values: Cell) -> frozenset[int]:
    return frozenset(int(row[0]) for row in database.rows(sql, values) if row[0] is not None)
