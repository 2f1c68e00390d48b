"""The commands that open the board: on the shop's file, or on the invented shop."""

import argparse
import os
import shutil
import sys
import tempfile
from datetime import UTC, datetime, time
from pathlib import Path

from queueboard.cli.common import NOBODY, REFUSED, Clock, closing_shop, file_of, initials_of, say, trouble
from queueboard.errors import QueueboardError, TypedError
from queueboard.shop.keeping import daily_copy
from queueboard.shop.numbers import holidays_run_out, settings_text, take_settings
from queueboard.shop.opening import Shop, open_shop
from queueboard.values.actor import Actor

DEMO_MORNING = time(13, 5, tzinfo=UTC)
"""When the invented shop's day begins if a date is given: morning where it lies."""


def board(args: argparse.Namespace, clock: Clock) -> int:
    """Open the board on the shop's file."""
    need_terminal()
    with closing_shop(open_shop(file_of(args))) as shop:
        return _open_board(shop, args, clock)


def demo(args: argparse.Namespace, clock: Clock) -> int:
    """The invented shop lies in a folder of its own, never where QUEUEBOARD_FILE or the user's data are."""
    from queueboard.shop.demo import OWNER, make_demo_shop

    if args.file is None:
        need_terminal()
    begins = clock() if args.date is None else datetime.combine(args.date, DEMO_MORNING)
    ahead = begins - clock()
    folder = Path(tempfile.mkdtemp(prefix="queueboard-demo-"))
    try:
        shop = make_demo_shop(args.file or folder / "demo.qb", begins)
        with closing_shop(shop):
            if args.file is not None and not terminal_here():
                return say(f"The invented shop is in {args.file}. Look at it with --file {args.file}.\n")
            args.initials = initials_of(args) or OWNER
            return _open_board(shop, args, lambda: clock() + ahead, demo=True)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _open_board(shop: Shop, args: argparse.Namespace, clock: Clock, *, demo: bool = False) -> int:
    """Hand the shop to the board; what went wrong with the day's first copy is said once the terminal is free again."""
    from queueboard.board.run import run_board

    sentence = "" if demo else _morning(shop, clock())
    code = run_board(shop, initials_of(args), clock, no_mouse=args.no_mouse, demo=demo)
    return trouble(sentence, code or REFUSED) if sentence else code


def _morning(shop: Shop, now: datetime) -> str:
    """At the day's first start: a verified copy, and holidays for the years ahead; the sentence of what went wrong."""
    try:
        daily_copy(shop, now)
        if holidays_run_out(shop, now.date()):
            take_settings(shop, Actor(initials=NOBODY, now=now), settings_text(shop))
    except QueueboardError as error:
        return str(error)
    return ""


def terminal_here() -> bool:
    """True when all three streams are a terminal that can be drawn on."""
    streams = (sys.stdin, sys.stdout, sys.stderr)
    return os.environ.get("TERM", "") not in {"", "dumb"} and all(s.isatty() for s in streams)


def need_terminal() -> None:
    """TypedError where the board could not be drawn."""
    if not terminal_here():
        raise TypedError("The board needs a terminal. Without one, `queueboard day` and the other commands print text.")
