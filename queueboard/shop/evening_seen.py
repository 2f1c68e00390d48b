"""One day as its evening sheet shows it: what was done, what was moved, money, dust, and what is open still."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from zoneinfo import ZoneInfo

from queueboard.calendar.days import ShopCalendar, day_ends, is_open
from queueboard.figures.evening import DoneBox, Moved, WayMoney, done_boxes, money_by_way, moved_dates
from queueboard.records.database import ShopDatabase
from queueboard.records.evening import (
    anything_done,
    closed_day,
    dust_tray,
    ever_closed,
    placed_between,
    till_counts,
)
from queueboard.records.instants import to_us
from queueboard.records.reading import (
    BOX,
    CUSTOMER,
    box_of,
    by_box,
    customer_of,
    payments_of,
    promises_of,
)
from queueboard.shop.belt_counts import BeltPlace, belt_places
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.values.box import Box, Promise
from queueboard.values.customer import Customer
from queueboard.values.evening import ClosedDay, DustTray
from queueboard.values.knife import Knife
from queueboard.words import GoesBy, Lateness

FIRST_OF_TOMORROW = 10
"""Knives named for the next morning."""

LOOK_BACK_DAYS = 14
"""As far back as a day that nobody closed is looked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """A day at its end; of a day that is over only what was written down."""

    day: date
    today: date
    boxes: Mapping[int, Box]
    """The boxes that done and moved speak of, by id; open or gone."""
    customers: Mapping[int, Customer]
    """Their customers, by id."""
    received: int
    """Boxes that came in that day, announced ones left out."""
    done: tuple[DoneBox, ...]
    moved: tuple[Moved, ...]
    money: tuple[WayMoney, ...]
    dust: DustTray | None
    second_look_minutes: int
    closed: ClosedDay | None
    unclosed: date | None
    """The newest working day before it that was never closed, in a shop that closes its days."""
    belts_low: tuple[BeltPlace, ...]
    """Steps whose belt is past its usual life, or with few spares; empty for a day that is over."""

    @property
    def is_today(self) -> bool:
        """True for the day that is now: what is open still can be told."""
        return self.day == self.today

    @property
    def ready_knives(self) -> int:
        """Knives that came to ready."""
        return sum(len(box.ready) for box in self.done)

    @property
    def gone_knives(self) -> int:
        """Knives that left the shop."""
        return sum(len(box.gone) for box in self.done)

    def customer_of(self, box_id: int) -> Customer:
        """Whose a box is."""
        return self.customers[self.boxes[box_id].customer_id]


def evening(shop: Shop, picture: Picture, day: date) -> Evening:
    """A day, today or earlier, by its hours in the shop's zone."""
    settings = picture.settings
    first_us, end_us = map(to_us, day_ends(settings.zone, day))
    with shop.reading() as database:
        done = done_boxes(
            placed_between(database, "ready", first_us, end_us), placed_between(database, "gone", first_us, end_us)
        )
        moved = moved_dates(_told_again(database, settings.zone, first_us, end_us), day)
        named = {*(one.box_id for one in done), *(one.now.box_id for one in moved)}
        boxes = _boxes(database, named)
        payments = payments_of(database, "at_us >= ? AND at_us < ?", first_us, end_us)
        received = database.one(
            "SELECT count(*) FROM box WHERE announced_us IS NULL AND received_us >= ? AND received_us < ?",
            (first_us, end_us),
        )
        calendar = ShopCalendar(settings, dict(picture.closed_days))
        seen = Evening(
            day=day,
            today=picture.now.date(),
            boxes=boxes,
            customers=_customers(database, boxes),
            received=int(received or 0),
            done=done,
            moved=moved,
            money=money_by_way(payments, till_counts(database, day), settings.evening.change_cents),
            dust=_tray(dust_tray(database, day), settings.zone),
            second_look_minutes=settings.evening.second_look_minutes,
            closed=_closed(closed_day(database, day), settings.zone),
            unclosed=_unclosed(database, calendar, day),
            belts_low=(),
        )
    return seen if not seen.is_today else _with_belts(seen, shop)


def _tray(tray: DustTray | None, zone: ZoneInfo) -> DustTray | None:
    """The tray with its looks in the shop's zone."""
    if tray is None:
        return None
    again = None if tray.again_at is None else tray.again_at.astimezone(zone)
    return replace(tray, at=tray.at.astimezone(zone), again_at=again)


def _closed(closed: ClosedDay | None, zone: ZoneInfo) -> ClosedDay | None:
    return None if closed is None else replace(closed, at=closed.at.astimezone(zone))


def _with_belts(seen: Evening, shop: Shop) -> Evening:
    return replace(seen, belts_low=low_belts(belt_places(shop)))


def low_belts(places: Iterable[BeltPlace]) -> tuple[BeltPlace, ...]:
    """Steps whose belt has done what such a belt usually does, and labels with few spares, each label once."""
    low: list[BeltPlace] = []
    for place in sorted(places, key=lambda one: one.belt is None):
        life = None if place.belt is None or place.kind is None else place.kind.life_knives
        known = any(one.step == place.step and one.to_order for one in low)
        if (life is not None and place.done >= life) or (place.to_order and not known):
            low.append(place)
    return tuple(low)


def _told_again(database: ShopDatabase, zone: ZoneInfo, first_us: int, end_us: int) -> Mapping[int, Sequence[Promise]]:
    """By box all promises of those of which one was told between two instants, oldest first."""
    told = promises_of(
        database, "box_id IN (SELECT box_id FROM promise WHERE told_us >= ? AND told_us < ?)", first_us, end_us
    )
    local = (replace(one, told_at=one.told_at.astimezone(zone)) for one in told)
    return by_box(local, lambda one: one.box_id)


def _boxes(database: ShopDatabase, ids: set[int]) -> dict[int, Box]:
    found = (box for one in sorted(ids) for box in map(box_of, database.rows(f"{BOX} WHERE id = ?", (one,))))
    return {box.id: box for box in found}


def _customers(database: ShopDatabase, boxes: Mapping[int, Box]) -> dict[int, Customer]:
    ids = sorted({box.customer_id for box in boxes.values()})
    return {one: customer_of(row) for one in ids for row in database.rows(f"{CUSTOMER} WHERE id = ?", (one,))}


def _unclosed(database: ShopDatabase, calendar: ShopCalendar, day: date) -> date | None:
    """The newest day before this one on which the shop was open and something was done; None where it was closed."""
    if not ever_closed(database, day):
        return None
    for back in range(1, LOOK_BACK_DAYS + 1):
        before = day - timedelta(days=back)
        first_us, end_us = map(to_us, day_ends(calendar.settings.zone, before))
        if is_open(calendar, before) and anything_done(database, first_us, end_us):
            return before if closed_day(database, before) is None else None
    return None


def not_done(picture: Picture) -> tuple[BoxPicture, ...]:
    """Boxes that were due by the end of today and are not done: work is left, or a parcel has not gone."""
    due = (box for box in picture.boxes if box.ship_by is not None and box.ship_by.date() <= picture.now.date())
    return tuple(box for box in due if not box.box.announced and (_work_left(box) or _still_here(box)))


def _work_left(box: BoxPicture) -> bool:
    return not box.box.opened or any(not knife.can_leave for knife in box.on_hand if not knife.looking_for)


def _still_here(box: BoxPicture) -> bool:
    return box.box.goes_by is GoesBy.PARCEL and bool(box.on_hand)


def to_be_told(picture: Picture) -> tuple[BoxPicture, ...]:
    """Boxes whose promise does not hold, or will not, and whose customers should hear it, the earliest due first."""
    late = (Lateness.LATE, Lateness.WILL_BE_LATE)
    return tuple(box for box in picture.boxes if box.forecast.lateness in late and not box.box.announced)


def first_of_tomorrow(picture: Picture) -> tuple[Knife, ...]:
    """The first knives of the plan for the days after today, in its order, at most ten."""
    knives = {knife.id: knife for box in picture.boxes for knife in box.knives}
    today = picture.now.date()
    later = (
        run
        for run in picture.plan.runs
        if run.under_way is None and (run.start is None or run.start.astimezone(picture.now.tzinfo).date() != today)
    )
    order = [knives[knife_id] for run in later for knife_id in run.knife_ids if knife_id in knives]
    return tuple(order[:FIRST_OF_TOMORROW])
