"""What a column shows, kept from picture to picture where nothing has changed: most of the board is as it was."""

from collections.abc import Iterable

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
        """The same rows as rows_of gives, and how many knives really stand in them.

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


class KeptLines:
    """The lines of rows for one width."""

    def __init__(self) -> None:
        self._width = 0
        self._rows: dict[int, tuple[Row, tuple[tuple[Part, ...], ...]]] = {}

    def of(self, rows: Iterable[Row], width: int, gutter: int) -> list[tuple[tuple[Part, ...], ...]]:
        """The lines of each row in a column of so many cells; a knife's begin behind the gutter, a heading's in it."""
        before = self._rows if width == self._width else {}
        self._width, self._rows = width, {}
        for row in rows:
            known = before.get(id(row))  # a row is kept beside its lines, so that no other can get its id
            inside = width - (gutter if row.knife is not None else gutter - 1)
            self._rows[id(row)] = known or (row, row.lines(inside))
        return [self._rows[id(row)][1] for row in rows]
