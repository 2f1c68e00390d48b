"""The head of a column: its name, a rule, and how many knives stand in it."""

from rich.cells import cell_len
from textual.app import RenderResult
from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from queueboard.words import Column


class ColumnHead(Widget):
    """Name, rule, count; the head of the column with the cursor stands out."""

    count: reactive[int] = reactive(0)
    here: reactive[bool] = reactive(False)

    def __init__(self, column: Column) -> None:
        super().__init__()
        self.column = column

    def render(self) -> RenderResult:
        name, count = self.column.value, str(self.count)
        rule = "━" if self.here else "─"
        fill = rule * max(0, self.size.width - cell_len(name) - cell_len(count) - 2)
        loud = "bold $text-primary" if self.here else "bold"
        return Content.assemble((name, loud), " ", (fill, "$primary" if self.here else "$rule"), " ", (count, loud))
