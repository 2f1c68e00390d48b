"""The one reading behind every screen: fixed queries, then plan, lateness and totals, then one frozen picture."""

from collections import Counter
from collections.abc import Iterable
from datetime import date, datetime

from queueboard.calendar.days import ShopCalendar, bench_windows
from queueboard.parcels.closing import check
from queueboard.parcels.cutoffs import ship_by
from queueboard.parcels.labels import label_due, last_use_day, worst_first
from queueboard.planning.order import plan_work
from queueboard.records import asking
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.records.reading import OpenWork, read_open_work
from queueboard.records.telling import newest_line
from queueboard.settings.rules import minutes_of, process_of
from queueboard.settings.shapes import Settings
from queueboard.shop.numbers import settings_of
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, DayLine, Picture
from queueboard.values.box import Box, Promise
from queueboard.values.knife import Knife
from queueboard.values.label import LabelDue
from queueboard.values.plan import BoxForecast, BoxWork, KnifeWork, Plan, ProcessWork
from queueboard.words import Column, GoesBy, LabelState, LabelWord, Lateness

HORIZON_DAYS = 90
"""Calendar days of bench time that the plan looks ahead; work beyond has no clock time."""

BENCH_COLUMNS = (Column.RECEIVED, Column.ON_BENCH)
"""Where a knife still needs the bench."""


def last_line(shop: Shop) -> int:
    """The id of the newest history line: a cheap look at whether anything has changed."""
    with shop.reading() as database:
        newest = newest_line(database)
    return 0 if newest is None else newest[0]


def look(shop: Shop, now: datetime) -> Picture:
    """The whole shop at one instant."""
    with shop.reading() as database:
        settings_id, settings = settings_of(shop, database)
        closed = asking.closed_days(database, settings_id)
        work = read_open_work(database)
        local = now.astimezone(settings.zone)
        fixed = _fixed_order(database, local.date())
        newest = newest_line(database)
    calendar = ShopCalendar(settings, closed)
    plan = _plan(settings, calendar, work, local, fixed)
    boxes = _boxes(settings, calendar, work, plan, local)
    labels = worst_first(box.label_due for box in boxes if box.label_due is not None)
    return Picture(
        now=local,
        settings=settings,
        boxes=boxes,
        plan=plan,
        day_line=_day_line(boxes, plan, labels, local.date()),
        labels_due=labels,
        last_line=newest[0] if newest else 0,
        saved_at=from_us(newest[1]).astimezone(settings.zone) if newest else None,
        backup_at=None if shop.backup_at is None else shop.backup_at.astimezone(settings.zone),
        closed_days=tuple(closed.items()),
        order_fixed=bool(fixed),
    )


def _fixed_order(database: ShopDatabase, today: date) -> tuple[int, ...]:
    stored = asking.fixed_order(database, today)
    return () if stored is None else tuple(int(part) for part in stored.strip("[]").split(",") if part)


def _plan(settings: Settings, calendar: ShopCalendar, work: OpenWork, now: datetime, fixed: tuple[int, ...]) -> Plan:
    processes = tuple(
        ProcessWork(name=p.name, set_up_seconds=p.set_up_seconds, run_size=p.run_size) for p in settings.processes
    )
    boxes = tuple(_box_work(settings, calendar, work, box, now) for box in work.boxes)
    return plan_work(boxes, processes, bench_windows(calendar, now, HORIZON_DAYS), now, fixed)


def _box_work(settings: Settings, calendar: ShopCalendar, work: OpenWork, box: Box, now: datetime) -> BoxWork:
    knives = work.knives.get(box.id, ())
    held = _promise(work, box)
    label = work.labels.get(box.id)
    here = [knife for knife in knives if knife.on_hand]
    usable = label is not None and label.state is LabelState.HERE and label.expires_on is not None
    handling = settings.handling
    by_parcel = box.goes_by is GoesBy.PARCEL
    return BoxWork(
        box_id=box.id,
        number=box.number,
        ship_by=ship_by(calendar, held, box.goes_by, box.carrier_days),
        label_last_day=last_use_day(calendar, label.expires_on) if usable and label and label.expires_on else None,
        promised_today=held is not None and held.day == now.date(),
        rush=box.rush,
        this_next=box.this_next,
        waiting=box.waiting_for is not None,
        ready_to_fetch=bool(here) and not by_parcel and all(knife.can_leave for knife in here),
        handling_minutes=handling.pack_per_parcel if by_parcel else handling.counter_per_box,
        knives=tuple(_knife_work(settings, knife) for knife in knives if _needs_bench(knife)),
    )


def _needs_bench(knife: Knife) -> bool:
    return (
        knife.column in BENCH_COLUMNS and knife.declined is None and knife.waiting_for is None and not knife.looking_for
    )


def _knife_work(settings: Settings, knife: Knife) -> KnifeWork:
    kind = settings.kind(knife.kind)
    return KnifeWork(
        knife_id=knife.id,
        tag=knife.tag,
        process=settings.processes[0].name if kind is None else process_of(settings, kind, knife.edge).name,
        minutes=knife_minutes(settings, knife),
        handling_minutes=settings.handling.test_per_knife + settings.handling.wrap_per_knife,
        rework=knife.rework > 0,
        begun=knife.column is Column.ON_BENCH,
    )


def knife_minutes(settings: Settings, knife: Knife) -> int:
    """Hands-on minutes of a knife.

    A condition the shop usually declines, or a kind it no longer has, counts as the longest the settings know for
    that kind, or for any.
    """
    minutes = minutes_of(settings, knife.kind, knife.edge, knife.condition)
    if minutes is not None:
        return minutes
    kind = settings.kind(knife.kind)
    kinds = settings.kinds if kind is None else (kind,)
    return max(longest for one in kinds for longest in one.minutes.values())


def _promise(work: OpenWork, box: Box) -> Promise | None:
    promises = work.promises.get(box.id, ())
    return promises[-1] if promises else None


def _boxes(
    settings: Settings, calendar: ShopCalendar, work: OpenWork, plan: Plan, now: datetime
) -> tuple[BoxPicture, ...]:
    forecasts = {forecast.box_id: forecast for forecast in plan.forecasts}
    twins = _twins(work)
    boxes = (_box_picture(calendar, work, box, forecasts[box.id], twins, now) for box in work.boxes)
    far = datetime.max.replace(tzinfo=settings.zone)
    return tuple(sorted(boxes, key=lambda b: (b.ship_by is None, b.ship_by or far, b.box.number)))


def _box_picture(
    calendar: ShopCalendar,
    work: OpenWork,
    box: Box,
    forecast: BoxForecast,
    twins: frozenset[int],
    now: datetime,
) -> BoxPicture:
    knives = work.knives.get(box.id, ())
    things = work.things.get(box.id, ())
    payments = work.payments.get(box.id, ())
    label = work.labels.get(box.id)
    cut_off = ship_by(calendar, _promise(work, box), box.goes_by, box.carrier_days)
    close = work.close_outs.get(box.id)
    owed = sum(k.charged_cents for k in knives) - sum(p.cents for p in payments)
    by_parcel = box.goes_by is GoesBy.PARCEL
    return BoxPicture(
        box=box,
        customer=work.customers[box.customer_id],
        knives=knives,
        things=things,
        promises=work.promises.get(box.id, ()),
        label=label,
        payments=payments,
        ship_by=cut_off,
        forecast=forecast,
        label_due=label_due(calendar, label, cut_off, now, box.id, forecast.finish) if by_parcel else None,
        close_out=close,
        close_check=None if close is None else check(close, knives, things, box.goes_by, label, owed, now.date()),
        look_alikes=tuple(knife.id for knife in knives if knife.id in twins),
    )


def _twins(work: OpenWork) -> frozenset[int]:
    """Ids of knives on hand whose kind and measured length stand in another open box too."""
    by_look: dict[tuple[str, int], list[Knife]] = {}
    for knife in (knife for knives in work.knives.values() for knife in knives):
        if knife.on_hand and knife.length_mm is not None:
            by_look.setdefault((knife.kind, knife.length_mm), []).append(knife)
    return frozenset(knife.id for group in by_look.values() if len({k.box_id for k in group}) > 1 for knife in group)


def _leaves_on(box: BoxPicture, day: date) -> bool:
    """True for a box whose cut-off is that day and of which something else than a lost knife is still here."""
    here = not box.box.opened or any(not knife.looking_for for knife in box.on_hand)
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
        waiting=sum(box.box.waiting_for is not None or bool(box.waiting) for box in boxes),
    )
