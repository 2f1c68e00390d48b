"""What the tests of the close-out screen share: a box made ready, an app that shows its close-out, answers typed."""

from textual.pilot import Pilot

from queueboard.board.desk import Desk
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.words import CloseStep, Column
from tests.board.host import Host
from tests.shop.place import NOW, by, picture


def ready(shop: Shop, box: BoxPicture, knives: int = 99) -> int:
    """Make so many knives of a box ready; its number."""
    move_knives(shop, by(), box.knives[:knives], Column.READY)
    return box.box.number


def host(shop: Shop, number: int) -> Host:
    """An app that shows the close-out of a box."""
    desk = Desk(shop, "MB", lambda: NOW)
    box = desk.picture.box(number)
    assert box is not None
    return Host(desk, lambda: CloseOutScreen(desk, box.box.id))


def step(shop: Shop, number: int) -> CloseStep | None:
    """The step at which the close-out stands in the shop file."""
    box = picture(shop).box(number)
    return None if box is None or box.close_check is None else box.close_check.step


async def type_in(pilot: Pilot[int], *answers: str) -> None:
    """Type answers, each ended with Enter; + and - alone act at once."""
    for answer in answers:
        await pilot.press(*(("space" if key == " " else key) for key in answer))
        if answer not in {"+", "-", "/"}:
            await pilot.press("enter")
    await pilot.pause()
