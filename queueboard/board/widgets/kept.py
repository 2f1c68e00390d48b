"""What a column shows, kept from picture to picture where nothing has changed: most of the board is as it was."""

from collections.abc import Iterable

from textual.geometry import Region

from queueboard.board.widgets.rows import Part, Row, in_order, rows_of_box
from queueboard.phrases.boxes import found_in
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.words import Column


class KeptRows:
    """The rows of one column."""

    def __init__(self, column: Column) -> None:
        self.column = column
        self._moment: tuple[object, ...] = ()
        self._boxes: dict[int, tuple[BoxPicture, tuple[Row, ...], int]] = {}

    def fill(self, boxes: Iterable[BoxPicture], picture: Picture) -> tuple[tuple[Row, ...], int]:
        """The rows of the boxes that have a knife here, in their order, and how many knives really stand in them.

        Words such as LATE hang on the minute, so that nothing is kept for longer.
        """
        moment = (picture.settings, picture.now.date(), picture.now.hour, picture.now.minute)
        if moment != self._moment:
            self._moment, self._boxes = moment, {}
        rows: list[Row] = []
        count = 0
        for box in in_order(boxes):
            kept = self._boxes.get(box.box.id)
            if kept is None or not (kept[0] is box or kept[0] == box):
                made = rows_of_box(box, self.column, picture)
                kept = self._boxes[box.box.id] = (box, made, found_in(box, self.column))
            rows += kept[1]
            count += kept[2]
        return tuple(rows), count


class LaidOut:
    """The rows of a column as lines one below the other, for one width."""

    def __init__(self) -> None:
        self.lines: list[tuple[int, tuple[Part, ...]]] = []
        """Each line: the place of its row, and what stands in it."""
        self.tops: list[int] = []
        """The first line of each row."""
        self._heads: list[int] = []
        self._width = 0
        self._rows: dict[int, tuple[Row, tuple[tuple[Part, ...], ...]]] = {}

    def lay(self, rows: Iterable[Row], width: int, gutter: int) -> None:
        """Lay rows out in so many cells; a knife's lines begin behind the gutter, a heading's in it."""
        before = self._rows if width == self._width else {}
        self._width, self._rows = width, {}
        self.lines, self.tops, self._heads = [], [], []
        for place, row in enumerate(rows):
            inside = width - (gutter if row.knife is not None else gutter - 1)
            # A row is kept beside its lines, so that no other can get its id.
            _, lines = self._rows[id(row)] = before.get(id(row)) or (row, row.lines(inside))
            self.tops.append(len(self.lines))
            self._heads.append(place if row.knife is None or not place else self._heads[-1])
            self.lines += [(place, parts) for parts in lines]

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
