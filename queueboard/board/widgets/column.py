"""One column of the board: it costs what is visible, however much there is."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.events import Click
from textual.geometry import Size
from textual.message import Message

from queueboard.board.widgets.column_lines import GUTTER, ColumnLines
from queueboard.board.widgets.rows import Row, nearest
from queueboard.words import Column


class ColumnView(ColumnLines, can_focus=True):
    """The boxes and knives that stand in one column, with a cursor that stays on its row."""

    BINDING_GROUP_TITLE = "Within a column"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "step(-1)", "up", False, tooltip="The row above.", id="column.up"),
        Binding("down", "step(1)", "down", False, tooltip="The row below.", id="column.down"),
        Binding("pageup", "page(-1)", "page up", False, tooltip="A page up.", id="column.page-up"),
        Binding("pagedown", "page(1)", "page down", False, tooltip="A page down.", id="column.page-down"),
        Binding("home", "end(-1)", "first", False, tooltip="The first row of the column.", id="column.first"),
        Binding("end", "end(1)", "last", False, tooltip="The last row of the column.", id="column.last"),
        Binding("shift+up,backspace", "box(-1)", "box before", False, tooltip="Box before.", id="column.box-before"),
        Binding("shift+down,space", "box(1)", "next box", False, tooltip="The next box.", id="column.box-next"),
    ]

    class Moved(Message):
        """The cursor rests on another row."""

    class Opened(Message):
        """A row was clicked twice."""

    def __init__(self, column: Column) -> None:
        super().__init__(column.name.lower().replace("_", "-"))
        self.column = column

    def set_rows(self, rows: tuple[Row, ...], marked: frozenset[int]) -> None:
        """Show these rows; the cursor stays on its row, or goes to the next one that is still there."""
        if rows == self.rows and self._laid.tops:
            if marked != self.marked:
                self.marked = marked
                self.refresh()
            return
        keys = {row.key: place for place, row in enumerate(rows)}
        self.cursor = next((keys[row.key] for row in nearest(self.rows, self.cursor) if row.key in keys), 0)
        self.rows, self.marked = rows, marked
        self.lay_out()

    def current(self) -> Row | None:
        """The row under the cursor; None in an empty column."""
        return self.rows[self.cursor] if self.cursor < len(self.rows) else None

    def go_to(self, box_id: int, knife_id: int = 0) -> bool:
        """Put the cursor on a box's heading or on a knife; False when it is not in this column."""
        for place, row in enumerate(self.rows):
            if row.key == (box_id, knife_id):
                self._put(place)
                return True
        return False

    def mark_here(self, box_id: int) -> None:
        """Let the heading of this box stand out."""
        changed, self.here = {box_id} ^ {self.here}, box_id
        for place, row in enumerate(self.rows[: len(self._laid.tops)] if changed else ()):
            if row.knife is None and row.box_id in changed:
                self._refresh_row(place)

    def lay_out(self) -> None:
        """Put the rows into lines, once there is a width for them."""
        if not (width := self.scrollable_content_region.width):
            return  # not on the screen yet; laid out for no width, every row would show as a lone "…" for a moment
        self._laid.lay(self.rows, width, GUTTER)
        self.virtual_size = Size(width, len(self._laid.lines))
        self._keep_in_sight()
        self.refresh()

    def _refresh_row(self, place: int) -> None:
        """Draw a row anew, and the first line in sight, where a head may stand that has scrolled off."""
        self.refresh_lines(self._laid.tops[place], self._laid.height(place))
        self.refresh_lines(self.scroll_offset.y)

    def _keep_in_sight(self) -> None:
        if not self.rows or not self._laid.tops or not self.size.height:
            return
        region = self._laid.in_sight(self.cursor, self.size.height)
        self.scroll_to_region(region, animate=False, immediate=True, force=True)

    def _put(self, place: int) -> None:
        if not self.rows:
            return
        before, self.cursor = self.cursor, max(0, min(place, len(self.rows) - 1))
        self._keep_in_sight()
        for one in (before, self.cursor):
            if one < len(self._laid.tops):
                self._refresh_row(one)
        self.post_message(self.Moved())

    def watch_has_focus(self, _has_focus: bool) -> None:  # Textual's own shape
        """Nothing in the style sheet hangs on it; only the cursor shows it."""
        if self.cursor < len(self._laid.tops):
            self._refresh_row(self.cursor)

    def on_focus(self) -> None:
        self.post_message(self.Moved())

    def on_click(self, event: Click) -> None:
        offset = event.get_content_offset(self)
        line = self._laid.line_at(offset.y, self.scroll_offset.y) if offset is not None else -1
        if 0 <= line < len(self._laid.lines):
            self._put(self._laid.lines[line][0])
            if event.chain == 2:
                self.post_message(self.Opened())

    def action_step(self, by: int) -> None:
        self._put(self.cursor + by)

    def next_knife(self) -> None:
        """Put the cursor on the next knife below; it stays where there is none."""
        below = range(self.cursor + 1, len(self.rows))
        self._put(next((place for place in below if self.rows[place].knife is not None), self.cursor))

    def action_page(self, by: int) -> None:
        self._put(self.cursor + by * max(1, self.size.height // 2))

    def action_end(self, which: int) -> None:
        self._put(0 if which < 0 else len(self.rows) - 1)

    def action_box(self, by: int) -> None:
        places = range(self.cursor + 1, len(self.rows)) if by > 0 else range(self.cursor - 1, -1, -1)
        self._put(next((place for place in places if self.rows[place].knife is None), self.cursor))
