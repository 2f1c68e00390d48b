"""Closing the day: the dust tray, the money counted, and the day written down as closed."""

from datetime import date

from queueboard.calendar.days import day_ends
from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.figures.evening import money_by_way
from queueboard.records.evening import closed_day, dust_tray, till_counts
from queueboard.records.evening_tables import DayCloseRow, DustLookRow, TillCountRow
from queueboard.records.instants import to_us
from queueboard.records.reading import payments_of
from queueboard.records.writing import Writing
from queueboard.settings.shapes import MOST_CENTS
from queueboard.shop.days import today_of
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import settings_in
from queueboard.values.evening import DustTray, TillCount
from queueboard.words import PayWay


@operation()
def empty_dust(writing: Writing) -> None:
    """The dust tray is emptied or wetted and looked at. Once more on the same day begins the wait again."""
    writing.insert(
        DustLookRow,
        day=today_of(writing).isoformat(),
        after_id=None,
        looked_us=writing.now_us,
        looked_by=writing.actor.initials,
    )


@operation()
def look_at_dust_again(writing: Writing, seen: DustTray) -> None:
    """The second look at the dust tray; refused before the shop's minutes have gone. It is no all-clear."""
    settings = settings_in(writing.database)
    newest = dust_tray(writing.database, seen.day)
    if newest is None or newest.id != seen.id:
        raise RuleError("The dust tray was emptied again meanwhile, or its first look taken back; look again.")
    if newest.again_at is not None:
        raise RuleError(f"{newest.again_by} has looked at the dust tray again already.")
    minutes = settings.evening.second_look_minutes
    due = newest.again_from(minutes)
    if writing.actor.now < due:
        left = -((writing.actor.now - due).total_seconds() // 60)
        raise RuleError(
            f"Not yet: what smoulders may take its time. Look again from {due.astimezone(settings.zone):%H:%M} on, "
            f"{minutes} min after it was emptied; {left:.0f} min to go."
        )
    writing.insert(
        DustLookRow,
        day=seen.day.isoformat(),
        after_id=seen.id,
        looked_us=writing.now_us,
        looked_by=writing.actor.initials,
    )


@operation()
def count_till(writing: Writing, day: date, way: PayWay, counted_cents: int, seen: TillCount | None) -> int:
    """Write down what was counted of one way for a day, 0 to 99999.99; counted again, the newer count holds.

    seen: the day's count as it was shown, None for none. Returns by how many cents it is too much.
    """
    if not 0 <= counted_cents <= MOST_CENTS:
        raise TypedError(f"{counted_cents / 100:.2f} is outside 0 to 99999.99.")
    _insist_begun(writing, day)
    _insist_open(writing, day)
    should = should_lie_there(writing, day, way)
    writing.tell(to=way.value, cents=counted_cents)
    values: dict[str, int | str | None] = {
        "should_cents": should,
        "counted_cents": counted_cents,
        "counted_us": writing.now_us,
        "counted_by": writing.actor.initials,
    }
    if seen is None:
        writing.insert(TillCountRow, day=day.isoformat(), way=way.value, **values)
    else:
        writing.change(TillCountRow, seen.id, seen.version, **values)
    return counted_cents - should


def should_lie_there(writing: Writing, day: date, way: PayWay) -> int:
    """What should lie there of one way, in cents."""
    settings = settings_in(writing.database)
    first, end = day_ends(settings.zone, day)
    payments = payments_of(writing.database, "at_us >= ? AND at_us < ?", to_us(first), to_us(end))
    counts = till_counts(writing.database, day)
    ways = money_by_way(payments, counts, settings.evening.change_cents)
    return next(one.should_cents for one in ways if one.way is way)


@operation()
def close_day(writing: Writing, day: date, not_done: int, note: str = "") -> None:
    """Close a day that has begun.

    not_done: boxes that are due and not done, at least 0. note: what the next morning should know, 0 to 500 signs.
    """
    _insist_begun(writing, day)
    _insist_open(writing, day)
    writing.tell(to=day.isoformat())
    writing.insert(
        DayCloseRow,
        day=day.isoformat(),
        not_done=not_done,
        note=clean(note, limit=500, field="note"),
        closed_us=writing.now_us,
        closed_by=writing.actor.initials,
    )


def _insist_begun(writing: Writing, day: date) -> None:
    today = today_of(writing)
    if day > today:
        raise RuleError(f"{day.isoformat()} has not come; today is {today.isoformat()}.")


def _insist_open(writing: Writing, day: date) -> None:
    closed = closed_day(writing.database, day)
    if closed is not None:
        raise RuleError(f"{day.isoformat()} is closed already, by {closed.by}; u takes the closing back first.")
