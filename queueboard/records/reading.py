"""What stands in the shop file, read with fixed SQL into frozen values."""

from collections import defaultdict
from collections.abc import Callable, Collection, Iterable
from datetime import date, time
from typing import TypeVar

from queueboard.priced_words import Finding, MoneySort
from queueboard.records.cells import day_or_none, instant_or_none, whole, whole_or_none, words_by_cell
from queueboard.records.charges import charges_of_boxes
from queueboard.records.close_outs import close_outs_of
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.moved import found_of, moves_of, off_of
from queueboard.records.runs import open_runs
from queueboard.records.shelf import call_backs_of
from queueboard.slotted import dataclass
from queueboard.values.box import Box, Charge, CloseOut, Payment, Promise, ReturnLabel
from queueboard.values.customer import Customer
from queueboard.values.found import FoundKnife, MovedKnife, Off
from queueboard.values.knife import Knife, Thing
from queueboard.values.measured import BenchRun
from queueboard.values.shelf import CallBack
from queueboard.words import (
    CameBy,
    Column,
    Condition,
    DeclineReason,
    Edge,
    GoesBy,
    LabelOwner,
    LabelState,
    Packing,
    PayWay,
    PromiseKind,
    Rounding,
    ThingState,
    WaitingFor,
    WhyRead,
)

OPEN_BOXES = "SELECT id FROM box WHERE closed_us IS NULL"

BOX = """SELECT id, row_version, number, customer_id, came_by, goes_by, counted, note_says, received_us, opened,
packing, carrier_days, rush, this_next, never_slip, waiting_for, waiting_since_us, note, closed_us,
announced_us, expected_on, expected_knives, complaint,
not_above_cents, packed_g, parcel_mm, rounding, place FROM box"""

KNIFE = """SELECT k.id, k.row_version, k.box_id, b.number, k.number, k.kind, k.edge, k.length_mm, k.condition, k.place,
k.mark, k.wish, k.note, k.rework, k.declined, k.waiting_for, k.waiting_since_us, k.price_cents, k.looking_for,
k.moved_us, k.moved_by, k.gauge, k.chips, k.chip_um, k.tip_um, k.findings, k.apart, k.added_us, k.tax_ppm
FROM knife k JOIN box b ON b.id = k.box_id"""

LABEL = """SELECT id, row_version, box_id, owner, state, carrier, expires_on, name_on, address_on, limit_g, value_cents,
price_cents, note_name, note_address FROM label"""

CUSTOMER = "SELECT id, row_version, name, phone, town, address, notes, proof_card FROM customer"

Value = TypeVar("Value")


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenWork:
    """All open boxes with what belongs to them, each grouped by box id."""

    boxes: tuple[Box, ...]
    customers: dict[int, Customer]
    knives: dict[int, tuple[Knife, ...]]
    things: dict[int, tuple[Thing, ...]]
    promises: dict[int, tuple[Promise, ...]]
    labels: dict[int, ReturnLabel]
    payments: dict[int, tuple[Payment, ...]]
    charges: dict[int, tuple[Charge, ...]]
    close_outs: dict[int, CloseOut]
    runs: tuple[BenchRun, ...]
    """The runs under way, oldest first; a run may hold knives of several boxes."""
    moves: tuple[MovedKnife, ...]
    """Every move of the knives that ever were in an open box, oldest first."""
    off: dict[int, Off]
    """How many knives of a box were taken off it, by box."""
    found: tuple[FoundKnife, ...]
    """The found knives that nobody has settled, oldest first."""
    call_backs: dict[int, CallBack]
    """By the box that came back."""


def read_open_work(database: ShopDatabase) -> OpenWork:
    """Everything the board needs, in a fixed number of queries; call it inside database.reading()."""
    return read_boxes(database, OPEN_BOXES)


def read_boxes(database: ShopDatabase, which: str, *values: Cell) -> OpenWork:
    """Some open boxes with what belongs to them, and all else that the board needs; which: fixed SQL for their ids."""
    inside = f"IN ({which})"
    boxes = tuple(map(box_of, database.rows(f"{BOX} WHERE id {inside} ORDER BY number", values)))
    whose = database.rows(f"{CUSTOMER} WHERE id IN (SELECT customer_id FROM box WHERE id {inside})", values)
    return OpenWork(
        boxes=boxes,
        customers={customer.id: customer for customer in map(customer_of, whose)},
        knives=by_box(knives_of(database, f"k.box_id {inside}", *values), lambda knife: knife.box_id),
        things=by_box(things_of(database, f"box_id {inside}", *values), lambda thing: thing.box_id),
        promises=by_box(promises_of(database, f"box_id {inside}", *values), lambda promise: promise.box_id),
        labels={label.box_id: label for label in labels_of(database, f"box_id {inside}", *values)},
        payments=by_box(payments_of(database, f"box_id {inside}", *values), lambda payment: payment.box_id),
        charges=by_box(charges_of_boxes(database, which, *values), lambda charge: charge.box_id),
        close_outs={close.box_id: close for close in close_outs_of(database)},
        runs=open_runs(database),
        moves=moves_of(database, OPEN_BOXES),
        off=off_of(database, OPEN_BOXES),
        found=found_of(database, "f.settled_us IS NULL"),
        call_backs={one.box_id: one for one in call_backs_of(database, f"c.box_id IN ({OPEN_BOXES})")},
    )


def by_box(values: Iterable[Value], box_id: Callable[[Value], int]) -> dict[int, tuple[Value, ...]]:
    """Values grouped by their box."""
    groups: defaultdict[int, list[Value]] = defaultdict(list)
    for value in values:
        groups[box_id(value)].append(value)
    return {key: tuple(group) for key, group in groups.items()}


def boxes_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[Box, ...]:
    """The boxes that meet a fixed condition."""
    return tuple(map(box_of, database.rows(f"{BOX} WHERE {where}", values)))


def customer_by_id(database: ShopDatabase, customer_id: int) -> Customer | None:
    """One customer; None for one that was merged into another."""
    found = database.rows(f"{CUSTOMER} WHERE id = ? AND merged_into IS NULL", (customer_id,))
    return customer_of(found[0]) if found else None


def customers_of(database: ShopDatabase) -> tuple[Customer, ...]:
    """All customers but those merged into another, by name."""
    rows = database.rows(f"{CUSTOMER} WHERE merged_into IS NULL")
    return tuple(sorted(map(customer_of, rows), key=lambda customer: (customer.name.casefold(), customer.id)))


def customers_among(database: ShopDatabase, ids: Collection[int]) -> tuple[Customer, ...]:
    """Those of some customers that are there and not merged into another, by their ids."""
    marks = ", ".join("?" * len(ids)) or "NULL"
    rows = database.rows(f"{CUSTOMER} WHERE merged_into IS NULL AND id IN ({marks}) ORDER BY id", tuple(ids))
    return tuple(map(customer_of, rows))


def knives_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[Knife, ...]:
    """The knives that meet a fixed condition, by tag."""
    return tuple(map(knife_of, database.rows(f"{KNIFE} WHERE {where} ORDER BY k.box_id, k.number", values)))


def things_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[Thing, ...]:
    """The things that meet a fixed condition."""
    rows = database.rows(f"SELECT id, row_version, box_id, name, state FROM thing WHERE {where} ORDER BY id", values)
    return tuple(
        Thing(id=whole(r[0]), version=whole(r[1]), box_id=whole(r[2]), name=str(r[3]), state=ThingState(str(r[4])))
        for r in rows
    )


def promises_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[Promise, ...]:
    """The promises that meet a fixed condition, oldest first."""
    rows = database.rows(
        "SELECT id, box_id, kind, day, at, told_to, told_us, told_by, reason, reckoned FROM promise "
        f"WHERE {where} ORDER BY id",
        values,
    )
    return tuple(
        Promise(
            id=whole(r[0]),
            box_id=whole(r[1]),
            kind=PromiseKind(str(r[2])),
            day=date.fromisoformat(str(r[3])),
            at=None if r[4] is None else time.fromisoformat(str(r[4])),
            told_to=str(r[5]),
            told_at=from_us(whole(r[6])),
            told_by=str(r[7]),
            reason=str(r[8]),
            reckoned=str(r[9]),
        )
        for r in rows
    )


def labels_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[ReturnLabel, ...]:
    """The labels that meet a fixed condition; for each box the newest one comes last."""
    rows = database.rows(
        f"{LABEL} WHERE {where} ORDER BY id",
        values,
    )
    return tuple(
        ReturnLabel(
            id=whole(r[0]),
            version=whole(r[1]),
            box_id=whole(r[2]),
            owner=LabelOwner(str(r[3])),
            state=LabelState(str(r[4])),
            carrier=str(r[5]),
            expires_on=day_or_none(r[6]),
            name_on=str(r[7]),
            address_on=str(r[8]),
            limit_g=whole_or_none(r[9]),
            value_cents=whole_or_none(r[10]),
            price_cents=whole_or_none(r[11]),
            note_name=str(r[12]),
            note_address=str(r[13]),
        )
        for r in rows
    )


def payments_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[Payment, ...]:
    """The payments that meet a fixed condition, oldest first."""
    rows = database.rows(
        f"SELECT id, box_id, cents, way, at_us, by, sort FROM payment WHERE {where} ORDER BY id", values
    )
    return tuple(
        Payment(
            id=whole(r[0]),
            box_id=whole(r[1]),
            cents=whole(r[2]),
            way=PayWay(str(r[3])),
            at=from_us(whole(r[4])),
            by=str(r[5]),
            sort=MoneySort(str(r[6])),
        )
        for r in rows
    )


def customer_of(row: tuple[Cell, ...]) -> Customer:
    """A row of CUSTOMER as a value."""
    return Customer(
        id=whole(row[0]),
        version=whole(row[1]),
        name=str(row[2]),
        phone=str(row[3]),
        town=str(row[4]),
        address=str(row[5]),
        notes=str(row[6]),
        proof_card=bool(row[7]),
    )


def box_of(row: tuple[Cell, ...]) -> Box:
    """A row of BOX as a value."""
    return Box(
        id=whole(row[0]),
        version=whole(row[1]),
        number=whole(row[2]),
        customer_id=whole(row[3]),
        came_by=CameBy(str(row[4])),
        goes_by=GoesBy(str(row[5])),
        counted=whole(row[6]),
        note_says=whole_or_none(row[7]),
        received_at=from_us(whole(row[8])),
        opened=bool(row[9]),
        packing=None if row[10] is None else Packing(str(row[10])),
        carrier_days=whole(row[11]),
        rush=bool(row[12]),
        this_next=bool(row[13]),
        never_slip=bool(row[14]),
        waiting_for=None if row[15] is None else WaitingFor(str(row[15])),
        waiting_since=instant_or_none(row[16]),
        note=str(row[17]),
        closed_at=instant_or_none(row[18]),
        announced_at=instant_or_none(row[19]),
        expected_on=day_or_none(row[20]),
        expected_knives=whole_or_none(row[21]),
        complaint=bool(row[22]),
        not_above_cents=whole_or_none(row[23]),
        packed_g=whole_or_none(row[24]),
        parcel_mm=tuple(int(side) for side in str(row[25]).split("x")) if row[25] else (),
        rounding=Rounding(str(row[26])),
        place=str(row[27]),
    )


# A word is found in a table faster than a class of words is asked for it; hundreds of knives are read at each look.
_EDGES, _CONDITIONS, _COLUMNS = words_by_cell(Edge), words_by_cell(Condition), words_by_cell(Column)


def knife_of(row: tuple[Cell, ...]) -> Knife:
    """A row of KNIFE as a value."""
    return Knife(
        id=whole(row[0]),
        version=whole(row[1]),
        box_id=whole(row[2]),
        box_number=whole(row[3]),
        number=whole(row[4]),
        kind=str(row[5]),
        edge=_EDGES[row[6]],
        length_mm=whole_or_none(row[7]),
        condition=_CONDITIONS[row[8]],
        column=_COLUMNS[row[9]],
        mark=str(row[10]),
        wish=str(row[11]),
        note=str(row[12]),
        rework=whole(row[13]),
        declined=None if row[14] is None else DeclineReason(str(row[14])),
        waiting_for=None if row[15] is None else WaitingFor(str(row[15])),
        waiting_since=instant_or_none(row[16]),
        price_cents=whole(row[17]),
        looking_for=bool(row[18]),
        moved_at=from_us(whole(row[19])),
        moved_by=str(row[20]),
        gauge=None if row[21] is None else WhyRead(str(row[21])),
        chips=whole_or_none(row[22]),
        chip_um=whole_or_none(row[23]),
        tip_um=whole_or_none(row[24]),
        findings=tuple(map(Finding, str(row[25]).splitlines())) if row[25] else (),
        apart=row[26] == 1,
        agreed=row[26] == 2,
        added_at=instant_or_none(row[27]),
        tax_ppm=whole(row[28]),
    )
