"""Boxes that are late or will be: worst first, by how much and why, days ahead."""

from textual.content import Content

from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.clean import cell_text
from queueboard.phrases.boxes import counts_words, due_words, in_the_way
from queueboard.phrases.dates import lateness_words
from queueboard.phrases.day import late_boxes
from queueboard.shop.picture import BoxPicture, Picture

NOBODY = "Nobody is late, and as the day list stands nobody will be.\nThe day list says what comes next: . then d."


class LateScreen(BoxListScreen):
    """LATE first, then WILL BE LATE."""

    def heading(self, picture: Picture) -> Content:
        """How many are late, and how many will be."""
        line = picture.day_line
        return Content(f"Late boxes · {line.late} LATE · {line.will_be_late} WILL BE LATE")

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Each late box with what is left to do; a sentence when there is none."""
        late = late_boxes(picture)
        if not late:
            return (Line(id="nobody", text=Content(NOBODY)),)
        return tuple(_line(box, picture) for box in late)


def _line(box: BoxPicture, picture: Picture) -> Line:
    forecast, now = box.forecast, picture.now
    return Line(
        id=str(box.box.id),
        number=box.box.number,
        text=Content.assemble(
            (lateness_words(forecast), "bold"),
            f" · box {box.box.number} · {cell_text(box.customer.name)}\n",
            f"    {due_words(box, now)} · {in_the_way(box, now)}\n",
            f"    {counts_words(box) if box.box.opened else 'not opened'}\n",
        ),
    )
