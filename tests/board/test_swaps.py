"""Kitchens with swap sets on screens: off until they are switched on, a round typed, a sheet read as kept."""

from datetime import timedelta

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.swaps import SwapSheetScreen, SwapsScreen
from queueboard.shop import numbers
from queueboard.shop.opening import Shop
from queueboard.shop.swaps_seen import kitchens
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host
from tests.board.swap_screens import seen
from tests.board.typing import fill
from tests.shop.place import NOW, by, picture
from tests.shop.undo_swapping import SWAPS_ON


async def test_while_it_is_off_the_key_says_how_to_switch_it_on(two_boxes: Shop) -> None:
    """W says one sentence and opens nothing."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("W")
        await pilot.pause()
        assert isinstance(app.screen, BoardScreen)
        assert "on = true under" in " ".join(dump(app).split())


@pytest.mark.parametrize(("size", "width"), [(SMALL, 80), (LARGE, 120)])
async def test_list_and_sheet_read_as_kept(shop: Shop, size: tuple[int, int], width: int) -> None:
    """The kitchens with their next round, then the sheet of one: clean above, dull below, missing by kind."""
    desk = Desk(shop, "MB", lambda: NOW)
    seen(desk)
    app = Host(desk, lambda: SwapsScreen(desk))
    async with app.run_test(size=size) as pilot:
        assert_screen(app, f"list-swaps-{width}")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, SwapSheetScreen)
        assert_screen(app, f"swap-sheet-{width}")


async def test_a_set_a_round_and_a_missing_knife_by_keys(shop: Shop) -> None:
    """W and + describe A and B of a new kitchen; a round is typed and checked, what is missing is charged and found."""
    numbers.take_settings(shop, by(), SWAPS_ON)
    now = [NOW]
    desk = Desk(shop, "MB", lambda: now[0])
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("W")
        await pilot.pause()
        for name in "AB":
            await pilot.press("plus")
            await fill(pilot, "[red]Brant[/]", name, "2 chef, 1 paring", "7")
            if name == "A":
                assert "Nobody is called “[red]Brant[/]” yet" in " ".join(dump(app).split())
                await fill(pilot, "<enter>")
        await pilot.press("enter")
        await pilot.pause()
        assert "[red]Brant[/]" in dump(app)
        await pilot.press("plus")
        await fill(pilot, "<1>", "<2>", "1 chef, 1 chef chip 0.5mm")
        assert "set B: 2 chef (2 of 3)" in dump(app)
        assert "small nick free" in dump(app)
        await pilot.press("asterisk")
        await pilot.pause()
        assert "1 missing, 2 not clean" in dump(app)
        now[0] = NOW + timedelta(days=7)
        desk.look()
        await pilot.press("slash")
        await fill(pilot, "24.00")
        assert "ON THE STATEMENT, 24.00 charged" in dump(app)
        await pilot.press("minus")
        await pilot.pause()
        assert "nothing missing" in dump(app)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, BoardScreen)

    (one,) = kitchens(shop, now[0])
    assert [len(x.set.whole) for x in one.sets] == [2, 2]
    assert not [charge for x in picture(shop).boxes for charge in x.charges]
