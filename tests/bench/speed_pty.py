"""A program on a real pseudo-terminal whose every output is stamped with its time, and looked at only afterwards.

Putting letters on a screen takes longer than many a key; done while the program draws, it would hold the program up.
So output is only taken in, with its time, until nothing more comes; then it is put on the screen part by part, and the
time of the first part behind which the screen is as was waited for is the answer. While the program is ready to go on
but other programs have the processor its clock stands still (Linux says for how long): else a busy machine would make
a long answer longer by far more than a short one, and no ratio would mean anything.
"""

import os
import select
import signal
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pyte
from ptyprocess import PtyProcess

from tests.bench.speed_clock import unhindered, worked
from tests.terminal.pty import QUIET_SECONDS, ROOT

COLUMNS, ROWS = 120, 40
KEPT = ("HOME", "PATH", "TMPDIR", "XDG_CONFIG_HOME")
"""Of the environment; nothing of it may keep Python from writing down what it has compiled."""

PATIENCE_SECONDS = 120
"""A day's first start copies the file; on a busy machine that takes its time."""

Seen = Callable[[str], bool]


class Program:
    """A running program, and what stands on its screen."""

    def __init__(self, *command: str) -> None:
        """command: what stands behind `python`."""
        self._screen = pyte.Screen(COLUMNS, ROWS)
        self._stream = pyte.ByteStream(self._screen)
        self._parts: list[tuple[float, bytes]] = []
        started = time.perf_counter()
        self._process = PtyProcess.spawn(
            [sys.executable, *command],
            cwd=str(ROOT),
            env={**kept_environment(), "TERM": "xterm-256color", "LANG": "C.UTF-8", "TEXTUAL_ANIMATIONS": "none"},
            dimensions=(ROWS, COLUMNS),
        )
        self._started = started

    def text(self) -> str:
        """What stands on the screen."""
        return "\n".join(line.rstrip() for line in self._screen.display)

    def first(self, seen: Seen) -> float:
        """Milliseconds from the start of the program until the screen was first as it is waited for."""
        return self._until(seen, self._started)

    def press(self, keys: str, seen: Seen, *, behind: str = "") -> float:
        """Milliseconds from pressing keys, all at once, until the screen was first as it is waited for.

        behind: keys pressed before; these then follow as soon as something is drawn for them.
        """
        return self._until(seen, self._pressed(keys, behind))

    def press_to_the_end(self, keys: str, seen: Seen, *, behind: str = "") -> float:
        """As press, but until the screen was first as it then stays."""
        pressed = self._pressed(keys, behind)
        drawn: list[tuple[float, str]] = []
        self._until(lambda text: seen(text) and not self._parts, pressed, drawn)
        return next(at - pressed for at, text in drawn if text == self.text()) * 1000

    def _pressed(self, keys: str, behind: str) -> float:
        """When the keys were pressed."""
        if behind:
            self._process.write(behind.encode())
            if not select.select([self._process.fd], [], [], PATIENCE_SECONDS)[0]:
                raise TimeoutError(f"nothing was drawn for {behind!r}:\n{self.text()}")
        pressed = self._clock()
        self._process.write(keys.encode())
        return pressed

    def let_stand(self, seconds: float) -> None:
        """Do nothing but take in what it draws."""
        end = time.monotonic() + seconds
        while (left := end - time.monotonic()) > 0:
            if select.select([self._process.fd], [], [], left)[0]:
                self._stream.feed(os.read(self._process.fd, 65536))

    def resident_mb(self) -> float:
        """What of the program lies in memory."""
        pages = int(Path(f"/proc/{self._process.pid}/statm").read_text(encoding="ascii").split()[1])
        return pages * os.sysconf("SC_PAGE_SIZE") / 1_000_000

    def worked_seconds(self) -> float:
        """What the processor has done for the program since its start."""
        return worked(self._process.pid)

    def close(self) -> None:
        """Kill it; how it leaves is not what is measured."""
        self._process.kill(signal.SIGKILL)
        self._process.wait()
        self._process.close(force=True)

    def _clock(self) -> float:
        """Seconds by the wall, less those for which the program waited for a processor."""
        return unhindered(self._process.pid)

    def _until(self, seen: Seen, since: float, drawn: list[tuple[float, str]] | None = None) -> float:
        """drawn: takes what stood on the screen behind each part, with the part's time."""
        end = time.monotonic() + PATIENCE_SECONDS
        while True:
            self._take_in()
            while self._parts:
                at, part = self._parts.pop(0)
                self._stream.feed(part)
                text = self.text()
                if drawn is not None:
                    drawn.append((at, text))
                if seen(text):
                    self._show_the_rest()
                    return (at - since) * 1000
            if time.monotonic() > end:
                raise TimeoutError(f"what was waited for did not come:\n{self.text()}")

    def _take_in(self) -> None:
        """Stamp and keep what comes, until nothing has come for a while."""
        while select.select([self._process.fd], [], [], QUIET_SECONDS)[0]:
            at = self._clock()
            try:
                part = os.read(self._process.fd, 65536)
            except OSError as error:
                raise EOFError(f"the program has ended:\n{self.text()}") from error
            self._parts.append((at, part))

    def _show_the_rest(self) -> None:
        while self._parts:
            self._stream.feed(self._parts.pop(0)[1])


def kept_environment() -> dict[str, str]:
    """What a program that is measured finds around it."""
    return {name: os.environ[name] for name in KEPT if name in os.environ}
