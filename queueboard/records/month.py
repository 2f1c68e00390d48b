"""What happened between two instants, read with fixed SQL for the figures of a month."""

from queueboard.figures.evening import Placed
from queueboard.money.bill import Bill
from queueboard.records.cells import whole
from queueboard.records.charges import CHARGED_BOX, charges_of
from queueboard.records.database import ShopDatabase
from queueboard.records.evening import CAME, placed_between
from queueboard.records.measuring import FinishedRun
from queueboard.records.reading import BOX, CUSTOMER, box_of, by_box, customer_of, knives_of, payments_of
from queueboard.records.telling import undone_groups
from queueboard.values.box import Payment
from queueboard.values.customer import Customer

_LINES = "history h INDEXED BY history_work"
_KNIVES = "h.entity IN ('box', 'knife') AND h.entity = 'knife' AND h.at_us >= ? AND h.at_us < ?"


def first_ready(database: ShopDatabase, first_us: int, end_us: int) -> tuple[Placed, ...]:
    """Each knife that came to ready between two instants and never did before, undone steps left out, oldest first."""
    undone = undone_groups(database)
    before = {
        whole(row[0])
        for row in database.rows(
            "SELECT h.entity_id, h.group_id FROM history h WHERE h.entity = 'knife' AND h.entity_id IN "
            f"(SELECT h.entity_id FROM {_LINES} WHERE {_KNIVES} AND {CAME['ready']}) "
            f"AND h.at_us < ? AND h.operation <> 'undo' AND {CAME['ready']}",
            (first_us, end_us, first_us),
        )
        if str(row[1]) not in undone
    }
    found: dict[int, Placed] = {}
    for placed in placed_between(database, "ready", first_us, end_us):
        if placed.knife.id not in before:
            found.setdefault(placed.knife.id, placed)
    return tuple(found.values())


def closed_bills(database: ShopDatabase, first_us: int, end_us: int) -> tuple[Bill, ...]:
    """The bills of the boxes that closed between two instants and gave a knife back."""
    which = "closed_us >= ? AND closed_us < ? AND announced_us IS NULL"
    inside = f"IN (SELECT id FROM box WHERE {which})"
    ends = (first_us, end_us)
    knives = by_box(knives_of(database, f"k.box_id {inside}", *ends), lambda knife: knife.box_id)
    charges = by_box(charges_of(database, f"{CHARGED_BOX} {inside}", *ends), lambda charge: charge.box_id)
    payments = by_box(payments_of(database, f"box_id {inside}", *ends), lambda payment: payment.box_id)
    return tuple(
        Bill(
            knives=knives[box.id],
            charges=charges.get(box.id, ()),
            payments=payments.get(box.id, ()),
            rounding=box.rounding,
        )
        for box in map(box_of, database.rows(f"{BOX} WHERE {which} ORDER BY id", ends))
        if any(not knife.on_hand for knife in knives.get(box.id, ()))
    )


def tested_knives(database: ShopDatabase, first_us: int, end_us: int) -> tuple[tuple[int, bool], ...]:
    """Each knife tested between two instants: its id, and True when every one of those tests was OK."""
    rows = database.rows(
        "SELECT knife_id, min(ok) FROM edge_test WHERE tested_us >= ? AND tested_us < ? GROUP BY knife_id",
        (first_us, end_us),
    )
    return tuple((whole(row[0]), bool(row[1])) for row in rows)


def call_backs(database: ShopDatabase, first_us: int, end_us: int) -> int:
    """Boxes that came back between two instants since an edge was not as it should be."""
    return _count(database, "box WHERE complaint = 1 AND announced_us IS NULL AND received_us", first_us, end_us)


def belts_fitted(database: ShopDatabase, first_us: int, end_us: int) -> tuple[tuple[str, int], ...]:
    """How many new belts were put up for each process between two instants, by the process's name."""
    rows = database.rows(
        "SELECT process, count(*) FROM belt WHERE was_belt_id IS NULL AND fitted_us >= ? AND fitted_us < ? "
        "GROUP BY process ORDER BY process",
        (first_us, end_us),
    )
    return tuple((str(row[0]), whole(row[1])) for row in rows)


def _count(database: ShopDatabase, what: str, first_us: int, end_us: int) -> int:
    """Rows whose instant, the last word of *what*, lies between two others."""
    instant = what.rpartition(" ")[2]
    return whole(database.one(f"SELECT count(*) FROM {what} >= ? AND {instant} < ?", (first_us, end_us)))


def declined_knives(database: ShopDatabase, first_us: int, end_us: int) -> int:
    """Knives that were declined between two instants, and still are."""
    undone = undone_groups(database)
    lines = database.rows(
        f"SELECT h.entity_id, h.group_id FROM {_LINES} JOIN knife k ON k.id = h.entity_id WHERE {_KNIVES} "
        "AND h.operation <> 'undo' AND k.declined IS NOT NULL AND instr(h.after, '\"declined\":null') = 0 "
        "AND coalesce(instr(h.before, '\"declined\":null'), 1) > 0",
        (first_us, end_us),
    )
    return len({whole(row[0]) for row in lines if str(row[1]) not in undone})


def timed_runs(
    database: ShopDatabase, first_us: int, end_us: int
) -> tuple[tuple[FinishedRun, tuple[tuple[str, int], ...]], ...]:
    """The runs finished between two instants whose time counts, with each knife's kind and listed seconds."""
    shares: dict[int, list[tuple[str, int]]] = {}
    boxes: dict[int, set[int]] = {}
    ends = (first_us, end_us)
    which = "r.finished_us >= ? AND r.finished_us < ? AND r.timed = 1"
    for run_id, kind, seconds, box_id in database.rows(
        "SELECT r.id, k.kind, rk.nominal_seconds, k.box_id FROM bench_run r JOIN run_knife rk ON rk.run_id = r.id "
        f"JOIN knife k ON k.id = rk.knife_id WHERE {which} ORDER BY rk.id",
        ends,
    ):
        shares.setdefault(whole(run_id), []).append((str(kind), whole(seconds)))
        boxes.setdefault(whole(run_id), set()).add(whole(box_id))
    rows = database.rows(
        "SELECT r.id, r.nominal_seconds, r.planned_seconds, r.set_up_seconds, "
        f"(r.finished_us - r.started_us - r.paused_total_us) / 1000000 FROM bench_run r WHERE {which} ORDER BY r.id",
        ends,
    )
    return tuple(
        (
            FinishedRun(
                knives=len(shares[whole(row[0])]),
                boxes=len(boxes[whole(row[0])]),
                starter_seconds=sum(seconds for _, seconds in shares[whole(row[0])]),
                nominal_seconds=whole(row[1]),
                planned_seconds=whole(row[2]),
                set_up_seconds=whole(row[3]),
                worked_seconds=whole(row[4]),
                timed=True,
            ),
            tuple(shares[whole(row[0])]),
        )
        for row in rows
        if whole(row[0]) in shares
    )


def paid_between(database: ShopDatabase, first_us: int, end_us: int) -> tuple[tuple[Payment, Customer], ...]:
    """The money that moved between two instants, with whose box it was for."""
    payments = payments_of(database, "at_us >= ? AND at_us < ?", first_us, end_us)
    inside = "(SELECT box_id FROM payment WHERE at_us >= ? AND at_us < ?)"
    whose = {
        whole(row[0]): whole(row[1])
        for row in database.rows(f"SELECT id, customer_id FROM box WHERE id IN {inside}", (first_us, end_us))
    }
    customers = {
        one.id: one
        for one in map(
            customer_of,
            database.rows(
                f"{CUSTOMER} WHERE id IN (SELECT customer_id FROM box WHERE id IN {inside})", (first_us, end_us)
            ),
        )
    }
    return tuple((payment, customers[whose[payment.box_id]]) for payment in payments)
