"""Swap sets and market days, read with fixed SQL."""

from datetime import date

from queueboard.records.cells import whole, whole_or_none
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.swapped import MarketEntry, Missing, PrintedTags, Round, SetKind, SwapSet

_DULL = """SELECT k.kind, count(*) FROM knife k JOIN swap_round r ON r.box_id = k.box_id
WHERE r.taken_id = ? AND k.place IN ('received', 'on bench', 'testing') GROUP BY k.kind"""


def sets_of(database: ShopDatabase, customer_id: int) -> tuple[SwapSet, ...]:
    """The sets of a kitchen, by name."""
    found = database.rows("SELECT id, name FROM swap_set WHERE customer_id = ? ORDER BY id", (customer_id,))
    return tuple(SwapSet(id=whole(r[0]), name=str(r[1]), kinds=_kinds(database, whole(r[0]))) for r in found)


def _kinds(database: ShopDatabase, set_id: int) -> tuple[SetKind, ...]:
    dull = {str(kind): whole(count) for kind, count in database.rows(_DULL, (set_id,))}
    rows = database.rows(
        "SELECT id, kind, owned, kitchen, here, missing FROM swap_kind WHERE set_id = ? ORDER BY id", (set_id,)
    )
    return tuple(
        SetKind(
            id=whole(r[0]),
            kind=str(r[1]),
            owned=whole(r[2]),
            kitchen=whole(r[3]),
            dull=(open_ := min(dull.get(str(r[1]), 0), whole(r[4]))),
            clean=whole(r[4]) - open_,
            missing=whole(r[5]),
        )
        for r in rows
    )


def kitchens_of(database: ShopDatabase) -> tuple[int, ...]:
    """Ids of the customers that have sets."""
    return tuple(whole(r[0]) for r in database.rows("SELECT DISTINCT customer_id FROM swap_set ORDER BY customer_id"))


def missing_of(database: ShopDatabase, customer_id: int) -> tuple[Missing, ...]:
    """What is missing of a kitchen's sets, the oldest first."""
    rows = database.rows(
        "SELECT m.id, m.kind_id, s.name, k.kind, m.knives, m.since_us, m.charged FROM swap_missing m "
        "JOIN swap_kind k ON k.id = m.kind_id JOIN swap_set s ON s.id = k.set_id WHERE s.customer_id = ? ORDER BY m.id",
        (customer_id,),
    )
    return tuple(
        Missing(
            id=whole(r[0]),
            kind_id=whole(r[1]),
            set_name=str(r[2]),
            kind=str(r[3]),
            knives=whole(r[4]),
            since=from_us(whole(r[5])),
            charged=bool(r[6]),
        )
        for r in rows
    )


def last_round(database: ShopDatabase, customer_id: int) -> Round | None:
    """The newest visit at a kitchen."""
    rows = database.rows(
        "SELECT r.brought_id, r.taken_id, b.number, r.at_us FROM swap_round r LEFT JOIN box b ON b.id = r.box_id "
        "WHERE r.customer_id = ? ORDER BY r.id DESC LIMIT 1",
        (customer_id,),
    )
    for r in rows:
        return Round(
            brought_id=whole_or_none(r[0]),
            taken_id=whole_or_none(r[1]),
            box_number=whole_or_none(r[2]),
            at=from_us(whole(r[3])),
        )
    return None


def newest_printed(database: ShopDatabase) -> PrintedTags | None:
    """The tags that were printed last."""
    for r in database.rows("SELECT id, market_on, first, last FROM printed_tags ORDER BY id DESC LIMIT 1"):
        return PrintedTags(
            id=whole(r[0]), market_on=date.fromisoformat(str(r[1])), first=whole(r[2]), last=whole(r[3])
        )
    return None


def printed_numbers(database: ShopDatabase) -> set[int]:
    """Numbers that no other box gets, since they stand on the tags printed last."""
    printed = newest_printed(database)
    return set() if printed is None else set(range(printed.first, printed.last + 1))


def entries_of(database: ShopDatabase, printed_id: int) -> tuple[MarketEntry, ...]:
    """What was caught up with of a market day, by tag."""
    rows = database.rows(
        "SELECT e.tag, b.number, b.counted, c.name, b.closed_us IS NULL, "
        "(SELECT p.day FROM promise p WHERE p.box_id = b.id ORDER BY p.id DESC LIMIT 1) FROM market_entry e "
        "JOIN box b ON b.id = e.box_id JOIN customer c ON c.id = b.customer_id WHERE e.printed_id = ? "
        "ORDER BY e.tag, e.id",
        (printed_id,),
    )
    return tuple(
        MarketEntry(
            tag=whole(r[0]),
            number=whole(r[1]),
            knives=whole(r[2]),
            name=str(r[3]),
            open=bool(r[4]),
            due=None if r[5] is None else date.fromisoformat(str(r[5])),
        )
        for r in rows
    )
