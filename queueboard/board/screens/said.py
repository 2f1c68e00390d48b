"""How well the shop knows itself: what was said against what was seen, dates kept, minutes learned."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.headed import headed
from queueboard.papers.said import said_sheet
from queueboard.phrases import helping
from queueboard.shop.first_look import judged
from queueboard.shop.picture import Picture


class SaidScreen(ShopScreen[int | None]):
    """Three small tables to scroll through."""

    CSS_PATH = "lists.tcss"
    leads_to_tags = True
    HELP = helping.SAID
    BINDING_GROUP_TITLE = "On what was said and seen"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,full_stop,comma,q,z,enter", "leave", "back", tooltip="Back to where you were.", id="said.leave")
    ]

    def compose(self) -> ComposeResult:
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="days"):
            yield Static(id="tables")
        yield Static(Content("↑ ↓ scroll · ? keys · . back"), id="keys")

    def on_mount(self) -> None:
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Read again what was said and seen."""
        if self.children:
            sheet = said_sheet(judged(self.desk.shop, picture.now), picture)
            title, _, tables = sheet.partition("\n\n")
            self.query_one("#heading", Static).update(Content(title))
            self.query_one("#tables", Static).update(headed(tables))

    def action_leave(self) -> None:
        self.dismiss(None)
