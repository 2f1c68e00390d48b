"""Options of which the one under the cursor carries a sign, so that no colour is needed to see where one is."""

from collections.abc import Iterable

from textual.content import Content
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from queueboard.board.widgets.column_lines import CURSOR


class SignedList(OptionList):
    """An OptionList with one cell before each option, for the sign of the cursor."""

    _signed: int | None = None
    _texts: tuple[Content, ...] = ()

    def offer(self, texts: Iterable[Content]) -> None:
        """Offer these lines instead of what was offered; the cursor is on none of them."""
        self.clear_options()
        self._texts, self._signed = tuple(texts), None
        self.add_options(Option(Content.assemble(" ", text)) for text in self._texts)

    def watch_highlighted(self, highlighted: int | None) -> None:
        """Move the sign with the cursor."""
        super().watch_highlighted(highlighted)
        for place, sign in ((self._signed, " "), (highlighted, CURSOR)):
            if place is not None and place < self.option_count:
                self.replace_option_prompt_at_index(place, Content.assemble(sign, self._texts[place]))
        self._signed = highlighted
