"""A bar on the terminal for work that takes longer than a person likes to wait without a word."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from threading import Lock, Timer
from time import monotonic
from typing import TYPE_CHECKING, TextIO

from queueboard.values.progress import Doing, listening

if TYPE_CHECKING:
    from rich.progress import Progress, TaskID

AFTER_SECONDS = 1.0
"""What takes no longer than this needs no bar."""


class Bar:
    """Draws nothing until the time is over, and takes itself away at the end."""

    def __init__(self, stream: TextIO, after_seconds: float, words: str) -> None:
        """words: what is said of work that does not tell how far it is."""
        self.stream, self.after_seconds, self.words = stream, after_seconds, words
        self.begun = monotonic()
        self.drawn: tuple[Progress, TaskID] | None = None
        self.over = False
        self.lock = Lock()
        self.waiting = Timer(after_seconds, self.say_working)
        self.waiting.daemon = True
        self.waiting.start()

    def __call__(self, doing: Doing, done: int, total: int) -> None:
        """So much of so much is done."""
        if self.drawn is not None or monotonic() - self.begun >= self.after_seconds:
            self._draw(doing.value, done, total or None)

    def say_working(self) -> None:
        """Say what goes on, with a bar that only shows that something does."""
        if self.words and self.drawn is None:
            self._draw(self.words, 0, None)

    def _draw(self, words: str, done: int, total: int | None) -> None:
        with self.lock:
            if self.over:
                return
            fresh = self.drawn is None
            progress, task = self.drawn or self._made()
            if total is None:  # Rich keeps a total once it was told one
                progress.remove_task(task)
                task = progress.add_task(words, total=None)
            self.drawn = progress, task
            progress.update(task, description=words, completed=done, total=total)
            if fresh:
                progress.start()

    def _made(self) -> "tuple[Progress, TaskID]":
        from rich.console import Console
        from rich.progress import BarColumn, Progress, TaskProgressColumn, TextColumn

        one_accent = BarColumn(complete_style="yellow", finished_style="yellow", pulse_style="yellow")
        columns = TextColumn("{task.description}", markup=False), one_accent, TaskProgressColumn()
        progress = Progress(*columns, console=Console(file=self.stream), transient=True)
        return progress, progress.add_task("", total=None)

    def end(self) -> None:
        """Take the bar away, where there is one; it does not come again."""
        self.waiting.cancel()
        with self.lock:
            if self.drawn is not None and not self.over:
                self.drawn[0].stop()
            self.over = True


_standing: ContextVar[Bar | None] = ContextVar("standing", default=None)
"""The bar of the command that runs."""


@contextmanager
def bar(after_seconds: float = AFTER_SECONDS, words: str = "") -> Iterator[None]:
    """A bar on standard error for what is done inside, where that is a terminal and it takes longer than this.

    words: what stands beside it while the work does not tell how far it is; without them it stands once that is told.
    Inside another bar there is only that one.
    """
    stream = sys.stderr
    if stream is None or not stream.isatty() or _standing.get() is not None:
        yield
        return
    drawn = Bar(stream, after_seconds, words)
    before = _standing.set(drawn)
    try:
        with listening(drawn):
            yield
    finally:
        drawn.end()
        _standing.reset(before)


def end_bar() -> None:
    """Take the bar away before something is printed: what it draws would stand in between."""
    drawn = _standing.get()
    if drawn is not None:
        drawn.end()
