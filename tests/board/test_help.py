"""Help is made from the bindings, and every binding says what it is."""

from collections import Counter

from textual.binding import Binding

from queueboard.board.app import QueueboardApp
from queueboard.board.forms.form import Dialog
from queueboard.board.key_names import KeyGroup, KeyLine, key_groups, key_name
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.help import HelpScreen, group_lines, help_lines
from tests.board.all_screens import SCREENS
from tests.board.dump import dump
from tests.board.host import SMALL, FakeDesk
from tests.busy_morning import busy_morning
from tests.house import keys_table as key_table
from tests.house.keys_table import holders, written
from tests.pictures import picture

BOARD = tuple(kind for kind in BoardScreen.__mro__ if kind.__module__.startswith("queueboard.board.screens.board"))
"""The board's own classes, each with some of its keys."""


def bindings() -> list[Binding]:
    """Every binding of every screen, widget and of the app, one for each way it was written."""
    return [binding for holder in holders() for binding in written(holder)]


def test_every_key_has_a_label_and_a_name_of_its_own() -> None:
    """Each binding of ours has a label, an id that no other has, and where the label is no sentence a tooltip is."""
    ids = Counter(binding.id for binding in bindings())

    assert len(bindings()) > 200
    assert not [b.action for b in bindings() if not (b.description and b.id)]
    assert not [b.tooltip for b in bindings() if b.tooltip and not b.tooltip.endswith(".")]
    assert not [name for name, count in ids.items() if count > 1]


def test_every_group_of_keys_has_a_title_of_its_own() -> None:
    """What help and README write over a group of keys is no code's docstring, and no two groups are called alike."""
    titles = [vars(h).get("BINDING_GROUP_TITLE") for h in holders() if list(key_table.rows(h))]

    assert None not in titles
    assert len(set(titles)) == len(titles)


def test_every_screen_says_what_can_be_done_on_it() -> None:
    """The help of each screen begins with sentences of its own; questions share theirs."""
    assert not [kind.__name__ for kind in SCREENS if kind is not HelpScreen and not kind.HELP.endswith(".")]
    assert {kind.HELP for kind in SCREENS if issubclass(kind, Dialog)} == {Dialog.HELP}
    assert BoardScreen.HELP


def test_the_text_of_a_help_hangs_behind_its_keys() -> None:
    """A sentence longer than its line goes on below its own beginning, and keys too long for theirs stand alone."""
    group = KeyGroup(
        title="Keys",
        lines=(
            KeyLine(keys=("a",), sentence="One two three four five."),
            KeyLine(keys=("Shift+↑", "Shift+↓", "PgUp", "PgDn"), sentence="Six seven."),
        ),
    )

    assert [line.plain.rstrip() for line in group_lines(group, 36)] == [
        "Keys",
        f"a{' ' * 21}One two three",
        f"{' ' * 22}four five.",
        "Shift+↑ Shift+↓ PgUp PgDn",
        f"{' ' * 22}Six seven.",
        "",
    ]


def test_no_key_means_two_things_on_the_board() -> None:
    """Among the keys of the board itself each key stands for one action."""
    keys = Counter(b.key for holder in BOARD for b in Binding.make_bindings(vars(holder).get("BINDINGS", ())))

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
        text = "\n".join(line.plain for line in help_lines(app.screen, 200, with_pad=True))
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
