"""The sheet of a day's end, as text that a person can read and as facts by their schema."""

from datetime import date, timedelta

from queueboard.papers.evening import evening_facts, evening_sheet
from queueboard.records.evening import dust_tray
from queueboard.shop import evening, money, moving, promising, waiting
from queueboard.shop.evening_seen import evening as seen_on
from queueboard.shop.fitting import count_spares
from queueboard.shop.opening import Shop
from queueboard.values.new import NewPromise
from queueboard.words import Column, PayWay, PromiseKind, WaitingFor
from tests.cli.schema import valid_facts
from tests.kept import assert_kept
from tests.pictures import HOSTILE_NAMES
from tests.shop.place import NOW, box, by, cash, counter, parcel, picture

TODAY = NOW.date()
EVENING = 8 * 60 + 30
"""Minutes from NOW to half past five in the shop."""


def full_day(shop: Shop) -> None:
    """A Monday with everything in it: done and not done, a date moved, money, dust, somebody to call."""
    made, late = parcel(shop, name="[red]Tallis[/]"), counter(shop)
    waits = counter(shop, name="Bo Oake")
    wanted = NewPromise(kind=PromiseKind.DAY, day=TODAY, told_to="Ms Verrin", reason="fetched today")
    promising.promise(shop, by(minutes=1), late.box, wanted)
    moving.move_knives(shop, by(minutes=5), made.knives[:2], Column.READY)
    later = NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 17), told_to="R. Tallis", reason="belts late")
    promising.promise(shop, by(minutes=6), box(shop, made.box.number).box, later)
    waiting.box_waits(shop, by(minutes=7), waits.box, WaitingFor.ESTIMATE)
    money.take_payment(shop, by(minutes=8), box(shop, late.box.number).box, cash(900))
    count_spares(shop, by(minutes=9), "16 um", 1)
    evening.count_till(shop, by(minutes=EVENING), TODAY, PayWay.CASH, 850, None)
    evening.empty_dust(shop, by("K", minutes=EVENING))


def test_the_evening_sheet_reads_as_kept(shop: Shop) -> None:
    """It holds what was done and not, who was told, the money and what is missing of it, labels, calls, tomorrow."""
    full_day(shop)
    now = picture(shop, minutes=EVENING + 12)

    assert_kept("paper-evening", evening_sheet(seen_on(shop, now, TODAY), now))


def test_a_closed_day_reads_as_kept_the_morning_after(shop: Shop) -> None:
    """Of a day that is over stands what was written down, and who closed it."""
    full_day(shop)
    tray = dust_tray(shop.database, TODAY)
    assert tray is not None
    evening.look_at_dust_again(shop, by("K", minutes=EVENING + 21), tray)
    evening.close_day(shop, by(minutes=EVENING + 22), TODAY, 1, "till 0.50 short: the parking meter")
    now = picture(shop, minutes=24 * 60)

    assert_kept("paper-evening-over", evening_sheet(seen_on(shop, now, TODAY), now))


def test_an_empty_shop_has_an_evening_too(shop: Shop) -> None:
    """Nothing done, nothing to call, and the facts are as documented."""
    now = picture(shop)
    seen = seen_on(shop, now, TODAY)

    assert "0 knives to ready" in evening_sheet(seen, now)
    valid_facts("evening", evening_facts(seen, now))


def test_the_facts_follow_their_schema(shop: Shop) -> None:
    """Today's, and those of a day that is over, which does not know what was open then."""
    full_day(shop)
    now = picture(shop, minutes=EVENING + 12)
    facts = evening_facts(seen_on(shop, now, TODAY), now)
    valid_facts("evening", facts)
    assert facts["not_done"] == [101]

    evening.close_day(shop, by(minutes=EVENING), TODAY, 1)
    after = picture(shop, minutes=24 * 60)
    over = evening_facts(seen_on(shop, after, TODAY), after)
    valid_facts("evening", over)
    assert over["not_done"] is None
    assert over["money"] == facts["money"]


def test_names_stand_literally_and_on_one_line(shop: Shop) -> None:
    """Brackets, emoji and three hundred letters break no line and begin none."""
    for name in HOSTILE_NAMES:
        made = counter(shop, name=name)
        moving.move_knives(shop, by(), made.knives, Column.READY)
        promising.promise(
            shop,
            by(),
            made.box,
            NewPromise(kind=PromiseKind.DAY, day=TODAY + timedelta(days=2), told_to=name, reason=name),
        )
    now = picture(shop)

    sheet = evening_sheet(seen_on(shop, now, TODAY), now)

    assert "[red]x[/]" in sheet
    assert sum(" to ready (" in line for line in sheet.splitlines()) == len(HOSTILE_NAMES)
    assert not [sign for sign in sheet if sign != "\n" and ord(sign) < 0x20]
