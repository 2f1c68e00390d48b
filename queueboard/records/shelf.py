"""Notices, call-backs and boxes that are gone, read with fixed SQL."""

from collections import defaultdict

from queueboard.records.cells import whole
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.slotted import dataclass
from queueboard.values.shelf import CallBack, Notice


def notices_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[Notice, ...]:
    """The notices that meet a fixed condition, oldest first."""
    rows = database.rows(
        f"SELECT id, box_id, sort, way, text, told_us, told_by FROM notice WHERE {where} ORDER BY told_us, id", values
    )
    return tuple(
        Notice(
            id=whole(r[0]),
            box_id=whole(r[1]),
            sort=MessageSort(str(r[2])),
            way=NoticeWay(str(r[3])),
            text=str(r[4]),
            told_at=from_us(whole(r[5])),
            told_by=str(r[6]),
        )
        for r in rows
    )


def call_backs_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[CallBack, ...]:
    """The call-backs that meet a fixed condition on c, oldest first."""
    pairs: defaultdict[int, list[tuple[int, int]]] = defaultdict(list)
    for row in database.rows(
        "SELECT p.call_back_id, p.knife_id, p.old_knife_id FROM call_back_knife p "
        f"JOIN call_back c ON c.id = p.call_back_id WHERE {where} ORDER BY p.id",
        values,
    ):
        pairs[whole(row[0])].append((whole(row[1]), whole(row[2])))
    rows = database.rows(
        "SELECT c.id, c.box_id, c.old_box_id, b.number, c.free, c.days, c.why FROM call_back c "
        f"JOIN box b ON b.id = c.old_box_id WHERE {where} ORDER BY c.id",
        values,
    )
    return tuple(
        CallBack(
            id=whole(r[0]),
            box_id=whole(r[1]),
            old_box_id=whole(r[2]),
            old_number=whole(r[3]),
            free=bool(r[4]),
            days=whole(r[5]),
            why=str(r[6]),
            knives=tuple(pairs[whole(r[0])]),
        )
        for r in rows
    )


def pairs_of_knife(database: ShopDatabase, knife_id: int) -> tuple[int, ...]:
    """Ids of the rows that link a knife to what it was, or what it became."""
    rows = database.rows("SELECT id FROM call_back_knife WHERE ? IN (knife_id, old_knife_id) ORDER BY id", (knife_id,))
    return tuple(whole(row[0]) for row in rows)


@dataclass(frozen=True, slots=True, kw_only=True)
class GoneBox:
    """What a box that is gone is found by."""

    id: int
    number: int
    customer_id: int
    closed_us: int


def gone_boxes(database: ShopDatabase, where: str, *values: Cell, limit: int) -> tuple[GoneBox, ...]:
    """The boxes that are closed and meet a fixed condition, the newest gone first, at most *limit*."""
    rows = database.rows(
        "SELECT id, number, customer_id, closed_us FROM box "
        f"WHERE closed_us IS NOT NULL AND {where} ORDER BY closed_us DESC, id DESC LIMIT ?",
        (*values, limit),
    )
    return tuple(
        GoneBox(id=whole(row[0]), number=whole(row[1]), customer_id=whole(row[2]), closed_us=whole(row[3]))
        for row in rows
    )


def how_they_left(database: ShopDatabase, which: str, *values: Cell) -> dict[int, tuple[str, str]]:
    """Who fetched some boxes and how their money stood, by their last finished close-outs; by box, where there was one.

    which: fixed SQL for the ids of the boxes.
    """
    rows = database.rows(
        f"SELECT box_id, handed_to, settled FROM close_out WHERE box_id IN ({which}) AND finished_us IS NOT NULL "
        "ORDER BY finished_us, id",
        values,
    )
    return {whole(row[0]): (str(row[1]), str(row[2])) for row in rows}
