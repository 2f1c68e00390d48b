"""What ten years of history add to each action of a day: the same on a file of one year and on one of ten, by turns."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from functools import partial

from queueboard.shop.closing import begin_close_out, confirm_label, confirm_names, count, send_off, settle
from queueboard.shop.evening_seen import evening
from queueboard.shop.finding import find_gone
from queueboard.shop.looking import DAY_LIST, look
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.promising import promise
from queueboard.shop.receiving import receive_box
from queueboard.shop.testing import judge_edge, let_go_by_eye
from queueboard.shop.undoing import box_history, steps, undo
from queueboard.values.actor import Actor
from queueboard.values.box import CloseOut
from queueboard.values.new import NewBox, NewCustomer, NewPayment, NewPromise
from queueboard.words import CameBy, Column, GoesBy, PayWay, PromiseKind, Settling
from tests.bench.speed_reads import NAME
from tests.bench.speed_shops import Shops, morning_of
from tests.bench.speed_table import Figure, processor_ms
from tests.shop.place import chef

NUMBERS = range(100, 301, 5)
"""Of boxes that there were in each of the years."""


@dataclass
class Day:
    """A shop in which one box is led from the door to the door; each step is clocked, what is around it is not."""

    shop: Shop
    now: datetime
    number: int = 0
    tag: str = ""
    """A box number of which as many knives are found in every shop."""

    @property
    def by(self) -> Actor:
        """Somebody who acts a minute after the last act."""
        self.now += timedelta(minutes=1)
        return Actor(initials="MB", now=self.now)

    @property
    def box(self) -> BoxPicture:
        """The box as it stands."""
        found = look(self.shop, self.now).box(self.number)
        assert found is not None
        return found

    def receive(self) -> float:
        """Three knives over the counter, of somebody new."""
        new = NewBox(
            new_customer=NewCustomer(name="Ines Vold", phone="555 0177"),
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=3,
            knives=(chef(), chef(), replace(chef(), kind="paring")),
            promise=NewPromise(kind=PromiseKind.DAY, day=self.now.date() + timedelta(days=9), told_to="Ines Vold"),
        )

        def work() -> None:
            self.number = receive_box(self.shop, self.by, new)

        return processor_ms(work)

    def look(self) -> float:
        """The picture of the board."""
        return processor_ms(lambda: look(self.shop, self.now))

    def day_list(self) -> float:
        """The picture with a plan tried in more ways."""
        return processor_ms(lambda: look(self.shop, self.now, restarts=DAY_LIST))

    def promised(self) -> float:
        """Another date told."""
        day = self.now.date() + timedelta(days=10)
        new, box = NewPromise(kind=PromiseKind.DAY, day=day, told_to="Ines Vold", reason="busy"), self.box.box
        return processor_ms(lambda: promise(self.shop, self.by, box, new))

    def pay(self) -> float:
        """Some money in cash."""
        new, box = NewPayment(cents=500, way=PayWay.CASH, paid_before_cents=0), self.box.box
        return processor_ms(lambda: take_payment(self.shop, self.by, box, new))

    def move(self) -> float:
        """One knife to the bench."""
        knives = self.box.knives[:1]
        return processor_ms(lambda: move_knives(self.shop, self.by, knives, Column.ON_BENCH))

    def test(self) -> float:
        """It is OK; by eye where the gauge is asked, for nothing is read here."""
        move_knives(self.shop, self.by, self.box.knives[:1], Column.TESTING)
        (knife,) = self.box.knives[:1]
        if knife.gauge is not None:
            return processor_ms(lambda: let_go_by_eye(self.shop, self.by, knife))
        return processor_ms(lambda: judge_edge(self.shop, self.by, knife, ok=True))

    def take_back(self) -> float:
        """A move, taken back."""
        move_knives(self.shop, self.by, self.box.knives[1:2], Column.ON_BENCH)
        return processor_ms(lambda: undo(self.shop, self.by, steps(self.shop, "MB", 20)[0].group_id))

    def close_out(self) -> float:
        """From the count to the door, every step; the looks between them are not in it."""
        for knife in [knife for knife in self.box.knives if knife.column is not Column.READY]:
            if knife.gauge is None:
                move_knives(self.shop, self.by, [knife], Column.READY)
            else:
                let_go_by_eye(self.shop, self.by, knife)
        box = self.box.box
        took = processor_ms(lambda: begin_close_out(self.shop, self.by, box))
        last: Sequence[Callable[[CloseOut], object]] = (
            lambda close: count(self.shop, self.by, close, 3),
            lambda close: confirm_names(self.shop, self.by, close),
            lambda close: confirm_label(self.shop, self.by, close, "self"),
            lambda close: settle(self.shop, self.by, close, Settling.ON_ACCOUNT),
            lambda close: send_off(self.shop, self.by, close),
        )
        for step in last:
            close = self.box.close_out
            assert close is not None
            took += processor_ms(partial(step, close))
        return took

    def find_name(self) -> float:
        """Among all boxes that are gone."""
        return processor_ms(lambda: find_gone(self.shop, NAME))

    def find_tag(self) -> float:
        """Among all boxes that are gone."""
        return processor_ms(lambda: find_gone(self.shop, self.tag))

    def history(self) -> float:
        """Of the box under way."""
        box_id = self.box.box.id
        return processor_ms(lambda: box_history(self.shop, box_id))

    def end(self) -> float:
        """The sheet of the day's end."""
        seen = look(self.shop, self.now)
        return processor_ms(lambda: evening(self.shop, seen, seen.now.date()))


STEPS: tuple[tuple[str, Callable[[Day], float]], ...] = (
    ("receive a box", Day.receive),
    ("look", Day.look),
    ("the day list", Day.day_list),
    ("tell another date", Day.promised),
    ("take money", Day.pay),
    ("move a knife", Day.move),
    ("test it", Day.test),
    ("take a move back", Day.take_back),
    ("a box's history", Day.history),
    ("close out, all steps", Day.close_out),
    ("find by name", Day.find_name),
    ("find by tag", Day.find_tag),
    ("the day's end", Day.end),
)
"""A day, in its order."""


def _alike(shops: Sequence[Shop]) -> str:
    """The number for which the boxes that are shown hold most nearly as many knives in these shops."""

    def apart(number: int) -> int:
        found = [sum(len(gone.knives) for gone in find_gone(shop, str(number))) for shop in shops]
        return max(found) - min(found)

    return str(min(NUMBERS, key=apart))


def growth(shops: Shops, runs: int) -> Iterator[Figure]:
    """Each step of a day at ten years against the same at one."""
    took: dict[str, tuple[list[float], list[float]]] = {name: ([], []) for name, _ in STEPS}
    days = [Day(open_shop(path), morning_of(path)) for path in (shops.one, shops.ten)]
    tag = _alike([day.shop for day in days])
    for day in days:
        day.tag = tag
    try:
        for _ in range(2 * runs + 1):  # one part in ten is soon lost among what else the machine does
            for name, step in STEPS:
                for day, kept in zip(days, took[name], strict=True):
                    kept.append(step(day))
    finally:
        for day in days:
            close_shop(day.shop)
    for name, (one, ten) in took.items():
        yield Figure(
            name=f"{name}, ten years",
            base="the same at one year",
            base_runs=tuple(one[1:]),
            our_runs=tuple(ten[1:]),
            most=1.1,
        )
