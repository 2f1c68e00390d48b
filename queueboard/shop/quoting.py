"""Questions about promises, put to the picture: when a new box can be ready, whether by a day, what room is left."""

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta

from queueboard.calendar.days import ShopCalendar, why_closed
from queueboard.parcels.cutoffs import arrives_on, leaving_moments, ship_by
from queueboard.planning.announcing import Guess, announced
from queueboard.planning.ledger import KNIVES_APART, Ledger
from queueboard.planning.placing import Margins
from queueboard.planning.queue import QueueBox, QueueKnife
from queueboard.planning.quoting import Answer as Told
from queueboard.planning.quoting import Quote, quote, rush_seconds
from queueboard.planning.quoting import can_do as can_do_by
from queueboard.settings.rules import minutes_of, process_of
from queueboard.settings.shapes import Settings
from queueboard.shop.bench_work import HORIZON_DAYS, LEAVING_DAYS
from queueboard.shop.picture import Picture
from queueboard.slotted import dataclass
from queueboard.values.box import Promise
from queueboard.values.new import NewKnife, Unseen
from queueboard.words import GoesBy, PromiseKind, WhyNot

Inside = Sequence[NewKnife] | Unseen
"""What is known of a box that is asked about: its knives, or what was announced of them."""

YEAR_DAYS = 366
"""As far as the next open day is looked for; no closure is longer."""

NEW = -1
"""The id of a box, and of its knives counting down, that is not in the shop file yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """The earliest day that keeps every promise already made, with the sum that leads to it, in bench minutes."""

    day: date
    """In hand for a parcel, ready for a pick-up; the shop's safety days are in it."""
    leaves: datetime
    """When the box is ready or leaves at the latest for that, before the safety days."""
    sure_permille: int
    """The chance that it holds, in thousandths."""
    open_minutes: int
    """Work before it."""
    own_minutes: int
    """Its knives and their set-ups."""
    day_minutes: int
    """What the bench bears on a usual day."""
    kept_minutes: int
    """Kept free: for what may stray, and for walk-ins not yet in the door."""
    spare_minutes: int
    """From its finish to when it leaves, with what is kept free."""
    safety_days: int
    closed: tuple[date, ...]
    """Days on which the shop is shut, from now until it leaves."""
    binds: int | None
    """The number of the box that does not let it be worked any earlier; None when it comes first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Late:
    """Whom a wish would make late."""

    number: int
    customer: str
    minutes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Whether a new box can be done by a day."""

    yes: bool
    sure_permille: int
    costs: tuple[Late, ...]
    """Whom a yes would make late, the latest first; a no without any is about too little left free."""
    presses: int | None
    """The number of the box whose promise would have the least left; None when yes."""
    why: WhyNot | None
    """None when yes."""
    shut: str = ""
    """Why the shop is shut on that day, where that makes it a no."""
    opens: date | None = None
    """The next day on which it opens, where it is shut; None where it stays so for a year."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DayLoad:
    """One day of the week: what the bench bears, and what is on it."""

    day: date
    there_minutes: int
    planned_minutes: int
    """Of the plan, set-ups and unopened boxes included."""
    due_minutes: int
    """Hands-on minutes that are due that day and not begun; of boxes that are not opened by a guess."""
    closed: str
    """Why the shop is shut; empty when it opens."""


def offer(picture: Picture, knives: Inside, goes_by: GoesBy, carrier_days: int) -> Offer | None:
    """When a box with these knives can be ready; None when that lies beyond the days planned ahead."""
    if picture.ledger is None or not knives:
        return None
    box, margins, here_from = _new_box(picture, knives), _margins(picture), _here_from(picture, picture.ledger, knives)
    for days in (LEAVING_DAYS, HORIZON_DAYS):
        leaving = _leaving(picture, goes_by, days)
        ledger = picture.ledger.with_moments(leaving)
        offered = {cutoff: moment for moment in reversed(leaving) if (cutoff := ledger.cutoff_of(moment)) is not None}
        told = quote(ledger.promised, box, margins, offered, here_from)
        later = () if told is None else leaving[leaving.index(offered[told.cutoff]) :]
        if told is not None and len(later) > picture.settings.planning.safety_days:
            return _offer(picture, told, later, carrier_days if goes_by is GoesBy.PARCEL else None)
    return None


def _offer(picture: Picture, told: Quote, leaving: Sequence[datetime], carrier_days: int | None) -> Offer:
    """leaving: the moments from the quoted one on. carrier_days: None for a pick-up."""
    calendar, safety_days = _calendar(picture), picture.settings.planning.safety_days
    day = leaving[safety_days].date()
    until = (leaving[safety_days].date() - picture.now.date()).days
    ahead = (picture.now.date() + timedelta(days=offset) for offset in range(until))
    return Offer(
        day=day if carrier_days is None else arrives_on(calendar, day, carrier_days),
        leaves=leaving[0],
        sure_permille=round(1000 * told.chance_holds),
        open_minutes=_minutes(told.open_seconds),
        own_minutes=_minutes(told.own_seconds),
        day_minutes=_minutes(told.day_seconds),
        kept_minutes=_minutes(told.kept_seconds),
        spare_minutes=_minutes(told.spare_seconds),
        safety_days=safety_days,
        closed=tuple(day for day in ahead if why_closed(calendar, day)),
        binds=None if told.binds is None else picture.box_by_id(told.binds.box_id).box.number,
    )


def can_do(
    picture: Picture,
    knives: Inside,
    goes_by: GoesBy,
    carrier_days: int,
    day: date,
    at: time | None = None,
) -> Answer | None:
    """Whether a box with these knives can be ready or in hand by a day, or by a time of it; None without bench time."""
    moment = _moment(picture, goes_by, carrier_days, day, at)
    if picture.ledger is None or not knives:
        return None
    if moment < picture.now:
        return Answer(yes=False, sure_permille=0, costs=(), presses=None, why=WhyNot.OVER)
    ledger = picture.ledger.with_moments((moment,))
    cutoff = ledger.cutoff_of(moment)
    if cutoff is None:
        return None
    margins, here_from = _margins(picture, today=day == picture.now.date()), _here_from(picture, ledger, knives)
    told = can_do_by(ledger.promised, _new_box(picture, knives), cutoff, margins, here_from)
    boxes = ((picture.box_by_id(cost.box_id), cost.late_seconds) for cost in told.costs)
    return Answer(
        yes=told.yes,
        sure_permille=round(1000 * told.chance_holds),
        costs=tuple(
            Late(number=box.box.number, customer=box.customer.name, minutes=_minutes(seconds)) for box, seconds in boxes
        ),
        presses=None if told.presses is None else picture.box_by_id(told.presses.box_id).box.number,
        why=_why_not(told),
    )


def shut_on(picture: Picture, day: date) -> Answer | None:
    """The no to a day on which nobody can fetch anything, since the shop is shut; None when it opens."""
    calendar = _calendar(picture)
    reason = why_closed(calendar, day)
    if reason is None:
        return None
    after = (day + timedelta(days=ahead) for ahead in range(1, YEAR_DAYS))
    opens = next((later for later in after if why_closed(calendar, later) is None), None)
    return Answer(yes=False, sure_permille=0, costs=(), presses=None, why=WhyNot.SHUT, shut=reason, opens=opens)


def _why_not(told: Told) -> WhyNot | None:
    if told.yes:
        return None
    if told.costs:
        return WhyNot.MAKES_LATE
    if told.presses is None:
        return WhyNot.TOO_MUCH
    if told.presses.late:
        return WhyNot.BEHIND_LATE
    return WhyNot.PRESSED if told.pressed_already else WhyNot.PRESSES


def rush_minutes(picture: Picture, day: date) -> int:
    """Bench minutes that new work may still take and be ready that day, with every promise kept; 0 on a closed day."""
    moments = [moment for moment in _leaving(picture, GoesBy.PICK_UP) if moment.date() == day]
    if picture.ledger is None or not moments:
        return 0
    ledger = picture.ledger.with_moments(moments[-1:])
    cutoff = ledger.cutoff_of(moments[-1])
    return 0 if cutoff is None else max(0, rush_seconds(ledger.promised, cutoff, _margins(picture, today=True)) // 60)


def week(picture: Picture, days: int = 7) -> tuple[DayLoad, ...]:
    """Today and the days after it."""
    today, calendar = picture.now.date(), _calendar(picture)
    return tuple(_load(picture, calendar, today + timedelta(days=offset)) for offset in range(days))


def minutes_after(picture: Picture, day: date) -> int:
    """Minutes of the plan that come after a day."""
    bench = None if picture.ledger is None else picture.ledger.bench
    days = _days(picture.now.date(), day + timedelta(days=1))
    before = 0 if bench is None else sum(map(bench.clock.seconds_on, days)) * bench.rules.people
    return max(0, _minutes(_work_seconds(picture) - before))


def _work_seconds(picture: Picture) -> int:
    """The plan's runs, and behind them what boxes in the door that are not opened should take."""
    return sum(run.end_second - run.start_second for run in picture.plan.runs) + picture.plan.unopened_seconds


def _load(picture: Picture, calendar: ShopCalendar, day: date) -> DayLoad:
    there = planned = 0
    if picture.ledger is not None:
        bench = picture.ledger.bench
        there = bench.clock.seconds_on(day) * bench.rules.people
        before = sum(bench.clock.seconds_on(other) for other in _days(picture.now.date(), day)) * bench.rules.people
        planned = max(0, _work_seconds(picture) - before)
    due = [box for box in picture.boxes if box.ship_by is not None and box.ship_by.date() == day]
    closed_boxes = {box.box.id for box in due if not box.box.opened}
    unseen = 0 if picture.ledger is None else picture.ledger.seconds_of(closed_boxes)
    return DayLoad(
        day=day,
        there_minutes=there // 60,
        planned_minutes=min(there // 60, _minutes(planned)),
        due_minutes=sum(box.forecast.minutes_left for box in due) + _minutes(unseen),
        closed=why_closed(calendar, day) or "",
    )


def _days(first: date, until: date) -> tuple[date, ...]:
    return tuple(first + timedelta(days=offset) for offset in range((until - first).days))


def _leaving(picture: Picture, goes_by: GoesBy, days: int = LEAVING_DAYS) -> tuple[datetime, ...]:
    """The moments still to come at which boxes can leave."""
    moments = leaving_moments(_calendar(picture), picture.now.date(), days, goes_by)
    return tuple(moment for moment in moments if moment >= picture.now)


def _moment(picture: Picture, goes_by: GoesBy, carrier_days: int, day: date, at: time | None) -> datetime:
    kind = PromiseKind.DAY if at is None else PromiseKind.BY_TIME
    wish = Promise(id=NEW, box_id=NEW, kind=kind, day=day, at=at, told_at=picture.now, told_by="")
    moment = ship_by(_calendar(picture), wish, goes_by, carrier_days)
    return picture.now if moment is None else moment


def _margins(picture: Picture, *, today: bool = False) -> Margins:
    """What is kept free; for somebody who stands in the door today nothing is kept for walk-ins."""
    from statistics import NormalDist

    planning = picture.settings.planning
    return Margins(
        spreads=NormalDist().inv_cdf(planning.sure_percent / 100),
        walk_in_seconds=0 if today else planning.walk_in_minutes * 60,
    )


def _here_from(picture: Picture, ledger: Ledger, knives: Inside) -> int:
    """The bench second before which it cannot be begun; nobody knows when the post comes: not on its first day."""
    if not isinstance(knives, Unseen) or knives.here:
        return 0
    today = picture.now.date()
    begins = max(knives.comes_on or today, today) + timedelta(days=1)
    return ledger.bench.seconds_before(datetime.combine(begins, time(), tzinfo=picture.now.tzinfo))


def _new_box(picture: Picture, knives: Inside) -> QueueBox:
    if isinstance(knives, Unseen):
        guess = Guess(process=0, knife_seconds=60 * picture.settings.planning.announced_minutes)
        return announced(guess, NEW, 1 - KNIVES_APART, knives.knives)
    names = [process.name for process in picture.settings.processes]
    factors = picture.minutes.learned.processes
    made: list[QueueKnife] = []
    for place, knife in enumerate(knives):
        process = names.index(_process(picture.settings, knife))
        seconds = factors[process].learned(60 * _starter_minutes(picture.settings, knife))
        made.append(QueueKnife(id=NEW - place, process=process, seconds=seconds))
    return QueueBox(id=NEW, due=None, knives=tuple(made))


def _process(settings: Settings, knife: NewKnife) -> str:
    kind = settings.kind(knife.kind)
    return settings.processes[0].name if kind is None else process_of(settings, kind, knife.edge).name


def _starter_minutes(settings: Settings, knife: NewKnife) -> int:
    """By kind, edge and condition; what the shop declines takes no bench time."""
    return minutes_of(settings, knife.kind, knife.edge, knife.condition) or 0


def _calendar(picture: Picture) -> ShopCalendar:
    return ShopCalendar(picture.settings, dict(picture.closed_days))


def _minutes(seconds: int) -> int:
    return (seconds + 30) // 60
