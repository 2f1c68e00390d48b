"""Hand-built pictures for tests: each builder has sensible defaults and takes what a test wants to differ."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, time, timedelta

from queueboard.settings.shapes import Settings
from queueboard.shop.bench_work import untaught
from queueboard.shop.picture import BoxPicture, DayLine, Picture
from queueboard.values.box import Box, CloseCheck, CloseOut, Payment, Promise, ReturnLabel
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife, Thing
from queueboard.values.label import LabelDue
from queueboard.values.plan import BoxForecast, Plan
from queueboard.words import (
    CameBy,
    Column,
    Condition,
    DeclineReason,
    Edge,
    GoesBy,
    LabelOwner,
    LabelState,
    LabelWord,
    Lateness,
    Packing,
    PayWay,
    PromiseKind,
    ThingState,
    WaitingFor,
)
from tests.plans import NOW, TODAY, at, forecast, plan, run
from tests.shop_settings import ZONE, settings

__all__ = [
    "HOSTILE_NAMES",
    "NOW",
    "TODAY",
    "ZONE",
    "at",
    "box",
    "box_picture",
    "customer",
    "day_line_of",
    "forecast",
    "knife",
    "knives",
    "label",
    "label_due",
    "payment",
    "picture",
    "plan",
    "promise",
    "run",
    "settings",
    "thing",
]

HOSTILE_NAMES: tuple[str, ...] = (
    "[red]x[/]",
    "[/]",
    "[@click=app.quit]x[/]",
    "\\[b]",
    "$name {name} %s",
    "🔪 Ola 👍🏽 ❤️",
    "שלום",
    "مرحبا",
    "包丁",
    "=1+2",
    "N" * 300,
)
"""Names that must be shown literally wherever a name is shown; all of them pass clean_name unchanged."""


def customer(
    name: str = "Maren Tallis", *, id: int = 1, phone: str = "0555 014 417", town: str = "Osterby"
) -> Customer:
    """A customer."""
    return Customer(id=id, version=1, name=name, phone=phone, town=town)


def knife(
    tag: str = "417-1",
    *,
    column: Column = Column.RECEIVED,
    kind: str = "chef",
    edge: Edge = Edge.PLAIN,
    length_mm: int | None = 200,
    condition: Condition = Condition.DULL,
    mark: str = "",
    wish: str = "",
    note: str = "",
    rework: int = 0,
    declined: DeclineReason | None = None,
    waiting_for: WaitingFor | None = None,
    waiting_since: datetime | None = None,
    price_cents: int = 900,
    looking_for: bool = False,
    moved_at: datetime = NOW,
    moved_by: str = "MB",
) -> Knife:
    """A knife; its ids follow from its tag (box id = box number, knife id = box number * 1000 + number)."""
    box_number, number = map(int, tag.split("-"))
    return Knife(
        id=box_number * 1000 + number,
        version=1,
        box_id=box_number,
        box_number=box_number,
        number=number,
        kind=kind,
        edge=edge,
        length_mm=length_mm,
        condition=condition,
        column=column,
        mark=mark,
        wish=wish,
        note=note,
        rework=rework,
        declined=declined,
        waiting_for=waiting_for,
        waiting_since=waiting_since,
        price_cents=price_cents,
        looking_for=looking_for,
        moved_at=moved_at,
        moved_by=moved_by,
    )


def knives(number: int, *columns: Column) -> tuple[Knife, ...]:
    """Knives 1, 2, 3 ... of a box, each in the column given for it."""
    return tuple(knife(f"{number}-{place}", column=column) for place, column in enumerate(columns, start=1))


def thing(name: str = "roll", *, box_number: int = 417, id: int = 1, state: ThingState = ThingState.HERE) -> Thing:
    """A thing that came with a box."""
    return Thing(id=id, version=1, box_id=box_number, name=name, state=state)


def box(
    number: int = 417,
    *,
    customer_id: int = 1,
    came_by: CameBy = CameBy.COUNTER,
    goes_by: GoesBy = GoesBy.PICK_UP,
    counted: int = 3,
    note_says: int | None = None,
    opened: bool = True,
    packing: Packing | None = None,
    carrier_days: int = 0,
    rush: bool = False,
    this_next: bool = False,
    never_slip: bool = False,
    waiting_for: WaitingFor | None = None,
    waiting_since: datetime | None = None,
    note: str = "",
    received_at: datetime = NOW - timedelta(days=3),
) -> Box:
    """A box whose id is its number."""
    return Box(
        id=number,
        version=1,
        number=number,
        customer_id=customer_id,
        came_by=came_by,
        goes_by=goes_by,
        counted=counted,
        note_says=note_says,
        received_at=received_at,
        opened=opened,
        packing=packing,
        carrier_days=carrier_days,
        rush=rush,
        this_next=this_next,
        never_slip=never_slip,
        waiting_for=waiting_for,
        waiting_since=waiting_since,
        note=note,
    )


def promise(
    day: date = TODAY + timedelta(days=1),
    *,
    box_number: int = 417,
    id: int = 1,
    kind: PromiseKind = PromiseKind.DAY,
    at: time | None = None,
    told_to: str = "",
    told_at: datetime = NOW - timedelta(days=3),
    told_by: str = "MB",
    reason: str = "",
) -> Promise:
    """A promise, told three days ago."""
    return Promise(
        id=id,
        box_id=box_number,
        kind=kind,
        day=day,
        at=at,
        told_to=told_to,
        told_at=told_at,
        told_by=told_by,
        reason=reason,
    )


def label(
    *,
    box_number: int = 417,
    owner: LabelOwner = LabelOwner.CUSTOMER,
    state: LabelState = LabelState.HERE,
    carrier: str = "",
    expires_on: date | None = None,
    name_on: str = "",
) -> ReturnLabel:
    """A return label."""
    return ReturnLabel(
        id=box_number,
        version=1,
        box_id=box_number,
        owner=owner,
        state=state,
        carrier=carrier,
        expires_on=expires_on,
        name_on=name_on,
    )


def label_due(number: int = 417, word: LabelWord = LabelWord.DIES_TODAY, last_day: date | None = TODAY) -> LabelDue:
    """What a box's label demands."""
    return LabelDue(box_id=number, word=word, last_day=last_day)


def payment(cents: int, *, box_number: int = 417, id: int = 1, way: PayWay = PayWay.CASH) -> Payment:
    """Money taken now."""
    return Payment(id=id, box_id=box_number, cents=cents, way=way, at=NOW, by="MB")


def box_picture(
    box_: Box | int = 417,
    *,
    customer_: Customer | None = None,
    knives_: tuple[Knife, ...] | None = None,
    things: tuple[Thing, ...] = (),
    promises: tuple[Promise, ...] | None = None,
    label_: ReturnLabel | None = None,
    payments: tuple[Payment, ...] = (),
    ship_by: datetime | None = None,
    forecast_: BoxForecast | None = None,
    label_due_: LabelDue | None = None,
    close_out: CloseOut | None = None,
    close_check: CloseCheck | None = None,
    look_alikes: tuple[int, ...] = (),
    honest_day: date | None = None,
) -> BoxPicture:
    """A box with one knife each received, on bench and ready, promised for tomorrow at the counter."""
    the_box = box(box_) if isinstance(box_, int) else box_
    number = the_box.number
    if knives_ is None:
        knives_ = knives(number, Column.RECEIVED, Column.ON_BENCH, Column.READY)
    if promises is None:
        promises = (promise(box_number=number),)
    if ship_by is None and promises:
        ship_by = datetime.combine(promises[-1].day, promises[-1].at or time(16), tzinfo=ZONE)
    return BoxPicture(
        box=the_box,
        customer=customer_ or customer(id=the_box.customer_id),
        knives=knives_,
        things=things,
        promises=promises,
        label=label_,
        payments=payments,
        ship_by=ship_by,
        forecast=forecast_ or forecast(number, minutes_left=10, finish=at(13, 30)),
        label_due=label_due_,
        honest_day=honest_day,
        close_out=close_out,
        close_check=close_check,
        look_alikes=look_alikes,
    )


def day_line_of(boxes: Iterable[BoxPicture], the_plan: Plan, labels_due: int, now: datetime) -> DayLine:
    """The day line that fits these boxes."""
    boxes = tuple(boxes)
    return DayLine(
        bench_minutes_left=the_plan.bench_minutes_today,
        work_minutes_today=the_plan.work_minutes_today,
        leaves_today=sum(1 for b in boxes if b.ship_by is not None and b.ship_by.date() == now.date()),
        labels_due=labels_due,
        late=sum(1 for b in boxes if b.forecast.lateness is Lateness.LATE),
        will_be_late=sum(1 for b in boxes if b.forecast.lateness is Lateness.WILL_BE_LATE),
        tight=sum(1 for b in boxes if b.forecast.lateness is Lateness.TIGHT),
        waiting=sum(1 for b in boxes if b.box.waiting_for is not None or b.waiting),
    )


def picture(
    *boxes: BoxPicture,
    now: datetime = NOW,
    plan_: Plan | None = None,
    settings_: Settings | None = None,
    day_line: DayLine | None = None,
    last_line: int = 1,
) -> Picture:
    """A picture of these boxes; the plan's forecasts and the labels due are taken from them."""
    the_plan = replace(plan_ or plan(), forecasts=tuple(b.forecast for b in boxes))
    dues = tuple(b.label_due for b in boxes if b.label_due is not None)
    return Picture(
        now=now,
        settings=settings_ or settings(),
        boxes=boxes,
        plan=the_plan,
        day_line=day_line or day_line_of(boxes, the_plan, len(dues), now),
        labels_due=dues,
        last_line=last_line,
        minutes=untaught(len((settings_ or settings()).processes)),
        saved_at=now - timedelta(seconds=40),
        backup_at=now.replace(hour=7, minute=45),
    )
