"""The commands that open the board: on the shop's file, or on the invented shop."""

import argparse
import os
import sys
from datetime import UTC, date, datetime, time
from pathlib import Path

from queueboard.cli.common import (
    NOBODY,
    REFUSED,
    Add,
    Clock,
    add_mouse,
    closing_shop,
    file_of,
    initials_of,
    pasted,
    say,
    trouble,
)
from queueboard.errors import QueueboardError, TypedError
from queueboard.papers.progress import bar
from queueboard.shop.keeping import daily_copy
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, open_shop
from queueboard.shop.settings_now import holidays_run_out, settings_text
from queueboard.values.actor import Actor

DEMO_MORNING = time(13, 5, tzinfo=UTC)
"""When the invented shop's day begins if a date is given: morning where it lies."""

FIRST_DEMO_DAY, LAST_DEMO_DAY = date(2000, 1, 1), date(2099, 12, 31)


def add_commands(add: Add) -> None:
    """Add the command that opens the invented shop to the command line; the shop's own board has no name."""
    invented = add("demo", demo, "open the board of an invented shop, thrown away afterwards (kept with --file)")
    invented.add_argument("--date", metavar="DAY", help="begin on the morning of this day, like 2026-12-31")
    add_mouse(invented)


def board(args: argparse.Namespace, clock: Clock) -> int:
    """Open the board on the shop's file; where there is none yet it is made first."""
    need_terminal()
    path, greeting = file_of(args), ""
    if not os.path.lexists(path):
        from queueboard.cli.first import FIRST_BOX, begins_new, first_numbers

        if begins_new(args, path):
            code, args.initials = first_numbers(args, path, clock)
            if not args.initials:
                return code
            greeting = FIRST_BOX
    with closing_shop(open_shop(path)) as shop:
        return _open_board(shop, args, clock, greeting=greeting)


def demo(args: argparse.Namespace, clock: Clock) -> int:
    """The invented shop lies in a folder of its own, never where QUEUEBOARD_FILE or the user's data are."""
    import tempfile

    if args.file is not None:
        return _open_demo(args.file, args, clock, kept=True)
    need_terminal()
    with tempfile.TemporaryDirectory(prefix="queueboard-demo-", ignore_cleanup_errors=True) as folder:
        return _open_demo(Path(folder) / "demo.qb", args, clock)


def _open_demo(path: Path, args: argparse.Namespace, clock: Clock, *, kept: bool = False) -> int:
    """Make the invented shop in a new file and open its board, or say where it is when there is no terminal."""
    from queueboard.shop.demo import OWNER, make_demo_shop

    begins = clock() if args.date is None else datetime.combine(_first_day(args.date, clock), DEMO_MORNING)
    ahead = begins - clock()
    with bar(words="making the invented shop"):
        made = make_demo_shop(path, begins)
    with closing_shop(made) as shop:
        if not terminal_here():
            return say(f"The invented shop is in {pasted(path)}. Look at it with --file {pasted(path)}.\n")
        args.initials = initials_of(args) or OWNER
        return _open_board(shop, args, lambda: clock() + ahead, demo="kept" if kept else "thrown away")


def _first_day(typed: str, clock: Clock) -> date:
    """The day on which the invented shop begins; TypedError for one outside its years."""
    from queueboard.phrases.typed import read_day

    day = read_day(typed, clock().date())
    if not FIRST_DEMO_DAY <= day <= LAST_DEMO_DAY:
        raise TypedError(f"{day} is too far away; type a day from {FIRST_DEMO_DAY} to {LAST_DEMO_DAY}.")
    return day


def _open_board(shop: Shop, args: argparse.Namespace, clock: Clock, *, demo: str = "", greeting: str = "") -> int:
    """Hand the shop to the board; what went wrong with the day's first copy is said once the terminal is free again."""
    from queueboard.board.run import run_board

    sentence = "" if demo or shop.only_read else _morning(shop, clock())
    # Where nothing can be stored nobody need say who acts.
    initials = initials_of(args) or (NOBODY if shop.only_read else "")
    code = run_board(shop, initials, clock, no_mouse=args.no_mouse, demo=demo, greeting=greeting)
    return trouble(sentence, code or REFUSED) if sentence else code


def _morning(shop: Shop, now: datetime) -> str:
    """A day's first start: a copy, what the plan says, holidays for years ahead; the sentences of what went wrong.

    Each is tried by itself: a disk too full for a copy is no reason to keep no word of what the plan says.
    """
    nobody = Actor(initials=NOBODY, now=now)
    sentences = list[str]()
    with bar(words="the first look of the day"):
        for step in (_copy_of_the_day, _first_look, _holidays):
            try:
                step(shop, nobody)
            except QueueboardError as error:
                sentences.append(str(error))
    return " ".join(dict.fromkeys(sentences))


def _copy_of_the_day(shop: Shop, nobody: Actor) -> None:
    daily_copy(shop, nobody.now)


def _first_look(shop: Shop, nobody: Actor) -> None:
    from queueboard.shop.first_look import first_look_due, say_first_look

    if first_look_due(shop, nobody.now):
        say_first_look(shop, nobody, look(shop, nobody.now))


def _holidays(shop: Shop, nobody: Actor) -> None:
    if holidays_run_out(shop, nobody.now.date()):
        from queueboard.shop.numbers import take_settings

        take_settings(shop, nobody, settings_text(shop))


def terminal_here() -> bool:
    """True when all three streams are a terminal that can be drawn on."""
    streams = (sys.stdin, sys.stdout, sys.stderr)
    return os.environ.get("TERM", "") not in {"", "dumb"} and all(s is not None and s.isatty() for s in streams)


def need_terminal() -> None:
    """TypedError where the board could not be drawn."""
    if not terminal_here():
        raise TypedError("The board needs a terminal. Without one, `queueboard day` and the other commands print text.")
