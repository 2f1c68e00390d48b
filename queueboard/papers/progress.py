"""A bar on the terminal for work that takes longer than a person likes to wait without a word."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic
from typing import TYPE_CHECKING, TextIO

from queueboard.values.progress import Doing, listening

if TYPE_CHECKING:
    from rich.progress import Progress, TaskID

AFTER_SECONDS = 1.0
"""What takes no longer than this needs no bar."""


class Bar:
    """Draws nothing until the time is over, and takes itself away at the end."""

    def __init__(self, stream: TextIO, after_seconds: float) -> None:
        self.stream = stream
        self.after_seconds = after_seconds
        self.begun = monotonic()
        self.drawn: tuple[Progress, TaskID] | None = None

    def __call__(self, doing: Doing, done: int, total: int) -> None:
        """So much of so much is done."""
        if self.drawn is None and monotonic() - self.begun < self.after_seconds:
            return
        fresh = self.drawn is None
        progress, task = self.drawn = self.drawn or self._made()
        progress.update(task, description=doing.value, completed=done, total=max(1, total))
        if fresh:
            progress.start()

    def _made(self) -> "tuple[Progress, TaskID]":
        from rich.console import Console
        from rich.progress import BarColumn, Progress, TaskProgressColumn, TextColumn

        columns = TextColumn("{task.description}", markup=False), BarColumn(), TaskProgressColumn()
        progress = Progress(*columns, console=Console(file=self.stream), transient=True)
        return progress, progress.add_task("")

    def end(self) -> None:
        """Take the bar away, where there is one."""
        if self.drawn is not None:
            self.drawn[0].stop()


@contextmanager
def bar(after_seconds: float = AFTER_SECONDS) -> Iterator[None]:
    """A bar on standard error for what is done inside, where that is a terminal and it takes longer than this."""
    stream = sys.stderr
    if stream is None or not stream.isatty():
        yield
        return
    drawn = Bar(stream, after_seconds)
    try:
        with listening(drawn):
            yield
    finally:
        drawn.end()
