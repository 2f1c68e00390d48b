"""The commands about what customers are told: the shelf, finding a box, messages to send. They only read."""

import argparse

from queueboard.clean import clean, insist_on_signs
from queueboard.cli.common import FINE, NOTHING_FOUND, Add, Clock, add_shapes, say, say_json, shop_of, show, trouble
from queueboard.errors import RuleError, TypedError
from queueboard.papers import facts, lists
from queueboard.papers.shelf import gone_facts, gone_list, message_facts, message_text, shelf_facts, shelf_list
from queueboard.phrases.messages import gone_message, message
from queueboard.phrases.typed import parse_tag
from queueboard.shelf_words import MessageSort
from queueboard.shop.finding import find, find_gone, newest_gone
from queueboard.shop.looking import look
from queueboard.shop.shelving import on_shelf

_SORTS = {
    "ready": (MessageSort.READY, "that it is ready"),
    "shipped": (MessageSort.SHIPPED, "that it has left"),
    "delayed": (MessageSort.DELAYED, "the day told before, and the new one"),
    "unclaimed": (MessageSort.UNCLAIMED, "that it waits to be fetched, with its knives and days"),
}


def add_commands(add: Add) -> None:
    """Add the three commands to the command line."""
    found = add("find", find_boxes, "boxes, open and gone, by name, town, tag or the last figures of the phone")
    found.add_argument("text", nargs="+", help="what to look for")
    there = add("shelf", shelf, "what is ready and not fetched: days, place, notices, money")
    told = add("message", message_of, "a message to a customer as text, to send by your own mail or phone")
    told.add_argument("number", help="box: 417")
    which = told.add_mutually_exclusive_group(required=True)
    for name, (sort, says) in _SORTS.items():
        which.add_argument(f"--{name}", dest="sort", action="store_const", const=sort, help=says)
    told.add_argument("--json", action="store_true", help="the same as JSON, for scripts")
    add_shapes(found)
    add_shapes(there)


def find_boxes(args: argparse.Namespace, clock: Clock) -> int:
    """A sentence to read aloud for each box that fits, the open ones first, then those that are gone."""
    typed = " ".join(args.text)
    insist_on_signs(typed, "text to look for")
    text = clean(typed, field="text to look for")
    if not text:
        raise TypedError("There is nothing to look for: type a name, a town, a tag or the last figures of a phone.")
    with shop_of(args) as shop:
        picture = look(shop, clock())
        gone = find_gone(shop, text)
    found = find(picture, text)
    if found or gone or args.json or args.csv:
        show(
            args,
            lambda: {**facts.boxes_facts(found, picture), "gone": [gone_facts(one, picture) for one in gone]},
            lambda: (lists.found_list(found, picture) if found else "") + gone_list(gone, picture),
        )
    return FINE if found or gone else trouble(f"No box fits “{text}”.", NOTHING_FOUND)


def shelf(args: argparse.Namespace, clock: Clock) -> int:
    """What is ready and waits to be fetched."""
    with shop_of(args) as shop:
        picture = look(shop, clock())
        there = on_shelf(shop, picture)
    return show(args, lambda: shelf_facts(there, picture), lambda: shelf_list(there, picture))


def message_of(args: argparse.Namespace, clock: Clock) -> int:
    """One message about a box, open or gone; nothing is sent, and nothing is noted."""
    number = parse_tag(args.number).box
    with shop_of(args) as shop:
        picture = look(shop, clock())
        gone = newest_gone(shop, number)
    box = picture.box(number)
    if box is None and gone is None:
        return trouble(f"There is no box {number}, open or gone.", NOTHING_FOUND)
    try:
        if box is not None:
            text = message(args.sort, box, picture)
        elif gone is not None:
            text = gone_message(args.sort, gone, picture.now, picture.settings)
    except RuleError as error:
        return trouble(str(error), 1)
    if args.json:
        return say_json(message_facts(text, args.sort, number, picture))
    return say(message_text(text, args.sort, picture.settings, picture))
