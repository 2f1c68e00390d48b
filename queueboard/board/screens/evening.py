"""Closing the day: one screen to go down in the evening, left and come back to as often as one likes."""

from datetime import date, timedelta
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.desk import Desk
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.evening_lines import evening_lines
from queueboard.board.screens.paper_out import write_and_say
from queueboard.papers.evening import evening_sheet
from queueboard.phrases import helping
from queueboard.phrases.evening import NO_ALL_CLEAR, closing_words, evening_title, unclosed_words
from queueboard.shop.evening import empty_dust, look_at_dust_again
from queueboard.shop.evening_seen import Evening, evening
from queueboard.shop.picture import Picture


class EveningScreen(BoxListScreen):
    """What the day came to, what is open, and the keys that close it."""

    HELP = helping.EVENING
    BINDING_GROUP_TITLE = "The end of the day"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "plus",
            "on",
            "count this money; dust tray emptied, looked at again",
            tooltip="Go on with the line under the cursor: count this money, look at the dust tray again.",
            id="evening.on",
        ),
        Binding(
            "d",
            "dust",
            "dust tray emptied or wetted just now",
            tooltip="Note that the dust tray was emptied or wetted just now.",
            id="evening.dust",
        ),
        Binding("asterisk,c", "close", "close the day", id="evening.close"),
        Binding("slash,v", "write", "write the sheet to a file, to print it", id="evening.write"),
        Binding("left", "day(-1)", "the day before", id="evening.before", priority=True),
        Binding("right", "day(1)", "the next day", id="evening.after", priority=True),
        Binding("u", "undo", "undo", id="evening.undo"),
        Binding("Z", "leave", "back to the board", id="evening.leave", show=False),
    ]
    KEYS = "+ count, dust tray · * close the day · / file · ← → a day · ? keys · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.day: date = desk.picture.now.date()
        self.seen: Evening = evening(desk.shop, desk.picture, self.day)

    def show(self, picture: Picture) -> None:
        """Read the day anew with each picture."""
        self.seen = evening(self.desk.shop, picture, self.day)
        super().show(picture)

    def heading(self, picture: Picture) -> Content:
        """The day, whether it is closed, what is open, and a day before that nobody closed."""
        unclosed = unclosed_words(self.seen)
        return Content.assemble(
            ("End of the day · ", "bold"),
            evening_title(self.seen),
            f"\n{closing_words(self.seen, picture)}",
            (f"\n{unclosed} ← goes there" if unclosed else "", "bold"),
        )

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Money and dust tray, then what is open, moved, done, and tomorrow."""
        return evening_lines(self.seen, picture, self.app.size.width)

    def action_on(self) -> None:
        """Do what the line under the cursor is for."""
        line = self.current()
        here = "" if line is None else line.id
        if here == "dust":
            self._dust_on()
        elif here.startswith("way "):
            self._count(here.removeprefix("way "))
        else:
            self.say("Put the cursor on a way of paying, to count it, or on the dust tray.", trouble=True)

    def _dust_on(self) -> None:
        """The next step with the dust tray: emptied, then looked at again."""
        tray = self.seen.dust
        if tray is None or tray.again_at is not None:
            self.action_dust()
        elif self.attempt(look_at_dust_again, tray) is not None:
            self.say(f"Looked at again. {NO_ALL_CLEAR}")

    def action_dust(self) -> None:
        if not self.seen.is_today:
            self.say("That day is over; what is emptied now belongs to today.", trouble=True)
            return
        if self.attempt(empty_dust) is not None:
            self.say(f"Emptied. Look again after {self.seen.second_look_minutes} min: + here, then.")

    def _count(self, way: str) -> None:
        from queueboard.board.screens.dialogs.evening import TillDialog

        money = next(one for one in self.seen.money if one.way.value == way)
        self.app.push_screen(TillDialog(self.desk, self.day, money), lambda _: self.show(self.desk.picture))

    def action_close(self) -> None:
        from queueboard.board.screens.dialogs.evening import CloseDayDialog

        if self.seen.closed is not None:
            self.say(f"It is closed, by {self.seen.closed.by}; u takes a closing of your own back.", trouble=True)
        else:
            self.app.push_screen(CloseDayDialog(self.desk, self.seen))

    def action_write(self) -> None:
        """Write the sheet where it can be printed from."""
        write_and_say(self, f"evening-{self.day.isoformat()}.txt", evening_sheet(self.seen, self.desk.picture), "")

    def action_day(self, days: int) -> None:
        """Another day; there is none after today."""
        there = self.day + timedelta(days=days)
        if there > self.desk.picture.now.date():
            self.say("That day has not come.", trouble=True)
            return
        self.day = there
        self.say("")
        self.show(self.desk.picture)

    def action_undo(self) -> None:
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))
