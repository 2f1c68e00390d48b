"""The app: the desk, the themes, the keys that hold everywhere, and the look for what other windows write."""

from typing import ClassVar

from textual.app import App
from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen, show_everywhere
from queueboard.board.desk import Desk
from queueboard.board.themes import DARK, LIGHT, THEMES
from queueboard.errors import QueueboardError

LOOK_SECONDS = 0.25
"""How often the app asks whether another window has written: one look at one number."""


class QueueboardApp(App[int]):
    """Keys on every screen."""

    TITLE = "queueboard"
    CSS_PATH = "app.tcss"
    ENABLE_COMMAND_PALETTE = False
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (100, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-low"), (32, "-high")]
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("question_mark", "keys", "keys", tooltip="Show every key of this screen.", id="app.keys"),
        Binding("ctrl+t", "turn_theme", "light or dark", tooltip="Change between dark and light.", id="app.theme"),
        Binding("ctrl+q", "quit", "quit", tooltip="Leave the board; everything is stored.", id="app.quit"),
    ]

    def __init__(self, desk: Desk, *, plain: bool = False, light: bool = False) -> None:
        super().__init__(ansi_color=True if plain else None)
        self.desk = desk
        self._said = ""
        for theme in THEMES:
            self.register_theme(theme)
        self.theme = LIGHT.name if light else DARK.name

    def get_default_screen(self) -> ShopScreen[None]:
        """The board is home."""
        from queueboard.board.screens.board import BoardScreen

        return BoardScreen(self.desk)

    def on_mount(self) -> None:
        self.set_interval(LOOK_SECONDS, self.look_around)

    def look_around(self) -> None:
        """Take a new picture when another window has written, or a new minute has begun."""
        try:
            if self.desk.is_stale():
                self.desk.look()
                show_everywhere(self)
            self._said = ""
        except QueueboardError as error:
            self._say_once(str(error))

    def _say_once(self, sentence: str) -> None:
        """Say what stands in the way of looking, but not four times a second."""
        if sentence != self._said:
            self._said = sentence
            self.notify(sentence, severity="error", markup=False)

    def action_keys(self) -> None:
        from queueboard.board.screens.help import HelpScreen

        self.push_screen(HelpScreen(self.desk, self.screen))

    def action_turn_theme(self) -> None:
        self.theme = DARK.name if self.theme == LIGHT.name else LIGHT.name
