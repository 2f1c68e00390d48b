"""The command line: the board, and the same lists as text or JSON for scripts and for machines without a terminal.

Exit codes: 0 fine; 1 the shop file, a rule of the shop or the machine said no; 2 the command was typed wrong, or the
board has no terminal; 3 nothing was found. Trouble is one sentence on standard error.
"""

import argparse
import io
import json
import os
import re
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from pathlib import Path
from typing import NoReturn

from queueboard.clean import clean
from queueboard.errors import FileError, QueueboardError, TypedError
from queueboard.papers.facts import Fact, boxes_facts, day_facts, labels_facts, late_facts, one_box_facts
from queueboard.papers.lists import boxes_list, found_list, labels_list, late_list
from queueboard.papers.one_box import box_sheet
from queueboard.phrases.typed import parse_tag
from queueboard.seedfiles import seed_text
from queueboard.shop.finding import find
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop, default_file, open_shop
from queueboard.shop.picture import Picture
from queueboard.values.actor import Actor

FINE, REFUSED, USAGE, NOTHING_FOUND, INTERRUPTED = 0, 1, 2, 3, 130

PATIENCE_MS = 10_000
"""How long a command waits for another window that is writing; the board waits shorter."""

DEMO_MORNING = time(13, 5, tzinfo=UTC)
"""When the invented shop's day begins if a date is given: morning where it lies."""

NOBODY = "shop"
"""Who acts where the program does by itself what nobody was asked about."""

_CONTROLS = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\ud800-\udfff]")

Clock = Callable[[], datetime]
Command = Callable[[argparse.Namespace, Clock], int]


def main(argv: Sequence[str] | None = None, *, clock: Clock = lambda: datetime.now(UTC)) -> int:
    """Run one command and return its exit code; *clock* tells aware instants."""
    args = build_parser().parse_args(argv)
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")
    try:
        code: int = args.command(args, clock)
        sys.stdout.flush()
    except BrokenPipeError:
        # Whoever read has enough (`queueboard day | head`). What is left must not fail again when Python ends.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FINE
    except TypedError as error:
        return _trouble(str(error), USAGE)
    except QueueboardError as error:
        return _trouble(str(error), REFUSED)
    except OSError as error:
        return _trouble(f"The machine refused: {error.strerror or error}. Nothing was changed.", REFUSED)
    except KeyboardInterrupt:
        return _trouble("Stopped.", INTERRUPTED)
    return code


def build_parser() -> argparse.ArgumentParser:
    """The whole command line; README's table of commands is held against it."""
    parser = _Parser(
        prog="queueboard",
        description="The board that runs the day of a knife-sharpening shop. Without a command it opens the board.",
        epilog="Exit codes: 0 fine, 1 refused, 2 typed wrong or no terminal, 3 nothing found.",
        parents=[_common(None)],
    )
    parser.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    parser.set_defaults(command=_board)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")

    def add(name: str, command: Command, says: str, *, as_json: bool = False) -> argparse.ArgumentParser:
        added = commands.add_parser(name, help=says, description=says, parents=[_common(argparse.SUPPRESS)])
        added.set_defaults(command=command)
        if as_json:
            added.add_argument("--json", action="store_true", help="the same as JSON, for scripts")
        return added

    start = add("start", _start, "make the shop's file, from the starter settings or your own")
    start.add_argument("--settings", type=Path, metavar="FILE", help="settings to begin with")
    demo = add("demo", _demo, "open the board of an invented shop, thrown away afterwards (kept with --file)")
    demo.add_argument("--date", type=_day, metavar="DAY", help="begin on the morning of this day, like 2026-12-31")
    demo.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    day = add("day", _day_list, "today's work in order, what leaves, labels, who is waited for", as_json=True)
    day.add_argument("--fix", action="store_true", help="keep this order today until the board is asked to sort again")
    add("late", _late, "boxes that are late or will be, the worst first", as_json=True)
    add("labels", _labels, "return labels to buy or to use, the worst first", as_json=True)
    add("boxes", _boxes, "all open boxes with their totals", as_json=True)
    add("box", _box, "everything about one box", as_json=True).add_argument("number", help="box or tag: 417 or 417-3")
    find = add("find", _find, "open boxes by name, town, tag or the last figures of the phone", as_json=True)
    find.add_argument("text", nargs="+", help="what to look for")
    settings = add("settings", _settings, "print the shop's own numbers, or take new ones in")
    settings.add_argument("--take", type=Path, metavar="FILE", help="take in the settings of this file")
    add("backup", _backup, "copy the shop file, verified").add_argument("copy", type=Path, help="a new file")
    return parser


class _Parser(argparse.ArgumentParser):
    """Says what was typed wrong without repeating signs that could command the terminal."""

    def error(self, message: str) -> NoReturn:
        """End with the usage and a sentence, code 2."""
        super().error(_harmless(message))


def _common(default: str | None) -> argparse.ArgumentParser:
    """The options of every command; they may stand before or after its name."""
    common = argparse.ArgumentParser(add_help=False, argument_default=default)
    common.add_argument("--file", type=Path, metavar="PATH", help="the shop's file (else QUEUEBOARD_FILE)")
    common.add_argument("--as", dest="initials", metavar="INITIALS", help="who acts (else QUEUEBOARD_AS)")
    return common


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"there is no day {text}; type it like 2026-12-31") from None


def _board(args: argparse.Namespace, clock: Clock) -> int:
    _need_terminal()
    with _closing(open_shop(_file(args))) as shop:
        return _open_board(shop, args, clock)


def _demo(args: argparse.Namespace, clock: Clock) -> int:
    """The invented shop lies in a folder of its own, never where QUEUEBOARD_FILE or the user's data are."""
    from queueboard.shop.demo import OWNER, make_demo_shop

    if args.file is None:
        _need_terminal()
    begins = clock() if args.date is None else datetime.combine(args.date, DEMO_MORNING)
    ahead = begins - clock()
    folder = Path(tempfile.mkdtemp(prefix="queueboard-demo-"))
    try:
        shop = make_demo_shop(args.file or folder / "demo.qb", begins)
        with _closing(shop):
            if args.file is not None and not _terminal_here():
                return _print(f"The invented shop is in {args.file}. Look at it with --file {args.file}.\n")
            args.initials = _initials(args) or OWNER
            return _open_board(shop, args, lambda: clock() + ahead, demo=True)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _open_board(shop: Shop, args: argparse.Namespace, clock: Clock, *, demo: bool = False) -> int:
    """Hand the shop to the board; what went wrong with the day's first copy is said once the terminal is free again."""
    from queueboard.board.run import run_board

    trouble = "" if demo else _morning(shop, clock())
    code = run_board(shop, _initials(args), clock, no_mouse=args.no_mouse, demo=demo)
    return _trouble(trouble, code or REFUSED) if trouble else code


def _morning(shop: Shop, now: datetime) -> str:
    """At the day's first start: a verified copy, and holidays for the years ahead; the sentence of what went wrong."""
    from queueboard.shop.keeping import daily_copy
    from queueboard.shop.numbers import holidays_run_out, settings_text, take_settings

    try:
        daily_copy(shop, now)
        if holidays_run_out(shop, now.date()):
            take_settings(shop, Actor(initials=NOBODY, now=now), settings_text(shop))
    except QueueboardError as error:
        return str(error)
    return ""


def _start(args: argparse.Namespace, clock: Clock) -> int:
    from queueboard.shop.opening import start_shop

    path = _file(args)
    text = seed_text("settings.toml") if args.settings is None else _text_of(args.settings)
    with _closing(start_shop(path, Actor(initials=_initials(args) or NOBODY, now=clock()), text)):
        named = "" if args.file is None else f" --file {path}"
        return _print(f"The shop file is {path}. Open the board with `queueboard{named}`.\n")


def _day_list(args: argparse.Namespace, clock: Clock) -> int:
    from queueboard.papers.day_sheet import day_sheet
    from queueboard.shop.numbers import fix_day_list

    with _shop(args) as shop:
        picture = look(shop, clock())
        order = tuple(knife_id for run in picture.plan.runs for knife_id in run.knife_ids)
        if args.fix and order:
            fix_day_list(shop, _actor(args, clock), picture.now.date(), order)
            picture = look(shop, clock())
    return _print_json(day_facts(picture)) if args.json else _print(day_sheet(picture))


def _late(args: argparse.Namespace, clock: Clock) -> int:
    picture = _picture(args, clock)
    return _print_json(late_facts(picture)) if args.json else _print(late_list(picture))


def _labels(args: argparse.Namespace, clock: Clock) -> int:
    picture = _picture(args, clock)
    return _print_json(labels_facts(picture)) if args.json else _print(labels_list(picture))


def _boxes(args: argparse.Namespace, clock: Clock) -> int:
    picture = _picture(args, clock)
    return _print_json(boxes_facts(picture.boxes, picture)) if args.json else _print(boxes_list(picture))


def _box(args: argparse.Namespace, clock: Clock) -> int:
    number = parse_tag(args.number).box
    picture = _picture(args, clock)
    box = picture.box(number)
    if box is None:
        return _trouble(f"Box {number} is not open. `queueboard boxes` lists those that are.", NOTHING_FOUND)
    return _print_json(one_box_facts(box, picture)) if args.json else _print(box_sheet(box, picture))


def _find(args: argparse.Namespace, clock: Clock) -> int:
    text = clean(" ".join(args.text))
    picture = _picture(args, clock)
    found = find(picture, text)
    if args.json:
        _print_json(boxes_facts(found, picture))
    elif found:
        _print(found_list(found, picture))
    return FINE if found else _trouble(f"No open box fits “{text}”.", NOTHING_FOUND)


def _settings(args: argparse.Namespace, clock: Clock) -> int:
    from queueboard.shop.numbers import settings_text, take_settings

    with _shop(args) as shop:
        if args.take is None:
            return _print(settings_text(shop))
        take_settings(shop, _actor(args, clock), _text_of(args.take))
    return _print(f"The settings in {args.take} are in force.\n")


def _backup(args: argparse.Namespace, clock: Clock) -> int:
    from queueboard.shop.keeping import copy_to

    with _shop(args) as shop:
        copy_to(shop, args.copy, clock())
    return _print(f"Copied and verified: {args.copy}\n")


def _file(args: argparse.Namespace) -> Path:
    chosen: Path | None = args.file
    return default_file() if chosen is None else chosen


@contextmanager
def _shop(args: argparse.Namespace) -> Iterator[Shop]:
    with _closing(open_shop(_file(args), patience_ms=PATIENCE_MS)) as shop:
        yield shop


@contextmanager
def _closing(shop: Shop) -> Iterator[Shop]:
    try:
        yield shop
    finally:
        close_shop(shop)


def _picture(args: argparse.Namespace, clock: Clock) -> Picture:
    with _shop(args) as shop:
        return look(shop, clock())


def _initials(args: argparse.Namespace) -> str:
    """Who acts; empty when nobody said so, and the board asks."""
    return clean(args.initials or os.environ.get("QUEUEBOARD_AS", ""), limit=8, field="initials")


def _actor(args: argparse.Namespace, clock: Clock) -> Actor:
    initials = _initials(args)
    if not initials:
        raise TypedError("Say who acts: --as INITIALS, or QUEUEBOARD_AS.")
    return Actor(initials=initials, now=clock())


def _text_of(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except OSError as error:
        raise FileError(f"{path} cannot be read: {error.strerror}.") from None
    except UnicodeDecodeError:
        raise FileError(f"{path} is no UTF-8 text.") from None


def _terminal_here() -> bool:
    streams = (sys.stdin, sys.stdout, sys.stderr)
    return os.environ.get("TERM", "") not in {"", "dumb"} and all(s.isatty() for s in streams)


def _need_terminal() -> None:
    if not _terminal_here():
        raise TypedError("The board needs a terminal. Without one, `queueboard day` and the other commands print text.")


def _print(text: str) -> int:
    """Print; on a terminal without signs that could command it (a comment in settings may hold any)."""
    sys.stdout.write(_harmless(text) if sys.stdout.isatty() else text)
    return FINE


def _harmless(text: str) -> str:
    return _CONTROLS.sub("", text)


def _print_json(facts: Mapping[str, Fact]) -> int:
    return _print(json.dumps(facts, indent=2) + "\n")


def _trouble(sentence: str, code: int) -> int:
    print(_harmless(sentence), file=sys.stderr)
    return code
