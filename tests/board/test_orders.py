"""A file of orders on the board: what it holds is shown before anything is stored."""

from pathlib import Path

from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs.orders import OrdersDialog
from queueboard.shop.opening import Shop
from tests.board.dump import assert_screen, dump
from tests.board.host import SMALL, Home, Host
from tests.shop.place import NOW, picture, state

FILE = "name,knives,expected_on\nOake,3,2026-12-01\n,4,\n[red]x[/] \x1b[31m,5,\n"


async def test_the_good_ones_are_taken_after_a_look(two_boxes: Shop, tmp_path: Path) -> None:
    """Enter reads the file and shows each line; a second Enter announces the good ones."""
    (tmp_path / "o.csv").write_text(FILE, encoding="utf-8")
    desk = Desk(two_boxes, "MB", lambda: NOW)
    before = state(two_boxes)
    app = Host(desk, lambda: Home(desk))
    async with app.run_test(size=SMALL) as pilot:
        await app.push_screen(screen := OrdersDialog(desk))
        screen.file.value = f"{tmp_path}/none.csv"
        await pilot.press("enter")
        assert "No such file" in dump(app)
        screen.file.value = f"{tmp_path}/o.csv"
        await pilot.press("enter")
        shown = dump(app)
        assert "line 2: Oake, 3 knives" in shown
        assert "line 3 CANNOT BE TAKEN" in shown
        assert "line 4: [red]x[/], 5 knives" in shown
        assert state(two_boxes) == before
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen is not screen
    announced = [seen.customer.name for seen in picture(two_boxes).boxes if seen.box.announced]
    assert sorted(announced) == ["Oake", "[red]x[/]"]


async def test_it_fits_a_small_screen(two_boxes: Shop) -> None:
    """The question as it opens, at 80x24."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: OrdersDialog(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert_screen(app, "dialog-orders")
