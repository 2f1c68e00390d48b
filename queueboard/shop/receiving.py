"""What comes in: customers, boxes, knives added later."""

from collections.abc import Sequence

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.intake.adding_up import with_apart
from queueboard.intake.small import counts_differ
from queueboard.money.pricing import quote, tax_ppm
from queueboard.priced_words import Finding
from queueboard.records.asking import newest_opened
from queueboard.records.database import Cell
from queueboard.records.erasing import erased_customers
from queueboard.records.moved import moves_of
from queueboard.records.moved_tables import StruckKnifeRow
from queueboard.records.reading import customers_of, promises_of
from queueboard.records.tables import BoxRow, CustomerRow, KnifeRow, LabelRow, ThingRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.charging import charge_whole_box, insert_charge
from queueboard.shop.label_fields import printed
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.promising import add_promise
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box, ReturnLabel
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife
from queueboard.values.new import NewBox, NewCustomer, NewKnife, NewLabel, NewPromise
from queueboard.words import Column, GoesBy, LabelOwner, LabelState, ThingState, WaitingFor

MOST_KNIVES = 999
MOST_CARRIER_DAYS = 60


def customers(shop: Shop) -> tuple[Customer, ...]:
    """All customers but those who were erased, by name."""
    with shop.reading() as database:
        gone = erased_customers(database)
        return tuple(customer for customer in customers_of(database) if customer.id not in gone)


def last_kinds(shop: Shop, customer_id: int | None) -> tuple[int, tuple[Knife, ...]] | None:
    """Number and knives of the customer's last box that was opened, gone or not; without one, of the last box of all.

    None before the first box.
    """
    with shop.reading() as database:
        box = newest_opened(database, customer_id) or newest_opened(database, None)
        return None if box is None else (box.number, rows.knives_of_box(database, box.id))


def next_number(shop: Shop) -> int:
    """The number the next box would get."""
    with shop.reading() as database:
        return rows.free_number(database, settings_in(database).market.tags)


@operation()
def add_customer(
    writing: Writing, *, name: str, phone: str = "", town: str = "", address: str = "", notes: str = ""
) -> int:
    """Add a customer; returns the id."""
    return insert_customer(writing, NewCustomer(name=name, phone=phone, town=town, address=address, notes=notes))


@operation(undo_needs_reason=True)
def receive_box(writing: Writing, new: NewBox) -> int:
    """Take in a box with its knives, and its customer when that is a new one; returns the box's number.

    Raises TypedError when the number of knives is not the number counted, a figure is out of range, or not exactly one
    of a known and a new customer is given. Then nothing is stored, the customer neither.
    """
    return store_box(writing, new)


def store_box(writing: Writing, new: NewBox, **announced: Cell) -> int:
    """Store a box that comes in, or that is announced; returns its number."""
    settings = settings_in(writing.database)
    _check_count(new.counted, new.knives, opened=new.opened)
    number = rows.checked_number(writing.database, new.number, settings.market.tags)
    if not 0 <= new.carrier_days <= MOST_CARRIER_DAYS:
        raise TypedError(f"{new.carrier_days} carrier days is outside 0 to {MOST_CARRIER_DAYS}.")
    differs = new.opened and new.note_says is not None and new.note_says != new.counted
    writing.tell(number=number)
    box_id = writing.insert(
        BoxRow,
        number=number,
        customer_id=_customer_of(writing, new),
        came_by=new.came_by.value,
        goes_by=new.goes_by.value,
        counted=new.counted,
        note_says=_note_count(new.note_says),
        received_us=writing.now_us,
        opened=int(new.opened),
        packing=None,
        carrier_days=new.carrier_days if new.goes_by is GoesBy.PARCEL else 0,
        rush=int(new.rush),
        this_next=0,
        never_slip=0,
        waiting_for=WaitingFor.COUNT.value if differs else None,
        waiting_since_us=writing.now_us if differs else None,
        note=clean(new.note, limit=2000, field="note"),
        closed_us=None,
        rounding=settings.prices.rounding.value,
        **announced,
    )
    _put_inside(writing, settings, box_id, with_apart(new.knives, new.note_says), new.things)
    if new.promise is not None:
        add_promise(writing, box_id, new.promise, first=True)
    if new.goes_by is GoesBy.PARCEL:
        add_label(writing, box_id, new.label or NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))
    if new.opened and not new.free:
        charge_whole_box(writing, settings, rows.box_now(writing.database, box_id), new.knives)
    return number


@operation(undo_needs_reason=True)
def open_box(
    writing: Writing,
    box: Box,
    counted: int,
    knives: tuple[NewKnife, ...],
    things: tuple[str, ...] = (),
    note_says: int | None = None,
    *,
    promise: NewPromise | None = None,
) -> None:
    """Open a box that stood unopened at the door, or that was only announced: count it and put its knives on the board.

    promise is the date told now that its knives are seen; beside an earlier one it needs who was told and why.
    """
    if box.opened:
        raise RuleError(f"Box {box.number} is open already; add knives to it one by one.")
    _check_count(counted, knives, opened=True)
    changes: dict[str, Cell] = in_the_door(writing) if box.announced else {}
    if note_says is not None and note_says != counted:
        changes |= {"waiting_for": WaitingFor.COUNT.value, "waiting_since_us": writing.now_us}
    writing.tell(number=box.number)
    writing.change(
        BoxRow,
        box.id,
        box.version,
        opened=1,
        counted=counted,
        note_says=_note_count(note_says),
        **changes,
    )
    settings = settings_in(writing.database)
    typed = with_apart(knives, note_says)
    _put_inside(writing, settings, box.id, typed, things)
    charge_whole_box(writing, settings, box, typed)
    if promise is not None:
        first = not promises_of(writing.database, "box_id = ?", box.id)
        add_promise(writing, box.id, promise, first=first)


def in_the_door(writing: Writing) -> dict[str, Cell]:
    """What changes on a box when it comes in that was only announced."""
    return {"announced_us": None, "received_us": writing.now_us}


@operation()
def add_knife(writing: Writing, box: Box, knife: NewKnife) -> str:
    """Add a knife that came later to a box that is open on the board; returns its tag.

    What was counted at the door and when the others came in stays. TypedError for one that is typed as apart.
    """
    return bring_later(writing, box, knife)


def bring_later(writing: Writing, box: Box, knife: NewKnife) -> str:
    """Store a knife that came into a box later; returns its tag."""
    rows.fresh_box(writing, box)
    rows.only_opened(box)
    if knife.apart:
        raise TypedError("“apart” is for what is counted beyond a note; a knife added later is priced as it is.")
    number = rows.next_knife_number(writing.database, box.id)
    writing.tell(number=box.number, tags=[f"{box.number}-{number}"])
    insert_knife(writing, settings_in(writing.database), box.id, number, knife, added_us=writing.now_us)
    return f"{box.number}-{number}"


@operation()
def strike_knife(writing: Writing, knife: Knife, reason: str) -> None:
    """Take away a knife that was typed by mistake and never existed; asks for a reason."""
    if not reason.strip():
        raise TypedError(f"Say why {knife.tag} is taken off; a knife never just vanishes.")
    writing.tell(tags=[knife.tag])
    writing.reason = clean(reason, limit=500, field="reason")
    rows.fresh_knife(writing, knife)
    if knife.added_at is None:
        writing.insert(StruckKnifeRow, box_id=knife.box_id, knives=1)
    take_off(writing, knife)
    others = rows.knives_of_box(writing.database, knife.box_id)
    if knife.apart and not any(one.apart for one in others):
        writing.change(BoxRow, knife.box_id, None, waiting_for=None, waiting_since_us=None)  # nothing left to ask


def take_off(writing: Writing, knife: Knife) -> None:
    """Take a knife's row away with all that hangs on it; RuleError for one that came out of another box."""
    if any(move.knife_id == knife.id for move in moves_of(writing.database, "?", knife.box_id)):
        raise RuleError(f"{knife.tag} was moved from another box; undo that first, or move it back.")
    rows.no_ticks(writing, knife.id)
    rows.no_runs(writing, knife.id)
    rows.no_trials(writing, knife.id)
    rows.no_edge(writing, knife.id)
    rows.no_charges(writing, knife.id)
    rows.no_call_backs(writing, knife.id)
    writing.remove(KnifeRow, knife.id)


def _customer_of(writing: Writing, new: NewBox) -> int:
    """The id of the known customer, or of the new one, who is added."""
    if new.customer_id is not None and new.new_customer is None:
        rows.known_customer(writing, new.customer_id)
        return new.customer_id
    if new.new_customer is not None and new.customer_id is None:
        return insert_customer(writing, new.new_customer)
    raise TypedError("Whose is this box? Name one customer, a known or a new one.")


def insert_customer(writing: Writing, new: NewCustomer) -> int:
    """Store a new customer; returns the id."""
    fields = rows.customer_fields(name=new.name, phone=new.phone, town=new.town, address=new.address, notes=new.notes)
    return writing.insert(CustomerRow, **fields)


def _note_count(note_says: int | None) -> int | None:
    if note_says is not None and not 0 <= note_says <= rows.HIGHEST_NUMBER:
        raise TypedError(f"The note cannot say {note_says} knives; type what it says, or leave it empty.")
    return note_says


def _check_count(counted: int, knives: Sequence[NewKnife], *, opened: bool) -> None:
    """The count by hand and the knives typed must agree; an unopened box has neither."""
    if not opened:
        if counted or knives:
            raise TypedError("A box that is not opened has no count yet; leave the knives out.")
        return
    if not 1 <= counted <= MOST_KNIVES:
        raise TypedError(f"A count of {counted} is outside 1 to {MOST_KNIVES}.")
    if counted != len(knives):
        raise TypedError(counts_differ(counted, len(knives)))


def _put_inside(
    writing: Writing, settings: Settings, box_id: int, knives: Sequence[NewKnife], things: Sequence[str]
) -> None:
    for number, knife in enumerate(knives, start=1):
        insert_knife(writing, settings, box_id, number, knife)
    for thing in things:
        writing.insert(
            ThingRow,
            box_id=box_id,
            name=rows.checked_thing(thing),
            state=ThingState.HERE.value,
        )


def insert_knife(
    writing: Writing, settings: Settings, box_id: int, number: int, knife: NewKnife, added_us: int | None = None
) -> None:
    """Store one knife as received, with its price and add-ons as the list has them today; a typed price holds."""
    if number > MOST_KNIVES:
        raise TypedError(f"A box holds at most {MOST_KNIVES} knives; split it in two.")
    kind = settings.kind(knife.kind)
    if kind is None:
        known = ", ".join(k.name for k in settings.kinds)
        raise TypedError(f"The shop has no kind called {clean(knife.kind, field='kind')!r}. It has: {known}.")
    quoted = quote(settings, kind, knife)
    knife_id = writing.insert(
        KnifeRow,
        box_id=box_id,
        number=number,
        kind=kind.name,
        edge=knife.edge.value,
        length_mm=rows.checked_length(knife.length_mm),
        condition=knife.condition.value,
        place=Column.RECEIVED.value,
        mark=clean(knife.mark, field="mark"),
        wish=clean(knife.wish, field="wish"),
        note="",
        rework=0,
        declined=None,
        waiting_for=None,
        waiting_since_us=None,
        price_cents=rows.checked_cents(quoted.price_cents, lowest=0),
        looking_for=0,
        moved_us=writing.now_us,
        moved_by=writing.actor.initials,
        chips=knife.chips,
        chip_um=knife.chip_um,
        tip_um=knife.tip_um,
        findings=findings_cell(knife.findings),
        apart=int(knife.apart),
        tax_ppm=tax_ppm(settings.prices, None),
        added_us=added_us,
    )
    for charge in quoted.add_ons:
        insert_charge(writing, settings, box_id, charge, knife_id)


def findings_cell(findings: Sequence[Finding]) -> str:
    """The words of an inspection as they are stored: one a line, in the order of the list."""
    return "\n".join(finding.value for finding in Finding if finding in findings)


def add_label(writing: Writing, box_id: int, new: NewLabel, before: ReturnLabel | None = None) -> int:
    """Store a return label for a box; before: the one whose place it takes."""
    return writing.insert(
        LabelRow, box_id=box_id, owner=new.owner.value, state=new.state.value, **printed(writing, new, before)
    )
