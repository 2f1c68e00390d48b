"""The figures of a month, worked out by hand and by invariants."""

from collections import Counter
from dataclasses import replace
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.figures.evening import Placed
from queueboard.figures.month import Debt, Month, MonthSeen, TimedRun, month_figures, month_of
from queueboard.money.bill import Bill
from queueboard.values.measured import ToldSeen
from queueboard.words import Column, PayWay, PromiseKind
from tests.figures.test_evening import paid
from tests.pictures import customer, knife

ZONE = ZoneInfo("America/New_York")
NOVEMBER = Month(date(2026, 11, 1))
EMPTY = MonthSeen(
    month=NOVEMBER,
    ready=(),
    closed=(),
    told=(),
    tested=(),
    call_backs=0,
    declined=0,
    runs=(),
    payments=(),
    debts=(),
    belts=(),
)


def at(day: int, hour: int = 12) -> datetime:
    """An hour of a day in November."""
    return datetime(2026, 11, day, hour, tzinfo=ZONE)


def told(*, first: bool, last: bool, kept: bool) -> ToldSeen:
    """A date told."""
    return ToldSeen(
        box_id=1,
        number=417,
        kind=PromiseKind.DAY,
        day=date(2026, 11, 9),
        told_at=at(2),
        first=first,
        replaced=not last,
        cut_off=at(9),
        done_at=None,
        kept=kept,
    )


@given(st.dates(date(1990, 1, 1), date(2100, 12, 31)))
def test_months_follow_each_other_without_a_gap(day: date) -> None:
    """The days of a month and of the next one are all days, each once, and a day lies in its own month."""
    month = month_of(day)

    assert day in month.days
    assert month.days[-1] + timedelta(days=1) == month.after.first == month.end
    assert month.after.before == month
    assert {one.month for one in month.days} == {day.month}


def test_knives_are_counted_by_kind_and_day() -> None:
    """Two chefs on the second, a bread late on the 30th: the kind with most stands first; every day has its count."""
    chefs = [Placed(at=at(2), knife=knife("417-1", kind="chef")), Placed(at=at(2), knife=knife("417-2", kind="chef"))]
    late = Placed(at=at(30, 23), knife=knife("417-3", kind="bread"))

    figures = month_figures(replace(EMPTY, ready=(late, *chefs)))

    assert [(one.kind, one.knives) for one in figures.kinds] == [("chef", 2), ("bread", 1)]
    assert dict(figures.a_day) == {**dict.fromkeys(NOVEMBER.days, 0), date(2026, 11, 2): 2, date(2026, 11, 30): 1}
    assert figures.knives == 3


@given(st.lists(st.tuples(st.integers(1, 30), st.sampled_from(["chef", "bread", "paring"]))))
def test_days_and_kinds_hold_the_same_knives(done: list[tuple[int, str]]) -> None:
    """However many came to ready, the days together are the kinds together; each count is Counter's own."""
    ready = tuple(Placed(at=at(day), knife=knife(f"417-{n}", kind=kind)) for n, (day, kind) in enumerate(done, 1))

    figures = month_figures(replace(EMPTY, ready=ready))

    assert {one.kind: one.knives for one in figures.kinds} == Counter(kind for _, kind in done)
    assert {day.day: count for day, count in figures.a_day if count} == Counter(day for day, _ in done)
    assert sum(count for _, count in figures.a_day) == figures.knives == len(done)


def test_a_date_told_later_hides_no_broken_one() -> None:
    """Told, broken, told again and kept: by the first date 1 of 2 on time, by the last 2 of 2."""
    judged = (
        told(first=True, last=False, kept=False),
        told(first=False, last=True, kept=True),
        told(first=True, last=True, kept=True),
    )

    figures = month_figures(replace(EMPTY, told=judged))

    assert (figures.first_told.kept, figures.first_told.told) == (1, 2)
    assert (figures.last_told.kept, figures.last_told.told) == (2, 2)


def test_the_minutes_of_a_run_are_shared_as_the_list_has_them() -> None:
    """30 minutes over chefs of 6, 6 and a bread of 3 minutes listed: 12 each and 6; a run without a list evenly."""
    run = TimedRun(hands_on_seconds=1800, knives=(("chef", 360), ("chef", 360), ("bread", 180)))

    chef, bread = sorted(month_figures(replace(EMPTY, runs=(run,))).kinds, key=lambda one: -one.timed)

    assert (chef.measured_seconds, chef.listed_seconds, chef.timed, chef.knives) == (1440, 720, 2, 0)
    assert (bread.measured_seconds, bread.listed_seconds, bread.timed) == (360, 180, 1)
    odd = TimedRun(hands_on_seconds=60, knives=(("chef", 0), ("bread", 0)))
    assert [one.measured_seconds for one in month_figures(replace(EMPTY, runs=(odd,))).kinds] == [30, 30]


@given(
    st.lists(
        st.tuples(
            st.integers(0, 20_000),
            st.lists(st.tuples(st.sampled_from(["chef", "bread"]), st.integers(0, 3600)), min_size=1, max_size=9),
        )
    )
)
def test_no_second_of_a_run_is_lost(runs: list[tuple[int, list[tuple[str, int]]]]) -> None:
    """All kinds together took what all runs took."""
    timed = tuple(TimedRun(hands_on_seconds=seconds, knives=tuple(knives)) for seconds, knives in runs)

    figures = month_figures(replace(EMPTY, runs=timed))

    assert sum(one.measured_seconds for one in figures.kinds) == pytest.approx(sum(seconds for seconds, _ in runs))
    assert sum(one.timed for one in figures.kinds) == sum(len(knives) for _, knives in runs)


def test_averages_are_of_what_was_handed_over() -> None:
    """A box of two at 9.00 and one of which only one of two came back: 3 knives in 2 boxes, 27.00."""
    gone = [knife(f"417-{n}", column=Column.GONE, price_cents=900) for n in (1, 2, 3)]
    lost = knife("418-2", column=Column.READY, price_cents=900, looking_for=True)
    bills = (Bill(knives=tuple(gone[:2])), Bill(knives=(gone[2], lost)))

    figures = month_figures(replace(EMPTY, closed=bills))

    assert (figures.boxes, figures.box_knives, figures.box_cents) == (2, 3, 2700)


def test_best_and_worst_are_customers_and_not_boxes() -> None:
    """Two boxes of one customer are added up; refunds count against who got them; nobody is best at nothing."""
    tallis, oake = customer("Tallis", id=1), customer("Oake", id=2)
    payments = ((paid(3000), tallis), (paid(2000), oake), (paid(2000, PayWay.CARD), oake))
    small = Debt(customer=tallis, cents=60)

    figures = month_figures(replace(EMPTY, payments=payments, debts=(Debt(customer=oake, cents=100), small, small)))

    assert figures.best == Debt(customer=oake, cents=4000)
    assert figures.worst == Debt(customer=tallis, cents=120)
    assert (figures.in_cents, figures.owed_cents) == (7000, 220)
    assert month_figures(EMPTY).best is None
    assert month_figures(EMPTY).worst is None
