"""Numbers drawn large out of plain signs, so that a tag is read from arm's length on any printer of plain text."""

from collections.abc import Mapping

from rich.cells import cell_len

ROWS = 5
ANY_WIDTH = 99
_SHAPES: Mapping[str, tuple[str, ...]] = {
    "0": ("###", "# #", "# #", "# #", "###"),
    "1": (" # ", "## ", " # ", " # ", "###"),
    "2": ("###", "  #", "###", "#  ", "###"),
    "3": ("###", "  #", "###", "  #", "###"),
    "4": ("# #", "# #", "###", "  #", "  #"),
    "5": ("###", "#  ", "###", "  #", "###"),
    "6": ("###", "#  ", "###", "# #", "###"),
    "7": ("###", "  #", "  #", "  #", "  #"),
    "8": ("###", "# #", "###", "# #", "###"),
    "9": ("###", "# #", "###", "  #", "###"),
    "-": ("   ", "   ", "###", "   ", "   "),
}


def large(number: str, width: int) -> tuple[str, ...]:
    """A box number or a tag in five rows; one that is wider than *width* columns, or holds other signs, as it is."""
    if not set(number) <= set(_SHAPES):
        return (number,)
    rows = tuple(" ".join(_SHAPES[sign][row] for sign in number).rstrip() for row in range(ROWS))
    return rows if max(map(cell_len, rows)) <= width else (number,)


def enlarged(number: str, across: int, down: int) -> tuple[str, ...]:
    """A number in blocks, each of its signs so many columns wide and so many rows high."""
    wide = [row.replace("#", "\u2588" * across).replace(" ", " " * across) for row in large(number, ANY_WIDTH)]
    return tuple(row for row in wide for _ in range(down))
