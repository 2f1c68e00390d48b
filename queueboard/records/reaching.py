"""Asking a server that may not answer: a try to reach it goes on beside the program, and no question waits for long."""

import socket
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from threading import Thread, Timer
from typing import Generic, TypeVar

T = TypeVar("T")


class Try(Generic[T]):
    """Something that may take seconds; it is begun at once."""

    def __init__(self, work: Callable[[], T]) -> None:
        self._done: list[T] = []
        self._error: Exception | None = None
        self._thread = Thread(target=self._run, args=(work,), daemon=True)  # the program can end while it tries
        self._thread.start()

    def _run(self, work: Callable[[], T]) -> None:
        try:
            self._done.append(work())
        except Exception as error:  # noqa: BLE001  # told to whoever asks for the outcome
            self._error = error

    def over_within(self, seconds: float) -> bool:
        """True once it has ended; waits for that so long at most."""
        self._thread.join(seconds)
        return not self._thread.is_alive()

    def outcome(self) -> T:
        """What came of it, once it is over; what went wrong is raised."""
        if self._error is not None:
            raise self._error
        return self._done[0]


@contextmanager
def answered_within(seconds: float, number: int) -> Iterator[None]:
    """Cut a connection whose question, asked meanwhile, has no answer after so long; who waits then learns it is lost.

    number: the system's own, of the connection's socket. Where packets are lost without a word, or something on the way
    takes them and does nothing with them, nobody else would say so.
    """
    with socket.fromfd(number, socket.AF_INET, socket.SOCK_STREAM) as beside:  # shutting asks for no more than a number
        timer = Timer(seconds, _cut, (beside,))
        timer.start()
        try:
            yield
        finally:
            timer.cancel()


def _cut(connection: socket.socket) -> None:
    with suppress(OSError):  # answered at the last moment
        connection.shutdown(socket.SHUT_RDWR)
