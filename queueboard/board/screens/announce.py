"""Note a box that somebody says will come by mail: whose, how many knives, when, and what can be told."""

from collections.abc import Iterable
from dataclasses import replace

from textual.widget import Widget

from queueboard.board.desk import Desk
from queueboard.board.forms.box_form import BoxForm
from queueboard.board.forms.parts import ExpectedPart
from queueboard.intake.small import read_number
from queueboard.phrases import helping
from queueboard.shop.announcing import announce_box
from queueboard.shop.wishing import Wish
from queueboard.values.customer import Customer
from queueboard.values.new import NewAnnounced, NewCustomer
from queueboard.words import GoesBy


class AnnounceScreen(BoxForm):
    """A box that is not here: what is expected of it stands where its knives would."""

    HELP = helping.ANNOUNCE
    opening_words = "A box will come by mail; its number is"
    hint = "Enter on · ↑ back · F2 note it · F1 keys · Esc leave"
    hint_with_day = "Enter on · ↑ back · F2 note it · F3 the day · F1 keys · Esc leave"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, GoesBy.PARCEL)
        self.expected = ExpectedPart(desk)

    def kept_as(self) -> str:
        return "announcing"

    def how_it_comes(self) -> Iterable[Widget]:
        yield self.expected

    def wish(self) -> Wish | None:
        """The box by what is expected; nothing is told before a count or a day is typed."""
        wish, unseen = super().wish(), self.expected.so_far()
        return None if wish is None or unseen is None else replace(wish, unseen=unseen)

    def go(self) -> None:
        number = self.read(self.number, read_number)
        expected = self.expected.read(self)
        promised, carrier_days, label = self.read_promise(), self.read_carrier_days(), self.read_label()
        whose = self.picker.chosen()
        if promised is not None:
            self.when.before_a_no(self)
        stored = self.attempt(
            announce_box,
            NewAnnounced(
                customer_id=whose.id if isinstance(whose, Customer) else None,
                new_customer=whose if isinstance(whose, NewCustomer) else None,
                expected_knives=expected.knives,
                expected_on=expected.comes_on,
                goes_by=self.goes_by.value,
                number=number,
                carrier_days=carrier_days,
                promise=promised,
                label=label,
                rush=self.rush.value,
                note=self.note.value,
            ),
        )
        if stored is not None:
            self.kept.forget()
            self.app.notify(f"Box {stored[0]} is expected; its number may be written on the parcel.", markup=False)
            self.dismiss(stored[0])
