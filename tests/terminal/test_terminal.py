"""The board in a real terminal: start, move, close out, quit; killed at any step it stands where it stood."""

import signal
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.picture import Picture
from queueboard.words import Column
from tests.terminal.conftest import Start
from tests.terminal.pty import Terminal, restored

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals of this kind are not there")

ENTER, ESCAPE = "\r", "\x1b"

COUNT = "Count what lies in front of you"
"""The question of the blind count."""


def stored(path: Path) -> Picture:
    """What the shop file holds."""
    shop = open_shop(path)
    try:
        return look(shop, datetime.now(UTC))
    finally:
        close_shop(shop)


def opened(start: Start, path: Path) -> Terminal:
    """The board, once it stands."""
    terminal = start(path)
    terminal.shows("Maren Tallis")
    return terminal


def test_start_move_quit(start: Start, shop_file: Path) -> None:
    """A tag and + moves a knife to the bench, at once in the file; quitting gives the terminal back."""
    terminal = opened(start, shop_file)

    terminal.type("418-1+")
    terminal.until(lambda text: head_count(text) == "1")
    assert on_bench(shop_file) == ["418-1"]
    terminal.type("\x11")

    assert terminal.ended() == 0
    assert restored(terminal.raw)


def on_bench(path: Path) -> list[str]:
    """Tags on the bench."""
    return [knife.tag for box in stored(path).boxes for knife in box.in_column(Column.ON_BENCH)]


def test_close_out_from_the_numeric_pad(start: Start, shop_file: Path) -> None:
    """417/ 3 + + + 1 + with Enter where it belongs: the box is gone, and the board is back."""
    terminal = opened(start, shop_file)

    terminal.type("417/")
    shown = terminal.settled(lambda text: COUNT in " ".join(text.split()))
    assert "3" not in shown.replace("417", "")
    terminal.type("3\r")
    terminal.shows("It came with these.")
    terminal.type("+")
    terminal.shows("Compare the names")
    terminal.type("+")
    terminal.shows("Is this label on the box?")
    terminal.type("+")
    terminal.shows("How does the money stand?")
    terminal.type("1\r")
    terminal.shows("Let it go?")
    terminal.type("+")
    terminal.shows("BOX 417, Maren Tallis")
    terminal.type(ENTER)
    terminal.until(lambda text: "Ola Hale" in text and "Maren Tallis" not in text)

    assert [box.box.number for box in stored(shop_file).boxes] == [418]


STEPS: tuple[tuple[str, str], ...] = (
    ("2\r", "Nothing is ticked yet."),
    ("1\r", "✓ 417-1"),
    ("3\r", "✓ 417-3"),
    (ENTER, "417-2 last seen ready"),
    ("not in any tray\r", "It came with these."),
    ("1\r", "✓ in hand roll"),
    (ENTER, "Compare the names"),
    ("+", "Is this label on the box?"),
    ("+", "How does the money stand?"),
    ("4\r", "Let it go?"),
)
"""What is typed at each step of a close-out that does not add up, and what then stands on the screen."""


def test_killed_after_each_step_it_stands_where_it_stood(start: Start, shop_file: Path) -> None:
    """Kill -9 after every answer; opened again, the close-out shows exactly the screen it showed, and ends once."""
    terminal = opened(start, shop_file)
    terminal.type("417/")
    terminal.shows(COUNT)
    for keys, words in STEPS:
        terminal.type(keys)
        stood = settled(terminal, words)
        terminal.kill()
        terminal = opened(start, shop_file)
        terminal.type("417/")
        terminal.until(stood.__eq__)

    terminal.type(ENTER)
    terminal.shows("WE ARE LOOKING FOR")
    terminal.kill()
    box = stored(shop_file).box(417)
    assert box is not None
    assert [(knife.tag, knife.looking_for) for knife in box.on_hand] == [("417-2", True)]
    assert box.payments == ()


def settled(terminal: Terminal, words: str) -> str:
    """The screen of the close-out once its words stand and the answer, and its large echo, are taken off the line."""
    return terminal.settled(
        lambda text: (
            words in " ".join(text.split())
            and text.lstrip().startswith("Close-out")
            and text.rstrip().endswith("leaves")
            and foot(text) == ""
        )
    )


def foot(text: str) -> str:
    """What stands on the answer line and beside it, where digits are echoed large."""
    lines = text.splitlines()
    place = next((at for at, line in enumerate(lines) if line.startswith(" answer")), 0)
    return "".join(lines[place - 1 : place + 2]).replace("answer", "").strip()


def test_a_byte_that_is_no_text(start: Start, shop_file: Path) -> None:
    """Half a character between the keys, from another keyboard or a noisy line, is no key; the next keys are."""
    terminal = opened(start, shop_file)

    terminal.process.write(b"\xe9\xff418-1\xc3+")
    terminal.until(lambda text: head_count(text) == "1")
    assert on_bench(shop_file) == ["418-1"]
    terminal.type("\x11")

    assert terminal.ended() == 0
    assert restored(terminal.raw)


def test_escape_with_the_next_key_right_behind_it(start: Start, shop_file: Path) -> None:
    """Esc and a digit in one burst are two keys: the tag half typed is dropped, and the next one is read whole."""
    terminal = opened(start, shop_file)

    terminal.type("41\x1b418-1+")
    terminal.until(lambda text: head_count(text) == "1")

    assert on_bench(shop_file) == ["418-1"]


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_told_to_stop_the_terminal_is_given_back(start: Start, shop_file: Path, number: signal.Signals) -> None:
    """SIGINT, SIGTERM and SIGHUP leave the terminal as it was, with one sentence and an exit code that is not 0."""
    terminal = opened(start, shop_file)

    terminal.process.kill(number)

    assert terminal.ended() == 128 + number
    assert restored(terminal.raw)
    assert "queueboard was told to stop" in terminal.text()


def test_a_terminal_that_goes_away_while_it_is_drawn_on(start: Start, shop_file: Path) -> None:
    """A window closed in the middle of a move ends the board as SIGHUP does; the program does not stay behind."""
    terminal = opened(start, shop_file)

    terminal.type("418-3+" * 5)

    assert terminal.unplug() == 128 + signal.SIGHUP


def test_two_windows_on_one_file(start: Start, shop_file: Path) -> None:
    """What one window moves, the other shows by itself."""
    one, other = opened(start, shop_file), opened(start, shop_file)

    one.type("418-2+")
    other.until(lambda text: "on bench" in text and head_count(text) == "1")

    assert on_bench(shop_file) == ["418-2"]


def head_count(text: str) -> str:
    """The number at the head of the column on bench."""
    line = next(line for line in text.splitlines() if "on bench" in line)
    return line.partition("on bench")[2].replace("━", " ").replace("─", " ").split()[0]
