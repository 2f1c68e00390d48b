"""The one place where a screen hands over what the person wants, and from which it takes the picture."""

import os
from collections.abc import Callable
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from typing import Concatenate, ParamSpec, TypeVar

from queueboard.errors import FileError, QueueboardError
from queueboard.shop.looking import DAY_LIST, at_first_sight, glance, last_line, look
from queueboard.shop.opening import Shop
from queueboard.shop.picture import Picture
from queueboard.values.actor import Actor
from queueboard.values.knife import Knife
from queueboard.values.shelf import GoneSeen

P = ParamSpec("P")
R = TypeVar("R")

MANY = 60
"""Knives in the plan from which on a key does not wait for it; fewer are planned before a person sees it."""


class Desk:
    """Holds the shop's handle, who acts, the clock, and the newest picture."""

    only_read = False
    """True when the shop file may only be read: every action is refused with a sentence."""

    greeting = ""
    """Said when the board opens."""

    on_server = False
    """True when the shop is in a database on a server, where copies are made."""

    def __init__(self, shop: Shop, initials: str, clock: Callable[[], datetime], *, demo: str = "") -> None:
        self.shop = shop
        self.only_read = shop.only_read
        self.on_server = shop.on_server
        self.initials = initials
        """Empty until they are typed on the first screen."""
        self.clock = clock
        self.demo = demo
        """What becomes of an invented shop, kept or thrown away; empty for a real one."""
        found = _found(shop.path)
        self._file = None if found is None else _identity(found)
        self.seen: Picture = at_first_sight(shop, clock(), MANY)
        """The newest picture; its plan may still be that of the picture before (Picture.plan_follows)."""
        self.besides = ""
        """What the last action did besides, until it was said."""
        self._gone: tuple[int, dict[int, GoneSeen]] = (0, {})
        """What was found last among boxes that are gone, and the line of history that was the newest then."""

    def insist_on_file(self) -> None:
        """FileError when the shop file is not where it was opened, or is empty: the open handle would not notice."""
        path, found = self.shop.path, _found(self.shop.path)
        if found is None or _identity(found) != self._file:
            raise FileError(
                f"{path} was moved or taken away while the board is open. "
                "Put it back, or leave and open it where it is."
            )
        if found.st_size == 0:
            from queueboard.shop.keeping import newest_copy

            raise FileError(
                f"{path} was emptied while the board is open. Leave with Ctrl+Q, and put {newest_copy(self.shop)}."
            )

    @property
    def picture(self) -> Picture:
        """The newest picture with its plan, which is worked out when it is first asked for.

        While the file cannot be read the plan goes on being marked as not worked out: the next look says why.
        """
        if self.seen.plan_follows:
            with suppress(QueueboardError):
                self.look()
        return self.seen

    @picture.setter
    def picture(self, picture: Picture) -> None:
        """Show this one."""
        self.seen = picture

    def first_words(self) -> str:
        """What is said when the board opens: that nothing can be stored, else the greeting."""
        if not self.only_read:
            return self.greeting
        from queueboard.phrases.health import only_read_words

        return only_read_words(str(self.shop.path))

    def look(self) -> Picture:
        """Take a new picture and keep it."""
        self.insist_on_file()
        self.seen = look(self.shop, self.clock())
        return self.seen

    def glance(self) -> Picture:
        """Take a new picture and keep it; where much lies at the bench, its plan is left for when it is asked for."""
        if sum(len(run.knife_ids) for run in self.seen.plan.runs) < MANY:
            return self.look()
        self.insist_on_file()
        self.seen = glance(self.shop, self.clock(), self.seen)
        return self.seen

    def look_for_a_day_list(self) -> Picture:
        """A picture whose plan was tried in more ways than there is time for after each key; it is not kept."""
        return look(self.shop, self.picture.now, restarts=DAY_LIST)

    def gone(self, text: str) -> tuple[GoneSeen, ...]:
        """The boxes that are gone and fit what was typed, the newest first."""
        from queueboard.shop.finding import find_gone

        line, read = self._gone
        if line != self.picture.last_line:
            line, read = self.picture.last_line, {}
        found = find_gone(self.shop, text, read=read)
        self._gone = (line, {one.box.id: one for one in found})
        return found

    def beside(self, knife: Knife) -> tuple[Knife, ...]:
        """The knives of other boxes that were at work when this one was last moved."""
        from queueboard.shop.whereabouts import beside

        return beside(self.shop, knife)

    def say_first_look(self) -> None:
        """Keep what the plan says of its boxes this morning, for a board that stands open over night."""
        if self.initials:
            from queueboard.shop.first_look import say_first_look

            self.do(say_first_look, self.picture)

    def changed_elsewhere(self) -> bool:
        """True when history has grown since the picture was taken."""
        self.insist_on_file()
        return last_line(self.shop) != self.seen.last_line

    def is_stale(self) -> bool:
        """True when another window has written, or a minute has gone by: words such as LATE age."""
        minute = int(self.clock().timestamp()) // 60
        return self.changed_elsewhere() or minute != int(self.seen.now.timestamp()) // 60

    def do(self, operation: Callable[Concatenate[Shop, Actor, P], R], *args: P.args, **kwargs: P.kwargs) -> R:
        """Run one operation as the person at this desk, now; errors come out as they are."""
        self.insist_on_file()
        actor = Actor(initials=self.initials, now=self.clock())
        return operation(self.shop, actor, *args, **kwargs)


def _found(path: Path) -> os.stat_result | None:
    """What lies at a path; None when nothing does."""
    try:
        return path.stat()
    except OSError:
        return None


def _identity(found: os.stat_result) -> tuple[int, int]:
    """What tells a file from another that lies under its name later."""
    return found.st_dev, found.st_ino
