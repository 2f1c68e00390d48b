"""Plain text in columns, headings and lists: what every paper is made of."""

from collections.abc import Iterable, Sequence

from rich.cells import cell_len

from queueboard.clean import cell_text

RULE_WIDTH = 72
NARROW, WIDE = 32, 48
"""Columns of a receipt printer, by its usual letters: paper of 58 mm, and of 80 mm. [common practice, no source]"""


def columns(rows: Sequence[Sequence[str]], *, right: frozenset[int] = frozenset()) -> tuple[str, ...]:
    """Rows of cells as lines whose columns stand under each other; the last column is left as it is.

    *right* holds the columns that are set to the right. A person's text belongs into the last column.
    """
    cleaned = [[*map(cell_text, row[:-1]), row[-1]] for row in rows]
    widths = [max(map(cell_len, column)) for column in zip(*cleaned, strict=True)]
    lines = []
    for row in cleaned:
        cells = [
            f"{' ' * (width - cell_len(cell))}{cell}" if place in right else f"{cell}{' ' * (width - cell_len(cell))}"
            for place, (cell, width) in enumerate(zip(row, widths, strict=True))
        ]
        lines.append("  ".join(cells).rstrip())
    return tuple(lines)


def section(heading: str, lines: Iterable[str], *, nothing: str = "") -> tuple[str, ...]:
    """A heading with its lines and an empty line before; without lines *nothing*, or not even the heading."""
    body = tuple(lines) or ((nothing,) if nothing else ())
    return ("", heading, *(f"  {line}" for line in body)) if body else ()


def boxes_to_tick(lines: Iterable[str]) -> tuple[str, ...]:
    """Lines with a place for a tick in front."""
    return tuple(f"[ ] {line}" for line in lines)


def page(*parts: Iterable[str]) -> str:
    """Parts as one text that ends in a line end."""
    return "\n".join(line for part in parts for line in part) + "\n"


def wrapped(line: str, width: int) -> tuple[str, ...]:
    """A line broken between words so that nothing is wider than *width* cells; a word that is wider is broken too."""
    lines, here = [], ""
    for word in cell_text(line).split():
        if cell_len(f"{here} {word}") <= width or not here:
            here = f"{here} {word}".strip()
        else:
            lines.append(here)
            here = word
        while cell_len(here) > width:
            fits = cut_to(here, width, sign="")
            lines.append(fits)
            here = here[len(fits) :]
    return (*lines, here)


def cut_to(text: str, width: int, *, sign: str = "…") -> str:
    """The text, or as much of its beginning as fits into *width* cells with the sign that something is left out."""
    if cell_len(text) <= width:
        return text
    room = width - cell_len(sign)
    while cell_len(text) > room:
        text = text[: len(text) // 2] if cell_len(text) > 4 * room else text[:-1]
    return f"{text}{sign}"
