"""The week ahead as a load picture: minutes booked against minutes there, what is due, closures by their names."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.phrases import helping
from queueboard.phrases.late import heaviest_overload_words
from queueboard.phrases.week import (
    BAR,
    WHY_ROOM,
    day_head_words,
    due_words,
    later_words,
    load_bar,
    load_words,
    rush_words,
)
from queueboard.shop.picture import Picture
from queueboard.shop.quoting import DayLoad, week

HEAD = 18
"""Cells for the name of a day."""
MINUTES, SAID = 4, 31
"""Cells for the minutes booked, and for all that is said of a day's bench."""
WIDE = 104
"""From so many cells on a day is one line."""
KEYS = "█ booked · ░ free · ↑ ↓ scroll · ? keys · . back"


class WeekScreen(ShopScreen[int | None]):
    """Today and the next six days: a line each where there is room for it, else two."""

    CSS_PATH = "lists.tcss"
    leads_to_tags = True
    HELP = helping.WEEK
    BINDING_GROUP_TITLE = "On the week ahead"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,full_stop,comma,q,h,enter", "leave", "back", tooltip="Back to where you were.", id="week.leave")
    ]

    def compose(self) -> ComposeResult:
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="days"):
            yield Static(id="loads", markup=False)
        yield Static(KEYS, id="keys", markup=False)

    def on_resize(self) -> None:
        """One line or two for each day."""
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Show a new picture."""
        loads = week(picture)
        self.query_one("#heading", Static).update(_heading(picture))
        most = max(load.there_minutes for load in loads)
        gap = " " * 4 if self.size.width >= WIDE else f"\n{' ' * HEAD}"
        lines = [_line(load, most, picture, gap) for load in loads]
        lines += map(Content, ("", later_words(picture, loads), *WHY_ROOM))
        self.query_one("#loads", Static).update(Content("\n").join(lines))

    def action_leave(self) -> None:
        self.dismiss(None)


def _heading(picture: Picture) -> Content:
    said = f"The week ahead · {rush_words(picture)}"
    overloads = heaviest_overload_words(picture)
    return Content.assemble(said, f"\n{overloads}" if overloads else "")


def _line(load: DayLoad, most: int, picture: Picture, gap: str) -> Content:
    """The day with its bar and its figures, these under each other; behind the gap what is due."""
    bar = load_bar(load, most)
    head = day_head_words(load, picture.now.date()).ljust(HEAD)
    drawn = (f"{bar.ljust(BAR)}  " if bar else "", "$text-primary")
    said, due = load_words(load, MINUTES), due_words(load)
    room = SAID if bar else SAID + BAR + 2
    return Content.assemble((head, "bold"), drawn, said.ljust(room) if due else said, gap if due else "", due)
