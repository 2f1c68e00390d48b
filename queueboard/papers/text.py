"""Plain text in columns, headings and lists: what every paper is made of."""

from collections.abc import Iterable, Sequence

from rich.cells import cell_len

from queueboard.clean import cell_text

RULE_WIDTH = 72


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
            for place, (cell, width) in enumerate(zip(row[:-1], widths, strict=False))
        ]
        lines.append("  ".join((*cells, row[-1])).rstrip())
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
