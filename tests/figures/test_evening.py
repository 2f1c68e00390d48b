"""The figures of a day, worked out by hand and by invariants."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

from hypothesis import given
from hypothesis import strategies as st

from queueboard.figures.evening import Placed, done_boxes, money_by_way, moved_dates
from queueboard.priced_words import MoneySort
from queueboard.values.box import Payment, Promise
from queueboard.values.evening import DustTray, TillCount
from queueboard.words import PayWay, PromiseKind
from tests.pictures import knife

NOW = datetime(2026, 11, 9, 17, 30, tzinfo=UTC)


def paid(cents: int, way: PayWay = PayWay.CASH, sort: MoneySort = MoneySort.PAYMENT) -> Payment:
    """Money that went one way or the other."""
    return Payment(id=1, box_id=1, cents=cents, way=way, at=NOW, by="MB", sort=sort)


def counted(should: int, there: int, way: PayWay = PayWay.CASH) -> TillCount:
    """A till as it was counted."""
    return TillCount(id=1, version=1, way=way, should_cents=should, counted_cents=there, at=NOW, by="MB")


def test_the_till_holds_change_and_cash_less_refunds() -> None:
    """100.00 of change, 41.00 and 9.00 taken, 5.00 given back: 145.00 should lie there; 144.50 is 50 cents short."""
    payments = [
        paid(4100),
        paid(900, sort=MoneySort.DEPOSIT),
        paid(500, sort=MoneySort.REFUND),
        paid(2000, PayWay.CARD),
    ]

    cash, card, transfer = money_by_way(payments, [counted(14500, 14450)], 10_000)

    assert (cash.in_cents, cash.back_cents, cash.should_cents, cash.payments) == (5000, 500, 14500, 3)
    assert cash.difference_cents == -50
    assert (card.should_cents, card.difference_cents) == (2000, None)
    assert (transfer.should_cents, transfer.payments) == (0, 0)


def test_money_after_the_count_is_told_apart_from_what_is_missing() -> None:
    """3.00 that came in after the count makes the till 3.00 short until it is counted again, and that is said."""
    cash, *_ = money_by_way([paid(4100), paid(300)], [counted(4100, 4100)], 0)

    assert (cash.difference_cents, cash.came_since_cents) == (-300, 300)


@given(st.lists(st.builds(paid, st.integers(1, 10**6), st.sampled_from(PayWay), st.sampled_from(MoneySort))))
def test_no_money_is_lost_between_the_ways(payments: list[Payment]) -> None:
    """All ways together come to what was paid, less what was given back, and each payment is in one way."""
    ways = money_by_way(payments, [], 0)

    assert sum(way.should_cents for way in ways) == sum(one.in_cents for one in payments)
    assert sum(way.payments for way in ways) == len(payments)


def test_a_knife_that_came_to_ready_twice_counts_once() -> None:
    """Boxes stand by their number, knives by their tag; one that went back to the bench and came again is one."""
    first, second, other = knife("420-2"), knife("420-1"), knife("417-1")
    ready = [Placed(at=NOW, knife=one) for one in (first, second, first)]

    boxes = done_boxes(ready, [Placed(at=NOW, knife=other)])

    assert [[one.tag for one in box.ready] for box in boxes] == [[], ["420-1", "420-2"]]
    assert [[one.tag for one in box.gone] for box in boxes] == [["417-1"], []]


def told(id: int, day: int, at: datetime) -> Promise:
    """A date told."""
    return Promise(
        id=id, box_id=1, kind=PromiseKind.DAY, day=date(2026, 11, day), told_at=at, told_by="MB", told_to="Oake"
    )


def test_only_a_date_in_place_of_another_is_moved() -> None:
    """The first date of a box is none that was moved; of three told, two took the place of one before."""
    promises = [told(1, 10, NOW - timedelta(days=3)), told(2, 12, NOW), told(3, 16, NOW + timedelta(minutes=9))]

    moved = moved_dates({1: promises, 2: [told(4, 10, NOW)]}, NOW.date())

    assert [(one.before.day.day, one.now.day.day) for one in moved] == [(10, 12), (12, 16)]
    assert moved_dates({1: promises}, date(2026, 11, 6)) == ()


def test_the_second_look_counts_real_minutes() -> None:
    """Twenty minutes on, also over the hour that comes twice in autumn (Berlin, 25 Oct 2026, 02:50 summer time)."""
    before = datetime(2026, 10, 25, 2, 50, tzinfo=ZoneInfo("Europe/Berlin"))
    tray = DustTray(id=1, day=before.date(), at=before, by="MB")

    assert tray.again_from(20) == datetime(2026, 10, 25, 1, 10, tzinfo=UTC)
