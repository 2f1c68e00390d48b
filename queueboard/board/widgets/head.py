"""The head of a column: its name, a rule, and how many knives stand in it."""

from rich.cells import cell_len
from textual.app import RenderResult
from textual.content import Content
from textual.geometry import Region
from textual.reactive import reactive
from textual.strip import Strip
from textual.widget import Widget

from queueboard.words import Column

MOST_LOOKS = 100
"""So many are kept."""


class ColumnHead(Widget):
    """Name, rule, count; the head of the column with the cursor stands out."""

    count: reactive[int] = reactive(0)
    here: reactive[bool] = reactive(False)

    def __init__(self, column: Column) -> None:
        super().__init__()
        self.column = column
        self._drawn: dict[tuple[object, ...], list[Strip]] = {}

    def render_lines(self, crop: Region) -> list[Strip]:
        """As Textual does it, once for each look: a count that was shown comes back with the boxes that were hidden."""
        look = (self.count, self.here, crop, self.visual_style, self.app.theme)
        if look not in self._drawn:
            if len(self._drawn) == MOST_LOOKS:
                self._drawn.clear()
            self._drawn[look] = super().render_lines(crop)
        return self._drawn[look]

    def render(self) -> RenderResult:
        name, count = self.column.value, str(self.count)
        rule = "━" if self.here else "─"
        fill = rule * max(0, self.size.width - cell_len(name) - cell_len(count) - 2)
        loud = "bold $text-primary" if self.here else "bold"
        return Content.assemble((name, loud), " ", (fill, "$primary" if self.here else "$rule"), " ", (count, loud))
