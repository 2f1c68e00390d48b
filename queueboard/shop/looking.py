"""The one reading behind every screen: fixed queries, then plan, lateness and totals, then one frozen picture."""

import json
from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta

from queueboard.calendar.days import ShopCalendar
from queueboard.money.bill import Bill
from queueboard.parcels.carriers import carrier_of, with_carrier
from queueboard.parcels.closing import check
from queueboard.parcels.cutoffs import arrives_on, leaving_moments
from queueboard.parcels.labels import label_due, worst_first
from queueboard.planning.learning import learn, learn_yield
from queueboard.records import asking
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.reading import OpenWork, read_open_work
from queueboard.records.reading_on import read_on
from queueboard.records.telling import newest_line
from queueboard.records.trials import drawn_knives
from queueboard.shop.bench_work import BenchWork, Minutes
from queueboard.shop.measuring import measured_runs, worked_days
from queueboard.shop.numbers import settings_of
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, DayLine, Picture, lost_only
from queueboard.values.box import Box, Promise
from queueboard.values.found import Off
from queueboard.values.knife import Knife
from queueboard.values.label import LabelDue
from queueboard.values.plan import BoxForecast, Plan
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


def look(shop: Shop, now: datetime, *, restarts: int = 0) -> Picture:
    """The whole shop at one instant; restarts: more ways to try for the plan, when a day list is made."""
    with shop.reading() as database:
        settings_id, settings = settings_of(database)
        closed = asking.closed_days(database, settings_id)
        newest = newest_line(database)
        work = _open_work(shop, database, 0 if newest is None else newest[0])
        local = now.astimezone(settings.zone)
        fixed = _fixed_order(database, local.date())
        halves = drawn_knives(database, "t.ended_us IS NULL")
        calendar = ShopCalendar(settings, closed)
        minutes = _minutes(shop, database, settings_id, calendar, local)
    bench = BenchWork(settings=settings, calendar=calendar, work=work, minutes=minutes)
    planned = bench.planned(local, fixed, restarts)
    plan = planned.plan
    boxes = _boxes(bench, plan, local)
    labels = worst_first(box.label_due for box in boxes if box.label_due is not None)
    return Picture(
        now=local,
        settings=settings,
        boxes=boxes,
        plan=plan,
        ledger=planned.ledger,
        runs=work.runs,
        halves=halves,
        minutes=bench.minutes,
        day_line=_day_line(boxes, plan, labels, local.date()),
        labels_due=labels,
        last_line=newest[0] if newest else 0,
        saved_at=from_us(newest[1]).astimezone(settings.zone) if newest else None,
        backup_at=None if shop.backup_at is None else shop.backup_at.astimezone(settings.zone),
        found=work.found,
        closed_days=tuple(closed.items()),
        order_fixed=bool(fixed),
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


def _minutes(shop: Shop, database: ShopDatabase, settings_id: int, calendar: ShopCalendar, now: datetime) -> Minutes:
    """What the shop has measured; read again only when a run was finished since, a day is over, or settings are new."""
    known = (settings_id, now.date(), *asking.finished_runs(database))
    if shop.minutes_cache is None or shop.minutes_cache[0] != known:
        settings = calendar.settings
        learned = learn(measured_runs(database, settings), len(settings.processes))
        day_yield = learn_yield(worked_days(database, calendar, now), learned.processes)
        shop.minutes_cache = (known, Minutes(learned=learned, day_yield=day_yield))
    return shop.minutes_cache[1]


def _boxes(bench: BenchWork, plan: Plan, now: datetime) -> tuple[BoxPicture, ...]:
    forecasts = {forecast.box_id: forecast for forecast in plan.forecasts}
    twins = _twins(bench.work)
    boxes = (
        _box_picture(bench, box, forecasts.get(box.id) or _only_announced(box), twins, now) for box in bench.work.boxes
    )
    far = datetime.max.replace(tzinfo=bench.settings.zone)
    return tuple(sorted(boxes, key=lambda b: (b.ship_by is None, b.ship_by or far, b.box.number)))


def _only_announced(box: Box) -> BoxForecast:
    return BoxForecast(box_id=box.id, finish=None, minutes_left=0, lateness=Lateness.ON_TIME)


def _box_picture(bench: BenchWork, box: Box, forecast: BoxForecast, twins: frozenset[int], now: datetime) -> BoxPicture:
    work = bench.work
    knives, things = work.knives.get(box.id, ()), work.things.get(box.id, ())
    payments, promises = work.payments.get(box.id, ()), work.promises.get(box.id, ())
    label = work.labels.get(box.id)
    calendar = with_carrier(bench.calendar, carrier_of(label))
    cut_off = bench.ship_by(box, promises[-1] if promises else None)
    close = work.close_outs.get(box.id)
    charges = work.charges.get(box.id, ())
    bill = Bill(knives=knives, charges=charges, payments=payments, rounding=box.rounding)
    to_buy = label is not None and label.state is LabelState.TO_BUY
    wants_label = box.goes_by is GoesBy.PARCEL and not (box.announced and to_buy)  # nothing is bought for no box
    return BoxPicture(
        box=box,
        customer=work.customers[box.customer_id],
        knives=knives,
        things=things,
        promises=promises,
        label=label,
        payments=payments,
        charges=charges,
        ship_by=cut_off,
        forecast=forecast,
        honest_day=None if lost_only(knives, forecast) else _honest_day(calendar, box, promises, forecast, now),
        label_due=label_due(calendar, label, cut_off, now, box.id, forecast.finish) if wants_label else None,
        close_out=close,
        close_check=None if close is None else check(close, knives, things, box.goes_by, label, bill, now.date()),
        moves=tuple(move for move in work.moves if box.id in (move.from_box_id, move.to_box_id)),
        off=work.off.get(box.id, Off()),
        look_alikes=tuple(knife.id for knife in knives if knife.id in twins),
        call_back=work.call_backs.get(box.id),
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
    by_look: dict[tuple[str, int], list[Knife]] = {}
    for knife in (knife for knives in work.knives.values() for knife in knives):
        if knife.on_hand and knife.length_mm is not None:
            by_look.setdefault((knife.kind, knife.length_mm), []).append(knife)
    return frozenset(knife.id for group in by_look.values() if len({k.box_id for k in group}) > 1 for knife in group)


def _leaves_on(box: BoxPicture, day: date) -> bool:
    """True for a box whose cut-off is that day and of which something else than a lost knife is still here."""
    unopened = not box.box.opened and not box.box.announced
    here = unopened or any(not knife.looking_for for knife in box.on_hand)
    return here and box.ship_by is not None and box.ship_by.date() == day


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
