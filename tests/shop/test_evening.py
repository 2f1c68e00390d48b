"""The evening's operations, and a day as its sheet shows it."""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.records.evening import dust_tray
from queueboard.seedfiles import seed_text
from queueboard.shop import evening, money, moving, numbers, promising, undoing
from queueboard.shop.evening_seen import Evening, low_belts, not_done
from queueboard.shop.evening_seen import evening as seen_on
from queueboard.shop.opening import Shop
from queueboard.values.actor import Actor
from queueboard.values.new import NewPayment, NewPromise
from queueboard.words import Column, PayWay, PromiseKind
from tests.shop.place import NOW, box, by, cash, counter, parcel, picture
from tests.shop.undo_evening import emptied

TODAY = NOW.date()


def today(shop: Shop, *, minutes: int = 0) -> Evening:
    """The day so many minutes after NOW."""
    return seen_on(shop, picture(shop, minutes=minutes), TODAY)


@pytest.mark.parametrize(("minutes", "said"), [(0, "20 min to go"), (19.5, "1 min to go")])
def test_the_second_look_waits_its_minutes(shop: Shop, minutes: float, said: str) -> None:
    """Before the shop's minutes have gone it is refused with the time; nothing is stored."""
    tray = emptied(shop, minutes=0)

    with pytest.raises(RuleError, match=f"from 09:20 on, 20 min after it was emptied; {said}"):
        evening.look_at_dust_again(shop, by("K", minutes=minutes), tray)

    assert today(shop).dust is not None
    assert today(shop).dust.again_at is None  # type: ignore[union-attr]  # asserted above


def test_the_second_look_is_stored_once_with_its_initials(shop: Shop) -> None:
    """From the minute on it counts, once; the shop's own minutes decide."""
    numbers.take_settings(
        shop, by(), seed_text("settings.toml").replace("second_look_minutes = 20", "second_look_minutes = 45")
    )
    tray = emptied(shop, minutes=0)
    with pytest.raises(RuleError, match="Not yet"):
        evening.look_at_dust_again(shop, by("K", minutes=44), tray)

    evening.look_at_dust_again(shop, by("K", minutes=45), tray)

    dust = today(shop).dust
    assert dust is not None
    assert (dust.by, dust.again_by, dust.again_at) == ("J", "K", NOW + timedelta(minutes=45))
    with pytest.raises(RuleError, match="K has looked"):
        evening.look_at_dust_again(shop, by("K", minutes=46), tray)


def test_a_tray_emptied_again_begins_its_wait_anew(shop: Shop) -> None:
    """The newest emptying counts; a window that shows the older one is told so."""
    first = emptied(shop, minutes=0)
    emptied(shop, minutes=30)

    with pytest.raises(RuleError, match="emptied again meanwhile"):
        evening.look_at_dust_again(shop, by(minutes=31), first)


def test_a_first_look_is_not_taken_back_from_under_the_second(shop: Shop) -> None:
    """Undo of the emptying is refused while the second look rests on it."""
    actor = by()
    evening.empty_dust(shop, actor)
    tray = dust_tray(shop.database, TODAY)
    assert tray is not None
    evening.look_at_dust_again(shop, by(minutes=20), tray)

    with pytest.raises(RuleError, match="Later steps rest on this one"):
        undoing.undo(shop, by(minutes=21), actor.group_id)


def test_money_is_counted_against_what_should_be_there(shop: Shop) -> None:
    """The answer is by how much it is too much; a count of an older look is refused; each way has its own."""
    made = counter(shop)
    money.take_payment(shop, by(), made.box, cash(900))
    money.take_payment(
        shop, by(), box(shop, made.box.number).box, NewPayment(cents=700, way=PayWay.CARD, paid_before_cents=900)
    )

    assert evening.count_till(shop, by(), TODAY, PayWay.CASH, 850, None) == -50
    assert evening.count_till(shop, by(), TODAY, PayWay.CARD, 700, None) == 0
    with pytest.raises(RuleError, match="counted by somebody else"):
        evening.count_till(shop, by("K"), TODAY, PayWay.CASH, 900, None)
    cash_seen, card, transfer = today(shop).money
    assert cash_seen.count is not None
    evening.count_till(shop, by(), TODAY, PayWay.CASH, 900, cash_seen.count)
    with pytest.raises(ChangedError):
        evening.count_till(shop, by("K"), TODAY, PayWay.CASH, 1, cash_seen.count)

    assert today(shop).money[0].difference_cents == 0
    assert (card.difference_cents, transfer.difference_cents) == (0, None)


@pytest.mark.parametrize("cents", [-1, 10_000_000])
def test_an_amount_that_no_till_holds_is_refused(shop: Shop, cents: int) -> None:
    """Less than nothing and six figures before the point are slips."""
    with pytest.raises(TypedError, match="outside"):
        evening.count_till(shop, by(), TODAY, PayWay.CASH, cents, None)


def test_a_closed_day_is_closed_once_and_can_be_opened_again(shop: Shop) -> None:
    """The second closing and a later count are refused; undo opens the day; days to come cannot be closed."""
    actor = by()
    evening.close_day(shop, actor, TODAY, 1, "[red]x[/]")
    closed = today(shop).closed
    assert closed is not None
    assert (closed.not_done, closed.note, closed.by) == (1, "[red]x[/]", "J")

    with pytest.raises(RuleError, match="closed already, by J"):
        evening.close_day(shop, by("K"), TODAY, 0)
    with pytest.raises(RuleError, match="closed already"):
        evening.count_till(shop, by("K"), TODAY, PayWay.CASH, 0, None)
    with pytest.raises(RuleError, match="has not come"):
        evening.close_day(shop, by("K"), TODAY + timedelta(days=1), 0)
    undoing.undo(shop, by(), actor.group_id)

    assert today(shop).closed is None


def test_a_day_left_open_is_told_the_next_working_day(shop: Shop) -> None:
    """Only in a shop that closes its days, and only where something was done; Sunday is passed over."""
    made = parcel(shop)
    monday = seen_on(shop, picture(shop), TODAY)
    assert monday.unclosed is None

    friday = by(minutes=-3 * 24 * 60)
    evening.close_day(shop, friday, friday.now.date(), 0)
    moving.move_knives(shop, by(), made.knives, Column.ON_BENCH)

    tuesday = seen_on(shop, picture(shop, minutes=24 * 60), TODAY + timedelta(days=1))
    assert tuesday.unclosed == TODAY
    evening.close_day(shop, by(minutes=24 * 60), TODAY, 0)
    assert seen_on(shop, picture(shop, minutes=24 * 60), TODAY + timedelta(days=1)).unclosed is None


def test_done_and_moved_are_those_of_the_day(shop: Shop) -> None:
    """What came to ready that day, undone steps left out; the date told in place of another, with who was told."""
    made, other = parcel(shop), counter(shop)
    back = by(minutes=1)
    moving.move_knives(shop, back, other.knives, Column.READY)
    undoing.undo(shop, by(minutes=2), back.group_id)
    moving.move_knives(shop, by(minutes=3), made.knives[:2], Column.READY)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 17), told_to="R. Tallis", reason="belts late")
    promising.promise(shop, by(minutes=4), box(shop, made.box.number).box, later)

    seen = today(shop, minutes=5)

    (done,) = seen.done
    assert [knife.tag for knife in done.ready] == [made.knives[0].tag, made.knives[1].tag]
    assert (seen.received, seen.ready_knives, seen.gone_knives) == (2, 2, 0)
    (moved,) = seen.moved
    assert (moved.before.day, moved.now.day, moved.now.told_to) == (date(2026, 11, 13), date(2026, 11, 17), "R. Tallis")
    assert seen_on(shop, picture(shop), TODAY - timedelta(days=1)).done == ()


def test_not_done_is_what_was_due_and_has_work_left_or_waits_for_the_carrier(shop: Shop) -> None:
    """A pick-up that is ready is done though nobody has fetched it; a parcel is done when it has gone."""
    made = counter(shop)
    tomorrow = 24 * 60 + 9 * 60
    assert [one.box.number for one in not_done(picture(shop, minutes=tomorrow))] == [made.box.number]

    moving.move_knives(shop, by(minutes=tomorrow), made.knives, Column.READY)

    assert not_done(picture(shop, minutes=tomorrow)) == ()


@pytest.mark.parametrize(
    ("utc", "day"),
    [
        ("2026-11-01T03:59", date(2026, 10, 31)),
        ("2026-11-01T04:00", date(2026, 11, 1)),
        ("2026-11-02T04:59", date(2026, 11, 1)),
        ("2026-11-02T05:00", date(2026, 11, 2)),
    ],
)
def test_a_day_of_twenty_five_hours_holds_all_its_money(shop: Shop, utc: str, day: date) -> None:
    """The day on which New York sets its clocks back (1 Nov 2026) begins at 04:00 and ends at 05:00 UTC."""
    made = counter(shop)
    at = datetime.fromisoformat(utc).replace(tzinfo=ZoneInfo("UTC"))
    money.take_payment(shop, Actor(initials="J", now=at), made.box, cash(900))

    taken = {
        one: seen_on(shop, picture(shop), one).money[0].in_cents
        for one in (day, day - timedelta(days=1), day + timedelta(days=1))
    }

    assert taken == {day: 900, day - timedelta(days=1): 0, day + timedelta(days=1): 0}


def test_nothing_is_low_where_nothing_was_counted(shop: Shop) -> None:
    """Belts that nobody fitted and spares that nobody counted are not told of."""
    assert today(shop).belts_low == low_belts(()) == ()
