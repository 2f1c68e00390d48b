"""The wall: twelve boxes in numbers that are read from across the room, without names, phones or prices."""

from typing import ClassVar

from rich.cells import cell_len
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Resize
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.clean import cell_text
from queueboard.papers.large import ROWS, enlarged
from queueboard.phrases import helping
from queueboard.phrases.dates import time_words
from queueboard.phrases.wall import wall_boxes, wall_words
from queueboard.shop.picture import BoxPicture, Picture

COLUMNS, LINES = 4, 3
WORDS = 2
"""Lines of words below each number."""
EMPTY = "No box is here."


class WallScreen(ShopScreen[None]):
    """Looked at and not touched: it follows what the others do, and any of the keys below leads back."""

    DEFAULT_CSS = """
    WallScreen > #wall { height: 1fr; padding: 0 1; text-wrap: nowrap; }
    """
    HELP = helping.WALL
    BINDING_GROUP_TITLE = "On the wall"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "escape,enter,full_stop,comma,q,V",
            "leave",
            "back to the board",
            tooltip="Leave the wall; it follows the shop by itself as long as it stands there.",
            id="wall.leave",
        )
    ]

    def compose(self) -> ComposeResult:
        """One line of the day, then the boxes."""
        yield Static(id="heading", markup=False)
        yield Static(id="wall", markup=False)

    def on_mount(self) -> None:
        """Show the shop as it is."""
        self.show(self.desk.picture)

    def on_resize(self, _: Resize) -> None:
        """Use the room there is."""
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Draw the boxes that are due first as large as they fit."""
        if not self.query("#wall"):
            return
        day = picture.day_line
        late = f"{day.late} LATE" if day.late else "nobody is late"
        heading = f"{time_words(picture.now)}   {day.leaves_today} leave today   {late}"
        self.query_one("#heading", Static).update(heading)
        width, height = (self.size.width - 2) // COLUMNS, (self.size.height - 1) // LINES
        boxes = wall_boxes(picture)
        rows = [self._row(boxes[at : at + COLUMNS], picture, width, height) for at in range(0, len(boxes), COLUMNS)]
        self.query_one("#wall", Static).update(Content("\n").join(rows) if rows else Content(EMPTY))

    def _row(self, boxes: tuple[BoxPicture, ...], picture: Picture, width: int, height: int) -> Content:
        """Boxes beside each other: their numbers, when they are due, how much is ready; no more rows than given."""
        widest = max(cell_len(row) for box in boxes for row in enlarged(str(box.box.number), 1, 1))
        across = max(1, (width - 2) // widest)
        down = max(1, min(across, (height - WORDS) // ROWS))
        numbers = [enlarged(str(box.box.number), across, down) for box in boxes]
        words = [wall_words(box, picture.now) for box in boxes]
        lines = [Content("".join(number[row].ljust(width) for number in numbers)) for row in range(ROWS * down)]
        for line in range(WORDS):
            text = "".join(cell_text(said[line])[: width - 1].ljust(width) for said in words)
            lines.append(Content.styled(text, "bold") if line == 0 else Content(text))
        return Content("\n").join((*lines, *(Content("") for _ in range(height - len(lines)))))

    def action_leave(self) -> None:
        """Back to the board."""
        self.dismiss(None)
