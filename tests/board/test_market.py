"""The market day on its screen: off until switched on, read as kept, lines typed, mended, taken off and taken in."""

import pytest

from queueboard.board.desk import Desk
from queueboard.board.market_typed import TypedMarket
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.market import MarketScreen
from queueboard.shop import numbers
from queueboard.shop.market_pad import read_pad
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer
from queueboard.shop.undoing import steps
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host
from tests.board.market_screens import market_screen
from tests.board.typing import fill
from tests.shop.place import NOW, by, picture
from tests.shop.undo_market import MARKET_ON


def said(app: Host) -> str:
    """The screen as one line of words."""
    return " ".join(dump(app).split())


def texts(shop: Shop) -> list[str]:
    """The lines that lie on the disk."""
    pad = read_pad(shop)
    return [] if pad is None else [line.text for line in pad.lines]


async def test_while_it_is_off_the_key_says_how_to_switch_it_on(two_boxes: Shop) -> None:
    """X says one sentence and opens nothing."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("X")
        await pilot.pause()
        assert isinstance(app.screen, BoardScreen)
        assert "on = true under [market]" in said(app)


@pytest.mark.parametrize(("size", "width"), [(SMALL, 80), (LARGE, 120)])
async def test_a_day_half_typed_reads_as_kept(shop: Shop, size: tuple[int, int], width: int) -> None:
    """The lines with their money, then gaps, doubles and tags of another pad, the sums and how to go on."""
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: market_screen(desk))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, f"market-{width}")


async def test_lines_are_mended_added_to_and_taken_off(shop: Shop) -> None:
    """A double is mended in its line, a payment goes to its tag, a known customer is refused, a line goes off."""
    numbers.take_settings(shop, by(), MARKET_ON)
    add_customer(shop, by(), name="Verrin", town="Port Ansel")
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("X")
        await pilot.pause()
        await fill(pilot, "Verrin")
        assert "begins with no number" in said(app)
        await fill(pilot, "2 Verrin", "500 3 [red]Oake[/]")
        assert "TWICE, typed for two: 500" in said(app)
        assert "known: Verrin, Port Ansel" in said(app)
        await pilot.press("plus")
        await pilot.pause()
        assert "Tag 500 stands in two lines" in said(app)
        assert len(steps(shop, "MB")) == 0
        await fill(pilot, "500 *")
        assert "stands in two lines; go to one" in said(app)
        await fill(pilot, "<escape>", "<up>", "<enter>", "501 3 [red]Oake[/]", "501 *", "501 4 *")
        assert "4 knives here, and 3 in the line of 501" in said(app)
        await fill(pilot, "<escape>", "<up>", "<up>", "<k>")
        assert "new, though 1 customer may be meant" in said(app)
        await pilot.press("down", "down")
        await fill(pilot, "4 Kelp", "<up>", "<x>", "<escape>", "520-530")
        assert "Tags 520 to 530 were printed" in said(app)
        assert "NOT PRINTED for this day (520-530): 500-501" in said(app)

    assert texts(shop) == ["500 2 Verrin", "501 3 [red]Oake[/] *"]


async def test_what_was_typed_is_taken_in_and_out_again(shop: Shop) -> None:
    """+ asks once for what is unusual, then all is in; undo gives the lines back, and the next line begins anew."""
    numbers.take_settings(shop, by(), MARKET_ON)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("X")
        await pilot.pause()
        await fill(pilot, "4 Verrin *", "502 3 Oake", "- 1 Kelp >", "<+>")
        assert "Printed, never used: 501; 1 customer gone unpaid" in said(app)
        assert not picture(shop).boxes
        await fill(pilot, "<+>")
        assert "Taken in: 3 customers, 8 knives, 1 for the next market" in said(app)
        assert "Tags to write: Kelp 561" in said(app)
        await fill(pilot, "<+>")
        assert "taken in already" in said(app)
        await fill(pilot, "<u>", "<enter>")
        await fill(pilot, "typed wrong", "<escape>")
        await pilot.pause()
        assert isinstance(app.screen, MarketScreen)
        assert "TAKEN IN" not in said(app)
        assert not picture(shop).boxes
        await fill(pilot, "<+>")
        await fill(pilot, "<+>")
        assert [box.box.number for box in picture(shop).boxes] == [561]
        await fill(pilot, "7 Somebody else")

    assert texts(shop) == ["500 7 Somebody else"]


def test_a_line_mended_here_and_taken_off_elsewhere_stands_at_the_end(shop: Shop) -> None:
    """Two windows on one pad: what was typed over a line that is gone is kept all the same."""
    numbers.take_settings(shop, by(), MARKET_ON)
    desk = Desk(shop, "MB", lambda: NOW)
    desk.look()
    here = TypedMarket(desk)
    for line in ("500 4 Verrin", "501 3 Oake"):
        here.take(line)
    there = TypedMarket(desk)
    here.step(-2)
    assert here.mend() == "500 4 Verrin"
    there.step(-2)
    there.strike()

    assert here.take("500 5 Verrin").startswith("500: 5 chef")
    assert texts(shop) == ["501 3 Oake", "500 5 Verrin"]
