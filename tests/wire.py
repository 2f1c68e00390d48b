"""A wire between a bench and the tests' server that can fall silent: both ends stay, and nothing passes any more."""

import socket
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import Self

from tests import engines

AT_LAST_SECONDS = 30
"""After so long it speaks again whatever happens: who waits for it is then found waiting, and not for ever."""


class Wire:
    """Hands on what passes between programs and the server."""

    def __init__(self) -> None:
        with engines.connected("postgres") as connection:
            self._host, self._port = connection.info.host, connection.info.port
        self._speaks = threading.Event()
        self._speaks.set()
        self._door = socket.create_server(("127.0.0.1", 0))
        threading.Thread(target=self._serve, daemon=True).start()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        with suppress(OSError):
            self._door.shutdown(socket.SHUT_RDWR)  # who waits at it is told
        self._door.close()

    def address(self, name: str) -> str:
        """The address of a database of the server, by this wire."""
        return f"postgresql://postgres@127.0.0.1:{self._door.getsockname()[1]}/{name}"

    @contextmanager
    def silent(self) -> Iterator[None]:
        """While it lasts nothing passes, and nobody is told."""
        at_last = threading.Timer(AT_LAST_SECONDS, self._speaks.set)
        self._speaks.clear()
        at_last.start()
        try:
            yield
        finally:
            at_last.cancel()
            self._speaks.set()

    def _serve(self) -> None:
        with suppress(OSError):
            while True:
                near, _ = self._door.accept()
                threading.Thread(target=self._join, args=(near,), daemon=True).start()

    def _join(self, near: socket.socket) -> None:
        with near, self._reach() as far:
            back = threading.Thread(target=self._hand_on, args=(far, near), daemon=True)
            back.start()
            self._hand_on(near, far)
            back.join()

    def _reach(self) -> socket.socket:
        if not self._host.startswith("/"):
            return socket.create_connection((self._host, self._port))
        far = socket.socket(socket.AF_UNIX)
        far.connect(f"{self._host}/.s.PGSQL.{self._port}")
        return far

    def _hand_on(self, one: socket.socket, other: socket.socket) -> None:
        with suppress(OSError):
            while portion := one.recv(65536):
                self._speaks.wait()
                other.sendall(portion)
        with suppress(OSError):
            other.shutdown(socket.SHUT_WR)
