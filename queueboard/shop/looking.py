"""The one reading behind every screen: fixed queries, then plan, lateness and totals, then one frozen picture."""

import json
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import TypedDict

from queueboard.calendar.days import ShopCalendar
from queueboard.money.bill import Bill
from queueboard.parcels.carriers import carrier_of, with_carrier
from queueboard.parcels.closing import check
from queueboard.parcels.cutoffs import arrives_on, leaving_moments
from queueboard.parcels.labels import label_due, worst_first
from queueboard.planning.learning import learn, learn_yield
from queueboard.planning.planned import Planned
from queueboard.records import asking
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.kept_days import read_days, write_days
from queueboard.records.reading import OpenWork, read_open_work
from queueboard.records.reading_on import read_on
from queueboard.records.telling import newest_line
from queueboard.records.trials import DrawnKnife, drawn_knives
from queueboard.shop.bench_work import BenchWork, Minutes
from queueboard.shop.measuring import days_known, measured_runs
from queueboard.shop.opening import Shop
from queueboard.shop.picture import NOTHING_OFF, BoxPicture, DayLine, Picture, lost_only
from queueboard.shop.settings_now import calendar_now
from queueboard.slotted import dataclass
from queueboard.values.box import Box, Charge, CloseOut, Payment, Promise, ReturnLabel
from queueboard.values.customer import Customer
from queueboard.values.found import MovedKnife, Off
from queueboard.values.knife import Knife, Thing
from queueboard.values.label import LabelDue
from queueboard.values.plan import BoxForecast, Plan
from queueboard.values.shelf import CallBack
from queueboard.words import GoesBy, LabelState, LabelWord, Lateness, PromiseKind

DAY_LIST = 30
"""Restarts for the plan of a day list, where a few hundredths of a second more may be spent."""

HONEST_DAYS = 60
"""Calendar days after its finish in which a box finds a day to leave."""


def last_line(shop: Shop) -> int:
    """The id of the newest history line: a cheap look at whether anything has changed."""
    with shop.reading() as database:
        newest = newest_line(database)
    return 0 if newest is None else newest[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Read:
    """What was read in one view of the file."""

    now: datetime
    """In the shop's zone."""
    bench: BenchWork
    fixed: tuple[tuple[int, ...], ...]
    newest: tuple[int, int] | None
    halves: tuple[DrawnKnife, ...]


def look(shop: Shop, now: datetime, *, restarts: int = 0) -> Picture:
    """The whole shop at one instant; restarts: more ways to try for the plan, when a day list is made."""
    read = _read(shop, now)
    return _whole(shop, read, read.bench.planned(read.now, read.fixed, restarts))


def at_first_sight(shop: Shop, now: datetime, many: int) -> Picture:
    """As look; but where so *many* knives or more need the bench, with nothing of the plan, which follows."""
    read = _read(shop, now)
    if read.bench.needing < many:
        return _whole(shop, read, read.bench.planned(read.now, read.fixed))
    return replace(_whole(shop, read, read.bench.unplanned(read.now)), plan_follows=True)


def _whole(shop: Shop, read: _Read, planned: Planned) -> Picture:
    forecasts = {forecast.box_id: forecast for forecast in planned.plan.forecasts}
    twins = _twins(read.bench.work)
    boxes = (
        _box_picture(read.bench, _parts(read.bench.work, box, twins), _forecast(forecasts, box), read.now)
        for box in read.bench.work.boxes
    )
    return _picture(shop, read, tuple(boxes), planned)


def glance(shop: Shop, now: datetime, before: Picture) -> Picture:
    """The whole shop at one instant, but with the plan of the picture before, so that nobody has to wait for a plan.

    A box with nothing new about it is the same object as before.
    """
    read = _read(shop, now)
    calendar = (before.settings, before.closed_days, before.now.date())
    same_day = calendar == (read.bench.settings, tuple(read.bench.calendar.holidays.items()), read.now.date())
    known = {box.box.id: box for box in before.boxes if same_day}
    forecasts = {box.box.id: box.forecast for box in before.boxes}
    twins = _twins(read.bench.work)

    def seen(box: Box) -> BoxPicture:
        parts, old = _parts(read.bench.work, box, twins), known.get(box.id)
        if old is not None and all(getattr(old, name) == part for name, part in parts.items()):
            return old
        return _box_picture(read.bench, parts, _forecast(forecasts, box), read.now)

    planned = Planned(plan=before.plan, ledger=before.ledger)
    return replace(_picture(shop, read, tuple(map(seen, read.bench.work.boxes)), planned), plan_follows=True)


def _read(shop: Shop, now: datetime) -> _Read:
    with shop.reading() as database:
        settings_id, calendar = calendar_now(database)
        settings = calendar.settings
        newest = newest_line(database)
        line = 0 if newest is None else newest[0]
        work = _open_work(shop, database, line)
        local = now.astimezone(settings.zone)
        minutes = _minutes(shop, database, calendar, local, (settings_id, line))
        return _Read(
            now=local,
            bench=BenchWork(settings=settings, calendar=calendar, work=work, minutes=minutes),
            fixed=_fixed_order(database, local.date()),
            newest=newest,
            halves=drawn_knives(database, "t.ended_us IS NULL"),
        )


def _picture(shop: Shop, read: _Read, boxes: tuple[BoxPicture, ...], planned: Planned) -> Picture:
    bench, zone = read.bench, read.bench.settings.zone
    far = datetime.max.replace(tzinfo=zone)
    boxes = tuple(sorted(boxes, key=lambda b: (b.ship_by is None, b.ship_by or far, b.box.number)))
    labels = worst_first(box.label_due for box in boxes if box.label_due is not None)
    return Picture(
        now=read.now,
        settings=bench.settings,
        boxes=boxes,
        plan=planned.plan,
        ledger=planned.ledger,
        runs=bench.work.runs,
        halves=read.halves,
        minutes=bench.minutes,
        day_line=_day_line(boxes, planned.plan, labels, read.now.date()),
        labels_due=labels,
        last_line=read.newest[0] if read.newest else 0,
        saved_at=from_us(read.newest[1]).astimezone(zone) if read.newest else None,
        backup_at=None if shop.backup_at is None else shop.backup_at.astimezone(zone),
        found=bench.work.found,
        closed_days=tuple(bench.calendar.holidays.items()),
        order_fixed=bool(read.fixed),
    )


def _open_work(shop: Shop, database: ShopDatabase, newest: int) -> OpenWork:
    """The open work at the newest line of history, read on from where it was last read."""
    if shop.work_cache is None:
        shop.work_cache = (newest, read_open_work(database))
    elif shop.work_cache[0] != newest:
        line, before = shop.work_cache
        shop.work_cache = (newest, read_on(database, before, line))
    return shop.work_cache[1]


def _fixed_order(database: ShopDatabase, today: date) -> tuple[tuple[int, ...], ...]:
    stored = asking.fixed_order(database, today)
    return () if stored is None else tuple(tuple(run) for run in json.loads(stored))


def _minutes(shop: Shop, database: ShopDatabase, calendar: ShopCalendar, now: datetime, at: tuple[int, int]) -> Minutes:
    """What the shop has measured; learned again only when a run was finished since, a day is over, or settings are new.

    at: the ids of the settings in force and of the newest line of history.
    """
    before = shop.minutes_cache
    kept = read_days(shop.path, database) if before is None else before[0]
    days = days_known(database, calendar, now, kept, at)
    if days.days and (kept is None or days.days is not kept.days) and not shop.only_read:
        write_days(shop.path, database, days)
    known = (at[0], *asking.finished_runs(database), days.days)
    if before is None or before[1] != known:
        settings = calendar.settings
        learned = learn(measured_runs(database, settings), len(settings.processes))
        day_yield = learn_yield((day for _, day in days.days), learned.processes)
        minutes = Minutes(learned=learned, day_yield=day_yield)
    else:
        minutes = before[2]
    shop.minutes_cache = (days, known, minutes)
    return minutes


def _forecast(forecasts: Mapping[int, BoxForecast], box: Box) -> BoxForecast:
    """What the plan says of a box; of one that it does not know, that nothing is to be done."""
    nothing = BoxForecast(box_id=box.id, finish=None, minutes_left=0, lateness=Lateness.ON_TIME)
    return forecasts.get(box.id) or nothing


class _Parts(TypedDict):
    """What was read of a box, by its names in BoxPicture."""

    box: Box
    customer: Customer
    knives: tuple[Knife, ...]
    things: tuple[Thing, ...]
    promises: tuple[Promise, ...]
    label: ReturnLabel | None
    payments: tuple[Payment, ...]
    charges: tuple[Charge, ...]
    close_out: CloseOut | None
    moves: tuple[MovedKnife, ...]
    off: Off
    look_alikes: tuple[int, ...]
    call_back: CallBack | None


def _parts(work: OpenWork, box: Box, twins: frozenset[int]) -> _Parts:
    knives = work.knives.get(box.id, ())
    return _Parts(
        box=box,
        customer=work.customers[box.customer_id],
        knives=knives,
        things=work.things.get(box.id, ()),
        promises=work.promises.get(box.id, ()),
        label=work.labels.get(box.id),
        payments=work.payments.get(box.id, ()),
        charges=work.charges.get(box.id, ()),
        close_out=work.close_outs.get(box.id),
        moves=tuple(move for move in work.moves if box.id in (move.from_box_id, move.to_box_id)),
        off=work.off.get(box.id, NOTHING_OFF),
        look_alikes=tuple(knife.id for knife in knives if knife.id in twins),
        call_back=work.call_backs.get(box.id),
    )


def _box_picture(bench: BenchWork, parts: _Parts, forecast: BoxForecast, now: datetime) -> BoxPicture:
    box, knives, promises, label = parts["box"], parts["knives"], parts["promises"], parts["label"]
    calendar = with_carrier(bench.calendar, carrier_of(label))
    cut_off = bench.ship_by(box)
    close = parts["close_out"]
    bill = Bill(knives=knives, charges=parts["charges"], payments=parts["payments"], rounding=box.rounding)
    to_buy = label is not None and label.state is LabelState.TO_BUY
    wants_label = box.goes_by is GoesBy.PARCEL and not (box.announced and to_buy)  # nothing is bought for no box
    checked = None if close is None else check(close, knives, parts["things"], box.goes_by, label, bill, now.date())
    return BoxPicture(
        **parts,
        ship_by=cut_off,
        forecast=forecast,
        honest_day=None if lost_only(knives, forecast) else _honest_day(calendar, box, promises, forecast, now),
        label_due=label_due(calendar, label, cut_off, now, box.id, forecast.finish) if wants_label else None,
        close_check=checked,
    )


def _honest_day(
    calendar: ShopCalendar, box: Box, promises: Sequence[Promise], forecast: BoxForecast, now: datetime
) -> date | None:
    """The day that can honestly be told instead of a promise that will not hold, as that one was told.

    None while it holds, and while nobody knows when its work is done.
    """
    if forecast.lateness not in (Lateness.LATE, Lateness.WILL_BE_LATE) or forecast.is_without_end:
        return None
    done = (forecast.finish or now).astimezone(now.tzinfo)
    days = (done.date() + timedelta(days=offset) for offset in range(HONEST_DAYS))
    leaving = (moment for day in days for moment in leaving_moments(calendar, day, 1, box.goes_by))
    leaves = next((moment.date() for moment in leaving if moment >= done), None)
    by_shipping = bool(promises) and promises[-1].kind is PromiseKind.SHIPS_BY
    if leaves is None or by_shipping or box.goes_by is GoesBy.PICK_UP:
        return leaves
    return arrives_on(calendar, leaves, box.carrier_days)


def _twins(work: OpenWork) -> frozenset[int]:
    """Ids of knives on hand whose kind and measured length stand in another open box too."""
    here = [k for knives in work.knives.values() for k in knives if k.length_mm is not None and k.on_hand]
    first: dict[tuple[str, int | None], int] = {}
    twice = {alike for k in here if first.setdefault(alike := (k.kind, k.length_mm), k.box_id) != k.box_id}
    return frozenset(k.id for k in here if (k.kind, k.length_mm) in twice)


def _leaves_on(box: BoxPicture, day: date) -> bool:
    """True for a box whose cut-off is that day and of which something else than a lost knife is still here."""
    if box.ship_by is None or box.ship_by.date() != day:
        return False
    unopened = not box.box.opened and not box.box.announced
    return unopened or any(not knife.looking_for for knife in box.on_hand)


def _day_line(boxes: tuple[BoxPicture, ...], plan: Plan, labels: Iterable[LabelDue], today: date) -> DayLine:
    lateness = Counter(box.forecast.lateness for box in boxes)
    return DayLine(
        bench_minutes_left=plan.bench_minutes_today,
        work_minutes_today=plan.work_minutes_today,
        leaves_today=sum(_leaves_on(box, today) for box in boxes),
        labels_due=sum(due.word is not LabelWord.GOOD for due in labels),
        late=lateness[Lateness.LATE],
        will_be_late=lateness[Lateness.WILL_BE_LATE],
        tight=lateness[Lateness.TIGHT],
        waiting=sum(box.box.waiting_for is not None or bool(box.waiting) for box in boxes),
    )
