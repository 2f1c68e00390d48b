"""One try to reach a server, in a thread of its own: whoever waits for it can let it go on and come back later."""

from collections.abc import Callable
from threading import Thread
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
