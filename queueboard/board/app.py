"""The app: the desk, the themes, the keys that hold everywhere, and the look for what other windows write."""

import asyncio
import signal
import sys
from pathlib import Path
from typing import ClassVar

from rich.text import Text
from textual.binding import Binding, BindingType
from textual.driver import Driver
from textual.events import Event, Key, Paste, Resize
from textual.message import Message
from textual.theme import Theme

from queueboard.board.base import ShopScreen
from queueboard.board.bell import BELL
from queueboard.board.desk import Desk
from queueboard.board.key_turns import KeyTurns
from queueboard.board.themes import DARK
from queueboard.board.watching import WatchingApp

KEYS_SENTENCE = "Say what can be done here, with every key; in a field the first of the two is a letter."

SMALLEST = (60, 20)
"""Columns and lines below which nothing of use fits."""


class QueueboardApp(WatchingApp):
    """Keys on every screen."""

    TITLE = "queueboard"
    CSS_PATH = [Path(__file__).with_name("app.tcss"), Path(__file__).with_name("board.tcss")]
    ENABLE_COMMAND_PALETTE = False
    BINDING_GROUP_TITLE = "On every screen"
    what_is_kept = "everything up to the last “Saved” is in the shop file"
    """Said when it ends otherwise than by its own key."""
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("question_mark", "keys", "keys", tooltip=KEYS_SENTENCE, id="app.keys"),
        # In a field ? is a letter; this one is read before any field.
        Binding("f1", "keys", "keys", False, tooltip=KEYS_SENTENCE, id="app.keys-anywhere", priority=True),
        Binding(
            "ctrl+q",
            "quit",
            "quit",
            False,
            tooltip="Leave the board; everything is stored.",
            id="app.quit",
            priority=True,
        ),
    ]

    def __init__(self, desk: Desk, *, plain: bool = False, theme: Theme = DARK, choice: Path | None = None) -> None:
        super().__init__(ansi_color=True if plain else None)
        self.desk = desk
        self.failure: Exception | None = None
        """What the program failed with."""
        self.stopped_by: int | None = None
        """The number of the signal that ended it."""
        self.key_turns = KeyTurns(self, super().post_message)
        self.wear(theme, choice)

    def get_default_screen(self) -> ShopScreen[None]:
        """The board is home."""
        from queueboard.board.screens.board import BoardScreen

        return BoardScreen(self.desk)

    def get_driver_class(self) -> type[Driver]:
        """What reads the keys and draws: ours where bytes come from a terminal."""
        if sys.platform == "win32":
            return super().get_driver_class()
        from queueboard.board.driver import ShopDriver

        return ShopDriver

    def post_message(self, message: Message) -> bool:
        """Let keys and what is pasted come one after the other; all else goes its way at once."""
        if isinstance(message, Key | Paste) and not message.is_forwarded:
            return self.key_turns.take(message)
        return super().post_message(message)

    async def on_event(self, event: Event) -> None:
        """Offer a key to the screen first: a digit begins a tag wherever the cursor stands."""
        if isinstance(event, Key) and not event.is_forwarded:
            self.keys_are_quiet = False
            if self._taken_first(event):
                return
        await super().on_event(event)

    def _taken_first(self, key: Key) -> bool:
        """True when the key goes no further: the screen has taken it, or the board is closing and has none."""
        if not self.screen_stack or not isinstance(self.screen, ShopScreen):
            return not self.screen_stack
        if key.character == BELL and self.screen.begins_numbers:
            self.action_ring()
            return True
        return self.screen.take_first(key)

    def on_mount(self) -> None:
        self.watch_the_shop()
        self._listen()
        self.ask_first()

    def ask_first(self) -> None:
        """Ask what must be known before the board is of use: who acts."""
        if not self.desk.initials:
            from queueboard.board.screens.initials import InitialsScreen

            self.push_screen(InitialsScreen(self.desk))

    def _listen(self) -> None:
        """Leave as after a quit when the system says stop or the terminal goes away, so that it is restored."""
        loop = asyncio.get_running_loop()
        for name in ("SIGINT", "SIGTERM", "SIGHUP"):
            number = getattr(signal, name, None)
            if number is not None:
                try:
                    loop.add_signal_handler(number, self._stop, int(number))
                except (NotImplementedError, RuntimeError, ValueError):
                    return  # this system has no such handlers, or we are not the main thread

    def _stop(self, number: int) -> None:
        self.stopped_by = number
        self.exit(return_code=128 + number)

    def on_resize(self, event: Resize) -> None:
        """A window too small for the board says so, and gives back what lay below once it has grown."""
        from queueboard.board.screens.too_small import TooSmallScreen

        small = event.size.width < SMALLEST[0] or event.size.height < SMALLEST[1]
        if small and not isinstance(self.screen, TooSmallScreen):
            self.push_screen(TooSmallScreen(SMALLEST))
        elif not small and isinstance(self.screen, TooSmallScreen):
            self.pop_screen()

    def action_keys(self) -> None:
        from queueboard.board.screens.help import HelpScreen

        if not isinstance(self.screen, HelpScreen):
            self.push_screen(HelpScreen(self.desk, self.screen))

    def action_help_quit(self) -> None:
        """Ctrl+C, which ends other programs, only says what leaves this one."""
        self._tell("Ctrl+Q leaves the board; everything is stored.")

    def _handle_exception(self, error: Exception) -> None:
        """Close with one sentence instead of a page that shows values; the sentence is said by run_board.

        Textual has no public place for this; a test starts the program, lets it fail, and looks.
        """
        self.failure = self.failure or error
        self._return_code = 1
        if self._exception is None:
            self._exception = error
            self._exception_event.set()
        self.panic(Text(""))
