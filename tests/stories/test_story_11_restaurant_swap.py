"""Story 11: Brant Street kitchen, sets A and B of 12, every Tuesday; this week B counts 11. All of it is invented."""

from datetime import UTC, datetime

import pytest

from queueboard.cli import main
from queueboard.errors import RuleError, TypedError
from queueboard.papers.swaps import swap_sheet
from queueboard.records.swaps import missing_knives
from queueboard.seedfiles import seed_text
from queueboard.shop import closing, moving, numbers, swapping
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.owing import owing
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_customer
from queueboard.shop.swaps_seen import Kitchen, kitchens
from queueboard.values.actor import Actor
from queueboard.values.box import CloseOut
from queueboard.values.swap import NewRound
from queueboard.words import Column, Settling
from tests.cli.schema import valid

TWELVE = "4 chef, 3 paring, 2 bread, 2 boning, 1 slicer"
CAME_BACK = "3 chef, 1 chef chip 0.5mm, 2 paring, 1 paring tip 3mm, 2 bread, 1 boning, 1 slicer"
"""Eleven: one tip broken, one small nick, one boning knife missing."""
SETTINGS = seed_text("settings.toml").replace("on = false ", "on = true ").replace("tip = 6.00", "tip = 8.00")


def at(month: int, day: int, hour: int = 15) -> Actor:
    """Somebody on a day of 2026, at an hour of UTC that is in the shop's day."""
    return Actor(initials="K", now=datetime(2026, month, day, hour, tzinfo=UTC))


def seen(shop: Shop, month: int, day: int) -> Kitchen:
    """Brant Street as it stands on a day."""
    (one,) = kitchens(shop, at(month, day).now)
    return one


def sheet(shop: Shop, month: int, day: int) -> str:
    """Its sheet on a day."""
    return swap_sheet(seen(shop, month, day), look(shop, at(month, day).now))


def box(shop: Shop, number: int, month: int, day: int) -> BoxPicture:
    """An open box on a day."""
    found = look(shop, at(month, day).now).box(number)
    assert found is not None
    return found


def close(shop: Shop, number: int, day: int) -> CloseOut:
    """The close-out of a box under way."""
    out = box(shop, number, 11, day).close_out
    assert out is not None
    return out


@pytest.fixture
def sets(shop: Shop) -> tuple[int, int]:
    """Ids of A and B; the shop has switched swap sets on, and A came back last week and is clean."""
    numbers.take_settings(shop, at(10, 20), SETTINGS)
    customer = add_customer(shop, at(10, 20), name="Brant Street kitchen", phone="555 0133", town="Port Ansel")
    a, b = (swapping.define_set(shop, at(10, 20), customer, name, TWELVE) for name in "AB")
    return a, b


@pytest.fixture
def swapped(shop: Shop, sets: tuple[int, int]) -> int:
    """The number of the box that B is: on Tuesday 3 November sharp A is delivered and dull B is taken."""
    number = swapping.note_round(shop, at(11, 3), NewRound(sharp_set_id=sets[0], dull_set_id=sets[1], dull=CAME_BACK))
    assert number is not None
    return number


def deliver(shop: Shop, number: int, day: int) -> None:
    """Make a box ready and lead it out of the shop on account."""
    moving.move_knives(shop, at(11, day), box(shop, number, 11, day).knives, Column.READY)
    closing.begin_close_out(shop, at(11, day), box(shop, number, 11, day).box)
    closing.count(shop, at(11, day), close(shop, number, day), len(box(shop, number, 11, day).knives))
    closing.confirm_names(shop, at(11, day), close(shop, number, day))
    closing.confirm_label(shop, at(11, day), close(shop, number, day), "van")
    closing.settle(shop, at(11, day), close(shop, number, day), Settling.ON_ACCOUNT)
    closing.send_off(shop, at(11, day), close(shop, number, day))


def test_the_swap_sheet_is_by_kind_clean_above_dull_below(shop: Shop, sets: tuple[int, int], swapped: int) -> None:
    """A is with the kitchen, B dull here with eleven; as its knives get ready they stand in the clean tray above."""
    text = sheet(shop, 11, 3)
    assert "set A: 4 chef, 3 paring, 2 bread, 2 boning, 1 slicer (12 of 12)" in text
    assert "set B: 4 chef, 3 paring, 2 bread, 1 boning, 1 slicer (11 of 12)" in text
    assert text.index("CLEAN TRAY") < text.index("DULL") < text.index("set B: 4 chef") < text.index("WITH THE KITCHEN")
    assert "1 boning of set B since" in text

    chefs = [knife for knife in box(shop, swapped, 11, 4).knives if knife.kind == "chef"]
    moving.move_knives(shop, at(11, 4), chefs, Column.READY)
    text = sheet(shop, 11, 4)
    assert text.index("set B: 4 chef (4 of 12)") < text.index("DULL") < text.index("set B: 3 paring, 2 bread")


def test_the_tip_is_charged_and_the_small_nick_is_not(shop: Shop, swapped: int) -> None:
    """8.00 for the broken tip by the price list; the nick of half a millimetre is ground out for nothing."""
    made = box(shop, swapped, 11, 3)
    assert [(charge.sort.value, charge.cents) for charge in made.charges] == [("tip", 800)]
    assert [knife.chip_um for knife in made.knives if knife.chip_um] == [500]
    text = sheet(shop, 11, 3)
    assert "paring: tip 8.00" in text
    assert "chef: small nick free" in text


def test_the_missing_boning_is_on_the_statement_after_a_seven_day_wait(shop: Shop, swapped: int) -> None:
    """Until Monday the shop waits, and nothing can be charged; on Tuesday 10 November it goes on the statement."""
    assert not seen(shop, 11, 9).missing[0].on_statement
    (lost,) = missing_knives(shop.database, "TRUE")
    with pytest.raises(RuleError, match="the shop waits until 2026-11-10"):
        swapping.charge_missing(shop, at(11, 9), lost, box(shop, swapped, 11, 9).box, 2400)
    assert "ON THE STATEMENT, not charged yet" in sheet(shop, 11, 10)

    before = box(shop, swapped, 11, 10).owed_cents
    swapping.charge_missing(shop, at(11, 10), lost, box(shop, swapped, 11, 10).box, 2400)
    assert box(shop, swapped, 11, 10).owed_cents == before + 2400
    assert "ON THE STATEMENT, 24.00 charged" in sheet(shop, 11, 10)

    (charged,) = missing_knives(shop.database, "TRUE")
    swapping.found_again(shop, at(11, 10), charged)
    assert box(shop, swapped, 11, 10).owed_cents == before
    assert "boning of set B since" not in sheet(shop, 11, 10)


def test_next_tuesdays_set_is_checked_complete_on_monday(shop: Shop, sets: tuple[int, int], swapped: int) -> None:
    """On Monday 9 November the sheet asks for it; with knives not ready, or one missing, B is not complete."""
    assert not seen(shop, 11, 8).check_due
    assert "next round Tue 10 Nov with set B, CHECK IT" in sheet(shop, 11, 9)
    assert not swapping.check_set(shop, at(11, 9), sets[1])
    assert "checked (K): 1 missing, 11 not clean, CHECK IT" in sheet(shop, 11, 9)

    moving.move_knives(shop, at(11, 9), box(shop, swapped, 11, 9).knives, Column.READY)
    assert not swapping.check_set(shop, at(11, 9, 16), sets[1])
    assert "checked (K): 1 missing, 0 not clean, CHECK IT" in sheet(shop, 11, 9)

    with pytest.raises(RuleError, match="with the kitchen"):
        swapping.check_set(shop, at(11, 9), sets[0])


def test_a_whole_set_is_checked_complete(shop: Shop, sets: tuple[int, int]) -> None:
    """All twelve back and ready: on Monday it is complete, and nothing is asked any more."""
    number = swapping.note_round(shop, at(11, 3), NewRound(sharp_set_id=sets[0], dull_set_id=sets[1], dull=TWELVE))
    assert number is not None
    moving.move_knives(shop, at(11, 9), box(shop, number, 11, 9).knives, Column.READY)
    assert swapping.check_set(shop, at(11, 9), sets[1])
    assert "next round Tue 10 Nov with set B, checked complete (K)" in sheet(shop, 11, 9)
    assert not seen(shop, 11, 9).check_due


def test_a_second_week_missing_prints_a_line_for_the_chef(shop: Shop, sets: tuple[int, int], swapped: int) -> None:
    """On 10 November A comes back whole and the boning knife of B is still missing: the chef is asked to look."""
    assert "Chef, missing" not in sheet(shop, 11, 9)
    deliver(shop, swapped, 10)
    swapping.note_round(shop, at(11, 10, 16), NewRound(sharp_set_id=sets[1], dull_set_id=sets[0], dull=TWELVE))

    assert "Chef, missing for two rounds now: 1 boning. Please look for it." in sheet(shop, 11, 10)

    swapping.note_round(shop, at(11, 17), NewRound(sharp_set_id=None, dull_set_id=sets[1], dull=TWELVE))
    assert "Chef, missing" not in sheet(shop, 11, 17)
    assert all(lost.found_at is not None for lost in missing_knives(shop.database, "TRUE"))


def test_an_account_over_45_days_old_shows_hold(shop: Shop, swapped: int) -> None:
    """B left on account on 10 November: 45 days later there is no HOLD yet, a day later there is."""
    deliver(shop, swapped, 10)
    assert owing(shop, at(12, 25).now)
    assert "HOLD" not in sheet(shop, 12, 25)
    assert "HOLD" in sheet(shop, 12, 26).splitlines()[1]


def test_what_cannot_be_is_refused_with_a_sentence(shop: Shop, sets: tuple[int, int], swapped: int) -> None:
    """A set that is not sharp is not brought, one that is here does not come back, none has a fifth chef."""
    with pytest.raises(RuleError, match="11 knives of the set that was brought are not ready"):
        swapping.note_round(shop, at(11, 10), NewRound(sharp_set_id=sets[1], dull_set_id=sets[0], dull=TWELVE))
    with pytest.raises(RuleError, match="is here by the last round"):
        swapping.note_round(shop, at(11, 10), NewRound(sharp_set_id=None, dull_set_id=sets[1], dull=TWELVE))
    with pytest.raises(TypedError, match="5 chef counted, and the set has 4"):
        swapping.note_round(shop, at(11, 10), NewRound(sharp_set_id=None, dull_set_id=sets[0], dull="5 chef"))


def test_the_command_prints_the_sheet(shop: Shop, swapped: int, capsys: pytest.CaptureFixture[str]) -> None:
    """As text for one kitchen, as JSON by its schema, as CSV by kind; a name that fits none is said, with code 3."""
    path = str(shop.path)
    close_shop(shop)

    def now() -> datetime:
        return at(11, 10).now

    assert main(["swaps", "brant", "--file", path], clock=now) == 0
    assert "1 boning of set B since Tue 3 Nov: ON THE STATEMENT, not charged yet" in capsys.readouterr().out
    assert main(["swaps", "--json", "--file", path], clock=now) == 0
    assert valid("swaps", capsys.readouterr().out)["on"] is True
    assert main(["swaps", "--csv", "--file", path], clock=now) == 0
    assert '"B","boning",2,0,1,0,1' in capsys.readouterr().out
    assert main(["swaps", "kelp", "--file", path], clock=now) == 3


def test_while_it_is_off_it_says_how_to_switch_it_on(shop: Shop, capsys: pytest.CaptureFixture[str]) -> None:
    """One sentence, and nothing can be stored."""
    customer = add_customer(shop, at(11, 3), name="Brant Street kitchen")
    with pytest.raises(RuleError, match="on = true"):
        swapping.define_set(shop, at(11, 3), customer, "A", TWELVE)
    path = str(shop.path)
    close_shop(shop)
    assert main(["swaps", "--file", path], clock=lambda: at(11, 3).now) == 0
    assert "on = true under [swaps]" in capsys.readouterr().out
