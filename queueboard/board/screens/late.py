"""Boxes that are late, will be, or are tight: worst first, by how much and why; one key deeper how likely that is."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.desk import Desk
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.clean import cell_text
from queueboard.errors import RuleError
from queueboard.phrases import helping
from queueboard.phrases.announced import NOT_COME, expected_words, not_come_boxes, told_date_words
from queueboard.phrases.boxes import counts_words, due_words, in_the_way, unopened_words
from queueboard.phrases.dates import lateness_words
from queueboard.phrases.late import (
    ASK_FIRST,
    asks_first,
    heaviest_overload_words,
    late_boxes,
    outlook_lines,
    slack_words,
)
from queueboard.shop.picture import BoxPicture, Picture

NOBODY = "Nobody is late, and as the day list stands nobody will be.\nThe day list says what comes next: . then d."


class LateScreen(BoxListScreen):
    """LATE first, then WILL BE LATE, then TIGHT; last what was announced and has not come."""

    HELP = helping.LATE
    BINDING_GROUP_TITLE = "On the late boxes"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "plus,space",
            "deeper",
            "how likely, and what can be told",
            tooltip="How likely this box is late, when it is done, and which day can honestly be told.",
            id="late.deeper",
        ),
        Binding("p", "promise", "tell a date", tooltip="Tell the customer another date.", id="late.promise"),
    ]
    KEYS = "Enter to it · + how likely · p tell a date · digits: a box · ? keys · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.deeper: frozenset[int] = frozenset()
        """Numbers of the boxes of which more is told."""

    def heading(self, picture: Picture) -> Content:
        """How many are late, will be and are tight; loudly what overloads the bench."""
        line = picture.day_line
        not_come = len(not_come_boxes(picture))
        said = f"Late boxes · {line.late} LATE · {line.will_be_late} WILL BE LATE · {line.tight} TIGHT"
        said += f" · {not_come} {NOT_COME}" if not_come else ""
        overloads = heaviest_overload_words(picture)
        return Content.assemble(said, (f"\n{overloads}" if overloads else "", "bold"))

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Each late box with what is left to do, then those that have not come; a sentence when there is none."""
        lines = (
            *(_line(box, picture, deeper=box.box.number in self.deeper) for box in late_boxes(picture)),
            *(_not_come_line(box, picture) for box in not_come_boxes(picture)),
        )
        return lines or (Line(id="nobody", text=Content(NOBODY)),)

    def _under_cursor(self) -> BoxPicture | None:
        line = self.current()
        return None if line is None or line.number is None else self.desk.picture.box(line.number)

    def action_deeper(self) -> None:
        """Tell more of the box under the cursor, or no more."""
        box = self._under_cursor()
        if box is not None:
            self.deeper ^= {box.box.number}
            self.show(self.desk.picture)

    def action_promise(self) -> None:
        """Ask for the date that is told now."""
        from queueboard.board.screens.dialogs import dialog_for

        box = self._under_cursor()
        if box is None:
            self.say("Put the cursor on a box.", trouble=True)
            return
        try:
            self.app.push_screen(dialog_for("promise", self.desk, box.box))
        except RuleError as error:
            self.say(str(error), trouble=True)


def _line(box: BoxPicture, picture: Picture, *, deeper: bool) -> Line:
    forecast, now = box.forecast, picture.now
    slack = slack_words(forecast)
    asks = [(f"    {ASK_FIRST}\n", "bold")] if asks_first(box) else []
    more = [f"    {said}\n" for said in outlook_lines(box, picture)] if deeper else []
    return Line(
        id=str(box.box.id),
        number=box.box.number,
        text=Content.assemble(
            (lateness_words(forecast), "bold"),
            f"{', ' if slack else ''}{slack} · box {box.box.number} · {cell_text(box.customer.name)}\n",
            f"    {due_words(box, now)} · {in_the_way(box, now)}\n",
            f"    {counts_words(box) if box.box.opened else unopened_words(box)}\n",
            *asks,
            *more,
        ),
    )


def _not_come_line(box: BoxPicture, picture: Picture) -> Line:
    today = picture.now.date()
    return Line(
        id=str(box.box.id),
        number=box.box.number,
        text=Content.assemble(
            (NOT_COME, "bold"),
            f" · box {box.box.number} · {cell_text(box.customer.name)}\n",
            f"    {expected_words(box, today)} · {told_date_words(box, today)}\n",
        ),
    )
