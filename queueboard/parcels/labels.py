"""Return labels to buy or to use, by the last day on which using them still works."""

from collections.abc import Iterable
from datetime import UTC, date, datetime, timedelta

from queueboard.calendar.counting import on_or_before
from queueboard.calendar.days import ShopCalendar, can_ship
from queueboard.parcels.cutoffs import leaves_at
from queueboard.values.box import ReturnLabel
from queueboard.values.label import LabelDue
from queueboard.words import LabelState, LabelWord

_WORST_FIRST = (
    LabelWord.TOO_LATE,
    LabelWord.DIES_TODAY,
    LabelWord.BUY_TODAY,
    LabelWord.DIES_TOMORROW,
    LabelWord.BUY,
    LabelWord.GOOD,
)


def last_use_day(calendar: ShopCalendar, expires_on: date) -> date:
    """The last day up to the expiry on which a parcel can leave: the shop is open and the carrier collects."""
    return on_or_before(expires_on, lambda day: can_ship(calendar, day))


def label_due(
    calendar: ShopCalendar,
    label: ReturnLabel | None,
    ship_by: datetime | None,
    now: datetime,
    box_id: int,
    finish: datetime | None = None,
) -> LabelDue | None:
    """What a box's return label demands at *now*; None without a label, or with one that is used.

    - to buy: BUY, from the day of the ship-by on BUY TODAY; a label is bought on the packing day, for its days count.
    - here, without an expiry: good.
    - here: CANNOT BE USED IN TIME once the packing cut-off of its last day of use has passed, or when the plan finishes
      the box (*finish*) after that; DIES TODAY and DIES TOMORROW when that day is today or tomorrow in the calendar;
      good before that. The last day of use may come before the expiry: a label that expires on a Sunday dies on Friday.

    Instants are aware; *ship_by* and *finish* may be None when nothing is promised or nothing is left to do.
    """
    if label is None or label.state is LabelState.USED:
        return None
    today = now.astimezone(calendar.settings.zone).date()
    last_day = last_use_day(calendar, label.expires_on) if label.expires_on else None
    if label.state is LabelState.TO_BUY:
        due = ship_by is not None and ship_by.date() <= today
        return LabelDue(box_id=box_id, word=LabelWord.BUY_TODAY if due else LabelWord.BUY, last_day=last_day)
    if last_day is None:
        return LabelDue(box_id=box_id, word=LabelWord.GOOD, last_day=None)
    in_use = max(now, finish or now, key=lambda instant: instant.astimezone(UTC))
    if in_use.astimezone(UTC) > leaves_at(calendar, last_day).astimezone(UTC):
        return LabelDue(box_id=box_id, word=LabelWord.TOO_LATE, last_day=last_day)
    near = {today: LabelWord.DIES_TODAY, today + timedelta(days=1): LabelWord.DIES_TOMORROW}
    return LabelDue(box_id=box_id, word=near.get(last_day, LabelWord.GOOD), last_day=last_day)


def worst_first(dues: Iterable[LabelDue]) -> tuple[LabelDue, ...]:
    """The labels by how little time they leave: by word, then by last day, those without one last."""
    return tuple(sorted(dues, key=lambda due: (_WORST_FIRST.index(due.word), due.last_day or date.max, due.box_id)))
