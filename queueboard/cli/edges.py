"""The commands about edges: the proof card and the readings of a box, comparisons, charts.

What they print with is loaded when it is asked for; the daily commands do without the statistics and the templates.
"""

import argparse

from queueboard.cli.common import NOTHING_FOUND, Clock, say, say_json, shop_of, show, trouble
from queueboard.phrases.typed import parse_tag


def add_card_options(card: argparse.ArgumentParser) -> None:
    """Which box, and the one shape in which its card is printed."""
    card.add_argument("number", help="box: 417")
    shapes = card.add_mutually_exclusive_group()
    shapes.add_argument("--html", action="store_true", help="as a page to print from a browser")
    shapes.add_argument("--json", action="store_true", help="all its readings, tests and second looks, for scripts")


def card(args: argparse.Namespace, _clock: Clock) -> int:
    """The proof card of a box, open or gone: as text, as HTML, or all its readings as JSON."""
    from queueboard.papers.proof_card import card_html, card_text, readings_facts
    from queueboard.shop.proof import card_of

    number = parse_tag(args.number).box
    with shop_of(args) as shop:
        found = card_of(shop, number)
    if found is None:
        return trouble(f"There never was a box {number}.", NOTHING_FOUND)
    if args.json:
        return say_json(readings_facts(found))
    return say(card_html(found) if args.html else card_text(found))


def compare(args: argparse.Namespace, clock: Clock) -> int:
    """Before and after, how edges lasted, belt trials."""
    from queueboard.papers.edges import compare_facts, compare_sheet
    from queueboard.shop.comparing import compared

    with shop_of(args) as shop:
        seen = compared(shop, clock())
    return show(args, lambda: compare_facts(seen), lambda: compare_sheet(seen))


def chart(args: argparse.Namespace, clock: Clock) -> int:
    """The readings of each process since its finest belt was fitted."""
    from queueboard.papers.edges import chart_facts, chart_sheet
    from queueboard.shop.comparing import compared

    with shop_of(args) as shop:
        seen = compared(shop, clock())
    return show(args, lambda: chart_facts(seen), lambda: chart_sheet(seen))
