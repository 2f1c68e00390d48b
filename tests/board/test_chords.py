"""No key needs two hands: what a chord does, a plain key does too."""

import re
from collections.abc import Iterator

from textual.binding import Binding
from textual.dom import DOMNode

from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.dialogs import PaymentDialog
from queueboard.board.screens.first import FirstScreen
from queueboard.phrases.first_numbers import NAME
from queueboard.shop.opening import Shop
from tests.board.answering import COUNTER
from tests.board.dump import dump
from tests.board.host import SMALL, Host
from tests.house.keys_table import holders
from tests.shop.place import NOW, box

CHORD = re.compile(r"(ctrl|alt|meta|super)\+|shift\+")
ONLY_SAYS = "help_quit"
"""Ctrl+C, which ends other programs: it says which key ends this one."""


def bound(holder: type[DOMNode]) -> Iterator[tuple[str, str]]:
    """Each key and its action, the action without the part that names whose it is."""
    for binding in Binding.make_bindings(holder.BINDINGS):
        yield binding.key, binding.action.removeprefix("app.").removeprefix("screen.")


def test_every_chord_has_a_plain_key() -> None:
    """What Ctrl, Alt or Shift with a key does anywhere, one key does there, or on the board for the whole app."""
    on_the_board = {action for key, action in bound(BoardScreen) if not CHORD.match(key)}
    for holder in holders():
        plain = {action for key, action in bound(holder) if not CHORD.match(key)}
        chords = {action for key, action in bound(holder) if CHORD.match(key)}
        assert chords - plain - on_the_board <= {ONLY_SAYS}, holder.__name__


async def test_one_key_leads_back_in_a_form(two_boxes: Shop) -> None:
    """Shift+Tab is not needed: the arrow leads from a line to the one before, Backspace from numbered answers.

    The key for the appearance reaches a question that lies over another screen.
    """
    desk = Desk(two_boxes, "MB", lambda: NOW)
    app = Host(desk, lambda: FirstScreen(desk, "MB", "", ""))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        form = app.screen
        assert isinstance(form, FirstScreen)
        await pilot.press("down", "enter", "backspace")
        assert app.focused is form.typed[NAME.path]
        await pilot.press("up")
        assert app.focused is form.who

        await pilot.press("down", "down")
        assert form.country.at == 0
        await pilot.press("m")
        assert "Here a digit answers, 1 to 6" in dump(app)
        await pilot.press("right", "up")
        assert (form.country.at, app.focused) == (1, form.typed[NAME.path])

        theme = app.theme
        await app.push_screen(PaymentDialog(desk, box(two_boxes, COUNTER).box.id))
        await pilot.press("ctrl+t")
        assert app.theme != theme
