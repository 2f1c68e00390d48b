"""A new shop: from nothing to the first box, by a kept list of keys, and what is said of answers that cannot be."""

from pathlib import Path

import pytest

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.first import FirstScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.board.starting import MakingDesk, StartingApp
from queueboard.cli.first import FIRST_BOX
from queueboard.errors import FileError
from queueboard.seedfiles import seed_text
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.settings_now import settings_text
from queueboard.shop.starting import new_shop
from tests.board.dump import dump
from tests.board.host import SMALL, Host
from tests.board.typing import fill
from tests.shop.place import NOW, by

MOST_KEYS = 100
"""Two minutes of somebody who presses a key each second and looks up twice."""

ON = "<enter>"
FIRST = (*("MB", "Kestrel Edge"), *("<3>", ON, ON, ON, "<2>"), *("<3>", "9-18", ON, "8", ON, "11"))
"""Who and what; the UK, its clock, its money, centimetres; Tuesday to Saturday, from nine to six; three prices."""

FIRST_BOX_TYPED = ("tallis", ON, ON, "<1>", "<1>", "2", "", "2 chef", "<f2>")
"""Neither phone nor town; by the counter and back over it, two counted, no note."""


def keys_of(answers: tuple[str, ...]) -> int:
    """How many keys are pressed: each sign and the Enter behind it, or the one key."""
    return sum(1 if answer.startswith("<") else len(answer) + 1 for answer in answers)


async def test_from_nothing_to_the_first_box(tmp_path: Path) -> None:
    """A hundred keys lead from no shop to a box on the board, with the person's own numbers and every remark kept."""
    assert keys_of(FIRST) + len("r") + keys_of(FIRST_BOX_TYPED) <= MOST_KEYS
    path = tmp_path / "shop.qb"
    with new_shop(path, by("shop"), seed_text("settings.toml")) as made:
        asking = StartingApp(MakingDesk(made, "", lambda: NOW))
        async with asking.run_test(size=SMALL) as pilot:
            await pilot.pause()
            await fill(pilot, *FIRST)
        assert asking.answered
        with pytest.raises(FileError, match="There is no shop"):
            open_shop(path)

    shop = open_shop(path)
    desk = Desk(shop, asking.desk.initials, lambda: NOW)
    desk.greeting = FIRST_BOX
    board = QueueboardApp(desk)
    async with board.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert FIRST_BOX in " ".join(dump(board).split())
        await pilot.press("r")
        await fill(pilot, *FIRST_BOX_TYPED)
        assert isinstance(board.screen, ReceivedScreen), dump(board)

    text, picture = settings_text(shop), look(shop, NOW)
    settings = picture.settings
    close_shop(shop)
    (box,) = picture.boxes
    assert (settings.name, settings.currency, settings.zone.key) == ("Kestrel Edge", "GBP", "Europe/London")
    assert (settings.length_unit, sorted(settings.hours), box.knives[0].price_cents) == ("cm", [1, 2, 3, 4, 5], 800)
    assert [line.partition("#")[2] for line in text.splitlines() if "#" in line] == [
        line.partition("#")[2] for line in seed_text("settings.toml").splitlines() if "#" in line
    ]


def asked(shop: Shop, code: str = "", zone: str = "") -> Host:
    """An app that shows the first screen."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: FirstScreen(desk, "MB", zone, code))


async def test_an_answer_that_cannot_be_is_said_at_its_field_and_loses_nothing(shop: Shop) -> None:
    """Wrong letters, hours, zones and prices each get a sentence; the cursor goes there and all the rest stays."""
    app = asked(shop)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, ON, "Kestrel [/] Edge", "<6>", "N", "nz", "Bay of [b]", "Moon/Base", "NZD", "<2>", "<1>")
        assert "Pacific/Auckland" not in dump(app)
        await fill(pilot, "8-5", "8-17", ON, "9", "x", "5.5", "12")
        said = " ".join(dump(app).split())
        assert "Moon/Base" in said
        field = app.focused
        assert field is not None
        assert "! " in said
        await fill(pilot, "Pacific/Auckland", "<f2>")
        assert "region" in " ".join(dump(app).split())
        assert "Kestrel [/] Edge" in dump(app)
        await fill(pilot, "", "<f2>")

    assert app.answer is True
    assert look(shop, NOW).settings.name == "Kestrel [/] Edge"


async def test_a_state_without_a_holiday_of_the_starter_is_taken(shop: Shop) -> None:
    """39 of 57 states and territories keep no Columbus Day, on which the starter opens; their shops are made too.

    The days are those of the library of public holidays; Washington is one of the 39.
    """
    app = asked(shop)
    async with app.run_test(size=SMALL) as pilot:
        await fill(pilot, ON, "Hill Edge", "<1>", "WA", "<f2>")

    assert app.answer is True
    assert look(shop, NOW).settings.region == "WA"


@pytest.mark.parametrize(
    ("code", "zone", "offered"),
    [
        ("CA", "America/Vancouver", ("▸2 Canada", "America/Vancouver", "CAD", "▸2 cm")),
        ("NZ", "Pacific/Chatham", ("▸6 other", "Pacific/Chatham", "NZD", "▸2 cm")),
        ("BR", "America/Bahia", ("▸6 other", "America/Bahia", "▸1 in")),
        ("", "", ("▸1 USA", "America/New_York", "USD", "▸1 in")),
    ],
)
async def test_what_the_machine_knows_is_offered(shop: Shop, code: str, zone: str, offered: tuple[str, ...]) -> None:
    """Its clock and country stand there already, with what goes with the country; leaving untouched asks nothing."""
    app = asked(shop, code, zone)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        for words in offered:
            assert words in dump(app)
        await pilot.press("escape")

    assert app.left
    assert app.answer is None
