"""The line an answer is typed on; a few single keys act at once."""

from textual.events import Key
from textual.message import Message

from queueboard.board.widgets.one_line import OneLine


class AnswerLine(OneLine):
    """Takes an answer and Enter; what was typed stays until it has been taken.

    `quick` names the single characters that act at once while nothing is typed: + yes, - no, / again;
    a refused answer that is marked to be typed over counts as nothing.
    `always` names those that act at once whatever is typed, `behind` those that act once something is.
    """

    class Quick(Message):
        """A single key was pressed that acts at once."""

        def __init__(self, character: str) -> None:
            super().__init__()
            self.character = character

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(most=300, id=id)
        self.quick: frozenset[str] = frozenset()
        self.always: frozenset[str] = frozenset()
        self.behind: frozenset[str] = frozenset()

    def on_key(self, event: Key) -> None:
        """Hand such a key to the screen before it becomes text."""
        if event.character is None:
            return
        nothing = not self.value or self.selected_text == self.value
        now = self.always | (self.quick if nothing else self.behind)
        if event.character in now:
            event.prevent_default()
            event.stop()
            self.post_message(self.Quick(event.character))
