"""Market days: what was written down at the stall is taken in as one step, and what is brought to the next market."""

from collections.abc import Sequence
from datetime import date, timedelta

from queueboard.calendar.days import market_days
from queueboard.clean import figures, folded
from queueboard.errors import RuleError, TypedError
from queueboard.intake.printed_tags import doubled
from queueboard.money.estimate import estimate
from queueboard.records import asking, telling
from queueboard.records.tables import CloseOutRow, KnifeRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.days import today_of
from queueboard.shop.finding import surname
from queueboard.shop.money import add_payment
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.receiving import store_box
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.market import MarketBox, MarketLine, MarketTaken
from queueboard.values.new import NewBox, NewCustomer, NewKnife, NewPayment, NewPromise
from queueboard.words import CameBy, Column, GoesBy, PromiseKind, Settling

A_YEAR = timedelta(days=366)
FEWEST_FIGURES = 5
"""Phones with fewer figures are not compared."""
AT_THE_STALL = "as written at the stall"


def next_market(settings: Settings, today: date) -> tuple[date, str] | None:
    """The first market day after today and its name; None where none comes within a year."""
    days = market_days(settings, today + timedelta(days=1), today + A_YEAR)
    return min(days.items(), default=None)


def line_cents(settings: Settings, knives: Sequence[NewKnife]) -> int:
    """What knives that came at the stall come to by the list of today."""
    return estimate(settings, knives, came_by=CameBy.COUNTER).total_cents


def paid_cents(settings: Settings, line: MarketLine) -> int:
    """What was paid at the stall for a line."""
    return line_cents(settings, line.knives) if line.paid_cents is None else line.paid_cents


def known_as(customers: Sequence[Customer], name: str, phone: str) -> tuple[tuple[Customer, ...], Customer | None]:
    """The known customers who may be meant, and the one who is, where there is no doubt: no more than a proposal.

    Meant is who has the name and no other phone, or the surname and the phone; may be, who has one of the two.
    """
    wanted, its_phone, last = folded(name), figures(phone), folded(surname(name))
    alike, sure = [], []
    for customer in customers:
        theirs = figures(customer.phone)
        same_name, same_phone = folded(customer.name) == wanted, _same_phone(theirs, its_phone)
        if same_name or same_phone:
            alike.append(customer)
        no_other = not theirs or not its_phone or same_phone
        if (same_name and no_other) or (same_phone and folded(surname(customer.name)) == last):
            sure.append(customer)
    return tuple(alike), sure[0] if len(sure) == 1 else None


def _same_phone(one: str, other: str) -> bool:
    """The same figures, or one ends with the other: with a country's number in front, or without."""
    shorter = min(one, other, key=len)
    return len(shorter) >= FEWEST_FIGURES and (one.endswith(other) or other.endswith(one))


def brought_to_market(picture: Picture) -> tuple[BoxPicture, ...]:
    """The open boxes whose promise is for a round, by its day, then by number."""
    held = [box for box in picture.boxes if box.promise is not None and box.promise.kind is PromiseKind.NEXT_ROUND]
    return tuple(sorted(held, key=lambda box: (box.promise.day if box.promise else date.max, box.box.number)))


def taken_in(shop: Shop, pad_id: str, since_line: int) -> bool:
    """True when the lines of this pad are in the shop's file, and that was not undone."""
    with shop.reading() as database:
        groups = [
            one.group_id
            for one in telling.actions_since(database, "take_market", since_line)
            if one.about.get("was") == pad_id
        ]
        return bool(set(groups) - telling.undone_groups(database))


@operation(undo_needs_reason=True)
def take_market(writing: Writing, boxes: Sequence[MarketBox], pad_id: str) -> MarketTaken:
    """Take in what was written at the stall: a box for each line, with what was given back, paid, and comes again.

    pad_id tells later whether these lines are in. Nothing is stored when one line cannot be; the sentence names it.
    """
    settings = settings_in(writing.database)
    if not settings.market.on:
        raise RuleError("The market stall is off: write on = true under [market] in the shop's own numbers.")
    if not boxes:
        raise TypedError("Nothing is typed from the stall yet.")
    if twice := doubled([box.line.tag for box in boxes]):
        raise TypedError(f"Tag {twice[0]} stands in two lines; mend one of them first.")
    knives = sum(len(box.line.knives) for box in boxes)
    tagged_first = sorted(range(len(boxes)), key=lambda place: boxes[place].line.tag is None)
    coming = next_market(settings, today_of(writing))
    cents = sum(paid_cents(settings, box.line) for box in boxes)
    writing.tell(was=pad_id, to=f"{len(boxes)} customers, {knives} knives", cents=cents)
    numbers = {place: _take_line(writing, settings, boxes[place], coming) for place in tagged_first}
    return MarketTaken(numbers=tuple(numbers[place] for place in range(len(boxes))), knives=knives, cents=cents)


def _take_line(writing: Writing, settings: Settings, one: MarketBox, coming: tuple[date, str] | None) -> int:
    line = one.line
    promise = None
    if line.stays:
        if coming is None:
            raise TypedError("No market day is to come: write one with the closed days in the shop's own numbers.")
        promise = NewPromise(kind=PromiseKind.NEXT_ROUND, day=coming[0])
    new = None if one.customer_id is not None else NewCustomer(name=line.name, phone=line.phone)
    number = store_box(
        writing,
        NewBox(
            customer_id=one.customer_id,
            new_customer=new,
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=len(line.knives),
            knives=line.knives,
            number=line.tag,
            promise=promise,
        ),
    )
    box = asking.open_box(writing.database, number)
    cents = paid_cents(settings, line)
    if cents:
        add_payment(writing, box, NewPayment(cents=cents, way=line.way, paid_before_cents=0))
    if line.gone:
        _give_back(writing, settings, box, line, cents)
    return number


def _give_back(writing: Writing, settings: Settings, box: Box, line: MarketLine, cents: int) -> None:
    """What the customer has again: worked on and gone, with the count and the money of the paper."""
    for knife in rows.knives_of_box(writing.database, box.id)[: line.gone]:
        for place in (Column.READY, Column.GONE):  # so that the month counts it as done
            writing.change(KnifeRow, knife.id, None, place=place.value, moved_us=writing.now_us)
    paid = cents >= line_cents(settings, line.knives[: line.gone])
    values = {
        **rows.NOT_COUNTED,
        "counted": line.gone,
        "ticks_done": 1,
        "things_done": 1,
        "names_ok": 1,
        "label_ok": 1,
        "settled": (Settling.PAID if paid else Settling.UNPAID).value,
        "settled_why": "" if paid else AT_THE_STALL,
        "finished_us": writing.now_us,
    }
    writing.insert(CloseOutRow, box_id=box.id, started_us=writing.now_us, **values)
