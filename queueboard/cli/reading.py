"""The commands that only look: day, late, labels, boxes, box, owing, said."""

import argparse
from collections.abc import Callable

from queueboard.clean import clean, insist_on_signs
from queueboard.cli.common import (
    NOTHING_FOUND,
    Clock,
    Command,
    actor_of,
    picture_of,
    say,
    shop_of,
    show,
    trouble,
)
from queueboard.cli.paper import folder_of, put_out
from queueboard.papers import facts, lists
from queueboard.papers.day_sheet import day_sheet
from queueboard.papers.folder import write_into
from queueboard.papers.one_box import box_sheet
from queueboard.papers.owing import owing_facts, owing_list
from queueboard.papers.said import said_facts, said_sheet
from queueboard.phrases.boxes import no_knife_words
from queueboard.phrases.typed import parse_tag
from queueboard.phrases.typed_back import sheet_order
from queueboard.shop.first_look import judged
from queueboard.shop.looking import DAY_LIST, look
from queueboard.shop.loose import fitting, read_seen
from queueboard.shop.numbers import fix_day_list
from queueboard.shop.owing import owing
from queueboard.shop.picture import Picture
from queueboard.words import PaperSize


def day_list(args: argparse.Namespace, clock: Clock) -> int:
    """The day sheet; with --fix its order is kept for the rest of the day."""
    with shop_of(args) as shop:
        picture = look(shop, clock(), restarts=DAY_LIST)
        order = tuple(run.knife_ids for run in picture.plan.runs)
        if args.fix and order:
            fix_day_list(shop, actor_of(args, clock), picture.now.date(), order)
            picture = look(shop, clock())
    if args.json or args.csv:
        return show(args, lambda: facts.day_facts(picture), lambda: day_sheet(picture))

    def page(paper: PaperSize) -> str:
        from queueboard.papers.pages.day import day_page

        return day_page(picture, paper)

    name = f"day-{picture.now.date().isoformat()}"
    if args.write or args.open:
        write_into(folder_of(args), f"{name}.tags", sheet_order(picture))
    return put_out(args, name, picture.settings.papers.size, lambda: day_sheet(picture), page)


def reading(as_text: Callable[[Picture], str], as_facts: Callable[[Picture], dict[str, facts.Fact]]) -> Command:
    """A command that shows the whole picture, as text or as JSON."""

    def command(args: argparse.Namespace, clock: Clock) -> int:
        picture = picture_of(args, clock)
        return show(args, lambda: as_facts(picture), lambda: as_text(picture))

    return command


def box(args: argparse.Namespace, clock: Clock) -> int:
    """Everything about one box, by its number or a tag of it."""
    tag = parse_tag(args.number)
    picture = picture_of(args, clock)
    box = picture.box(tag.box)
    if box is None:
        return trouble(f"Box {tag.box} is not open. `queueboard boxes` lists those that are.", NOTHING_FOUND)
    if tag.knife not in (None, *(knife.number for knife in box.knives)):
        return trouble(no_knife_words(f"{tag}", box), NOTHING_FOUND)
    return show(args, lambda: facts.one_box_facts(box, picture), lambda: box_sheet(box, picture))


def said(args: argparse.Namespace, clock: Clock) -> int:
    """What was said and told against what was seen, and the minutes learned."""
    with shop_of(args) as shop:
        picture = look(shop, clock())
        seen = judged(shop, picture.now)
    return show(args, lambda: said_facts(seen, picture), lambda: said_sheet(seen, picture))


def owed(args: argparse.Namespace, clock: Clock) -> int:
    """Who owes for what has left, and for how long."""
    with shop_of(args) as shop:
        picture = look(shop, clock())
        accounts = owing(shop, picture.now)
    return show(args, lambda: owing_facts(accounts, picture), lambda: owing_list(accounts, picture.settings))


def loose(args: argparse.Namespace, clock: Clock) -> int:
    """The knives that a loose one could be, with where each was last."""
    typed = " ".join(args.text)
    insist_on_signs(typed, "text to look for")
    text = clean(typed, field="text to look for")
    picture = picture_of(args, clock)
    found = fitting(picture, read_seen(text, picture.settings))
    return say(lists.loose_list(found, picture)) if found else trouble(f"No knife fits “{text}”.", NOTHING_FOUND)


late = reading(lists.late_list, facts.late_facts)
labels = reading(lists.labels_list, facts.labels_facts)
boxes = reading(lists.boxes_list, facts.open_boxes_facts)
