"""What can be typed, read into options, and one command run to its end: the result or one sentence, and a code."""

import argparse
import io
import sys
from collections.abc import Iterable, Sequence
from contextlib import suppress
from importlib import import_module
from typing import NoReturn

from queueboard.cli.common import FINE, REFUSED, USAGE, Clock, Command, add_mouse, named, trouble
from queueboard.cli.password import with_password
from queueboard.errors import QueueboardError, TypedError
from queueboard.papers.output import let_go, print_text

FAMILIES = {
    "acting": ("start", "settings", "backup"),
    "board": ("demo",),
    "reading": ("day", "late", "labels", "boxes", "owing", "box", "said", "loose"),
    "telling": ("find", "shelf", "message"),
    "promise": ("promise",),
    "edges": ("card", "slip", "compare", "chart"),
    "slips": ("stub", "tags"),
    "figures": ("evening", "month"),
    "swaps": ("swaps",),
    "market": ("market", "pad"),
    "keeping": ("check", "restore", "export", "take"),
    "orders": ("orders",),
    "customers": ("customer",),
}
"""The commands of each file here that has some; a file is loaded when one of its commands may have been typed."""


def run(argv: Sequence[str] | None, clock: Clock) -> int:
    """Run one command and return its exit code; *clock* tells aware instants."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")
    try:
        args = _read(sys.argv[1:] if argv is None else argv)
        code: int = with_password(args.command, args, clock)
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


class _PartialParser(_Parser):
    """Knows some of the commands, so that it is not the one to say what is wrong, nor what there is."""

    def error(self, message: str) -> NoReturn:
        """Leave it to a parser that knows all."""
        raise _NotReadError(message)

    def print_help(self, file: object = None) -> None:  # noqa: ARG002  # as above
        """Leave it to a parser that knows all."""
        raise _NotReadError


class _NotReadError(Exception):
    """What was typed wants the whole command line."""


def _read(argv: Sequence[str]) -> argparse.Namespace:
    """The options typed; only families with a command among the words are loaded, all where those cannot read them."""
    families = [family for family, names in FAMILIES.items() if not {*names}.isdisjoint(argv)]
    with suppress(_NotReadError):
        return _parser(_PartialParser, families).parse_args(argv)
    return build_parser().parse_args(argv)


def build_parser() -> argparse.ArgumentParser:
    """The whole command line; README's table of commands is held against it."""
    return _parser(_Parser, FAMILIES)


def _parser(kind: type[_Parser], families: Iterable[str]) -> _Parser:
    parser = kind(
        prog="queueboard",
        description="The board that runs the day of a knife-sharpening shop. Without a command it opens the board.",
        epilog="Exit codes: 0 fine, 1 refused, 2 typed wrong or no terminal, 3 nothing found, 4 no.",
        parents=[_common(kind, None)],
    )
    add_mouse(parser)
    parser.set_defaults(command=_board)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    anywhere = _common(kind, argparse.SUPPRESS)

    def add(name: str, command: Command, says: str) -> _Parser:
        added = commands.add_parser(name, help=says, description=says, parents=[anywhere])
        added.set_defaults(command=command, called=name)
        return added

    for family in families:
        import_module(f"queueboard.cli.{family}").add_commands(add)
    return parser


def _board(args: argparse.Namespace, clock: Clock) -> int:
    from queueboard.cli.board import board

    return board(args, clock)


def _common(kind: type[_Parser], default: str | None) -> _Parser:
    """The options of every command; they may stand before or after its name."""
    common = kind(add_help=False, argument_default=default)
    common.add_argument("--file", type=named, metavar="PATH", help="the shop's file (else QUEUEBOARD_FILE)")
    common.add_argument("--as", dest="initials", metavar="INITIALS", help="who acts (else QUEUEBOARD_AS)")
    return common
