"""What a screen says: one sentence at a time."""

from queueboard.board.desk import Desk
from queueboard.board.widgets.notice import Notice
from queueboard.shop.opening import Shop
from tests.board.dump import dump
from tests.board.host import SMALL, Home, Host, until
from tests.shop.place import NOW


async def test_the_same_sentence_again_stands_once(two_boxes: Shop) -> None:
    """What is said takes the place of what was said before; it does not pile up over a small screen."""
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: Home(desk))
    async with app.run_test(size=SMALL, notifications=True) as pilot:
        screen = app.screen
        assert isinstance(screen, Home)

        for _ in range(5):
            screen.say("Nothing is marked to move.", trouble=True)
            await pilot.pause()
        await until(pilot, lambda: len(app.screen.query(Notice)) == 1)

        assert dump(app).count("Nothing is marked") == 1
