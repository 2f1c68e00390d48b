"""Notices: at the foot, on lines of their own, over no card, no field and no answer."""

from textual.geometry import Region

from queueboard.board.base import NOTICE_SECONDS
from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.notice import Notice
from queueboard.board.widgets.tag_entry import TagEntry
from queueboard.shop.opening import Shop
from tests.board.dump import dump
from tests.board.host import SMALL, Host, until
from tests.shop.place import NOW

LONG = "Nothing was stored: box [/] 417 was changed in another window meanwhile, and all of this has to be read. " * 2


async def test_a_notice_covers_nothing_that_is_worked_on(two_boxes: Shop) -> None:
    """On the board it leaves cards and a number free; in a form the app's own notice leaves every field free."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: BoardScreen(desk))

    def free(of: Region, *kinds: type[ColumnView] | type[Field] | type[Choice[object]]) -> bool:
        shown = [w for kind in kinds for w in app.screen.query(kind) if w.region.area]
        return bool(shown) and not any(w.region.overlaps(of) for w in shown)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        board = app.screen
        assert isinstance(board, BoardScreen)
        board.say(LONG, trouble=True)
        await pilot.pause()
        assert LONG.split("read", maxsplit=1)[0] in " ".join(dump(app).split())
        assert free(board.query_one("#notice").region, ColumnView)

        await pilot.press("9", "9", "enter")
        await pilot.pause()
        assert not board.query_one("#notice").display
        assert "There is no open box 99." in dump(app)
        assert board.query_one(TagEntry).typed == "99"
        assert not board.query_one("#tag-told").region.overlaps(board.query_one("#tag-digits").region)
        await pilot.press("escape")

        await app.push_screen(ReceiveScreen(desk))
        app.notify(LONG, severity="error", markup=False, timeout=NOTICE_SECONDS)
        await until(pilot, lambda: bool(app.screen.query(Notice)) and app.screen.query_one(Notice).region.area > 0)
        assert "box [/] 417" in dump(app)
        assert free(app.screen.query_one(Notice).region, Field, Choice)
        app.clear_notifications()
        await until(pilot, lambda: not app.screen.query(Notice))
