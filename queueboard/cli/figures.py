"""The commands about a day and a month that are over, or nearly."""

import argparse

from queueboard.cli.common import Add, Clock, add_shapes, shop_of, show
from queueboard.phrases.typed_figures import parse_month, parse_past_day
from queueboard.shop.looking import look


def add_commands(add: Add) -> None:
    """The commands of this file."""
    closing = add("evening", evening, "the end of a day: done, not done, moved, money, labels, belts, dust tray")
    closing.add_argument("--on", metavar="DAY", help="another day than today: yesterday, 2026-11-09")
    add_shapes(closing)
    figures = add("month", month, "the figures of a month: knives, boxes, on time, rework, minutes, money in and owed")
    figures.add_argument("month", nargs="?", help="another month than this one: 2026-11, nov")
    add_shapes(figures)


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


def month(args: argparse.Namespace, clock: Clock) -> int:
    """The figures of a month."""
    from queueboard.figures.month import month_of
    from queueboard.papers.month import month_facts, month_sheet
    from queueboard.shop.month_seen import figures_of

    with shop_of(args) as shop:
        picture = look(shop, clock())
        today = picture.now.date()
        asked = month_of(today if args.month is None else parse_month(args.month, today))
        figures = figures_of(shop, picture.now, asked)
    return show(args, lambda: month_facts(figures, picture), lambda: month_sheet(figures, picture))
