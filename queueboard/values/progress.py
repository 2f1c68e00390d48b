"""How far a long piece of work is, told to whoever listens; nothing in between hands it on."""

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from enum import StrEnum
from typing import TypeVar


class Doing(StrEnum):
    """What a long piece of work is busy with."""

    COPYING = "copying"
    CHECKING = "checking the copy"
    LOOKING_OVER = "looking history over"
    WRITING_OUT = "writing out"
    TAKING_IN = "taking in"
    HANDING_OVER = "taking to the server"


T = TypeVar("T")

Listener = Callable[[Doing, int, int], None]
"""Takes what is being done, how much of it is done, and how much there is; 0 of 0 where nobody can tell."""

EVERY = 500
"""Rows between two words to the listener: often enough for a bar, too seldom to cost anything."""

_listener: ContextVar[Listener | None] = ContextVar("listener", default=None)


@contextmanager
def listening(listener: Listener) -> Iterator[None]:
    """Let somebody listen to all that is done inside."""
    before = _listener.set(listener)
    try:
        yield
    finally:
        _listener.reset(before)


def tell(doing: Doing, done: int, total: int) -> None:
    """Say how far it is; without a listener nothing happens."""
    listener = _listener.get()
    if listener is not None:
        listener(doing, done, total)


def counted(doing: Doing, rows: Iterable[T], total: int, before: int = 0) -> Iterator[T]:
    """The rows as they come, with a word now and then; *before* of the total were done elsewhere."""
    number = before
    for number, row in enumerate(rows, start=before + 1):
        if number % EVERY == 0:
            tell(doing, number, total)
        yield row
    tell(doing, number, total)
