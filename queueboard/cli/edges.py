"""The commands about edges: the proof card and the readings of a box, comparisons, charts.

What they print with is loaded when it is asked for; the daily commands do without the statistics and the templates.
"""

import argparse
from typing import TYPE_CHECKING

from queueboard.cli.common import NOTHING_FOUND, Add, Clock, add_shapes, say_json, shop_of, show, trouble
from queueboard.cli.paper import add_paper_options, put_out
from queueboard.errors import TypedError
from queueboard.phrases.typed import parse_tag

if TYPE_CHECKING:
    from queueboard.shop.proof import Card


def add_commands(add: Add) -> None:
    """Add the commands about the knives of one box, and those about many."""
    for name, command, says in (
        ("card", card, "the proof card of a box, open or gone: before and after, what was done, care"),
        ("slip", slip, "the packing slip of a box, open or gone, with the proof card"),
    ):
        added = add(name, command, says)
        added.add_argument("number", help="box: 417")
        add_paper_options(added)
        if command is card:
            added.add_argument("--json", action="store_true", help="all its readings, tests and second looks")
    add_shapes(add("compare", compare, "before and after, how edges lasted, what belt trials show"))
    add_shapes(add("chart", chart, "readings since the belt was fitted, with limits and what stands out"))


def card(args: argparse.Namespace, _clock: Clock) -> int:
    """The proof card of a box, open or gone: as text, as a page, or all its readings as JSON."""
    from queueboard.papers.proof_card import card_html, card_text, readings_facts

    found = _card_of(args)
    if isinstance(found, int):
        return found
    if args.json:
        if args.html or args.open or args.write:
            raise TypedError("--json stands alone: it is no paper.")
        return say_json(readings_facts(found))
    name, usual = f"card-{found.box.number}", found.settings.papers.size
    return put_out(args, name, usual, lambda: card_text(found), lambda paper: card_html(found, paper))


def slip(args: argparse.Namespace, _clock: Clock) -> int:
    """The packing slip of a box, open or gone."""
    from queueboard.papers.proof_card import slip_html, slip_text

    found = _card_of(args)
    if isinstance(found, int):
        return found
    name, usual = f"slip-{found.box.number}", found.settings.papers.size
    return put_out(args, name, usual, lambda: slip_text(found), lambda paper: slip_html(found, paper))


def _card_of(args: argparse.Namespace) -> "Card | int":
    """What is known of the box, or the code with which the command ends when there never was one."""
    from queueboard.shop.proof import card_of

    number = parse_tag(args.number).box
    with shop_of(args) as shop:
        found = card_of(shop, number)
    return trouble(f"There never was a box {number}.", NOTHING_FOUND) if found is None else found


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
    from queueboard.shop.comparing import charted

    with shop_of(args) as shop:
        seen = charted(shop, clock())
    return show(args, lambda: chart_facts(seen), lambda: chart_sheet(seen))
