"""By when a box must be done so that what was told to the customer holds."""

from datetime import date, datetime, time, timedelta

from queueboard.calendar.counting import on_or_before, working_days_from
from queueboard.calendar.days import ShopCalendar, can_ship, carrier_works, closes_at, is_open
from queueboard.parcels.carriers import last_ship_row
from queueboard.values.box import Promise
from queueboard.words import GoesBy, PromiseKind


def ship_by(calendar: ShopCalendar, promise: Promise | None, goes_by: GoesBy, carrier_days: int) -> datetime | None:
    """The cut-off of a box, aware in the shop's zone; None when nothing was promised.

    A parcel promised into the customer's hands leaves on the latest day from which the carrier's working days still end
    by then; one promised to leave by a day leaves on the latest day up to it on which parcels can leave; both are ready
    by the packing cut-off. A pick-up is ready on the latest open day up to the promised one, by the shop's ready-by
    time; one for the next round is ready on the latest open day before it. All come no later than the shop shuts. A
    promise by a time, and one to somebody who waits, holds to the minute as it was told. Where no day of the whole year
    before will do, the cut-off lies a year back, so that the box shows as late.
    """
    if promise is None:
        return None
    settings = calendar.settings
    if promise.kind.has_time and promise.at is not None:
        return datetime.combine(promise.day, promise.at, tzinfo=settings.zone)
    if goes_by is GoesBy.PICK_UP or promise.kind is PromiseKind.NEXT_ROUND:
        last = promise.day - timedelta(days=1) if promise.kind is PromiseKind.NEXT_ROUND else promise.day
        day = on_or_before(last, lambda candidate: is_open(calendar, candidate))
        return _at(calendar, day, settings.ready_by)
    if promise.kind is PromiseKind.SHIPS_BY:
        carrier_days = 0
    return leaves_at(calendar, last_day_to_ship(calendar, promise.day, carrier_days))


def last_day_to_ship(calendar: ShopCalendar, arrives_by: date, carrier_days: int) -> date:
    """The latest day to leave on so that the carrier's working days end by *arrives_by*; that day may be it for 0.

    Where the carrier's table of last days asks for an earlier one, that holds; for 0 days, brought by hand, none does.
    """
    if carrier_days == 0:
        return on_or_before(arrives_by, lambda day: can_ship(calendar, day))
    last_moving = on_or_before(arrives_by, lambda day: carrier_works(calendar, day))
    first_moving = working_days_from(last_moving, 1 - carrier_days, lambda day: carrier_works(calendar, day))
    last, row = first_moving - timedelta(days=1), last_ship_row(calendar.settings.parcels, arrives_by)
    return on_or_before(last if row is None else min(last, row.ship_on), lambda day: can_ship(calendar, day))


def arrives_on(calendar: ShopCalendar, shipped: date, carrier_days: int) -> date:
    """The day on which a parcel that leaves on *shipped* should be there: the carrier's business, never promised.

    What missed a last day of the carrier's table is there after the day that it was for.
    """
    day = working_days_from(shipped, carrier_days, lambda day: carrier_works(calendar, day))
    missed = [row.arrives_by for row in calendar.settings.parcels.last_ship if row.ship_on < shipped]
    if carrier_days == 0 or not missed:
        return day
    return max(day, working_days_from(max(missed), 1, lambda after: carrier_works(calendar, after)))


def leaves_at(calendar: ShopCalendar, day: date) -> datetime:
    """The moment by which a parcel must be wrapped and labelled to leave on *day*."""
    return _at(calendar, day, calendar.settings.parcels.cut_off)


def _at(calendar: ShopCalendar, day: date, clock: time) -> datetime:
    shuts = closes_at(calendar, day)
    return datetime.combine(day, clock if shuts is None else min(clock, shuts), tzinfo=calendar.settings.zone)


def leaving_moments(
    calendar: ShopCalendar, first: date, days: int, goes_by: GoesBy | None = None
) -> tuple[datetime, ...]:
    """The moments at which boxes can leave on so many days from *first* on: parcels, pick-ups, or both for None."""
    moments: list[datetime] = []
    for day in (first + timedelta(days=offset) for offset in range(days)):
        if goes_by is not GoesBy.PICK_UP and can_ship(calendar, day):
            moments.append(leaves_at(calendar, day))
        if goes_by is not GoesBy.PARCEL and is_open(calendar, day):
            moments.append(_at(calendar, day, calendar.settings.ready_by))
    return tuple(moments)
