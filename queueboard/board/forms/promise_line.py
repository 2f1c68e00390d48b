"""What the counter can tell while a box is still being typed: the earliest day, its sum, yes or no to a day."""

from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.clean import cell_text
from queueboard.phrases.promising import advice_lines
from queueboard.shop.picture import Picture
from queueboard.shop.wishing import Advice, Wish, advise


class PromiseLine(Static):
    """Asks once for each change of what is typed or of the shop; shows nothing while there is nothing to say."""

    DEFAULT_CSS = "PromiseLine { height: auto; max-height: 5; color: $text-primary; }"

    def __init__(self, desk: Desk) -> None:
        super().__init__("")
        self.desk = desk
        self.advice: Advice | None = None
        self._asked: tuple[Wish, Picture] | None = None
        self.display = False

    def ask(self, wish: Wish | None) -> None:
        """Say what can be told for this wish; None takes the lines away."""
        asked = None if wish is None else (wish, self.desk.picture)
        if self._asked is not None and asked is not None:
            (before, seen), (now, picture) = self._asked, asked
            if seen is picture and before == now:
                return
        self._asked = asked
        self.advice = None if asked is None else advise(asked[1], asked[0])
        lines = () if self.advice is None else advice_lines(self.advice, self.desk.picture.now.date())
        self.update(Content(cell_text("\n".join(lines))))
        self.display = bool(lines)
