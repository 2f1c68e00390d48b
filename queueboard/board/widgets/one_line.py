"""The line that all typing goes into."""

from textual.events import Paste
from textual.widgets import Input

from queueboard.clean import one_line, without_turns


class OneLine(Input):
    """One line to type in. What is typed is people's text until a parser has read it."""

    def __init__(
        self, value: str = "", *, hint: str = "", select: bool = False, most: int | None = None, id: str | None = None
    ) -> None:
        """select: what is offered is marked when the cursor comes, so that the first letter takes its place."""
        super().__init__(value, placeholder=hint, compact=True, select_on_focus=select, max_length=most or 0, id=id)
        self.cursor_blink = False

    def validate(self, value: str) -> None:
        """Nothing: what reads a line says what is wrong. Textual would mark each line, and style it anew for that."""

    def update_node_styles(self, animate: bool = True) -> None:  # noqa: FBT002  # Textual's own shape
        """Style it where it stands; before that it would be in vain."""
        if self.is_attached:
            super().update_node_styles(animate)

    def replace(self, text: str, start: int, end: int) -> None:
        """Take in what is typed or pasted, but for marks that would turn the line it stands in."""
        super().replace(without_turns(text), start, end)

    def on_paste(self, event: Paste) -> None:
        """Several lines pasted become the one line there is, without controls; Textual would drop all but the first."""
        event.text = one_line(event.text)
