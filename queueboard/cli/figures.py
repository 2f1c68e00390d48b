"""The commands about a day and a month that are over, or nearly."""

import argparse

from queueboard.cli.common import Add, Clock, add_shapes, shop_of, show
from queueboard.phrases.typed_figures import parse_past_day
from queueboard.shop.looking import look


def add_commands(add: Add) -> None:
    """The commands of this file."""
    closing = add("evening", evening, "the end of a day: done, not done, moved, money, labels, belts, dust tray")
    closing.add_argument("--on", metavar="DAY", help="another day than today: yesterday, 2026-11-09")
    add_shapes(closing)


def evening(args: argparse.Namespace, clock: Clock) -> int:
    """The sheet of a day's end."""
    from queueboard.papers.evening import evening_facts, evening_sheet
    from queueboard.shop import evening_seen

    with shop_of(args) as shop:
        picture = look(shop, clock())
        today = picture.now.date()
        day = today if args.on is None else parse_past_day(args.on, today)
        seen = evening_seen.evening(shop, picture, day)
    return show(args, lambda: evening_facts(seen, picture), lambda: evening_sheet(seen, picture))
