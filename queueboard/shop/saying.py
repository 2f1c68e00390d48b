"""What the shop says of its boxes, kept so that it can be held against what was seen."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta

from queueboard.calendar.days import ShopCalendar
from queueboard.parcels.cutoffs import ship_by
from queueboard.records import asking
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import to_us
from queueboard.records.judging import Became, first_and_last_told, said_since, what_became
from queueboard.records.reading import promises_of
from queueboard.records.tables import SaidRow
from queueboard.records.writing import Writing
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import calendar_at, settings_in
from queueboard.values.box import Promise
from queueboard.values.measured import SaidSeen, SaidTenth, ToldSeen
from queueboard.words import GoesBy

LOOK_BACK_DAYS = 365
"""What was said or told for a day longer ago says little of the shop as it is."""


@operation(step=False)
def say_chances(writing: Writing, day: date, chances: Sequence[tuple[int, datetime, int]]) -> None:
    """Keep what is said of boxes at a day's first look: of each its id, its cut-off (aware), the chance of being late.

    The chance is in thousandths, 0 to 1000. What was said of a box earlier that day stays.
    """
    known = asking.boxes_said(writing.database, day)
    for box_id, due, late_permille in chances:
        if box_id not in known:
            writing.insert(SaidRow, day=day.isoformat(), box_id=box_id, due_us=to_us(due), late_permille=late_permille)


def is_said(shop: Shop, day: date) -> bool:
    """True when something was said on that day already."""
    with shop.reading() as database:
        return bool(asking.boxes_said(database, day))


def said_versus_seen(shop: Shop, now: datetime) -> tuple[SaidSeen, ...]:
    """What was said in the last year of boxes whose cut-off is over by now (aware), oldest first."""
    with shop.reading() as database:
        zone = settings_in(database).zone
        since = now.astimezone(zone).date() - timedelta(days=LOOK_BACK_DAYS)
        became = what_became(database, "said", since)
        said = said_since(database, since)
    return tuple(
        SaidSeen(
            day=one.day,
            box_id=one.box_id,
            number=became[one.box_id].number,
            due=one.due.astimezone(zone),
            late_permille=one.late_permille,
            ready_at=became[one.box_id].ready_at,
        )
        for one in said
        if one.due < now and one.box_id in became
    )


def in_tenths(seen: Iterable[SaidSeen]) -> tuple[SaidTenth, ...]:
    """What was said, gathered by tenths of a chance; tenths in which nothing was said are left out."""
    tenths: defaultdict[int, list[SaidSeen]] = defaultdict(list)
    for one in seen:
        tenths[min(one.late_permille // 100, 9)].append(one)
    return tuple(
        SaidTenth(
            from_percent=10 * tenth,
            said=len(those),
            said_permille=round(sum(one.late_permille for one in those) / len(those)),
            late=sum(one.late for one in those),
        )
        for tenth, those in sorted(tenths.items())
    )


def told_versus_seen(shop: Shop, now: datetime) -> tuple[ToldSeen, ...]:
    """The dates told to customers for a day of the last year whose cut-off is over by now (aware), in that order.

    A parcel's is kept when it goes on the day of its cut-off or before, a pick-up's when it is ready by its cut-off.
    The cut-off is that of the calendar when it was told: days closed since do not bring it forward.
    """
    with shop.reading() as database:
        since = now.astimezone(settings_in(database).zone).date() - timedelta(days=LOOK_BACK_DAYS)
        return told_between(database, now, since, date.max)


def told_between(database: ShopDatabase, now: datetime, first: date, last: date) -> tuple[ToldSeen, ...]:
    """The same of the dates told for a day between two, both included."""
    became = what_became(database, "promise", first)
    told = promises_of(database, "day >= ? AND day <= ?", first.isoformat(), last.isoformat())
    calendars = {promise.told_at: calendar_at(database, promise.told_at) for promise in told}
    ends = first_and_last_told(database, first, last)
    seen = [
        _told(promise, became[promise.box_id], cut_off, ends[promise.box_id])
        for promise in told
        if promise.box_id in became
        and (cut_off := _cut_off(calendars[promise.told_at], promise, became[promise.box_id])) is not None
        and cut_off < now
    ]
    return tuple(sorted(seen, key=lambda one: (one.cut_off, one.told_at)))


def _cut_off(calendar: ShopCalendar, promise: Promise, box: Became) -> datetime | None:
    return ship_by(calendar, promise, box.goes_by, box.carrier_days)


def _told(promise: Promise, box: Became, cut_off: datetime, ends: tuple[int, int]) -> ToldSeen:
    """ends: the ids of the first and of the last date told for the box."""
    by_parcel = box.goes_by is GoesBy.PARCEL
    done = box.gone_at if by_parcel else box.ready_at
    at = None if done is None else done.astimezone(cut_off.tzinfo)
    return ToldSeen(
        box_id=promise.box_id,
        number=box.number,
        kind=promise.kind,
        day=promise.day,
        told_at=promise.told_at,
        first=promise.id == ends[0],
        replaced=promise.id != ends[1],
        cut_off=cut_off,
        done_at=at,
        kept=at is not None and (at.date() <= cut_off.date() if by_parcel else at <= cut_off),
    )
