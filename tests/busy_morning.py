"""One busy morning as a picture: late, will be late, a dying label, waiting, declined, rework, not opened, not come."""

from dataclasses import replace
from datetime import date, timedelta

from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.plan import OrderChange
from queueboard.words import (
    CameBy,
    Column,
    DeclineReason,
    Edge,
    GoesBy,
    LabelOwner,
    LabelState,
    LabelWord,
    Lateness,
    OrderWord,
    Packing,
    RunReason,
    ThingState,
    WaitingFor,
)
from tests.pictures import (
    TODAY,
    at,
    box,
    box_picture,
    customer,
    forecast,
    knife,
    knives,
    label,
    label_due,
    payment,
    picture,
    plan,
    promise,
    run,
    thing,
)

R, B, T, OK = Column.RECEIVED, Column.ON_BENCH, Column.TESTING, Column.READY


def late() -> BoxPicture:
    """A counter box that was due yesterday, one knife of it for the second time at the bench."""
    here = knives(411, OK, OK, B)
    return box_picture(
        box(411, customer_id=2, counted=3),
        customer_=customer("Ione Varga", id=2, town="Brackwater"),
        knives_=(*here[:2], replace(here[2], rework=2, mark="black handle, nick", kind="slicer", length_mm=260)),
        promises=(promise(date(2026, 11, 25), box_number=411, told_to="Ione"),),
        ship_by=at(16, days=-1),
        forecast_=forecast(411, finish=at(9, 40), minutes_left=5, lateness=Lateness.LATE, late_minutes=1060),
        payments=(payment(1000, box_number=411),),
    )


def dying_label() -> BoxPicture:
    """A parcel that leaves today with a label that dies today, wrapped but for one knife in testing."""
    return box_picture(
        box(417, customer_id=1, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, carrier_days=2, counted=4, rush=True),
        knives_=knives(417, OK, OK, OK, T),
        things=(thing("leather roll", box_number=417), thing("sheath", box_number=417, id=2, state=ThingState.LOOKING)),
        promises=(promise(date(2026, 11, 30), box_number=417),),
        ship_by=at(15, 45),
        label_=label(box_number=417, carrier="post", expires_on=TODAY, name_on="M. Tallis"),
        label_due_=label_due(417, LabelWord.DIES_TODAY, TODAY),
        forecast_=forecast(417),
    )


def will_be_late() -> BoxPicture:
    """A restaurant's parcel that the plan finishes after its ship-by; a label still to buy; one knife declined."""
    here = knives(420, R, R, R, B, OK)
    declined = replace(here[4], declined=DeclineReason.CRACKED)
    bread = replace(here[1], kind="bread", edge=Edge.SERRATED, length_mm=230, wish="leave the points")
    return box_picture(
        box(420, customer_id=3, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, carrier_days=2, counted=5, never_slip=True),
        customer_=customer("Kitchen of the Blue Heron", id=3, town="Osterby"),
        knives_=(here[0], bread, *here[2:4], declined),
        promises=(promise(date(2026, 12, 1), box_number=420),),
        ship_by=at(15, 45, days=1),
        label_=label(box_number=420, owner=LabelOwner.SHOP, state=LabelState.TO_BUY),
        label_due_=label_due(420, LabelWord.BUY, date(2026, 11, 27)),
        forecast_=forecast(
            420,
            finish=at(14, 30, days=2),
            minutes_left=20,
            lateness=Lateness.WILL_BE_LATE,
            late_minutes=1365,
            slack_minutes=-95,
            late_permille=990,
        ),
        honest_day=date(2026, 12, 2),
    )


def waiting() -> BoxPicture:
    """A box whose two knives wait for different answers; no date was told."""
    here = knives(423, R, B)
    return box_picture(
        box(423, customer_id=4, counted=2),
        customer_=customer("Ola Tallis", id=4, phone="0555 014 992", town="Fernlea"),
        knives_=(
            replace(here[0], waiting_for=WaitingFor.ESTIMATE, waiting_since=at(10, days=-3)),
            replace(here[1], waiting_for=WaitingFor.BELTS, waiting_since=at(8, 30)),
        ),
        promises=(),
        forecast_=forecast(423, minutes_left=10),
    )


def not_opened() -> BoxPicture:
    """A mailed box on the shelf at the door, of the same customer as the restaurant's."""
    return box_picture(
        box(426, customer_id=3, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, opened=False, note_says=8),
        customer_=customer("Kitchen of the Blue Heron", id=3, town="Osterby"),
        knives_=(),
        promises=(promise(date(2026, 12, 7), box_number=426),),
        ship_by=at(15, 45, days=7),
        forecast_=forecast(426),
    )


def not_come() -> BoxPicture:
    """A parcel that was announced for two days ago and has not come; a date was told for it."""
    announced_at = at(11, days=-6)
    return box_picture(
        replace(
            box(432, customer_id=6, came_by=CameBy.MAIL, goes_by=GoesBy.PARCEL, counted=0, opened=False),
            received_at=announced_at,
            announced_at=announced_at,
            expected_on=TODAY - timedelta(days=2),
            expected_knives=6,
        ),
        customer_=customer("Sorrel Hane", id=6, phone="0555 014 733"),
        knives_=(),
        promises=(promise(date(2026, 12, 4), box_number=432),),
        ship_by=at(15, 45, days=6),
        forecast_=forecast(432),
    )


def on_the_shelf() -> BoxPicture:
    """A box ready to be fetched since yesterday, one knife of it gone before, one looked for."""
    return box_picture(
        box(429, customer_id=5, counted=3, packing=Packing.ON_SHELF),
        customer_=customer("[red]x[/] שלום", id=5),
        knives_=(*knives(429, OK, Column.GONE), replace(knife("429-3", column=OK), mark="burn on the handle")),
        promises=(promise(date(2026, 11, 25), box_number=429),),
        forecast_=forecast(429),
    )


def busy_morning() -> Picture:
    """The whole morning, with three runs today, one later, and a change since the order was fixed."""
    runs = (
        run(411003, why=RunReason.REWORK, minutes=5, handling_minutes=2, start=at(9, 12), set_up_seconds=90),
        run(420001, 420003, 420004, minutes=15, start=at(9, 19), set_up_seconds=0, handling_minutes=6),
        run(420002, process="serrated", minutes=5, start=at(13), set_up_seconds=30, handling_minutes=2),
        run(423002, minutes=5, why=RunReason.NO_PROMISE, start=at(8, days=1), set_up_seconds=90),
    )
    return picture(
        late(),
        dying_label(),
        on_the_shelf(),
        will_be_late(),
        not_opened(),
        not_come(),
        waiting(),
        plan_=plan(*runs, changes=(OrderChange(tag="420-2", what=OrderWord.NEW),)),
    )
