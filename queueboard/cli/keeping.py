"""The commands that keep the data: check, and what is made of the file as a whole."""

import argparse

from queueboard.cli.common import (
    FINE,
    NOBODY,
    REFUSED,
    Add,
    Clock,
    file_of,
    initials_of,
    named,
    pasted,
    say,
    say_json,
    shop_of,
)
from queueboard.papers.health import health_facts, health_sheet
from queueboard.papers.progress import bar
from queueboard.phrases.health import erased_again_words, restored_words
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.checking import check
from queueboard.shop.restoring import restore
from queueboard.values.actor import Actor


def add_commands(add: Add) -> None:
    """Add the commands of this file to the command line."""
    look = add("check", check_file, "look the shop file over, its history and its copies (code 1: damaged)")
    look.add_argument("--json", action="store_true", help="the same as JSON, for scripts")
    back = add("restore", restore_copy, "put a copy in the place of the shop file, which is moved aside")
    back.add_argument("copy", type=named, help="the copy to go back to")
    export = add("export", export_shop, "write everything in the shop file into a new file, as lines of JSON")
    export.add_argument("target", type=named, help="a new file")
    take = add("take", take_shop, "make a new shop file of what `queueboard export` wrote")
    take.add_argument("source", type=named, help="the file that was written")


def check_file(args: argparse.Namespace, clock: Clock) -> int:
    """Look the shop file over; a damaged one ends with the code for refused."""
    with bar():
        health = check(file_of(args), clock())
    if args.json:
        say_json(health_facts(health))
    else:
        say(health_sheet(health))
    return FINE if health.sound else REFUSED


def restore_copy(args: argparse.Namespace, clock: Clock) -> int:
    """Go back to a copy; whoever is in trouble need not say who acts."""
    path = file_of(args)
    with bar():
        done = restore(path, args.copy, Actor(initials=initials_of(args) or NOBODY, now=clock()))
    return say(restored_words(done, pasted(path), pasted(args.copy), "" if done.aside is None else pasted(done.aside)))


def export_shop(args: argparse.Namespace, _clock: Clock) -> int:
    """Write everything out."""
    with shop_of(args) as shop:
        rows = write_out(shop, args.target)
    return say(f"Written: {rows} rows, all of the shop file, in {pasted(args.target)}. Only its owner may read it.\n")


def take_shop(args: argparse.Namespace, clock: Clock) -> int:
    """Take everything into a new file."""
    path = file_of(args)
    with bar():
        lines, again = take_in(path, args.source, Actor(initials=initials_of(args) or NOBODY, now=clock()))
    said = f"{pasted(path)} now holds all of {pasted(args.source)}: {lines} lines of history, verified."
    return say("".join(f"{line}\n" for line in (said, *erased_again_words(again))))
