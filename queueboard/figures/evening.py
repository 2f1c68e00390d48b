"""The figures of one day: what was done, box by box; what money came in, and what should lie there."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from itertools import pairwise

from queueboard.slotted import dataclass
from queueboard.values.box import Payment, Promise
from queueboard.values.evening import TillCount
from queueboard.values.knife import Knife
from queueboard.words import PayWay


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A knife that came to ready, or left the shop."""

    at: datetime
    knife: Knife
    """As it stands now."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DoneBox:
    """What was done of one box on a day."""

    box_id: int
    ready: tuple[Knife, ...]
    """The knives that came to ready, by tag."""
    gone: tuple[Knife, ...]
    """The knives that left the shop, by tag."""


def done_boxes(ready: Iterable[Placed], gone: Iterable[Placed]) -> tuple[DoneBox, ...]:
    """What was done, by box number; a knife that came to ready twice counts once."""
    by_box: defaultdict[int, tuple[dict[int, Knife], dict[int, Knife]]] = defaultdict(lambda: ({}, {}))
    for place, placed in enumerate((ready, gone)):
        for one in placed:
            by_box[one.knife.box_id][place][one.knife.id] = one.knife
    done = (
        DoneBox(box_id=box_id, ready=_by_tag(made.values()), gone=_by_tag(left.values()))
        for box_id, (made, left) in by_box.items()
    )
    return tuple(sorted(done, key=lambda one: (one.ready or one.gone)[0].box_number))


def _by_tag(knives: Iterable[Knife]) -> tuple[Knife, ...]:
    return tuple(sorted(knives, key=lambda knife: knife.number))


@dataclass(frozen=True, slots=True, kw_only=True)
class WayMoney:
    """The money of one way on a day."""

    way: PayWay
    in_cents: int
    """What was taken, at least 0."""
    back_cents: int
    """What was given back, at least 0."""
    payments: int
    """How often money went either way."""
    there_before_cents: int
    """What lay there in the morning: the change in the till; 0 for all but cash."""
    count: TillCount | None

    @property
    def should_cents(self) -> int:
        """What should lie there now; below nothing where more was given back than came in."""
        return self.there_before_cents + self.in_cents - self.back_cents

    @property
    def difference_cents(self) -> int | None:
        """What is there more than there should be, less than nothing where some is missing; None until counted."""
        return None if self.count is None else self.count.counted_cents - self.should_cents

    @property
    def came_since_cents(self) -> int:
        """What came in, or went back, since it was counted."""
        return 0 if self.count is None else self.should_cents - self.count.should_cents


def money_by_way(payments: Sequence[Payment], counts: Iterable[TillCount], change_cents: int) -> tuple[WayMoney, ...]:
    """The money of a day, way by way; every way, also one with nothing in it.

    change_cents: what lies in the till in the morning, at least 0.
    """
    counted = {count.way: count for count in counts}
    return tuple(
        WayMoney(
            way=way,
            in_cents=sum(max(0, one.in_cents) for one in payments if one.way is way),
            back_cents=sum(max(0, -one.in_cents) for one in payments if one.way is way),
            payments=sum(one.way is way for one in payments),
            there_before_cents=change_cents if way is PayWay.CASH else 0,
            count=counted.get(way),
        )
        for way in PayWay
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A date told in place of an earlier one."""

    before: Promise
    now: Promise


def moved_dates(told: Mapping[int, Sequence[Promise]], day: date) -> tuple[Moved, ...]:
    """The dates told on a day in place of earlier ones, in the order told.

    told: by box its promises, oldest first, with told_at in the shop's zone.
    """
    pairs = (
        Moved(before=before, now=now)
        for promises in told.values()
        for before, now in pairwise(promises)
        if now.told_at.date() == day
    )
    return tuple(sorted(pairs, key=lambda one: (one.now.told_at, one.now.id)))
