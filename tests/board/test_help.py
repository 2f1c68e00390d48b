"""Help is made from the bindings, and every binding says what it is."""

from collections import Counter

from textual.binding import Binding
from textual.dom import DOMNode

from queueboard.board.app import QueueboardApp
from queueboard.board.key_names import key_groups, key_name
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.help import HelpScreen, help_lines
from queueboard.board.screens.tray import TrayDialog
from queueboard.board.screens.undo import UndoScreen
from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.tag_entry import TagEntry
from tests.board.dump import dump
from tests.board.host import SMALL, FakeDesk
from tests.busy_morning import busy_morning
from tests.pictures import picture

OURS: tuple[type[DOMNode], ...] = (
    QueueboardApp,
    *BoardScreen.__mro__[:5],
    ColumnView,
    TagEntry,
    TrayDialog,
    UndoScreen,
)


def bindings() -> list[Binding]:
    """Every binding of the board and what belongs to it, one for each way it was written."""
    return [b for holder in OURS for b in vars(holder).get("BINDINGS", ()) if isinstance(b, Binding)]


def test_every_key_has_a_label_a_sentence_and_a_name_of_its_own() -> None:
    """Each binding of the board has a label, a sentence that ends, and an id that no other has."""
    ids = Counter(binding.id for binding in bindings())

    assert len(bindings()) > 50
    assert not [b.action for b in bindings() if not (b.description and b.tooltip.endswith(".") and b.id)]
    assert not [name for name, count in ids.items() if count > 1]


def test_no_key_means_two_things_on_the_board() -> None:
    """Among the keys of the board itself each key stands for one action."""
    keys = Counter(b.key for holder in BoardScreen.__mro__[:5] for b in Binding.make_bindings(vars(holder)["BINDINGS"]))

    assert not [key for key, count in keys.items() if count > 1]


def test_keys_are_named_as_they_are_printed() -> None:
    """The pad's keys are signs, letters are letters, and what is held comes first."""
    assert [key_name(key) for key in ("plus", "a", "ctrl+q", "shift+up", "full_stop")] == [
        "+",
        "a",
        "Ctrl+Q",
        "Shift+↑",
        ".",
    ]


async def test_help_names_every_key_of_the_board() -> None:
    """Every sentence of every binding of the board, its columns and the tag stands in the help, and so does the pad."""
    app = QueueboardApp(FakeDesk(busy_morning()))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        text = "\n".join(line.plain for line in help_lines(app.screen, with_pad=True))
        groups = [g for node in (app, app.screen, *app.screen.query("ColumnView, TagEntry")) for g in key_groups(node)]

        assert not [line.sentence for group in groups for line in group.lines if line.sentence not in text]
        assert "numeric pad" in text


async def test_help_opens_scrolls_and_goes_back() -> None:
    """? shows the keys, + goes on reading, Esc leads back to the board."""
    app = QueueboardApp(FakeDesk(picture()))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("question_mark")
        assert isinstance(app.screen, HelpScreen)
        before = dump(app)
        await pilot.press("plus", "plus")
        assert dump(app) != before

        await pilot.press("escape")
        assert isinstance(app.screen, BoardScreen)
