"""How a column is drawn: line by line, each kept as it was drawn for as long as it looks so."""

from typing import ClassVar

from rich.segment import Segment
from rich.style import Style
from textual.geometry import Region, Size
from textual.strip import Strip

from queueboard.board.widgets.early import EarlyView
from queueboard.board.widgets.kept import LaidOut, LaidRow, Look
from queueboard.board.widgets.rows import Row, Tone

CURSOR = "▸"
SAME = "▹"
"""The box under the cursor, where it stands in another column too."""
MARK = "*"
"""The sign of a marked knife is the key that marks it."""

DRAWN_WITH = (*(tone.value for tone in Tone), "heading", "cursor", "mark", "here")
"""The styles of a line, by their names in the style sheet."""

GUTTER = 2
"""Cells for cursor and mark; a heading begins one cell earlier."""


class ColumnLines(EarlyView):
    """Rows one below the other, one of them under the cursor; nothing here moves it."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {f"column--{name}" for name in DRAWN_WITH}
    ALLOW_SELECT = False

    def __init__(self, name: str) -> None:
        super().__init__(id=name)
        self.rows: tuple[Row, ...] = ()
        self.cursor = 0
        self.marked: frozenset[int] = frozenset()
        self.here = 0
        """Id of the box under the cursor of the board; its heading stands out in every column."""
        self._laid = LaidOut()
        self._worn: tuple[Style, ...] = ()
        self._bar_shows: tuple[Size, Size] | None = None

    def render_lines(self, crop: Region) -> list[Strip]:
        """As Textual does it, but for its own copy of each line: a column has neither border nor padding.

        A line that looks as it did is the same object as before, which knows already how it is sent to the terminal.
        """
        self._wear()
        first, last = crop.column_span
        ground = self.background_colors[1]
        beside = Style(bgcolor=ground.rich_color)
        filters = self.get_line_filters()
        blank = Strip.blank(last, beside)
        scrolled, focused = self.scroll_offset.y, self.has_focus
        strips = [self._line(y, scrolled, blank, focused=focused) for y in crop.line_range]
        if any(strip.cell_length != last for strip in strips):
            strips = [strip.adjust_cell_length(last, beside) for strip in strips]
        for one in filters:
            strips = [strip.apply_filter(one, ground) for strip in strips]
        return [strip.crop(first, last) for strip in strips] if first else strips

    def render_line(self, y: int) -> Strip:
        self._wear()
        blank = Strip.blank(self.scrollable_content_region.width, self.rich_style)
        return self._line(y, self.scroll_offset.y, blank, focused=self.has_focus)

    def _line(self, y: int, scrolled: int, blank: Strip, *, focused: bool) -> Strip:
        """What stands so far down in sight; below the last row that is blank."""
        line = self._laid.line_at(y, scrolled)
        if line >= len(self._laid.lines):
            return blank
        place, laid, number = self._laid.lines[line]
        row = laid.row
        look = Look(
            cursor=focused and place == self.cursor,
            same=row.knife is None and row.box_id == self.here,
            marked=row.knife is not None and row.knife.id in self.marked,
        )
        strip = laid.drawn.get((number, look))
        if strip is None:
            strip = laid.drawn[number, look] = self._draw(laid, number, look)
        return strip

    def _draw(self, laid: LaidRow, number: int, look: Look) -> Strip:
        heading, first = laid.row.knife is None, number == 0
        gutter = (CURSOR if look.cursor else SAME if look.same else " ") if first else " "
        gutter += "" if heading else MARK if look.marked else " "
        ground = self._ground("cursor" if look.cursor else "heading") if look.cursor or heading else Style()
        segments = [Segment(gutter, self._style("mark") + ground)]
        for part in laid.lines[number]:
            name = "here" if look.same and first else part.tone.value
            segments.append(Segment(part.text, self._style(name) + ground))
        return Strip(segments).adjust_cell_length(self.scrollable_content_region.width, self._style("plain") + ground)

    def _wear(self) -> None:
        """Draw all anew where the colours are others than those it was drawn with."""
        styles = tuple(map(self._style, DRAWN_WITH))
        if styles != self._worn:
            self._worn = styles
            self._laid.forget_drawn()

    def _style(self, name: str) -> Style:
        return self.get_visual_style(f"column--{name}").rich_style

    def _ground(self, name: str) -> Style:
        """The ground of a heading; under the cursor also its one colour, so that every word stays readable."""
        style = self._style(name)
        return Style(bgcolor=style.bgcolor, color=style.color if name == "cursor" else None)

    def _scroll_update(self, virtual_size: Size) -> None:
        """As Textual does it, but only where it changes anything: it asks for it, and draws the bar, at each layout."""
        if (now := (virtual_size, self.container_size)) != self._bar_shows:
            self._bar_shows = now
            super()._scroll_update(virtual_size)
