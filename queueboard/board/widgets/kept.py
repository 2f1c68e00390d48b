"""What a column shows, kept from picture to picture where nothing has changed: most of the board is as it was."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from textual.geometry import Region
from textual.strip import Strip

from queueboard.board.widgets.rows import Part, Row, in_order, rows_of_box
from queueboard.phrases.boxes import found_in
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.words import Column

KEPT_ROWS = 1000
"""Rows beyond twice those that are shown, up to which none is forgotten."""


class Look(NamedTuple):
    """What of a line is the column's and not its row's."""

    cursor: bool
    same: bool
    """It is the heading of the box under the cursor of the board."""
    marked: bool


class KeptRows:
    """The rows of one column."""

    def __init__(self, column: Column) -> None:
        self.column = column
        self._moment: tuple[object, ...] = ()
        self._boxes: dict[int, _KeptBox] = {}
        self._before: dict[int, _KeptBox] = {}
        """Of the moment before."""

    def fill(self, boxes: Iterable[BoxPicture], picture: Picture) -> tuple[tuple[Row, ...], int]:
        """The rows of the boxes that have a knife here, in their order, and how many knives really stand in them.

        Words such as LATE hang on the minute, so that nothing is taken for true for longer; a row that comes out as it
        was before is the same object as before, so that it need not be drawn anew.
        """
        moment = (picture.settings, picture.now.date(), picture.now.hour, picture.now.minute)
        if moment != self._moment:
            self._moment, self._before, self._boxes = moment, self._boxes, {}
        rows: list[Row] = []
        count = 0
        for box in in_order(boxes):
            kept = self._boxes.get(box.box.id)
            if kept is None or not (kept.box is box or kept.box == box):
                last = kept or self._before.get(box.box.id)
                made = _as_before(rows_of_box(box, self.column, picture), () if last is None else last.rows)
                kept = self._boxes[box.box.id] = _KeptBox(box, made, found_in(box, self.column))
            rows += kept.rows
            count += kept.found
        return tuple(rows), count


class _KeptBox(NamedTuple):
    """What of a box stands in a column."""

    box: BoxPicture
    rows: tuple[Row, ...]
    found: int
    """Knives that really stand there."""


def _as_before(made: tuple[Row, ...], before: tuple[Row, ...]) -> tuple[Row, ...]:
    """The rows made, each by the equal one from before where there is one."""
    known = {row.key: row for row in before}
    return tuple(old if (old := known.get(row.key)) == row else row for row in made)


class LaidRow:
    """A row as lines for one width, and as it was drawn: most of a column looks as it did a moment ago."""

    __slots__ = ("drawn", "lines", "row")

    def __init__(self, row: Row, lines: tuple[tuple[Part, ...], ...]) -> None:
        self.row = row
        self.lines = lines
        self.drawn: dict[tuple[int, Look], Strip] = {}
        """By the number of the line, and how it looks."""


class LaidOut:
    """The rows of a column as lines one below the other, for one width."""

    def __init__(self) -> None:
        self.lines: list[tuple[int, LaidRow, int]] = []
        """Each line: the place of its row, the row, and which of its lines it is."""
        self.tops: list[int] = []
        """The first line of each row."""
        self._heads: list[int] = []
        self._width = 0
        self._rows: dict[int, LaidRow] = {}
        """By the id of the row, which is kept beside it, so that no other can get its id."""

    def lay(self, rows: Sequence[Row], width: int, gutter: int) -> None:
        """Lay rows out in so many cells; a knife's lines begin behind the gutter, a heading's in it.

        Rows that are not among them are kept for a while, since what is hidden is often shown again.
        """
        if width != self._width or len(self._rows) > KEPT_ROWS + 2 * len(rows):
            self._width, self._rows = width, {}
        self.lines, self.tops, self._heads = [], [], []
        for place, row in enumerate(rows):
            laid = self._rows.get(id(row))
            if laid is None:
                inside = width - (gutter if row.knife is not None else gutter - 1)
                laid = self._rows[id(row)] = LaidRow(row, row.lines(inside))
            self.tops.append(len(self.lines))
            self._heads.append(place if row.knife is None or not place else self._heads[-1])
            self.lines += [(place, laid, number) for number in range(len(laid.lines))]

    def forget_drawn(self) -> None:
        """The colours have changed."""
        for laid in self._rows.values():
            laid.drawn.clear()

    def height(self, place: int) -> int:
        """How many lines a row has."""
        end = self.tops[place + 1] if place + 1 < len(self.tops) else len(self.lines)
        return end - self.tops[place]

    def line_at(self, y: int, scrolled: int) -> int:
        """Which line stands so far down: a head that would have scrolled off stays on top of its knives."""
        line = y + scrolled
        return self._head_top(self.lines[line][0]) if y == 0 and line < len(self.lines) else line

    def in_sight(self, place: int, lines: int) -> Region:
        """What of so many lines in sight must be among them for a row: its head too, or the line it stands over."""
        head, top = self._head_top(place), self.tops[place]
        end = top + self.height(place)
        top = head if end - head <= lines else max(head, top - 1)
        return Region(0, top, 1, end - top)

    def _head_top(self, place: int) -> int:
        return self.tops[self._heads[place]]
