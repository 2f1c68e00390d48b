"""The one place where a screen hands over what the person wants, and from which it takes the picture."""

from collections.abc import Callable
from datetime import datetime
from typing import Concatenate, ParamSpec, TypeVar

from queueboard.shop.looking import last_line, look
from queueboard.shop.opening import Shop
from queueboard.shop.picture import Picture
from queueboard.values.actor import Actor

P = ParamSpec("P")
R = TypeVar("R")


class Desk:
    """Holds the shop's handle, who acts, the clock, and the newest picture."""

    def __init__(self, shop: Shop, initials: str, clock: Callable[[], datetime], *, demo: bool = False) -> None:
        self.shop = shop
        self.initials = initials
        """Empty until they are typed on the first screen."""
        self.clock = clock
        self.demo = demo
        """True for the shop that is thrown away."""
        self.picture: Picture = look(shop, clock())

    def look(self) -> Picture:
        """Take a new picture and keep it."""
        self.picture = look(self.shop, self.clock())
        return self.picture

    def changed_elsewhere(self) -> bool:
        """True when history has grown since the picture was taken."""
        return last_line(self.shop) != self.picture.last_line

    def is_stale(self) -> bool:
        """True when another window has written, or a minute has gone by: words such as LATE age."""
        minute = int(self.clock().timestamp()) // 60
        return minute != int(self.picture.now.timestamp()) // 60 or self.changed_elsewhere()

    def do(self, operation: Callable[Concatenate[Shop, Actor, P], R], *args: P.args, **kwargs: P.kwargs) -> R:
        """Run one operation as the person at this desk, now; errors come out as they are."""
        actor = Actor(initials=self.initials, now=self.clock())
        return operation(self.shop, actor, *args, **kwargs)
