"""Screens that tests need not wait for: the turns of an app end when nothing is left to do, styles are read once.

Textual's pilot waits by sleeping until its process is nearly idle: at least 40 ms for each key, much more on a busy
machine, where a process that gets no processor also looks idle. Meanwhile timers tick and frames are drawn that nobody
looks at. Here a wait lasts exactly until every message was dealt with and every screen that asked for it was drawn.
"""

import asyncio
from typing import Any
from weakref import WeakSet

from textual import app as app_module
from textual import pilot as pilot_module
from textual._context import active_app
from textual.app import App
from textual.css.model import RuleSet
from textual.css.stylesheet import Stylesheet
from textual.css.types import CSSLocation
from textual.pilot import Pilot
from textual.screen import Screen
from textual.timer import Timer

read_rules = Stylesheet._parse_rules
refresh_now = Screen._compositor_refresh

Rules = dict[tuple[object, ...], list[RuleSet]]


async def _nothing_ready(loop: asyncio.AbstractEventLoop) -> None:
    """Let all that can go on go on; what is left waits for a clock or for the world outside."""
    ready = loop._ready  # type: ignore[attr-defined]  # asyncio has no public word for it
    await asyncio.sleep(0)
    while ready:  # noqa: ASYNC110  # there is no event for this
        await asyncio.sleep(0)


async def dealt_with(min_sleep: float = 0, max_sleep: float = 0) -> None:  # Textual says how long to sleep
    """Wait until every message was dealt with and every screen that has to be laid out was laid out."""
    loop = asyncio.get_running_loop()
    await _nothing_ready(loop)
    app = active_app.get(None)
    while app is not None and (due := _to_be_drawn(app)):
        for timer in due:
            await timer._tick(next_timer=0, count=0)
        await _nothing_ready(loop)


async def at_rest(min_sleep: float = 0, max_sleep: float = 0) -> None:  # Textual says how long to sleep
    """The same, and what is on top is drawn; between keys that are pressed in one go nobody looks."""
    await dealt_with()
    app = active_app.get(None)
    if app is not None and app._exception is None:
        _draw(app)


def _draw(app: App[object]) -> None:
    """Draw the screen on top, once, if anything on it was to be drawn since the last time."""
    for screen in app._screen_stack[-1:]:
        if screen not in waiting:
            continue
        waiting.discard(screen)
        app._display(screen, screen._compositor.render_update(screen_stack=app._background_screens))
        app._update_mouse_over(screen)


waiting: WeakSet[Screen[Any]] = WeakSet()
"""Screens that are to be drawn at the next rest."""


def _draw_at_rest(self: Screen[Any]) -> None:
    """In place of a drawing each time that something is laid out: what is drawn over at once is seen by nobody."""
    if self is self.app.screen:
        self._dirty_widgets.clear()
        waiting.add(self)
    else:
        refresh_now(self)


def _to_be_drawn(app: App[object]) -> list[Timer]:
    """The timers of screens that would be drawn within a sixtieth of a second."""
    if app._exit or app._exception is not None:
        return []
    screens = app._screen_stacks.get(app._current_mode, [])
    return [screen._update_timer for screen in screens if screen.is_running and screen._update_timer._active.is_set()]


async def _all_heard(pilot: Pilot[object], timeout: float = 0) -> bool:  # noqa: ASYNC109  # Textual's own words
    """In place of a message to each widget and back: True when nothing has failed."""
    await at_rest()
    return pilot.app._exception is None


def quick_screens() -> None:
    """For the rest of this process; a program that tests start is as it is."""
    app_module.wait_for_idle = dealt_with  # type: ignore[attr-defined]  # it is not exported
    pilot_module.wait_for_idle = at_rest  # type: ignore[attr-defined]  # it is not exported
    Screen._compositor_refresh = _draw_at_rest  # type: ignore[method-assign]  # that is the point
    Pilot._wait_for_screen = _all_heard  # type: ignore[method-assign,assignment]  # that is the point
    RuleSet.__hash__ = object.__hash__  # type: ignore[method-assign]  # a number as good, not made in Python
    known: Rules = {}

    def rules_of(
        self: Stylesheet,
        css: str,
        read_from: CSSLocation,
        is_default_rules: bool = False,  # noqa: FBT002  # as Textual has it
        tie_breaker: int = 0,
        scope: str = "",
    ) -> list[RuleSet]:
        """The rules of a style text, from the last time that this process has read it with the same colours."""
        key = (css, read_from, is_default_rules, tie_breaker, scope, *self._variables.items())
        if key not in known:
            known[key] = read_rules(self, css, read_from, is_default_rules, tie_breaker, scope)
        return known[key]

    Stylesheet._parse_rules = rules_of  # type: ignore[method-assign]  # that is the point
