"""Where a box stands, and how its customer was told."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.shop.shelving import note_notice, put_on_shelf


class PlaceDialog(Dialog):
    """The place as the shop calls it; empty takes it away."""

    hint = "Enter notes it · Esc leaves it as it was"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        self.place = Field(self.opened.box.place, hint="C4")

    def heading(self) -> str:
        return f"Where does box {self.opened.box.number} stand? {self.opened.customer.name}"

    def fields(self) -> ComposeResult:
        yield Row(("place", self.place))

    def go(self) -> None:
        self.done(self.attempt(put_on_shelf, self.opened.box, self.place.value))

    def anew(self) -> Dialog:
        return PlaceDialog(self.desk, self.opened.box.id)


class NoticeDialog(Dialog):
    """How the customer was told; a digit answers at once."""

    hint = "a digit takes its line · Enter the one shown · - or Esc leaves"

    def __init__(self, desk: Desk, box_id: int, number: int, sort: MessageSort, text: str) -> None:
        super().__init__(desk)
        self.box_id, self.number, self.sort, self.text = box_id, number, sort, text
        self.way = Choice([(way.value, way) for way in NoticeWay], across=False)

    def heading(self) -> str:
        return f"How was the customer of box {self.number} told: {self.sort.value}?"

    def fields(self) -> ComposeResult:
        yield self.way
        yield Static(Content("It is noted with today's date. Nothing is sent from here."))
        if self.sort is MessageSort.DELAYED:
            yield Static(Content("The board keeps the day told before: p on the box tells the new one."))

    def go(self) -> None:
        self.done(self.attempt(note_notice, self.box_id, self.sort, self.way.value, self.text))
