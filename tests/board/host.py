"""What board tests share: a desk with a hand-built picture, an app that shows one screen, waiting for something."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Concatenate, ParamSpec, TypeVar

from textual.pilot import Pilot
from textual.widgets import Static

from queueboard.board.app import QueueboardApp
from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.widgets.kept import KeptRows
from queueboard.board.widgets.notice import Notice
from queueboard.board.widgets.rows import Row
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.actor import Actor
from queueboard.values.knife import Knife
from queueboard.values.shelf import GoneSeen
from queueboard.words import Column

P = ParamSpec("P")
R = TypeVar("R")
Answer = TypeVar("Answer")

AnyScreen = ShopScreen[Any]
"""A screen, whatever it is left with."""

SMALL = (80, 24)
LARGE = (120, 40)


@dataclass
class Done:
    """One operation that a screen asked for."""

    name: str
    args: tuple[object, ...]
    kwargs: dict[str, object] = field(default_factory=dict)


class FakeDesk(Desk):
    """A desk without a shop file: it keeps what was asked of it, and shows whatever picture a test hands it."""

    def __init__(self, picture: Picture, initials: str = "MB") -> None:
        self.shop = Shop.__new__(Shop)
        self.initials = initials
        self.demo = self.besides = ""
        self.picture = picture
        self.next_picture = picture
        """What the next look takes."""
        self.done: list[Done] = []
        self.refusal: Exception | None = None
        """Raised by the next operation."""
        self.answers: dict[str, object] = {}
        """What an operation answers, by its name."""
        self.effect: Callable[[Done], Picture | None] = lambda _: None
        """What an operation makes of the picture; None leaves it."""

    def clock(self) -> datetime:
        """The instant of the picture."""
        return self.next_picture.now

    def look(self) -> Picture:
        """Take the picture that the test has prepared."""
        self.picture = self.next_picture
        return self.picture

    def beside(self, knife: Knife) -> tuple[Knife, ...]:
        """Nothing lay beside it: there is no history to ask."""
        return ()

    def gone(self, text: str) -> tuple[GoneSeen, ...]:
        """Nothing has left yet: there is no file to ask."""
        return ()

    def look_for_a_day_list(self) -> Picture:
        """The plan of the picture as it is."""
        return self.picture

    def changed_elsewhere(self) -> bool:
        """True when the test has prepared another picture."""
        return self.next_picture is not self.picture

    def do(self, operation: Callable[Concatenate[Shop, Actor, P], R], *args: P.args, **kwargs: P.kwargs) -> R:
        """Keep what was asked for; the operation itself does not run."""
        if self.refusal is not None:
            refusal, self.refusal = self.refusal, None
            raise refusal
        asked = Done(name=operation.__name__, args=args, kwargs=dict(kwargs))
        self.done.append(asked)
        self.next_picture = self.effect(asked) or self.next_picture
        return self.answers.get(asked.name)  # type: ignore[return-value]  # a test says what fits the operation


class Home(ShopScreen[None]):
    """An empty screen to lie under the one that is tested."""


class Host(QueueboardApp):
    """Shows one screen with the shop's own look and keeps what it was left with."""

    def __init__(self, desk: Desk, screen: Callable[[], ShopScreen[Answer]], *, plain: bool = False) -> None:
        super().__init__(desk, plain=plain)
        self.make = screen
        self.left = False
        self.answer: object = None

    def get_default_screen(self) -> ShopScreen[None]:
        """Something to come back to."""
        return Home(self.desk)

    async def on_mount(self) -> None:  # type: ignore[override]  # Textual takes either kind
        """Open the screen, and let no key of a test come before it is there."""
        super().on_mount()
        await self.push_screen(self.make(), self._keep)

    def _keep(self, answer: object) -> None:
        self.left, self.answer = True, answer


async def until(pilot: Pilot[int], condition: Callable[[], bool], *, turns: int = 100) -> None:
    """Let the app go on until the condition holds."""
    for _ in range(turns):
        await pilot.pause()
        if condition():
            return
        await pilot.pause(0.02)  # what comes by a clock or from another program
    raise AssertionError("what was waited for did not come")


async def laid_out(pilot: Pilot[int], size: tuple[int, int]) -> None:
    """Let the app go on until the screen on top has this size: a change of it comes by a clock."""
    await until(pilot, lambda: pilot.app.screen.size == pilot.app.screen._compositor.size == size)


def notices(app: QueueboardApp) -> list[str]:
    """What stands at the foot of the screen on top, apart from its own sentences; on the board what is said there."""
    places = [*app.screen.query(Notice), *app.screen.query("#notice, #tag-told").results(Static)]
    return [str(place.content) for place in places if place.display]


def rows_of(boxes: Iterable[BoxPicture], column: Column, picture: Picture) -> tuple[Row, ...]:
    """The rows of one column as they are filled in for the first time."""
    return KeptRows(column).fill(boxes, picture)[0]
