"""A shop at an instant, and numbers drawn by chance to choose by what an act is about."""

import random
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from functools import cached_property
from typing import TypeVar

from queueboard.priced_words import Finding, MoneySort
from queueboard.records.cells import whole
from queueboard.records.reading import customers_of
from queueboard.records.runs import open_runs
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.rows import box_now
from queueboard.values.actor import Actor
from queueboard.values.box import Box, CloseOut, ReturnLabel
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife
from queueboard.values.measured import BenchRun
from queueboard.values.new import NewKnife, NewLabel, NewPayment, NewPromise
from queueboard.words import Column, Edge, LabelOwner, LabelState, PayWay, PromiseKind

T = TypeVar("T")

NAMES = ("R. Tallis", "Ms Verrin", "Oake", "[red]x[/]", "Élodie \N{SKULL}", "x" * 200)


class NothingThereError(Exception):
    """There is nothing in the shop that an act could be about."""


class Moment:
    """A shop at an instant, and numbers drawn by chance to choose by."""

    def __init__(self, shop: Shop, now: datetime, who: str, draw: random.Random) -> None:
        self.shop, self.now, self.who, self.draw = shop, now, who, draw

    @cached_property
    def picture(self) -> Picture:
        """What the person sees."""
        return look(self.shop, self.now)

    @cached_property
    def by(self) -> Actor:
        """Who acts."""
        return Actor(initials=self.who, now=self.now)

    def below(self, most: int) -> int:
        """A number from 0 to most - 1."""
        return self.draw.randrange(most)

    @property
    def yes(self) -> bool:
        """Yes or no."""
        return self.below(2) == 1

    def pick(self, of: Sequence[T]) -> T:
        """One of several."""
        if not of:
            raise NothingThereError
        return of[self.below(len(of))]

    def some(self, of: Sequence[T]) -> Sequence[T]:
        """The first few of several, at least one."""
        if not of:
            raise NothingThereError
        return of[: 1 + self.below(len(of))]

    def seen(self, fits: Callable[[BoxPicture], object] = lambda _: True) -> BoxPicture:
        """An open box, of those that fit."""
        return self.pick([box for box in self.picture.boxes if fits(box)])

    @property
    def box(self) -> Box:
        """An open box."""
        return self.seen().box

    @property
    def shut(self) -> Box:
        """A box that is announced or not opened."""
        return self.seen(lambda box: not box.box.opened).box

    @property
    def knives(self) -> Sequence[Knife]:
        """Some knives of a box, on hand as a rule."""
        seen = self.seen(lambda box: box.knives)
        return self.some(seen.on_hand or seen.knives)

    @property
    def knife(self) -> Knife:
        """One knife."""
        return self.pick(self.knives)

    def in_testing(self) -> Sequence[Knife]:
        """The knives of a box that are in testing."""
        return self.seen(lambda box: box.in_column(Column.TESTING)).in_column(Column.TESTING)

    @property
    def close(self) -> CloseOut:
        """A close-out under way."""
        out = self.seen(lambda box: box.close_out).close_out
        return self.pick([out] if out is not None else [])

    @property
    def run(self) -> BenchRun:
        """A run under way."""
        return self.pick(open_runs(self.shop.database))

    @property
    def label(self) -> ReturnLabel:
        """A label of an open box."""
        return self.pick([box.label for box in self.picture.boxes if box.label is not None])

    @property
    def customer(self) -> Customer:
        """Somebody known."""
        return self.pick(list(customers_of(self.shop.database)))

    @property
    def text(self) -> str:
        """Something typed."""
        return self.pick(("", "call before six", "[b]x", "\N{SKULL}\x1b[2J", "y" * 700))

    @property
    def gone(self) -> Box:
        """A box that has left."""
        return box_now(
            self.shop.database, whole(self.pick(self.shop.database.rows("SELECT id FROM box WHERE closed_us > 0"))[0])
        )

    def payment(self, seen: BoxPicture, sort: MoneySort = MoneySort.PAYMENT) -> NewPayment:
        """Some money, mostly what is owed."""
        cents = self.pick((seen.owed_cents, 100, 1))
        return NewPayment(cents=cents, way=PayWay.CASH, paid_before_cents=seen.paid_cents, sort=sort)

    def new_knife(self) -> NewKnife:
        """A knife that comes in."""
        return NewKnife(
            kind=self.pick(("chef", "paring", "bread", "no such kind")),
            edge=self.pick(list(Edge)),
            length_mm=self.pick((None, 200, 90)),
            mark=self.pick(("", "red dot", "[b]")),
            wish=self.pick(("", "keep the patina")),
            findings=self.pick(((), (Finding.FRECKLES,))),
            chips=self.pick((None, 2)),
        )

    def day(self) -> NewPromise:
        """A date that is told."""
        told = self.now.date() + timedelta(days=self.below(12))
        why = self.pick(("", "belts late"))
        return NewPromise(kind=self.pick((PromiseKind.DAY, PromiseKind.SHIPS_BY)), day=told, told_to=why, reason=why)

    def new_label(self) -> NewLabel:
        """A return label."""
        return NewLabel(
            owner=self.pick(list(LabelOwner)),
            state=self.pick((LabelState.HERE, LabelState.TO_BUY)),
            expires_on=self.now.date() + timedelta(days=self.below(20)),
            name_on=self.pick(NAMES),
            limit_g=self.pick((None, 900)),
        )
