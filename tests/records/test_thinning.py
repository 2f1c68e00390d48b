"""Which copies stay as they grow old."""

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from queueboard.records.thinning import DAILY, MONTHLY, WEEKLY, kept

FIRST = date(2024, 1, 1)

days = st.sets(st.integers(0, 1100), min_size=1, max_size=250).map(
    lambda numbers: sorted(FIRST + timedelta(days=number) for number in numbers)
)


def test_a_shop_open_every_day_keeps_what_was_decided() -> None:
    """After three years of daily copies 14 days, 8 weeks, 12 months and each year have theirs.

    Counted by hand: from 18 December 2026 back, weeks end on Sundays; the newest day stands for its own week, month
    and year.
    """
    every_day = [FIRST + timedelta(days=number) for number in range((date(2026, 12, 18) - FIRST).days + 1)]

    daily = [date(2026, 12, day) for day in range(5, 19)]
    weekly = [date(2026, 11, day) for day in (1, 8, 15, 22, 29)]
    monthly = [
        *(date(2026, 1, 31), date(2026, 2, 28), date(2026, 3, 31), date(2026, 4, 30), date(2026, 5, 31)),
        *(date(2026, 6, 30), date(2026, 7, 31), date(2026, 8, 31), date(2026, 9, 30), date(2026, 10, 31)),
        date(2026, 11, 30),
    ]
    yearly = [date(2024, 12, 31), date(2025, 12, 31)]
    assert sorted(kept(every_day)) == sorted([*daily, *weekly, *monthly, *yearly])


@given(days)
def test_thinning_every_day_keeps_what_thinning_once_would(opened: list[date]) -> None:
    """A copy that is wanted later is never thrown away early, whatever days the shop is open."""
    folder: frozenset[date] = frozenset()
    for day in opened:
        folder = kept({*folder, day})

    assert folder == kept(opened)


@given(days)
def test_the_newest_always_stay_and_old_ones_do_not_pile_up(opened: list[date]) -> None:
    """Of any days the newest fourteen stay; no more stay than all the rules together allow."""
    stays = kept(opened)

    assert set(opened[-DAILY:]) <= stays <= set(opened)
    assert len(stays) <= DAILY + WEEKLY + MONTHLY + len({day.year for day in opened})
