"""Handle tags and the customer's stub as pages."""

from collections.abc import Sequence

from queueboard.clean import cell_text
from queueboard.papers.pages.codes import code_of
from queueboard.papers.pages.making import made_page
from queueboard.papers.slips import TERMS, phone_lines, stub_lines, tag_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.words import PaperSize

CUT_NAME = 40
"""Letters of a name that a tag has room for."""


def tags_page(box: BoxPicture, picture: Picture, paper: PaperSize, *, only: int | None = None) -> str:
    """The tags to be cut apart, each with its code; or one of them."""
    words = tag_words(box, picture, only=only)
    tags = [
        {
            "tag": one.tag,
            "name": one.name if len(one.name) <= CUT_NAME else f"{one.name[:CUT_NAME]}…",
            "says": [cell_text(line) for line in one.says],
            "code": code_of(one.tag),
        }
        for one in words
    ]
    return made_page("tags", paper, {"title": f"Tags of box {box.box.number}", "tags": tags})


def pad_page(numbers: Sequence[int], paper: PaperSize) -> str:
    """Tags that are printed before a market: the number and its code, and nothing else."""
    tags = [{"tag": f"{one}", "name": "", "says": [], "code": code_of(f"{one}")} for one in numbers]
    return made_page("tags", paper, {"title": f"Tags {numbers[0]} to {numbers[-1]}", "tags": tags})


def stub_page(box: BoxPicture, picture: Picture, paper: PaperSize) -> str:
    """The stub; the customer's name is not on it, for stubs get lost."""
    settings = picture.settings
    return made_page(
        "stub",
        paper,
        {
            "title": f"Stub of box {box.box.number}",
            "shop": cell_text(settings.name),
            "number": box.box.number,
            "lines": [cell_text(line) for line in stub_lines(box, picture)],
            "terms": (*TERMS, *map(cell_text, phone_lines(settings))),
        },
    )
