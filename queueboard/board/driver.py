"""Reading keys from the terminal: a byte that is no text is shown as a sign, and trouble ends the board well."""

import os
import select
import signal
from codecs import getincrementaldecoder

from textual._xterm_parser import XTermParser
from textual.drivers.linux_driver import LinuxDriver

LOOK_SECONDS = 0.1
"""How long a lone Esc is waited on before it is a key of its own."""


class ShopDriver(LinuxDriver):
    """As Textual's own, but for the decoding: strict there, a stray byte ends the thread that reads keys."""

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
        parser = XTermParser(self._debug)
        decode = getincrementaldecoder("utf-8")(errors="replace").decode
        while not self.exit_event.is_set():
            readable, _, _ = select.select([self.fileno], [], [], LOOK_SECONDS)
            typed = os.read(self.fileno, 4096) if readable else b""
            if readable and not typed:
                raise EOFError
            # An empty text would tell the parser that nothing comes any more.
            text = decode(typed)
            for event in (*(parser.feed(text) if text else ()), *parser.tick()):
                self.process_message(event)
