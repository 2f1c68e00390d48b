"""The commands that make or change files: start, settings, backup."""

import argparse

from queueboard.cli.common import NOBODY, Clock, actor_of, closing_shop, file_of, initials_of, say, shop_of, text_of
from queueboard.seedfiles import seed_text
from queueboard.shop.keeping import copy_to
from queueboard.shop.numbers import settings_text, take_settings
from queueboard.shop.starting import start_shop
from queueboard.values.actor import Actor


def start(args: argparse.Namespace, clock: Clock) -> int:
    """Make the shop's file; nothing is asked."""
    path = file_of(args)
    text = seed_text("settings.toml") if args.settings is None else text_of(args.settings)
    with closing_shop(start_shop(path, Actor(initials=initials_of(args) or NOBODY, now=clock()), text)):
        named = "" if args.file is None else f" --file {path}"
        return say(f"The shop file is {path}. Open the board with `queueboard{named}`.\n")


def settings(args: argparse.Namespace, clock: Clock) -> int:
    """Print the settings in force, or take new ones in."""
    with shop_of(args) as shop:
        if args.take is None:
            return say(settings_text(shop))
        take_settings(shop, actor_of(args, clock), text_of(args.take))
    return say(f"The settings in {args.take} are in force.\n")


def backup(args: argparse.Namespace, clock: Clock) -> int:
    """Copy the shop file to a new file, verified."""
    with shop_of(args) as shop:
        copy_to(shop, args.copy, clock())
    return say(f"Copied and verified: {args.copy}\n")
