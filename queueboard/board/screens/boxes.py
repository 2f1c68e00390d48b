"""The table of all open boxes, with the totals of every customer who has more than one."""

from typing import ClassVar

from rich.text import Text
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.coordinate import Coordinate
from textual.widgets import DataTable, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.box_rows import FIGURES, HEADS, SORTS, TableRow, table_rows
from queueboard.phrases import helping
from queueboard.phrases.dates import many
from queueboard.shop.picture import Picture

WIDTHS = (9, 14, 5, 6, 5, 6, 4, 9, 22, 23, 16)
"""In cells; together they fit 120 columns beside a scroll bar, and up to the ship-by with its word they fit 80."""


def _fitted(cell: str, width: int, *, bold: bool, figures: bool) -> Text:
    """A cell's text, literal, cut with a sign before it touches the next cell; figures stand to the right."""
    text = Text(cell, style="bold" if bold else "", no_wrap=True)
    text.truncate(width - 1, overflow="ellipsis")
    if figures:
        text.pad_left(width - 1 - text.cell_len)
    return text


class BoxesScreen(ShopScreen[int | None]):
    """All open boxes; Enter leaves with the number of the box under the cursor."""

    CSS_PATH = "lists.tcss"
    HELP = helping.BOXES
    BINDING_GROUP_TITLE = "On the table of all boxes"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "choose", "to this box", id="boxes.choose", priority=True),
        Binding("s,asterisk", "sort", "sort by the next column", id="boxes.sort"),
        Binding("r,slash", "turn", "turn the order round", id="boxes.turn"),
        Binding("right", "sideways(40)", "the columns to the right", id="boxes.right", priority=True, show=False),
        Binding("left", "sideways(-40)", "the columns to the left", id="boxes.left", priority=True, show=False),
        Binding("escape,full_stop,comma,q,t", "leave", "back to the board", id="boxes.leave"),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.sort, self.down = "ship-by", False
        self.shown: tuple[TableRow, ...] = ()
        self.marked: int | None = None

    def compose(self) -> ComposeResult:
        """A heading, the table, the keys."""
        yield Static(id="heading", markup=False)
        yield DataTable[Text](id="table", cursor_type="row", cell_padding=0)
        yield Static(
            "Enter to it · * sort otherwise · / turn round · ← → more · ? keys · . back",
            id="keys",
            markup=False,
        )

    def on_mount(self) -> None:
        """Begin in the order of the board: by ship-by."""
        table = self.table()
        for head, width in zip(HEADS, WIDTHS, strict=True):
            table.add_column(_fitted(head, width, bold=True, figures=head in FIGURES), width=width)
        table.fixed_columns = 2
        self.show(self.desk.picture)
        table.focus()

    def table(self) -> DataTable[Text]:
        """The table itself."""
        return self.query_one("#table", DataTable)

    def show(self, picture: Picture) -> None:
        """Show a new picture; the cursor stays on its box."""
        self.query_one("#heading", Static).update(self._heading(picture))
        rows = table_rows(picture, self.sort, down=self.down)
        if rows == self.shown:
            return
        table = self.table()
        was = self.current()
        self.shown, self.marked = rows, None
        table.clear()
        for row in rows:
            cells = (
                _fitted(cell, width, bold=row.total, figures=head in FIGURES)
                for head, cell, width in zip(HEADS, (f" {row.cells[0]}", *row.cells[1:]), WIDTHS, strict=True)
            )
            table.add_row(*cells, key=row.key)
        place = next((n for n, row in enumerate(rows) if was is not None and row.key == was.key), 0)
        table.move_cursor(row=place, animate=False)

    def on_data_table_row_highlighted(self, event: DataTable.RowHighlighted) -> None:
        """The row under the cursor carries a sign: no colour is needed to see where one is."""
        for place, sign in ((self.marked, " "), (event.cursor_row, "▸")):
            if place is not None and place < len(self.shown):
                row = self.shown[place]
                cell = _fitted(f"{sign}{row.cells[0]}", WIDTHS[0], bold=row.total, figures=False)
                self.table().update_cell_at(Coordinate(place, 0), cell)
        self.marked = event.cursor_row

    def _heading(self, picture: Picture) -> str:
        if not picture.boxes:
            return "No box is open. Esc, then r receives one."
        order = f"{self.sort}, turned round" if self.down else self.sort
        expected = sum(box.box.announced for box in picture.boxes)
        here = many(len(picture.boxes) - expected, "box")
        return f"All open boxes · {here}{f', {expected} expected' if expected else ''} · sorted by {order}"

    def current(self) -> TableRow | None:
        """The row under the cursor; None in an empty table."""
        place = self.table().cursor_row
        return self.shown[place] if place < len(self.shown) else None

    def action_sort(self) -> None:
        """Sort by the next column; customers with several boxes stay together."""
        names = tuple(SORTS)
        self.sort = names[(names.index(self.sort) + 1) % len(names)]
        self.show(self.desk.picture)

    def action_turn(self) -> None:
        """Turn the order round."""
        self.down = not self.down
        self.show(self.desk.picture)

    def action_sideways(self, cells: int) -> None:
        """Show the columns further right or left; box and customer stay."""
        self.table().scroll_relative(x=cells, animate=False)

    def action_choose(self) -> None:
        """Leave with the box under the cursor."""
        row = self.current()
        if row is not None and row.number is not None:
            self.dismiss(row.number)

    def action_leave(self) -> None:
        """Back to the board."""
        self.dismiss(None)
