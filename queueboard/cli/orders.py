"""The command that takes in a file of orders: it says first what it would do."""

import argparse

from queueboard.cli.common import FINE, NOBODY, REFUSED, Add, Clock, actor_of, named, say, shop_of, trouble
from queueboard.intake.orders import Orders, read_orders
from queueboard.phrases.orders import orders_report, taken_words
from queueboard.plainfiles import read_text
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.orders import take_orders, try_orders
from queueboard.values.actor import Actor

A_FILE = "a file of orders"


def add_commands(add: Add) -> None:
    """Add it to the command line."""
    orders = add("orders", take, "boxes that will come by mail, from a file of orders (CSV or JSON Lines)")
    orders.add_argument("orders", type=named, metavar="FILE", help="the file; without --take nothing is stored")
    orders.add_argument("--take", action="store_true", help="announce its boxes, all of them or none")
    orders.add_argument("--good-ones", action="store_true", help="with --take: leave out lines that cannot be taken")


def take(args: argparse.Namespace, clock: Clock) -> int:
    """Say what the file holds; with --take, announce its boxes."""
    with shop_of(args) as shop:
        picture = look(shop, clock())
        tried = try_orders(
            shop, Actor(initials=NOBODY, now=clock()), read_orders(read_text(args.orders, A_FILE), picture.settings)
        )
        said = say("\n".join(orders_report(tried, picture)) + "\n")
        if not args.take:
            return REFUSED if tried.bad else said
        return _take(shop, args, clock, tried)


def _take(shop: Shop, args: argparse.Namespace, clock: Clock, tried: Orders) -> int:
    if tried.bad and not args.good_ones:
        return trouble("Nothing was stored. Mend those lines, or add --good-ones to leave them out.", REFUSED)
    say(f"{taken_words(take_orders(shop, actor_of(args, clock), tried.good))}\n")
    return FINE
