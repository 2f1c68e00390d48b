"""The commands that only look: day, late, labels, boxes, box, owing, said, loose.

What a command needs besides the picture is loaded by it alone: loading is most of what a short command does.
"""

import argparse
from collections.abc import Callable

from queueboard.clean import clean, insist_on_signs
from queueboard.cli.common import (
    NOTHING_FOUND,
    Add,
    Clock,
    actor_of,
    add_shapes,
    picture_of,
    say,
    shop_of,
    show,
    trouble,
)
from queueboard.cli.paper import SHEETS, add_paper_options, folder_of, put_out
from queueboard.papers import facts
from queueboard.phrases.typed import parse_tag
from queueboard.shop.looking import DAY_LIST, look
from queueboard.shop.picture import Picture
from queueboard.words import PaperSize


def add_commands(add: Add) -> None:
    """Add the commands of this file to the command line."""
    day = add("day", day_list, "today's work in order, what leaves, labels, who is waited for")
    day.add_argument("--fix", action="store_true", help="keep this order today until the board is asked to sort again")
    add_paper_options(day, SHEETS)
    one = add("box", box, "everything about one box")
    one.add_argument("number", help="box or tag: 417 or 417-3")
    for listing in (
        day,
        add("late", late, "boxes that are late or will be, the worst first"),
        add("labels", labels, "return labels to buy or to use, the worst first"),
        add("boxes", boxes, "all open boxes with their totals"),
        add("owing", owed, "who owes for what has left, and for how many days"),
        one,
        add("said", said, "chances and dates told against what was seen, and the minutes learned"),
    ):
        add_shapes(listing)
    seen = add("loose", loose, "whose a loose knife is: open and found knives by kind, length and mark")
    seen.add_argument("text", nargs="+", help="what can be seen of it: chef 20 black nick")


def day_list(args: argparse.Namespace, clock: Clock) -> int:
    """The day sheet; with --fix its order is kept for the rest of the day."""
    with shop_of(args) as shop:
        picture = look(shop, clock(), restarts=DAY_LIST)
        order = tuple(run.knife_ids for run in picture.plan.runs)
        if args.fix and order:
            from queueboard.shop.numbers import fix_day_list

            fix_day_list(shop, actor_of(args, clock), picture.now.date(), order)
            picture = look(shop, clock())
    if args.json or args.csv:
        return show(args, lambda: facts.day_facts(picture), lambda: _day_sheet(picture))
    name = f"day-{picture.now.date().isoformat()}"
    if args.write or args.open:
        _keep_order(args, name, picture)
    return put_out(
        args, name, picture.settings.papers.size, lambda: _day_sheet(picture), lambda paper: _day_page(picture, paper)
    )


def _day_sheet(picture: Picture) -> str:
    from queueboard.papers.day_sheet import day_sheet

    return day_sheet(picture)


def _day_page(picture: Picture, paper: PaperSize) -> str:
    from queueboard.papers.pages.day import day_page

    return day_page(picture, paper)


def _keep_order(args: argparse.Namespace, name: str, picture: Picture) -> None:
    """Keep the order of a sheet that goes on paper, so that it can be typed back."""
    from queueboard.papers.folder import write_into
    from queueboard.phrases.typed_back import sheet_order

    write_into(folder_of(args), f"{name}.tags", sheet_order(picture))


def late(args: argparse.Namespace, clock: Clock) -> int:
    """Boxes that are late or will be."""
    from queueboard.papers.lists import late_list

    return _show(args, clock, facts.late_facts, late_list)


def labels(args: argparse.Namespace, clock: Clock) -> int:
    """Return labels to buy or to use."""
    from queueboard.papers.lists import labels_list

    return _show(args, clock, facts.labels_facts, labels_list)


def boxes(args: argparse.Namespace, clock: Clock) -> int:
    """All open boxes with their totals."""
    from queueboard.papers.lists import boxes_list

    return _show(args, clock, facts.open_boxes_facts, boxes_list)


def _show(
    args: argparse.Namespace,
    clock: Clock,
    as_facts: Callable[[Picture], dict[str, facts.Fact]],
    as_text: Callable[[Picture], str],
) -> int:
    picture = picture_of(args, clock)
    return show(args, lambda: as_facts(picture), lambda: as_text(picture))


def box(args: argparse.Namespace, clock: Clock) -> int:
    """Everything about one box, by its number or a tag of it."""
    from queueboard.papers.one_box import box_sheet
    from queueboard.phrases.boxes import no_knife_words

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
    from queueboard.papers.said import said_facts, said_sheet
    from queueboard.shop.first_look import judged

    with shop_of(args) as shop:
        picture = look(shop, clock())
        seen = judged(shop, picture.now)
    return show(args, lambda: said_facts(seen, picture), lambda: said_sheet(seen, picture))


def owed(args: argparse.Namespace, clock: Clock) -> int:
    """Who owes for what has left, and for how long."""
    from queueboard.papers.owing import owing_facts, owing_list
    from queueboard.shop.owing import owing

    with shop_of(args) as shop:
        picture = look(shop, clock())
        accounts = owing(shop, picture.now)
    return show(args, lambda: owing_facts(accounts, picture), lambda: owing_list(accounts, picture.settings))


def loose(args: argparse.Namespace, clock: Clock) -> int:
    """The knives that a loose one could be, with where each was last."""
    from queueboard.papers.lists import loose_list
    from queueboard.shop.loose import fitting, read_seen

    typed = " ".join(args.text)
    insist_on_signs(typed, "text to look for")
    text = clean(typed, field="text to look for")
    picture = picture_of(args, clock)
    found = fitting(picture, read_seen(text, picture.settings))
    return say(loose_list(found, picture)) if found else trouble(f"No knife fits “{text}”.", NOTHING_FOUND)
