"""The commands that make or change files: start, settings, backup."""

import argparse

from queueboard.cli.common import (
    NOBODY,
    Add,
    Clock,
    actor_of,
    closing_shop,
    file_of,
    initials_of,
    named,
    pasted,
    say,
    shop_of,
)
from queueboard.phrases.belts import belt_words
from queueboard.phrases.health import share_words
from queueboard.plainfiles import read_text
from queueboard.seedfiles import seed_text
from queueboard.settings.shapes import Settings
from queueboard.shop.belts import belts_to_ask
from queueboard.shop.checking import share_under
from queueboard.shop.keeping import copy_to
from queueboard.shop.looking import look
from queueboard.shop.numbers import settings_before, take_settings
from queueboard.shop.settings_now import settings_text
from queueboard.shop.starting import start_shop
from queueboard.values.actor import Actor

SETTINGS = "a file of settings"


def add_commands(add: Add) -> None:
    """Add the commands of this file to the command line."""
    begin = add("start", start, "make the shop's file, from the starter settings or your own")
    begin.add_argument("--settings", type=named, metavar="FILE", help="settings to begin with")
    numbers = add("settings", settings, "print the shop's own numbers, or take new ones in")
    numbers.add_argument("--take", type=named, metavar="FILE", help="take in the settings of this file")
    add("backup", backup, "copy the shop file, verified").add_argument("copy", type=named, help="a new file")


def start(args: argparse.Namespace, clock: Clock) -> int:
    """Make the shop's file; nothing is asked."""
    path = file_of(args)
    text = seed_text("settings.toml") if args.settings is None else read_text(args.settings, SETTINGS)
    with closing_shop(start_shop(path, Actor(initials=initials_of(args) or NOBODY, now=clock()), text)) as shop:
        now = look(shop, clock()).settings
        named = "" if args.file is None else f" --file {pasted(path)}"
        made = f"The shop is in {pasted(path)}. Open the board with `queueboard{named}`.\n"
        yours = "" if args.settings is not None else _yours(now, named)
        return say(made + share_words(share_under(path)) + yours + _belts(None, now))


def _yours(starter: Settings, named: str) -> str:
    """Two lines: what the starter numbers say of the shop, and the two commands that make them its own."""
    units = "inches" if starter.length_unit == "in" else "centimetres"
    holidays = f"{starter.country} holidays" if starter.country else "no holidays"
    says = f"{starter.name}, {starter.zone.key}, {starter.currency}, {units}, {holidays}"
    write, take = (f"queueboard{named} settings{rest}" for rest in (" > mine.toml", " --take mine.toml --as MB"))
    return f"The starter numbers say {says}.\nMake them yours: `{write}`, change the text, then `{take}`.\n"


def settings(args: argparse.Namespace, clock: Clock) -> int:
    """Print the settings in force, or take new ones in."""
    with shop_of(args) as shop:
        if args.take is None:
            return say(settings_text(shop))
        before = settings_before(shop)
        take_settings(shop, actor_of(args, clock), read_text(args.take, SETTINGS))
        asked = _belts(before, look(shop, clock()).settings)
    return say(f"The settings in {pasted(args.take)} are in force.\n{asked}")


def _belts(before: Settings | None, now: Settings) -> str:
    """A line for each belt that may be wrong, of the sets that are new."""
    return "".join(f"Look at this belt: {belt_words(asked)}\n" for asked in belts_to_ask(before, now))


def backup(args: argparse.Namespace, clock: Clock) -> int:
    """Copy the shop file to a new file, verified."""
    with shop_of(args) as shop:
        copy_to(shop, args.copy, clock())
    return say(f"Copied and verified: {pasted(args.copy)}\n")
