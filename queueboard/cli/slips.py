"""The commands that print what goes with knives: the customer's stub, the handle tags. They only read."""

import argparse

from queueboard.cli.common import NOTHING_FOUND, Add, Clock, picture_of, trouble
from queueboard.cli.paper import add_paper_options, put_out
from queueboard.papers.slips import handle_tags
from queueboard.papers.slips import stub as stub_of
from queueboard.papers.text import NARROW, WIDE
from queueboard.phrases.boxes import no_knife_words
from queueboard.phrases.typed import parse_tag
from queueboard.words import PaperSize


def add_commands(add: Add) -> None:
    """Add both commands to the command line."""
    for name, command, says, number in (
        ("stub", stub, "the customer's stub of a box, to print", "box: 417"),
        ("tags", tags, "the tags for the handles of a box, to print", "box or tag: 417 or 417-3"),
    ):
        added = add(name, command, says)
        added.add_argument("number", help=number)
        add_paper_options(added)
        added.add_argument("--wide", action="store_true", help=f"for paper of 80 mm: {WIDE} columns, else {NARROW}")


def stub(args: argparse.Namespace, clock: Clock) -> int:
    """The stub of an open box, once more: printing makes nothing anew."""
    number = parse_tag(args.number).box
    picture = picture_of(args, clock)
    box = picture.box(number)
    if box is None:
        return _not_open(number)

    def page(paper: PaperSize) -> str:
        from queueboard.papers.pages.slips import stub_page

        return stub_page(box, picture, paper)

    return put_out(
        args, f"stub-{number}", picture.settings.papers.slips, lambda: stub_of(box, picture, _columns(args)), page
    )


def tags(args: argparse.Namespace, clock: Clock) -> int:
    """The tags of an open box, or one of them."""
    tag = parse_tag(args.number)
    picture = picture_of(args, clock)
    box = picture.box(tag.box)
    if box is None:
        return _not_open(tag.box)
    if tag.knife not in (None, *(knife.number for knife in box.knives)):
        return trouble(no_knife_words(f"{tag}", box), NOTHING_FOUND)

    def page(paper: PaperSize) -> str:
        from queueboard.papers.pages.slips import tags_page

        return tags_page(box, picture, paper, only=tag.knife)

    usual = picture.settings.papers.slips
    return put_out(args, f"tags-{tag}", usual, lambda: handle_tags(box, picture, _columns(args), only=tag.knife), page)


def _columns(args: argparse.Namespace) -> int:
    return WIDE if args.wide else NARROW


def _not_open(number: int) -> int:
    return trouble(f"Box {number} is not open. `queueboard boxes` lists those that are.", NOTHING_FOUND)
