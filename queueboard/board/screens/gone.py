"""A box that is gone: when it left and with whom, its knives with their last readings, what was told."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.copying import copy_text
from queueboard.board.desk import Desk
from queueboard.board.screens.box_papers import write_card
from queueboard.board.screens.dialogs.call_back import TakeBackDialog
from queueboard.board.screens.message import MessageScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.clean import cell_text
from queueboard.phrases import helping
from queueboard.phrases.call_backs import back_lines, old_knife_words
from queueboard.phrases.phone import gone_answer
from queueboard.phrases.proof import done_lines
from queueboard.phrases.shelf import notice_words
from queueboard.shelf_words import MessageSort
from queueboard.shop.finding import gone_box
from queueboard.shop.picture import Picture
from queueboard.shop.proof import card_of_box
from queueboard.shop.shelving import notices_of_box
from queueboard.values.shelf import GoneSeen

KEYS = "+ copy · / not sharp: it came back · * message · P card · ? keys · . back"


class GoneScreen(ShopScreen[int | None]):
    """What can be asked of a box that has left; leaves with the number of a call-back that was received for it."""

    CSS_PATH = "lists.tcss"
    HELP = helping.GONE
    BINDING_GROUP_TITLE = "A box that is gone"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus,c", "copy", "hand the sentence to the terminal to copy", id="gone.copy"),
        Binding(
            "slash,b",
            "back",
            "not sharp: its knives came back",
            tooltip="Receive its knives again: they came back not sharp.",
            id="gone.back",
        ),
        Binding(
            "asterisk,n",
            "message",
            "the message that it has left",
            tooltip="Read the message that it has left.",
            id="gone.message",
        ),
        Binding("P", "card", "proof card to a file, to print it", id="gone.card"),
        Binding("enter,escape,full_stop,comma,q", "leave", "back", id="gone.leave"),
    ]

    def __init__(self, desk: Desk, gone: GoneSeen) -> None:
        super().__init__(desk)
        self.gone = gone

    def compose(self) -> ComposeResult:
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="paper", can_focus=False):
            yield Static(id="message", markup=False)
        yield Static(id="typed", markup=False)
        yield Static(KEYS, id="keys", markup=False)

    def on_mount(self) -> None:
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """The sentence, the knives, what was told."""
        if not self.query("#message"):
            return
        gone = gone_box(self.desk.shop, self.gone.box.id)
        name = cell_text(self.gone.customer.name)
        if gone is None:
            self.query_one("#heading", Static).update(Content(f"Box {self.gone.box.number} is here again."))
            return
        self.gone = gone
        where = " · ".join(filter(None, (name, cell_text(gone.customer.town), cell_text(gone.customer.phone))))
        self.query_one("#heading", Static).update(Content(f"Box {gone.box.number}, gone · {where}"))
        today = picture.now.date()
        told = [notice_words(notice, today) for notice in notices_of_box(self.desk.shop, gone.box.id)]
        lines = (cell_text(self.sentence()), "", *self.knife_lines(), *([""] if told else []), *told)
        self.query_one("#message", Static).update(Content("\n".join(lines)))

    def sentence(self) -> str:
        """What is said of it on the phone."""
        return gone_answer(self.gone, self.desk.picture.now, self.desk.picture.settings)

    def knife_lines(self) -> list[str]:
        """Each knife with what it was read at when it left, and what was done to it."""
        card = card_of_box(self.desk.shop, self.gone.box.id)
        lines = []
        for one in card.knives:
            lines.append(cell_text(old_knife_words(one, card.settings)))
            lines += [f"    {cell_text(line)}" for line in (*back_lines(one), *done_lines(one))]
        return lines

    def action_copy(self) -> None:
        """Hand the sentence to the terminal."""
        copy_text(self, self.sentence(), "`queueboard find` prints it")

    def action_back(self) -> None:
        """Receive knives of it that came back."""
        dialog = TakeBackDialog(self.desk, self.gone)

        def received(done: bool | None) -> None:
            if done and dialog.stored is not None:
                number = dialog.stored
                heading = f"Call-back of box {self.gone.box.number}"
                self.app.push_screen(
                    ReceivedScreen(self.desk, number, heading=heading), lambda _: self._leave_with(number)
                )

        self.app.push_screen(dialog, received)

    def _leave_with(self, number: int) -> None:
        self.dismiss(number)

    def action_message(self) -> None:
        """Show the message that it has left."""
        self.app.push_screen(MessageScreen(self.desk, self.gone.box.id, MessageSort.SHIPPED))

    def action_card(self) -> None:
        """Write its proof card."""
        write_card(self, self.gone.box.id)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it below, where it covers nothing."""
        self.query_one("#typed", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def action_leave(self) -> None:
        """Back to where one came from."""
        self.dismiss(None)
