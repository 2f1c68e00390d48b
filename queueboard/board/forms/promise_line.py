"""What the counter can tell while a box is still being typed: the earliest day, its sum, yes or no to a day."""

from dataclasses import replace
from typing import TypeVar

from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.clean import cell_text
from queueboard.phrases.carriers import parcel_told_words
from queueboard.phrases.promising import advice_lines, reckoned_words
from queueboard.shop.picture import Picture
from queueboard.shop.wishing import Advice, Wish, advise
from queueboard.values.new import NewPromise

Answer = TypeVar("Answer")


class PromiseLine(Static):
    """Asks once for each change of what is typed or of the shop; shows nothing while there is nothing to say."""

    DEFAULT_CSS = "PromiseLine { height: auto; max-height: 7; color: $text-primary; }"

    def __init__(self, desk: Desk) -> None:
        super().__init__("")
        self.desk = desk
        self.advice: Advice | None = None
        self._asked: tuple[Wish, Picture] | None = None
        self.display = False

    def ask(self, wish: Wish | None) -> bool:
        """Say what can be told for this wish; None takes the lines away. False when it was the same as before."""
        asked = None if wish is None else (wish, self.desk.picture)
        if self._is_answered(asked):
            return False
        self._asked = asked
        self.advice = None if asked is None else advise(asked[1], asked[0])
        lines: tuple[str, ...] = ()
        if self.advice is not None:
            parcels = parcel_told_words(self.advice.wish, self.desk.picture)
            lines = (*parcels, *advice_lines(self.advice, self.desk.picture.now))
        self.update(Content(cell_text("\n".join(lines))))
        self.display = bool(lines)
        return True

    def before_a_no(self, screen: ShopScreen[Answer]) -> None:
        """Ask back before a day is stored that the answer said no to: TypedError once; it is the person's own will."""
        advice = self.advice
        if advice is not None and advice.answer is not None and not advice.answer.yes:
            screen.insist(advice.wish, "The answer to that day is no. The same key once more tells it all the same.")

    def with_sum(self, told: NewPromise) -> NewPromise:
        """The date with the sum that stands here, as it is told to the customer: kept whatever becomes of the plan."""
        words = "" if self.advice is None else reckoned_words(self.advice, self.desk.picture.now)
        return replace(told, reckoned=words)

    def _is_answered(self, asked: tuple[Wish, Picture] | None) -> bool:
        if self._asked is None or asked is None:
            return self._asked is asked
        return self._asked[1] is asked[1] and self._asked[0] == asked[0]
