"""The program in a real pseudo-terminal, as a person meets it: keys in, a screen of letters out."""

import os
import select
import signal
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pyte
from ptyprocess import PtyProcess

ROOT = Path(__file__).parents[2]
PATIENCE_SECONDS = 30
"""Only how long a machine under load is waited for; every wait ends with its condition."""

QUIET_SECONDS = 0.3
"""Nothing drawn for so long: the picture is whole."""


class Terminal:
    """One program in one terminal of so many columns and rows."""

    def __init__(
        self, shop_file: Path, *, columns: int = 80, rows: int = 24, program: tuple[str, ...] | None = None
    ) -> None:
        """program: the module to run and its arguments; None opens the board as MB by the machine's own clock."""
        self.screen = pyte.Screen(columns, rows)
        self.stream = pyte.ByteStream(self.screen)
        self.raw = b""
        kept = {name: os.environ[name] for name in ("HOME", "PATH", "TMPDIR", "XDG_CONFIG_HOME") if name in os.environ}
        self.process = PtyProcess.spawn(
            [sys.executable, "-m", *(program or ("queueboard", "--file", str(shop_file), "--as", "MB"))],
            cwd=str(ROOT),
            env={**kept, "TERM": "xterm-256color", "LANG": "C.UTF-8", "TEXTUAL_ANIMATIONS": "none"},
            dimensions=(rows, columns),
        )

    def text(self) -> str:
        """What stands on the screen."""
        return "\n".join(line.rstrip() for line in self.screen.display)

    def type(self, keys: str) -> None:
        """Press keys, as the bytes that a terminal sends."""
        self.process.write(keys.encode())

    def until(self, condition: Callable[[str], bool]) -> str:
        """Read what the program draws until the screen fits; the screen."""
        end = time.monotonic() + PATIENCE_SECONDS
        while not condition(self.text()):
            left = end - time.monotonic()
            assert left > 0, f"what was waited for did not come:\n{self.text()}"
            assert self._read(min(left, 0.5)), f"the program has ended:\n{self.text()}"
        return self.text()

    def settled(self, condition: Callable[[str], bool]) -> str:
        """As until, and then until nothing more is drawn; the screen."""
        while True:
            self.until(condition)
            drawn = len(self.raw)
            assert self._read(QUIET_SECONDS), f"the program has ended:\n{self.text()}"
            if len(self.raw) == drawn and condition(self.text()):
                return self.text()

    def shows(self, words: str) -> str:
        """Wait until the words stand on the screen, however they are wrapped; the screen."""
        return self.until(lambda text: words in " ".join(text.split()))

    def _read(self, seconds: float) -> bool:
        """Take in what comes within so many seconds; False at the end of the program."""
        ready, _, _ = select.select([self.process.fd], [], [], seconds)
        if not ready:
            return True
        try:
            part = os.read(self.process.fd, 65536)
        except OSError:
            return False
        self.raw += part
        self.stream.feed(part)
        return bool(part)

    def kill(self) -> None:
        """As a power cut would: at once, with no chance to write anything more."""
        self.process.kill(signal.SIGKILL)
        self.ended()

    def unplug(self) -> int:
        """As a closed window would: no terminal any more; then wait for the end; the exit code."""
        self.process.fileobj.close()
        self.process.wait()
        return self.process.exitstatus if self.process.exitstatus is not None else -int(self.process.signalstatus)

    def ended(self) -> int:
        """Wait for the end; the exit code, or minus the number of the signal."""
        end = time.monotonic() + PATIENCE_SECONDS
        while self._read(0.1) and time.monotonic() < end:
            pass
        self.process.wait()
        return self.process.exitstatus if self.process.exitstatus is not None else -int(self.process.signalstatus)


def restored(raw: bytes) -> bool:
    """True when the terminal was given back: off the second screen, the mouse let go."""
    return raw.rfind(b"\x1b[?1049l") > raw.rfind(b"\x1b[?1049h") and raw.rfind(b"\x1b[?1000l") > raw.rfind(
        b"\x1b[?1000h"
    )
