"""The lists of the board: what their later keys do."""

from dataclasses import replace

import pytest

from queueboard.board.screens.boxes import BoxesScreen
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.find import FindScreen
from queueboard.board.screens.labels import LabelsScreen
from queueboard.clean import cell_text
from queueboard.words import LabelWord
from tests import pictures as made
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL
from tests.board.test_lists import host, shop_at_nine


async def test_the_first_look_of_a_day_fixes_the_order() -> None:
    """The order of the plan is fixed once; a day list that is fixed is left alone."""
    app, desk = host(DayScreen, replace(shop_at_nine(), order_fixed=False))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
    (done,) = desk.done
    assert done.name == "fix_day_list"
    assert done.args == (made.TODAY, ((417001, 421001, 421002), (417002,), (431001, 431002)))

    fixed, other = host(DayScreen)
    async with fixed.run_test(size=SMALL) as pilot:
        await pilot.pause()
    assert other.done == []


async def test_a_new_day_fixes_its_own_order() -> None:
    """A day list left open over midnight fixes the new day's order with the first picture of that day."""
    picture = shop_at_nine()
    app, desk = host(DayScreen, picture)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        desk.next_picture = replace(picture, now=made.at(0, 1, days=1), order_fixed=False)
        app.look_around()
        await pilot.pause()

    (fixed,) = [done for done in desk.done if done.name == "fix_day_list"]
    assert fixed.args[0] == made.at(0, 1, days=1).date()


async def test_o_sorts_again() -> None:
    """O lets the old order go, then fixes what comes out."""
    app, desk = host(DayScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("o")
        await pilot.pause()

    assert [done.args[1] for done in desk.done] == [(), ((417001, 421001, 421002), (417002,), (431001, 431002))]


async def test_labels_to_do_agree_with_the_day_line() -> None:
    """A good label is in the list but not among those to do."""
    seen = shop_at_nine()
    due = replace(seen.labels_due[0], word=LabelWord.GOOD)
    seen = replace(seen, labels_due=(due,), day_line=replace(seen.day_line, labels_due=0))
    app, _ = host(LabelsScreen, seen)

    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        assert "0 to do, 1 good" in dump(app).splitlines()[0]


async def test_the_table_sorts_by_value_and_keeps_customers_together() -> None:
    """By minutes left the customer with two boxes comes first, both boxes and then their totals."""
    app, _ = host(BoxesScreen)

    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("asterisk", "asterisk", "asterisk")
        await pilot.pause()
        lines = dump(app).splitlines()

    assert "sorted by minutes left" in lines[0]
    assert [line[:8].strip() for line in lines[2:7]] == ["421", "430", "2 boxes", "417", "▸431"]


async def test_finding_shows_matches_side_by_side_and_a_sentence() -> None:
    """The same surname twice: both cards stand side by side, the marked one is told in a sentence to read out."""
    app, _ = host(FindScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*"tallis")
        await pilot.pause()
        assert_screen(app, "find-two-80")
        await pilot.press("asterisk", "enter")
        await pilot.pause()

    assert app.answer == 431


@pytest.mark.parametrize("name", made.HOSTILE_NAMES)
async def test_a_found_name_stands_literally(name: str) -> None:
    """The card and the sentence to read out show the name as it was typed."""
    app, _ = host(FindScreen, shop_at_nine(name))

    async with app.run_test(size=LARGE) as pilot:
        await pilot.press(*"421")
        await pilot.pause()
        assert cell_text(name)[:12] in dump(app)


async def test_finding_by_the_last_four_of_the_phone() -> None:
    """9902 finds the one box whose phone ends so."""
    app, _ = host(FindScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*"9902", "enter")
        await pilot.pause()

    assert app.answer == 431


async def test_finding_nothing_says_how_to_look_otherwise() -> None:
    """A name nobody has leaves a sentence, and Enter does not leave."""
    app, _ = host(FindScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*"zzz", "enter")
        await pilot.pause()
        assert "No box fits" in dump(app)
        assert not app.left
        await pilot.press("escape")
        await pilot.pause()

    assert app.left
