"""What is offered to somebody at the counter: today by a time while that holds, else the earliest day."""

from datetime import UTC, date, datetime, time

import pytest

from queueboard.seedfiles import seed_text
from queueboard.shop.looking import look
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.walk_in import told_at_counter
from queueboard.shop.wishing import Wish, advise
from queueboard.values.new import NewPromise
from queueboard.words import GoesBy, PromiseKind
from tests.shop.place import by, chef, counter

MONDAY, TUESDAY = date(2026, 11, 9), date(2026, 11, 10)


def at(day: date, hour: int, minute: int = 0) -> datetime:
    """An instant by the shop's wall clock, which is five hours behind in November."""
    return datetime(day.year, day.month, day.day, hour + 5, minute, tzinfo=UTC)


@pytest.mark.parametrize(
    ("now", "told"),
    [
        (at(MONDAY, 9), NewPromise(kind=PromiseKind.BY_TIME, day=MONDAY, at=time(16))),
        (at(MONDAY, 17, 50), NewPromise(kind=PromiseKind.DAY, day=TUESDAY)),
        (at(date(2026, 11, 15), 10), NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 16))),
    ],
)
def test_what_a_knife_is_told(shop: Shop, now: datetime, told: NewPromise) -> None:
    """In the morning today by the ready-by time; when the bench is over, or on a Sunday, the next day that holds."""
    assert told_at_counter(look(shop, now), (chef(),)) == told


def test_what_is_offered_can_be_done(shop: Shop) -> None:
    """However full the bench is, the plan says yes to what it offers, and an earlier day would be a no."""
    for knives in (4, 12, 30, 60):
        counter(shop, knives=knives, name=f"Kitchen {knives}")
        seen = look(shop, at(MONDAY, 9))
        told = told_at_counter(seen, (chef(),) * 6)
        assert told is not None
        asked = Wish(knives=(chef(),) * 6, goes_by=GoesBy.PICK_UP, kind=told.kind, day=told.day, at=told.at)
        advice = advise(seen, asked)
        assert advice is not None
        assert advice.answer is not None
        assert advice.answer.yes
        assert told.kind is PromiseKind.DAY or told.day == MONDAY


def test_a_day_that_ends_early_is_told_by_its_end(shop: Shop) -> None:
    """Where the shop shuts before its ready-by time, nothing is told for later than that."""
    early = seed_text("settings.toml").replace('ready_by = "16:00"', 'ready_by = "23:00"')
    take_settings(shop, by(), early)
    seen = look(shop, at(MONDAY, 9))

    told = told_at_counter(seen, (chef(),))

    assert told is not None
    assert told.at == seen.settings.hours[0][-1][1]


def test_nothing_is_told_without_bench_time(shop: Shop) -> None:
    """A shop that stays shut offers nothing."""
    shut = '\n[[closures]]\nfirst = 2026-11-01\nlast = 2027-10-31\nreason = "away"\n'
    take_settings(shop, by(), seed_text("settings.toml") + shut)

    assert told_at_counter(look(shop, at(MONDAY, 9)), (chef(),)) is None
