"""The customer's answer to a count beyond the note: yes, do it; or the knife is not theirs."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.clean import cell_text
from queueboard.phrases.counts import note_words
from queueboard.phrases.dates import many
from queueboard.phrases.money import amount, money
from queueboard.shop.counting import not_theirs, yes_to_count


class CountDialog(Dialog):
    """A digit answers; where it is not theirs, the place is asked where the knife lies from now on."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        box, settings = self.box_now(box_id), desk.picture.settings
        with_it = box.price_cents + sum(knife.price_cents for knife in box.apart)
        yes = f"yes, do it: {many(len(box.on_hand), 'knife')}, {money(with_it, settings)}"
        theirs = f"not mine: to the found knives, {amount(box.price_cents)} stays"
        self.what = Choice([(yes, True), (theirs, False)], across=False)
        self.place = Field(hint="where it lies from now on: shelf F, blue tray")
        self.place_row = Row(("place", self.place))

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        counts = f"counted {box.box.counted}, the note says {box.box.note_says}"
        return f"Box {box.box.number}, {box.customer.name}: {counts}"

    def fields(self) -> ComposeResult:
        box = self.box_now(self.box_id)
        yield Static(Content(cell_text(note_words(box, self.desk.picture.settings))))
        yield self.what
        yield self.place_row

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        self.place_row.display = not self.what.value

    def go(self) -> None:
        box = self.box_now(self.box_id).box
        if self.what.value:
            self.done(self.attempt(yes_to_count, box))
        else:
            self.done(self.attempt(not_theirs, box, self.place.value))

    def anew(self) -> Dialog:
        return CountDialog(self.desk, self.box_id)
