"""Who is at this board: asked once, when it was not said on the command line."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Input, Static

from queueboard.board.base import ShopModal
from queueboard.board.widgets.one_line import OneLine
from queueboard.clean import clean
from queueboard.errors import TypedError
from queueboard.phrases import helping


class InitialsScreen(ShopModal[None]):
    """Asks for the initials that stand beside every step in the history."""

    HELP = helping.INITIALS
    BINDING_GROUP_TITLE = "Who acts"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "app.quit", "quit", tooltip="Leave the board; nothing was changed.", id="initials.quit"),
    ]

    def compose(self) -> ComposeResult:
        with Vertical(id="initials"):
            yield Static("Who is at this board?", id="heading", markup=False)
            yield OneLine(hint="initials, up to 8 signs", select=True, most=40, id="who")
            yield Static(
                "They stand beside every step in the history.\nEnter go on · Esc quit", id="keys", markup=False
            )

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Take them, or say what is wrong with them."""
        try:
            initials = clean(event.value, limit=8, field="initials")
        except TypedError as error:
            self.query_one("#keys", Static).update(str(error))
            return
        if initials:
            self.desk.initials = initials
            self.dismiss(None)
