"""The four columns side by side, and which of them the cursor is in."""

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.events import DescendantFocus

from queueboard.board.widgets.column import ColumnView
from queueboard.board.widgets.head import ColumnHead
from queueboard.board.widgets.kept import KeptRows
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife
from queueboard.words import ON_BOARD, Column


class Place(Vertical):
    """A column with its head."""

    BLANK = True


class Columns(Horizontal):
    """Received, on bench, testing, ready: each with its head; one of them has the cursor."""

    BLANK = True

    def __init__(self) -> None:
        super().__init__(id="columns")
        self._here = Column.RECEIVED
        self._kept = {column: KeptRows(column) for column in ON_BOARD}
        self._heads = tuple(map(ColumnHead, ON_BOARD))
        self._views = tuple(map(ColumnView, ON_BOARD))

    def compose(self) -> ComposeResult:
        for head, view in zip(self._heads, self._views, strict=True):
            yield Place(head, view)

    def all(self) -> tuple[ColumnView, ...]:
        """The four columns, left to right."""
        return self._views

    def here(self) -> ColumnView:
        """The column the cursor is in, also while a tag is typed."""
        return self.all()[ON_BOARD.index(self._here)]

    def fill(self, boxes: tuple[BoxPicture, ...], picture: Picture, marked: frozenset[int]) -> None:
        """Show these boxes; every cursor stays on its row."""
        self.display = bool(boxes)
        for head, view in zip(self._heads, self._views, strict=True):
            rows, head.count = self._kept[view.column].fill(boxes, picture)
            view.set_rows(rows, marked)

    def enter(self, column: ColumnView) -> None:
        """Put the cursor into a column."""
        self._here = column.column
        column.focus()

    def enter_first(self) -> None:
        """Put the cursor into the first column that holds anything."""
        first = next((column for column in self.all() if column.rows), None)
        if first is not None:
            self.enter(first)

    def on_descendant_focus(self, event: DescendantFocus) -> None:
        """A column that gets the keys, by a click for one, has the cursor."""
        if isinstance(event.widget, ColumnView):
            self._here = event.widget.column

    def go_to(self, box: BoxPicture, knife: Knife | None) -> None:
        """Put the cursor on a knife, or on the heading of a box where its work stands."""
        wanted = knife.column if knife is not None else _standing(box)
        for column in self.all():
            if column.column is wanted and column.go_to(box.box.id, knife.id if knife is not None else 0):
                self.enter(column)

    def aside(self, by: int) -> None:
        """To the next column that holds anything; on the same box where it is there too."""
        columns, here = self.all(), self.here()
        place, row = columns.index(here), here.current()
        order = columns[place + 1 :] if by > 0 else tuple(reversed(columns[:place]))
        to = next((column for column in order if column.rows), None)
        if to is None:
            return
        there = to.current()
        if row is not None and there is not None and there.box_id != row.box_id:
            to.go_to(row.box_id)
        self.enter(to)

    def point_at(self, box: BoxPicture | None) -> None:
        """Let one box stand out in every column, and the head of the column that has the cursor."""
        for column in self.all():
            column.mark_here(box.box.id if box is not None else 0)
        for head in self._heads:
            head.here = head.column is self._here


def _standing(box: BoxPicture) -> Column:
    """Where the work on a box stands: at the bench, else in the column of its slowest knife."""
    order = (Column.ON_BENCH, *ON_BOARD)
    return next((column for column in order if box.in_column(column)), Column.RECEIVED)
