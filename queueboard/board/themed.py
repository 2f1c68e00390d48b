"""The key that changes how the board looks, on every screen."""

from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.theme import Theme

from queueboard.board.appearance import after, keep, name_of
from queueboard.board.base import ShopScreen
from queueboard.board.bell import BellApp
from queueboard.board.themes import themes_for

LOOKS = {"dark": "dark", "light": "light", "contrast": "of high contrast"}
"""How a theme is called in a sentence."""


class ThemedApp(BellApp):
    """Wears one of the shop's themes and turns through them."""

    BINDING_GROUP_TITLE = "Appearance"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "ctrl+t",
            "turn_theme",
            "appearance",
            False,
            tooltip="Dark, light, high contrast: the next of the three, kept for the next start.",
            id="app.theme",
            priority=True,  # else it would not reach a question that lies over the board
        ),
    ]
    _choice: Path | None = None
    """The file that keeps the theme chosen; None keeps it nowhere."""
    _colours: Mapping[str, str] = MappingProxyType({})
    """What the styles were read with."""

    def wear(self, theme: Theme, choice: Path | None) -> None:
        """Begin with this theme; the next one chosen is kept in *choice*."""
        self._choice = choice
        for known in themes_for(self.console.color_system):
            self.register_theme(known)
        self.theme = theme.name
        self._colours = self.get_css_variables()
        self.stylesheet.set_variables(self._colours)

    def refresh_css(self, animate: bool = True) -> None:  # noqa: FBT002  # Textual's own shape
        """Read the styles anew where the colours have changed; else let them be worn as they were read.

        Textual asks for it as soon as a theme is named, before the styles are read for the first time.
        """
        if self._colours != (colours := self.get_css_variables()):
            self._colours = colours
            super().refresh_css(animate)
            return
        for node in (self, *self.screen_stack):
            self.stylesheet.update(node, animate=animate)

    def action_turn_theme(self) -> None:
        """Wear the next theme, keep it, and say which it is."""
        theme = after(self.theme)
        self.theme = theme.name
        trouble = keep(theme, self._choice)
        self._tell(f"The board is {LOOKS[name_of(theme)]} now. {trouble}".rstrip(), trouble=bool(trouble))

    def _tell(self, sentence: str, *, trouble: bool = False) -> None:
        """Say it where the screen says things, so that it stays."""
        if isinstance(self.screen, ShopScreen) and self.screen.is_mounted:
            self.screen.say(sentence, trouble=trouble)
        else:
            self.notify(sentence, severity="error" if trouble else "information", markup=False)
