"""One page of HTML out of a template, made for the paper it will be printed on."""

from collections.abc import Mapping

from queueboard.papers.templates import filled
from queueboard.words import PaperSize

_SHEETS: Mapping[PaperSize, tuple[str, str]] = {
    PaperSize.A4: ("A4", "12mm"),
    PaperSize.LETTER: ("letter", "12mm"),
    PaperSize.LABEL: ("100mm 150mm", "4mm"),
}
"""What the style calls each size, as CSS Paged Media Level 3 has it, and the margin that common printers leave."""


def made_page(name: str, paper: PaperSize, facts: Mapping[str, object]) -> str:
    """The template *name* filled in; people's words in *facts* are escaped by it."""
    size, margin = _SHEETS[paper]
    return filled(f"pages/{name}.html.j2", {**facts, "size": size, "margin": margin, "label": paper is PaperSize.LABEL})
