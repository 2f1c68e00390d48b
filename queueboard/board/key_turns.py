"""Keys one after the other: the next one is heard only when what the one before it began has come to rest.

Textual hands keys on faster than their consequences travel: from a slow line, a reader of printed tags or quick fingers
the letters behind an Enter would go into the field that the Enter leaves, or to the screen below the one that opens.
"""

import asyncio
from collections import deque
from collections.abc import Callable
from contextlib import suppress

from textual.app import App
from textual.events import Event
from textual.message_pump import MessagePump
from textual.screen import Screen

ROUNDS = 4
"""How often a message may lead to another before a key has come to rest: key, field, form, cursor."""

LOOK_SECONDS = 0.05
"""How often it is asked whether a part that is waited for is still there."""


class KeyTurns:
    """The keys that have come and not been handed on yet."""

    def __init__(self, app: App[int], hand_on: Callable[[Event], bool]) -> None:
        self._app = app
        self._hand_on = hand_on
        self._waiting: deque[Event] = deque()
        self._turn: asyncio.Task[None] | None = None

    @property
    def at_rest(self) -> bool:
        """True when every key that has come was heard to its end."""
        return self._turn is None

    def take(self, key: Event) -> bool:
        """Hand a key on when every key before it was heard."""
        self._waiting.append(key)
        if self._turn is None:
            self._turn = asyncio.create_task(self._go_on())
        return True

    async def _go_on(self) -> None:
        try:
            while self._waiting:
                await self._standing()
                self._hand_on(self._waiting.popleft())
                await self._rest()
        finally:
            self._turn = None

    async def _standing(self) -> Screen[object] | None:
        """The screen on top, once it is put together; None when the board is closing."""
        if not self._app.screen_stack:
            return None
        await self._app.screen._mounted_event.wait()  # noqa: SLF001  # Textual's public await is only for who pushed
        return self._app.screen if self._app.screen_stack else None

    async def _rest(self) -> None:
        """Wait until the last key has travelled through the app, to the cursor and up again, with what followed it."""
        await _passed(self._app)
        for _ in range(ROUNDS):
            screen = await self._standing()
            if screen is None:
                return
            for part in (screen.focused or screen).ancestors_with_self:
                await _passed(part)


async def _passed(part: MessagePump) -> None:
    """Wait until a part has dealt with all that was sent to it so far, or is gone."""
    dealt_with = asyncio.Event()
    if part.call_later(dealt_with.set):
        while part.is_running and not dealt_with.is_set():
            with suppress(TimeoutError):
                await asyncio.wait_for(dealt_with.wait(), LOOK_SECONDS)
