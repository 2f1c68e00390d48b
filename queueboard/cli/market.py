"""The commands about market stalls: the day that is typed in with what is brought along, and the tags to print."""

import argparse

from queueboard.cli.common import FINE, Add, Clock, add_shapes, picture_of, shop_of, show
from queueboard.cli.paper import add_paper_options, put_out
from queueboard.errors import TypedError
from queueboard.shop.looking import look
from queueboard.words import PaperSize


def add_commands(add: Add) -> None:
    """The commands of this file."""
    add_shapes(add("market", market, "the market day that is typed in: gaps, doubles, sums; what is brought along"))
    pad = add("pad", printed_pad, "tags for a market stall, to print before it")
    pad.add_argument("tags", nargs="?", help="first and last: 500-530; else those of the shop's own numbers")
    add_paper_options(pad)


def market(args: argparse.Namespace, clock: Clock) -> int:
    """What was typed of the market, and what is brought to the next one."""
    from queueboard.papers.market import market_facts, market_sheet
    from queueboard.phrases.market import market_day
    from queueboard.shop.market_pad import pad_of
    from queueboard.shop.receiving import customers

    with shop_of(args) as shop:
        picture = look(shop, clock())
        pad, taken = pad_of(shop, picture.now)
        known = customers(shop)
    open_numbers = frozenset[int]() if taken else frozenset(box.box.number for box in picture.boxes)
    day = market_day(pad, picture.settings, known, open_numbers)
    show(args, lambda: market_facts(day, picture, taken=taken), lambda: market_sheet(day, picture, taken=taken))
    return FINE


def printed_pad(args: argparse.Namespace, clock: Clock) -> int:
    """The tags of a stall, large, with their codes on a page."""
    from queueboard.papers.market import printed_tags
    from queueboard.phrases.typed_market import read_tags

    picture = picture_of(args, clock)
    stall = picture.settings.market
    typed = (stall.first_tag, stall.last_tag) if args.tags is None else read_tags(args.tags)
    if typed is None:
        raise TypedError(f"“{args.tags}” are no tags; type the first and the last: 500-530.")
    first, last = typed
    numbers = range(first, last + 1)

    def page(paper: PaperSize) -> str:
        from queueboard.papers.pages.slips import pad_page

        return pad_page(numbers, paper)

    return put_out(args, f"pad-{first}-{last}", picture.settings.papers.slips, lambda: printed_tags(numbers), page)
