"""What can be told to somebody at the counter: the same day by a time if that holds, else the earliest day."""

from datetime import datetime, time

from queueboard.calendar.days import ShopCalendar, closes_at
from queueboard.shop.picture import Picture
from queueboard.shop.wishing import Wish, advise
from queueboard.values.new import NewKnife, NewPromise
from queueboard.words import GoesBy, PromiseKind


def told_at_counter(picture: Picture, knives: tuple[NewKnife, ...]) -> NewPromise | None:
    """The promise to offer for a pick-up of these knives; None where no day can be told.

    Today is offered by the shop's ready-by time, or when it shuts where only that holds; days for safety are for days.
    """
    for at in _times_today(picture):
        by_time = Wish(knives=knives, goes_by=GoesBy.PICK_UP, kind=PromiseKind.BY_TIME, day=picture.now.date(), at=at)
        advice = advise(picture, by_time)
        if advice is not None and advice.answer is not None and advice.answer.yes:
            return NewPromise(kind=PromiseKind.BY_TIME, day=picture.now.date(), at=at)
    advice = advise(picture, Wish(knives=knives, goes_by=GoesBy.PICK_UP))
    if advice is None or advice.day_to_tell is None:
        return None
    return NewPromise(kind=PromiseKind.DAY, day=advice.day_to_tell)


def _times_today(picture: Picture) -> tuple[time, ...]:
    """The times of today that are still to come and could be told: ready-by, then when the shop shuts."""
    now = picture.now
    shuts = closes_at(ShopCalendar(picture.settings, dict(picture.closed_days)), now.date())
    if shuts is None:
        return ()
    times = sorted({min(picture.settings.ready_by, shuts), shuts})
    return tuple(at for at in times if datetime.combine(now.date(), at, tzinfo=now.tzinfo) > now)
