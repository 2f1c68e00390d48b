"""What a box would be promised for, typed or open, and everything the picture answers to that at once."""

from dataclasses import replace
from datetime import date, time, timedelta

from queueboard.shop.bench_work import BENCH_COLUMNS
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.quoting import Answer, Inside, Offer, can_do, offer, rush_minutes, shut_on
from queueboard.shop.receiving import MOST_CARRIER_DAYS, MOST_KNIVES
from queueboard.slotted import dataclass
from queueboard.values.new import NewKnife, NewPromise, Unseen
from queueboard.values.plan import Overload
from queueboard.words import GoesBy, PromiseKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """A box that stands in a form or a command, and the day that is wished for, if any."""

    knives: tuple[NewKnife, ...]
    goes_by: GoesBy
    carrier_days: int = 0
    """Of a parcel; a promise by the day it leaves does without them."""
    kind: PromiseKind = PromiseKind.DAY
    day: date | None = None
    at: time | None = None
    """For a wish by a time of day."""
    unseen: Unseen | None = None
    """Of a box that is only announced; it has no knives yet."""
    again: int | None = None
    """The id of an open box whose date is asked about: it leaves the plan before its knives are asked about anew."""

    @property
    def inside(self) -> Inside:
        """What can be asked about."""
        return self.unseen or self.knives


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """When, whether by the day wished for, and what room is left."""

    wish: Wish
    offer: Offer | None
    """None when no day within the days planned ahead will do."""
    answer: Answer | None
    """None without a day wished for, or where nothing can be said of it."""
    room_today: int
    """Bench minutes, as of `rush_minutes`, beside all that is here: also the box that is told anew."""
    room_tomorrow: int
    overloads: tuple[Overload, ...]
    """While there are any, a chance would mislead."""

    @property
    def day_to_tell(self) -> date | None:
        """The earliest day as it is told: what is ready on a day can go on the round of the day after."""
        if self.offer is None:
            return None
        return self.offer.day + timedelta(days=self.wish.kind is PromiseKind.NEXT_ROUND)


def days_on_the_way(wish: Wish) -> int:
    """The carrier's days between the day it leaves and the day that is told."""
    return wish.carrier_days if wish.goes_by is GoesBy.PARCEL and wish.kind is not PromiseKind.SHIPS_BY else 0


def advise(picture: Picture, wish: Wish) -> Advice | None:
    """Everything about a wish; None in a shop without bench time, and for a box that could not be taken in."""
    could_be = wish.unseen is not None or 0 < len(wish.knives) <= MOST_KNIVES
    if picture.ledger is None or not could_be or wish.carrier_days > MOST_CARRIER_DAYS:
        return None
    today = picture.now.date()
    room = [rush_minutes(picture, today + timedelta(days=ahead)) for ahead in (0, 1)]
    if wish.again is not None:
        picture = replace(picture, ledger=picture.ledger.without(wish.again))
    days = days_on_the_way(wish)
    ready = None if wish.day is None else wish.day - timedelta(days=wish.kind is PromiseKind.NEXT_ROUND)
    asked = _at_a_closed_door(picture, wish)
    if asked is None and ready is not None:
        asked = can_do(picture, wish.inside, wish.goes_by, days, ready, wish.at)
    return Advice(
        wish=wish,
        offer=offer(picture, wish.inside, wish.goes_by, days),
        answer=asked,
        room_today=room[0],
        room_tomorrow=room[1],
        overloads=picture.plan.overloads,
    )


def _at_a_closed_door(picture: Picture, wish: Wish) -> Answer | None:
    """The no to fetching it while the shop is shut; a parcel comes from the carrier, a round goes to the customer."""
    fetched = wish.goes_by is GoesBy.PICK_UP and wish.kind is not PromiseKind.NEXT_ROUND
    return shut_on(picture, wish.day) if fetched and wish.day is not None else None


def wish_again(box: BoxPicture, told: NewPromise | None, kind: PromiseKind) -> Wish:
    """An open box to be told a date, by its knives that still need the bench; told: the date typed so far."""
    own = box.box
    return Wish(
        unseen=None
        if own.opened
        else Unseen(knives=own.expected_knives, comes_on=own.expected_on, here=not own.announced),
        knives=tuple(
            NewKnife(kind=knife.kind, edge=knife.edge, condition=knife.condition)
            for column in BENCH_COLUMNS
            for knife in box.in_column(column)
            if knife.declined is None and not knife.looking_for
        ),
        goes_by=own.goes_by,
        carrier_days=own.carrier_days,
        kind=kind,
        day=None if told is None else told.day,
        at=None if told is None else told.at,
        again=own.id,
    )
