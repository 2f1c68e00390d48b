"""The command about kitchens with swap sets."""

import argparse

from queueboard.cli.common import FINE, NOTHING_FOUND, Add, Clock, add_shapes, shop_of, show, trouble
from queueboard.shop.looking import look


def add_commands(add: Add) -> None:
    """The command of this file."""
    sheet = add("swaps", swaps, "kitchens with swap sets: clean, dull, missing, what is charged")
    sheet.add_argument("kitchen", nargs="?", help="a part of the kitchen's name; else every kitchen")
    add_shapes(sheet)


def swaps(args: argparse.Namespace, clock: Clock) -> int:
    """The sheet of one kitchen, or of each."""
    from queueboard.papers.swaps import swap_facts, swap_sheets
    from queueboard.shop.swaps_seen import kitchens

    with shop_of(args) as shop:
        picture = look(shop, clock())
        seen = kitchens(shop, picture.now)
    if args.kitchen is not None and picture.settings.swaps.on:
        wanted = args.kitchen.casefold()
        seen = tuple(one for one in seen if wanted in one.customer.name.casefold())
        if not seen:
            return trouble(f"No kitchen with swap sets fits “{args.kitchen}”.", NOTHING_FOUND)
    show(args, lambda: swap_facts(seen, picture), lambda: swap_sheets(seen, picture))
    return FINE
