"""What the commands share: which file, who acts, the picture, and saying something with an exit code."""

import argparse
import os
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from queueboard.clean import clean
from queueboard.errors import TypedError
from queueboard.papers.output import print_csv, print_json, print_text, print_trouble
from queueboard.papers.progress import bar
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, address_in, close_shop, default_file, open_shop, place_named
from queueboard.shop.picture import Picture
from queueboard.values.actor import Actor

if TYPE_CHECKING:
    from queueboard.papers.facts import Fact

FINE, REFUSED, USAGE, NOTHING_FOUND, NO = 0, 1, 2, 3, 4

PATIENCE_MS = 10_000
"""How long a command waits for another window that is writing; the board waits shorter."""

NOBODY = "shop"
"""Who acts where the program does by itself what nobody was asked about."""

Clock = Callable[[], datetime]
Command = Callable[[argparse.Namespace, Clock], int]
Add = Callable[[str, Command, str], argparse.ArgumentParser]
"""Adds a command to the command line: its name, what runs it, what it says of itself."""


def file_of(args: argparse.Namespace) -> Path:
    """The shop's file: --file, else the usual place."""
    chosen: Path | None = args.file
    return default_file() if chosen is None else chosen


@contextmanager
def shop_of(args: argparse.Namespace) -> Iterator[Shop]:
    """The shop, open for one command; it may wait for another window that is writing, and says when it works long."""
    with (
        closing_shop(open_shop(file_of(args), patience_ms=PATIENCE_MS)) as shop,
        bar(words=f"{args.called}: working it out"),
    ):
        yield shop


@contextmanager
def closing_shop(shop: Shop) -> Iterator[Shop]:
    """The shop, closed at the end whatever happens."""
    try:
        yield shop
    finally:
        close_shop(shop)


def picture_of(args: argparse.Namespace, clock: Clock) -> Picture:
    """The whole shop, now."""
    with shop_of(args) as shop:
        return look(shop, clock())


def initials_of(args: argparse.Namespace) -> str:
    """Who acts; empty when nobody said so, and the board asks."""
    return clean(args.initials or os.environ.get("QUEUEBOARD_AS", ""), limit=8, field="initials")


def actor_of(args: argparse.Namespace, clock: Clock) -> Actor:
    """Who acts; TypedError when nobody said so."""
    initials = initials_of(args)
    if not initials:
        raise TypedError("Say who acts: --as INITIALS, or QUEUEBOARD_AS.")
    return Actor(initials=initials, now=clock())


def pasted(path: Path) -> str:
    """A place as it can be pasted into a command: quoted where it must be, with signs that do not show spelled out.

    A shop on a server is where its address says, not where the address is kept.
    """
    import shlex

    text = address_in(path) or str(path)
    if text.isprintable():
        return shlex.quote(text)
    plain = frozenset(range(0x20, 0x7F)) - {*b"\\'"}
    return "$'" + "".join(chr(byte) if byte in plain else f"\\x{byte:02x}" for byte in os.fsencode(text)) + "'"


def named(text: str) -> Path:
    """A file as it was named; an empty name, which is often a variable that was never set, would mean this folder."""
    if not text.strip():
        raise argparse.ArgumentTypeError("the name of the file is empty; type where it is or is to be")
    return place_named(text)


def say(text: str) -> int:
    """Print, and end well."""
    print_text(text)
    return FINE


def say_json(what: Mapping[str, "Fact"]) -> int:
    """Print as JSON, and end well."""
    print_json(what)
    return FINE


def show(args: argparse.Namespace, as_facts: Callable[[], Mapping[str, "Fact"]], as_text: Callable[[], str]) -> int:
    """Print a list in the shape that was asked for, and end well: JSON, CSV, else text."""
    if args.json:
        return say_json(as_facts())
    if args.csv:
        from queueboard.papers.csv_lists import csv_of

        print_csv(csv_of(args.called, as_facts()))
        return FINE
    return say(as_text())


def add_shapes(listing: argparse.ArgumentParser) -> None:
    """The shapes besides text in which a list can be printed; papers/csv_lists.py holds its columns."""
    shapes = listing.add_mutually_exclusive_group()
    shapes.add_argument("--json", action="store_true", help="the same as JSON, for scripts")
    shapes.add_argument("--csv", action="store_true", help="the list as CSV, for a spreadsheet")


def add_mouse(board: argparse.ArgumentParser) -> None:
    """What can be said of the mouse wherever the board is opened."""
    board.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")


def trouble(sentence: str, code: int) -> int:
    """Print one sentence to standard error, and end with this code."""
    print_trouble(sentence)
    return code
