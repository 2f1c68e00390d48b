"""What can be typed, read into options, and one command run to its end: the result or one sentence, and a code."""

import argparse
import io
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import NoReturn

from queueboard.cli import acting, board, edges, figures, keeping, market, promise, reading, slips, swaps, telling
from queueboard.cli.common import FINE, REFUSED, USAGE, Add, Clock, Command, add_shapes, trouble
from queueboard.cli.paper import SHEETS, add_paper_options
from queueboard.cli.password import with_password
from queueboard.errors import QueueboardError, TypedError
from queueboard.papers.output import let_go, print_text
from queueboard.shop.opening import place_named


def run(argv: Sequence[str] | None, clock: Clock) -> int:
    """Run one command and return its exit code; *clock* tells aware instants."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")
    try:
        args = build_parser().parse_args(argv)
        code = with_password(args.command, args, clock)
    except BrokenPipeError:
        # Whoever read has enough (`queueboard day | head`).
        let_go(sys.stdout)
        return FINE
    except TypedError as error:
        return trouble(str(error), USAGE)
    except QueueboardError as error:
        return trouble(str(error), REFUSED)
    except OSError as error:
        where = f" ({error.filename})" if error.filename else ""
        return trouble(f"The machine refused: {error.strerror or error}{where}.", REFUSED)
    return code


class _Parser(argparse.ArgumentParser):
    """Says what was typed wrong without repeating signs that could command the terminal."""

    def error(self, message: str) -> NoReturn:
        """End with the usage and a sentence, code 2."""
        trouble(f"{self.format_usage()}{self.prog}: error: {message}", USAGE)
        sys.exit(USAGE)

    def print_help(self, file: object = None) -> None:  # noqa: ARG002  # nobody here prints help elsewhere
        """Print like every command, so that a full disk or a closed stream is told."""
        print_text(self.format_help())


_LISTS: Sequence[tuple[str, Command, str]] = (
    ("late", reading.late, "boxes that are late or will be, the worst first"),
    ("labels", reading.labels, "return labels to buy or to use, the worst first"),
    ("boxes", reading.boxes, "all open boxes with their totals"),
    ("owing", reading.owed, "who owes for what has left, and for how many days"),
)
"""The commands that only show a list."""


def build_parser() -> argparse.ArgumentParser:
    """The whole command line; README's table of commands is held against it."""
    parser = _Parser(
        prog="queueboard",
        description="The board that runs the day of a knife-sharpening shop. Without a command it opens the board.",
        epilog="Exit codes: 0 fine, 1 refused, 2 typed wrong or no terminal, 3 nothing found, 4 no.",
        parents=[_common(None)],
    )
    parser.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    parser.set_defaults(command=board.board)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")

    def add(name: str, command: Command, says: str) -> _Parser:
        added = commands.add_parser(name, help=says, description=says, parents=[_common(argparse.SUPPRESS)])
        added.set_defaults(command=command, called=name)
        return added

    start = add("start", acting.start, "make the shop's file, from the starter settings or your own")
    start.add_argument("--settings", type=_named, metavar="FILE", help="settings to begin with")
    demo = add("demo", board.demo, "open the board of an invented shop, thrown away afterwards (kept with --file)")
    demo.add_argument("--date", metavar="DAY", help="begin on the morning of this day, like 2026-12-31")
    demo.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    day = add("day", reading.day_list, "today's work in order, what leaves, labels, who is waited for")
    day.add_argument("--fix", action="store_true", help="keep this order today until the board is asked to sort again")
    add_paper_options(day, SHEETS)
    lists = [add(name, command, says) for name, command, says in _LISTS]
    box = add("box", reading.box, "everything about one box")
    box.add_argument("number", help="box or tag: 417 or 417-3")
    telling.add_commands(add)
    loose = add("loose", reading.loose, "whose a loose knife is: open and found knives by kind, length and mark")
    loose.add_argument("text", nargs="+", help="what can be seen of it: chef 20 black nick")
    asked = add("promise", promise.promise, "when these knives could be ready, and whether by a day (code 4: no)")
    promise.add_options(asked)
    said = add("said", reading.said, "chances and dates told against what was seen, and the minutes learned")
    for around in (edges, slips, figures, swaps, market):
        around.add_commands(add)
    compare = add("compare", edges.compare, "before and after, how edges lasted, what belt trials show")
    chart = add("chart", edges.chart, "readings since the belt was fitted, with limits and what stands out")
    asked.add_argument("--json", action="store_true", help="the same as JSON, for scripts")
    for listing in (day, *lists, box, said, compare, chart):
        add_shapes(listing)
    _keeping(add)
    return parser


def _keeping(add: Add) -> None:
    """The commands that look after the shop's numbers and its file."""
    settings = add("settings", acting.settings, "print the shop's own numbers, or take new ones in")
    settings.add_argument("--take", type=_named, metavar="FILE", help="take in the settings of this file")
    keeping.add_commands(add, _named)


def _common(default: str | None) -> _Parser:
    """The options of every command; they may stand before or after its name."""
    common = _Parser(add_help=False, argument_default=default)
    common.add_argument("--file", type=_named, metavar="PATH", help="the shop's file (else QUEUEBOARD_FILE)")
    common.add_argument("--as", dest="initials", metavar="INITIALS", help="who acts (else QUEUEBOARD_AS)")
    return common


def _named(text: str) -> Path:
    """A file as it was named; an empty name, which is often a variable that was never set, would mean this folder."""
    if not text.strip():
        raise argparse.ArgumentTypeError("the name of the file is empty; type where it is or is to be")
    return place_named(text)
