"""Receiving in under a minute: kept lists of keys through the real form, and what it asks on the way."""

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.receive import ReceiveScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.priced_words import Finding
from queueboard.shop.opening import Shop
from queueboard.words import Condition, WaitingFor
from tests.board.dump import dump
from tests.board.host import LARGE, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box

MOST_KEYS = 80

TWELVE = ("1", "1", *"12", "enter", "enter")
"""Came by and goes back by counter, twelve counted, no note."""

BOXES: dict[str, tuple[str, ...]] = {
    "a household": (
        *(*TWELVE, *"4 c 9", "enter", *"3 p", "enter", *"2 bread", "enter"),
        *(*"c 9 chip 2mm", "enter", *"2 util", "enter", "f2"),
    ),
    "a kitchen with marks and a wish": (
        *(*TWELVE, *"6 c 10, red", "enter", *"5 p", "enter", *"bread very dull ! slow", "enter", "f2"),
    ),
    "by mail with a date": (
        *("2", "enter", *"12", "enter", *"12", "enter", *"8 c 9", "enter", *"4 p freckles", "enter", "f3", "f2"),
    ),
}
"""Keys pressed after the surname, as a person at the counter would."""


def host(shop: Shop) -> Host:
    """An app that shows the form."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: ReceiveScreen(desk))


@pytest.mark.parametrize("name", sorted(BOXES))
async def test_twelve_knives_take_at_most_eighty_keys(two_boxes: Shop, name: str) -> None:
    """Beyond the name, a box of twelve is taken in with so few key-presses, and holds twelve knives."""
    keys = [{" ": "space", ",": "comma", "!": "exclamation_mark"}.get(key, key) for key in BOXES[name]]
    assert len(keys) <= MOST_KEYS

    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "verrin")
        await pilot.press(*keys)
        await pilot.pause()
        assert isinstance(app.screen, ReceivedScreen), dump(app)

    assert len(box(two_boxes, 102).knives) == 12


async def test_same_again_types_the_kinds_of_the_customers_last_box(two_boxes: Shop) -> None:
    """One key fills in what this customer brought last, and the sum says how many are still to be typed."""
    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "tallis", "<1>", "<1>", "3", "", "<f6>")
        await pilot.pause()
        assert "3 of 3 typed" in dump(app)
        assert "The kinds of box 100 again" in dump(app)
        await pilot.press("f6")
        await pilot.pause()
        assert "There are lines already" in dump(app)
        await pilot.press("f2")
        await pilot.pause()

    assert [(k.kind, k.length_mm, k.mark) for k in box(two_boxes, 102).knives] == [("chef", 200, "")] * 3


async def test_a_look_alike_is_named_and_a_mark_is_asked_for(two_boxes: Shop) -> None:
    """The line stays with the tags and marks of the others; with a mark, or once more, it is taken."""
    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "verrin", "<1>", "<1>", "2", "", "chef 200mm")
        screen = app.screen
        assert isinstance(screen, ReceiveScreen)
        assert "looks like 100-1 (nick 0), 100-2 (nick 1)" in dump(app)
        assert (screen.lines.line.value, screen.lines.lines) == ("chef 200mm", [])

        await fill(pilot, "chef 200mm, blue tape", "chef 200mm", "<enter>")
        assert [line.knife.mark for line in screen.lines.lines] == ["blue tape", ""]


async def test_cm_or_inch_is_asked_once_in_the_form(two_boxes: Shop) -> None:
    """The starter shop measures in inches: 20 is asked about, 20cm answers, and the next 20 is taken as it is."""
    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "verrin", "<1>", "<1>", "3", "", "chef 21")
        screen = app.screen
        assert isinstance(screen, ReceiveScreen)
        assert "21 in or 21 cm?" in dump(app)

        await fill(pilot, "chef 21cm", "2 chef 22")
        assert [line.knife.length_mm for line in screen.lines.lines] == [210, 220]


async def test_a_count_beyond_the_note_is_told_before_it_is_stored(two_boxes: Shop) -> None:
    """The sum names the knife that is priced apart; the box waits, and its damage is stored as typed."""
    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "verrin", "<1>", "<1>", "3", "2", "2 bread", "chef 6 tip 3mm edge pits")
        assert "the note says 2: the last 1 priced apart until the yes" in dump(app)
        await pilot.press("f2")
        await pilot.pause()

    stored = box(two_boxes, 102)
    assert (stored.box.waiting_for, [k.apart for k in stored.knives]) == (WaitingFor.COUNT, [False, False, True])
    assert (stored.knives[2].tip_um, stored.knives[2].condition) == (3000, Condition.BIG_CHIPS)
    assert stored.knives[2].findings == (Finding.TIP_BROKEN, Finding.EDGE_PITS)


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("count", "0", "A count of 0 cannot be right"),
        ("count", "-1", "“-1” is no count"),
        ("count", "10000", "A count of 10000 cannot be right"),
        ("line", "qwertz 99 !!", "The shop has no kind “qwertz”"),
        ("line", "4 chef 9 chip 2", "2 chips, or 2 mm deep? And have all 4 knives it, or one?"),
    ],
)
async def test_nonsense_stays_typed_beside_its_sentence(two_boxes: Shop, field: str, typed: str, said: str) -> None:
    """A count or a line that cannot be is answered with a sentence, and what was typed is still there."""
    app = host(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "verrin", "<1>", "<1>", *((typed,) if field == "count" else ("2", "", typed)))
        screen = app.screen
        assert isinstance(screen, ReceiveScreen)
        assert said in " ".join(dump(app).split())
        assert (screen.counted if field == "count" else screen.lines.line).value == typed
