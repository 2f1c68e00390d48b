"""Market day: tags printed before, and in the evening what was written on paper at the stall."""

from dataclasses import dataclass
from datetime import date

from queueboard.errors import RuleError, TypedError
from queueboard.intake.swapping import doubled, unused
from queueboard.records.asking import paid_cents
from queueboard.records.swaps import entries_of, newest_printed
from queueboard.records.swaps_tables import MarketEntryRow, PrintedTagsRow
from queueboard.records.tables import CloseOutRow, KnifeRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.money import add_payment
from queueboard.shop.numbers import settings_in
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.receiving import store_box
from queueboard.values.box import Box
from queueboard.values.new import NewBox, NewCustomer, NewKnife, NewPayment, NewPromise
from queueboard.values.swapped import MarketEntry, PrintedTags
from queueboard.words import CameBy, Column, GoesBy, PayWay, PromiseKind, Settling

MOST_TAGS = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class MarketDay:
    """The market day whose tags were printed last."""

    printed: PrintedTags
    entries: tuple[MarketEntry, ...]

    @property
    def never_used(self) -> tuple[tuple[int, int], ...]:
        """Spans of tags without a box."""
        return unused(self.printed.first, self.printed.last, (entry.tag for entry in self.entries))

    @property
    def twice(self) -> tuple[int, ...]:
        """Tags that were given out more than once."""
        return doubled([entry.tag for entry in self.entries])


@dataclass(frozen=True, slots=True, kw_only=True)
class NewEntry:
    """A line of the paper from the stall."""

    tag: int
    counted: int
    name: str
    phone: str = ""
    paid_cents: int | None = None
    """None: all that the price list says."""
    bring_on: date | None = None
    """The market day on which it is brought back; None when it was handed over at the stall."""
    again: bool = False
    """True when the tag is known to be given out twice."""


def market_day(shop: Shop) -> MarketDay | None:
    """The market day whose tags were printed last; None before the first."""
    with shop.reading() as database:
        printed = newest_printed(database)
        return None if printed is None else MarketDay(printed=printed, entries=entries_of(database, printed.id))


@operation()
def note_printed(writing: Writing, market_on: date, first: int, last: int) -> None:
    """Note the tags printed for a market day; no other box gets their numbers."""
    if not 1 <= first <= last <= rows.HIGHEST_NUMBER or last - first >= MOST_TAGS:
        raise TypedError(f"{first}-{last} are no tags to print: type the first and the last, at most {MOST_TAGS}.")
    writing.tell(was=f"{first}", to=f"{last}")
    writing.insert(PrintedTagsRow, market_on=market_on.isoformat(), first=first, last=last)


@operation(undo_needs_reason=True)
def catch_up(writing: Writing, new: NewEntry) -> int:
    """Take in a line of the paper; returns the box's number, another than the tag where that was given out twice."""
    printed = newest_printed(writing.database)
    if printed is None:
        raise RuleError("No printed tags are noted yet: note the first and the last one before.")
    if not printed.first <= new.tag <= printed.last:
        raise TypedError(f"Tag {new.tag} was not printed: {printed.first} to {printed.last} were. Look at the paper.")
    used = any(entry.tag == new.tag for entry in entries_of(writing.database, printed.id))
    if used and not new.again:
        raise RuleError(f"Tag {new.tag} is taken in already; say that it was given out twice.")
    settings = settings_in(writing.database)
    kind = settings.kind(settings.market.kind)
    if kind is None:
        raise RuleError(f"The shop has no kind {settings.market.kind}; write another under [market].")
    told = None
    if new.bring_on is not None:
        told = NewPromise(kind=PromiseKind.NEXT_ROUND, day=new.bring_on, told_to=new.name)
    made = NewBox(
        new_customer=NewCustomer(name=new.name, phone=new.phone),
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=new.counted,
        knives=(NewKnife(kind=kind.name, edge=kind.edge),) * new.counted,
        number=None if used else new.tag,
        promise=told,
        note="" if told is None else "bring to market",
    )
    number = store_box(writing, made)
    box = rows.newest_box(writing.database, number)
    writing.insert(MarketEntryRow, printed_id=printed.id, tag=new.tag, box_id=box.id)
    _pay(writing, box, new)
    if told is None:
        _handed_over(writing, box, new.counted)
    return number


def _pay(writing: Writing, box: Box, new: NewEntry) -> None:
    owed = rows.owed_cents(writing.database, box.id)
    cents = owed if new.paid_cents is None else new.paid_cents
    if cents:
        before = paid_cents(writing.database, box.id)
        add_payment(writing, box, NewPayment(cents=cents, way=PayWay.CASH, paid_before_cents=before))


def _handed_over(writing: Writing, box: Box, counted: int) -> None:
    """The customer has them already: the box is closed with the count of the paper."""
    for knife in rows.knives_of_box(writing.database, box.id):
        writing.change(KnifeRow, knife.id, None, place=Column.GONE.value)
    paid = rows.owed_cents(writing.database, box.id) <= 0
    values = {
        **rows.NOT_COUNTED,
        "counted": counted,
        "ticks_done": 1,
        "things_done": 1,
        "names_ok": 1,
        "label_ok": 1,
        "settled": (Settling.PAID if paid else Settling.UNPAID).value,
        "settled_why": "" if paid else "as written at the stall",
        "finished_us": writing.now_us,
    }
    writing.insert(CloseOutRow, box_id=box.id, started_us=writing.now_us, **values)
