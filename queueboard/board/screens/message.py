"""Messages about one box as text: to be copied or written to a file, and sent by one's own mail or phone."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.copying import copy_text
from queueboard.board.desk import Desk
from queueboard.board.screens.dialogs.shelf import NoticeDialog
from queueboard.board.screens.paper_out import write_and_say
from queueboard.clean import cell_text
from queueboard.errors import RuleError
from queueboard.papers.shelf import message_paper
from queueboard.phrases import helping
from queueboard.phrases.messages import NOTHING_SENT, gone_message, law_words, message
from queueboard.phrases.shelf import notice_words
from queueboard.shelf_words import MessageSort
from queueboard.shop.finding import gone_box
from queueboard.shop.picture import Picture
from queueboard.shop.shelving import notices_of_box

KEYS = "1-4 which · + copy · v or * file · / note that it was told · ? keys · . back"


class MessageScreen(ShopScreen[None]):
    """Ready, shipped, delayed, not fetched: the text where it would be true now, else why not."""

    CSS_PATH = "lists.tcss"
    HELP = helping.MESSAGE
    BINDING_GROUP_TITLE = "A message to a customer"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("1", "choose(0)", "that it is ready", tooltip="Show the message that it is ready.", id="message.ready"),
        Binding(
            "2", "choose(1)", "that it has left", tooltip="Show the message that it has left.", id="message.shipped"
        ),
        Binding(
            "3", "choose(2)", "that it is delayed", tooltip="Show the message that it is delayed.", id="message.delayed"
        ),
        Binding(
            "4",
            "choose(3)",
            "that it waits to be fetched",
            tooltip="Show the message that it waits to be fetched.",
            id="message.unclaimed",
        ),
        Binding("plus,c", "copy", "hand it to the terminal to copy", id="message.copy"),
        Binding("v,asterisk", "write", "write to a file", id="message.write"),
        Binding("slash,n", "told", "note that it was told, and how", id="message.told"),
        Binding("enter,escape,full_stop,comma,q", "leave", "back", id="message.leave"),
    ]

    def __init__(self, desk: Desk, box_id: int, sort: MessageSort | None = None) -> None:
        """sort: which one stands there first; None the first that is true of the box."""
        super().__init__(desk)
        self.box_id = box_id
        self.sort = sort or next((one for one in _LIKELY if not self.trouble(one)), MessageSort.READY)

    def compose(self) -> ComposeResult:
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="paper", can_focus=False):
            yield Static(id="message", markup=False)
        yield Static(id="typed", markup=False)
        yield Static(KEYS, id="keys", markup=False)

    def on_mount(self) -> None:
        self.show(self.desk.picture)

    def text(self, sort: MessageSort) -> str:
        """The message of this sort; RuleError where it would not be true."""
        picture = self.desk.picture
        box = next((one for one in picture.boxes if one.box.id == self.box_id), None)
        if box is not None:
            return message(sort, box, picture)
        gone = gone_box(self.desk.shop, self.box_id)
        if gone is None:
            raise RuleError("That box is not in the shop file any more.")
        return gone_message(sort, gone, picture.now, picture.settings)

    def trouble(self, sort: MessageSort) -> str:
        """Why a message of this sort would not be true; empty where it would be."""
        try:
            self.text(sort)
        except RuleError as error:
            return str(error)
        return ""

    def number(self) -> int:
        """The number of the box, open or gone."""
        picture = self.desk.picture
        box = next((one.box for one in picture.boxes if one.box.id == self.box_id), None)
        gone = gone_box(self.desk.shop, self.box_id) if box is None else None
        return box.number if box is not None else gone.box.number if gone is not None else 0

    def show(self, picture: Picture) -> None:
        """The message, which others could be told, and what was told already."""
        if not self.query("#message"):
            return
        why = self.trouble(self.sort)
        sorts = "  ".join(
            f"{'▸' if sort is self.sort else ' '}{place} {sort.value}{'' if not self.trouble(sort) else ' -'}"
            for place, sort in enumerate(MessageSort, 1)
        )
        self.query_one("#heading", Static).update(Content(f"Box {self.number()} · {sorts}"))
        today = picture.now.date()
        law = law_words(picture.settings, today) if self.sort is MessageSort.UNCLAIMED and not why else ""
        told = [notice_words(notice, today) for notice in notices_of_box(self.desk.shop, self.box_id)]
        below = filter(None, (law, f"Told already: {'; '.join(told)}" if told else "", NOTHING_SENT))
        text = f"Not now: {why}" if why else self.text(self.sort)
        self.query_one("#message", Static).update(Content("\n\n".join((cell_text_lines(text), *below))))

    def action_choose(self, place: int) -> None:
        """Show another message."""
        self.sort = list(MessageSort)[place]
        self.show(self.desk.picture)
        self.say("")

    def action_copy(self) -> None:
        """Hand the text to the terminal."""
        if (text := self.ready_text()) is not None:
            copy_text(self, text, "v writes it to a file")

    def action_write(self) -> None:
        """Write it beside the shop file and say where."""
        text = self.ready_text()
        if text is None:
            return
        number, name = self.number(), self.sort.value.replace(" ", "-")
        paper = message_paper(text, self.sort, number, self.desk.picture)
        write_and_say(self, f"message-{number}-{name}.txt", paper, ".")

    def action_told(self) -> None:
        """Note that the customer was told."""
        text = self.ready_text()
        if text is not None:
            dialog = NoticeDialog(self.desk, self.box_id, self.number(), self.sort, text)
            self.app.push_screen(dialog, self.noted)

    def noted(self, done: bool | None) -> None:
        """Say that it was noted."""
        if done:
            self.say("Noted, with the day and your initials.")

    def ready_text(self) -> str | None:
        """The text; a sentence and None where it would not be true."""
        why = self.trouble(self.sort)
        if why:
            self.say(why, trouble=True)
            return None
        return self.text(self.sort)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it below the text, where it covers nothing."""
        self.query_one("#typed", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def action_leave(self) -> None:
        """Back to where one came from."""
        self.dismiss(None)


_LIKELY = (MessageSort.DELAYED, MessageSort.READY, MessageSort.SHIPPED, MessageSort.UNCLAIMED)


def cell_text_lines(text: str) -> str:
    """Lines of a text, each without signs that shift or turn a line."""
    return "\n".join(map(cell_text, text.splitlines()))
