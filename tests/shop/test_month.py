"""A month's figures out of the file, held against a second computation that uses none of our code."""

from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from queueboard.errors import RuleError
from queueboard.figures.month import Month, MonthFigures, month_of
from queueboard.priced_words import MoneySort
from queueboard.shop import money, moving, noting, promising, running, undoing
from queueboard.shop.month_seen import figures_of
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.owing import owing
from queueboard.values.actor import Actor
from queueboard.values.box import Box
from queueboard.values.new import NewPayment, NewPromise
from queueboard.words import Column, DeclineReason, PayWay, PromiseKind, Settling
from tests import lending
from tests.second_opinion import SecondOpinion
from tests.shop.place import MORNING, NOW, box, by, cash, counter, demo_shop, parcel, picture, small_shop
from tests.shop.undo_charging import gone_as
from tests.shop.undo_running import only_run

ZONE = ZoneInfo("America/New_York")
NOVEMBER = Month(date(2026, 11, 1))
DAY = 24 * 60


def agree(shop: Shop, figures: MonthFigures, zone: ZoneInfo) -> None:
    """Hold a month against the second computation."""
    other = SecondOpinion(shop.database.raw(), figures.month.first, zone)
    assert {kind.kind: kind.knives for kind in figures.kinds if kind.knives} == other.by_kind()
    assert {day: count for day, count in figures.a_day if count} == Counter(other.ready().values())
    assert {way.way.value: way.in_cents - way.back_cents for way in figures.ways} == {
        **{way.value: 0 for way in PayWay},
        **other.money,
    }
    assert (figures.tested, figures.not_ok) == (other.tested, other.not_ok)
    assert (Counter(dict(figures.belts)), figures.call_backs) == (other.belts, other.call_backs)
    assert (figures.boxes, figures.box_knives) == (other.boxes, other.box_knives)
    assert figures.declined == other.declined()


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shop]:
    """The invented shop on a morning in November."""
    shop = demo_shop(tmp_path_factory.mktemp("demo") / "demo.qb", MORNING)
    yield shop
    close_shop(shop)


@pytest.mark.parametrize("month", [date(2026, 10, 1), date(2026, 11, 1), date(2026, 12, 1)], ids=str)
def test_the_invented_shop_s_months_are_those_of_the_second_computation(demo: Shop, month: date) -> None:
    """Before, in and after the month in which all of it happened."""
    figures = figures_of(demo, MORNING, Month(month))

    agree(demo, figures, ZONE)
    accounts = owing(demo, MORNING)
    if month.month == 11:
        assert figures.knives > 100
        assert figures.owed_cents == sum(account.owed_cents for account in accounts)
        assert figures.worst is not None
        assert figures.worst.cents == max(account.owed_cents for account in accounts)


def test_the_invented_shop_s_late_boxes_are_late_in_its_month(demo: Shop) -> None:
    """405 was put off and is here still, and of 407 a knife is looked for; all others held, by the bare file."""
    figures = figures_of(demo, MORNING, NOVEMBER)

    held = SecondOpinion(demo.database.raw(), NOVEMBER.first, ZONE).kept(MORNING.date())
    late = {(405, "2026-11-21"), (405, "2026-11-24"), (407, "2026-11-24")}
    assert {told for told, kept in held.items() if not kept} == late
    last = dict(sorted(held))
    first = dict(sorted(held, reverse=True))
    for seen, dates in ((figures.first_told, first), (figures.last_told, last)):
        assert (seen.told, seen.kept) == (len(dates), sum(held[one] for one in dates.items()))
    assert (figures.last_told.told, figures.last_told.kept) == (14, 12)


@contextmanager
def fresh() -> Iterator[Shop]:
    """A shop for one example."""
    with TemporaryDirectory() as folder:
        shop = small_shop(Path(folder))
        try:
            yield shop
        finally:
            close_shop(shop)
            lending.finished(shop.path)


ACTS = st.lists(
    st.tuples(
        st.integers(0, 14 * 60),
        st.sampled_from(["box", "ready", "back", "decline", "pay", "refund", "undo", "gone", "complaint"]),
        st.sampled_from(PayWay),
    ),
    min_size=1,
    max_size=14,
)
"""Minutes times 6 after the one before, what is done, and how money moves: up to a few months."""


def act(shop: Shop, minutes: int, what: str, way: PayWay, groups: list[str]) -> None:
    """Do one thing; RuleError where it cannot be done now."""
    actor = by(minutes=minutes)
    seen = picture(shop, minutes=minutes)
    if what == "box":
        counter(shop, knives=3)
    elif what == "gone":
        gone_as(shop, Settling.ON_ACCOUNT, minutes=minutes)
    elif what == "undo" and groups:
        undoing.undo(shop, actor, groups.pop())
        return
    if not seen.boxes or what in ("box", "gone", "undo"):
        return
    first = seen.boxes[0]
    if what == "ready":
        moving.move_knives(shop, actor, first.knives[:2], Column.READY)
    elif what == "back":
        moving.move_knives(shop, actor, first.knives, Column.ON_BENCH)
    elif what == "decline" and first.knives[-1].declined is None:
        noting.decline_knife(shop, actor, first.knives[-1], DeclineReason.CRACKED, "9 mm")
    elif what == "complaint":
        promising.set_flags(shop, actor, first.box, complaint=not first.box.complaint)
    elif what == "pay" or (what == "refund" and first.paid_cents > 0):
        sort = MoneySort.REFUND if what == "refund" else MoneySort.PAYMENT
        cents = min(first.paid_cents, 300) if what == "refund" else 700
        new = NewPayment(cents=cents, way=way, paid_before_cents=first.paid_cents, sort=sort)
        money.take_payment(shop, actor, first.box, new)
        return  # undoing it asks for a reason, and other money may rest on it
    if shop_grew(shop, seen.last_line, minutes):
        groups.append(actor.group_id)


def shop_grew(shop: Shop, line: int, minutes: int) -> bool:
    """True when something was written down since."""
    return picture(shop, minutes=minutes).last_line > line


@pytest.mark.own_folder
@settings(max_examples=12)
@given(ACTS)
def test_months_that_nobody_made_up_are_those_of_the_second_computation(acts: list[tuple[int, str, PayWay]]) -> None:
    """Boxes, moves to and fro, declines, money both ways, complaints and undo over months, in any order."""
    with fresh() as shop:
        minutes, groups = 0, list[str]()
        for gap, what, way in acts:
            minutes += 6 * gap
            with suppress(RuleError):
                act(shop, minutes, what, way, groups)
        now = NOW + timedelta(minutes=minutes + 1)
        month = NOVEMBER
        while month.first <= now.astimezone(ZONE).date():
            agree(shop, figures_of(shop, now, month), ZONE)
            month = month.after


def test_a_knife_that_comes_to_ready_again_counts_in_its_first_month(shop: Shop) -> None:
    """Ready in November, back to the bench and ready again in December: November's figure stays, December has none."""
    made = counter(shop)
    moving.move_knives(shop, by(), made.knives, Column.READY)
    moving.move_knives(shop, by(minutes=25 * DAY), box(shop, made.box.number).knives, Column.ON_BENCH)
    moving.move_knives(shop, by(minutes=26 * DAY), box(shop, made.box.number).knives, Column.READY)

    later = NOW + timedelta(days=30)

    assert figures_of(shop, later, NOVEMBER).knives == 2
    assert figures_of(shop, later, NOVEMBER.after).knives == 0


@pytest.mark.parametrize(
    ("utc", "month"),
    [("2026-11-01T03:59", 10), ("2026-11-01T04:00", 11), ("2026-12-01T04:59", 11), ("2026-12-01T05:00", 12)],
)
def test_a_month_ends_at_midnight_on_the_shop_s_own_wall(shop: Shop, utc: str, month: int) -> None:
    """November 2026 in New York begins by summer time and ends by standard time."""
    made = counter(shop)
    at = Actor(initials="J", now=datetime.fromisoformat(utc).replace(tzinfo=UTC))
    money.take_payment(shop, at, made.box, cash(900))

    taken = {n: figures_of(shop, NOW, Month(date(2026, n, 1))).in_cents for n in (10, 11, 12)}

    assert taken == {**dict.fromkeys((10, 11, 12), 0), month: 900}


def test_what_is_owed_at_a_month_s_end_stays_what_it_was(shop: Shop) -> None:
    """18.00 left on account in November and paid in December is owed at November's end and not at December's."""
    gone: Box = gone_as(shop, Settling.ON_ACCOUNT)
    paid = by(minutes=25 * DAY)
    money.pay_account(shop, paid, gone, cash(1800))
    later = NOW + timedelta(days=60)

    november, december = figures_of(shop, later, NOVEMBER), figures_of(shop, later, NOVEMBER.after)

    assert (november.owed_cents, december.owed_cents) == (1800, 0)
    assert (november.in_cents, december.in_cents) == (0, 1800)
    assert november.worst is not None
    assert november.worst.customer.name == "Ms Verrin"
    assert november.best is None


def test_both_dates_told_are_judged(shop: Shop) -> None:
    """Told Tuesday, put off to the Tuesday after, ready on Thursday: not on time by the first, on time by the last."""
    made = counter(shop)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 17), told_to="Ms Verrin", reason="belts late")
    promising.promise(shop, by(minutes=DAY), made.box, later)
    moving.move_knives(shop, by(minutes=3 * DAY), made.knives, Column.READY)

    figures = figures_of(shop, NOW + timedelta(days=20), NOVEMBER)

    assert (figures.first_told.told, figures.first_told.kept) == (1, 0)
    assert (figures.last_told.told, figures.last_told.kept) == (1, 1)


def test_a_run_tells_the_minutes_of_its_kinds(shop: Shop) -> None:
    """Two chefs timed for a quarter of an hour, set-up taken off; a run left for a night tells nothing."""
    made, again = counter(shop), parcel(shop)
    running.start_run(shop, by(), "plain", made.knives, 90)
    run = running.finish_run(shop, by(minutes=15), only_run(shop))

    (chef,) = figures_of(shop, NOW + timedelta(days=1), month_of(NOW.date())).kinds

    assert (chef.kind, chef.timed, chef.knives) == ("chef", 2, 0)
    assert chef.measured_seconds == 15 * 60 - 90
    assert chef.listed_seconds == run.starter_seconds
    running.start_run(shop, by(minutes=20), "plain", again.knives, 90)
    running.finish_run(shop, by(minutes=20 + DAY), only_run(shop))
    assert figures_of(shop, NOW + timedelta(days=2), NOVEMBER).kinds[0].timed == 2
