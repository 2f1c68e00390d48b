"""Reading keys from the terminal: a byte that is no text is shown as a sign, and trouble ends the board well."""

import io
import os
import select
import signal
from codecs import getincrementaldecoder
from typing import TextIO

from textual._xterm_parser import XTermParser
from textual.app import App
from textual.drivers.linux_driver import LinuxDriver
from textual.events import Key

from queueboard.board.lone_escape import ESC, LoneEscapes
from queueboard.papers.plain_signs import signs_for

LOOK_SECONDS = 0.1
"""How long a lone Esc is waited on before it is a key of its own."""


class Paper:
    """What the board is drawn on. Once it has gone away, what is drawn is let go, and the board is told to close.

    Textual's thread that draws ends at the first refusal; then nobody takes what the board hands it, and the board
    would stand still for good, deaf to every signal.
    """

    def __init__(self, file: TextIO) -> None:
        self._file = file
        self._gone = False
        self._signs = signs_for(file)
        if isinstance(file, io.TextIOWrapper):
            file.reconfigure(errors="replace")  # a letter that it cannot hold is one cell, as it is on the board

    def write(self, text: str) -> None:
        """Draw, while there is something to draw on."""
        if not self._gone:
            try:
                self._file.write(text.translate(self._signs) if self._signs else text)
            except OSError:
                self._leave()

    def flush(self) -> None:
        """Show what was drawn."""
        if not self._gone:
            try:
                self._file.flush()
            except OSError:
                self._leave()

    def fileno(self) -> int:
        """The number the system knows it by."""
        return self._file.fileno()

    def _leave(self) -> None:
        self._gone = True
        os.kill(os.getpid(), signal.SIGHUP)


class ShopDriver(LinuxDriver):
    """As Textual's own, but for the decoding: strict there, a stray byte ends the thread that reads keys."""

    def __init__(
        self, app: App[object], *, debug: bool = False, mouse: bool = True, size: tuple[int, int] | None = None
    ) -> None:
        super().__init__(app, debug=debug, mouse=mouse, size=size)
        if self._file is not None:
            self._file = Paper(self._file)  # type: ignore[assignment]  # Textual only writes, flushes, asks its number

    def _run_input_thread(self) -> None:
        """Read until told to stop. What fails is handed to the app, which closes with a sentence and a report.

        A terminal that cannot be read any more has gone away, whether or not the system says so with a signal.
        """
        try:
            self.run_input_thread()
        except (OSError, EOFError):
            os.kill(os.getpid(), signal.SIGHUP)
        except Exception as error:  # noqa: BLE001  # nothing may end this thread in silence: no key would be heard
            self._app.call_later(self._app._handle_exception, error)  # noqa: SLF001  # Textual's name for closing so

    def run_input_thread(self) -> None:
        """Turn bytes into keys and clicks."""
        parser, escapes = XTermParser(self._debug), LoneEscapes()
        decode = getincrementaldecoder("utf-8")(errors="replace").decode
        while not self.exit_event.is_set():
            readable, _, _ = select.select([self.fileno], [], [], LOOK_SECONDS)
            typed = os.read(self.fileno, 4096) if readable else b""
            if readable and not typed:
                raise EOFError
            for part in escapes.take(decode(typed)) if readable else escapes.wait_is_over():
                for event in [Key("escape", ESC)] if part == ESC else parser.feed(part):
                    self.process_message(event)
            for event in parser.tick():
                self.process_message(event)
