"""Kitchens with swap sets as they stand now: each set by kind, what is missing, what is charged, the next round."""

from collections import Counter
from collections.abc import Mapping, Sequence
from datetime import date, datetime, timedelta

from queueboard.intake.swap_sets import KindOfSet, goes_on_statement, nick_is_free, tell_the_chef
from queueboard.priced_words import ChargeSort
from queueboard.records.charges import charges_of
from queueboard.records.database import ShopDatabase
from queueboard.records.erasing import erased_customers
from queueboard.records.reading import customers_of
from queueboard.records.swaps import OF_CUSTOMER, missing_knives, newest_check, rounds_of, sets_of
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.opening import Shop
from queueboard.shop.owing import Account, owing
from queueboard.shop.settings_now import settings_in
from queueboard.shop.swap_places import Place, kinds_of_set, next_round, place_of_set
from queueboard.slotted import dataclass
from queueboard.values.customer import Customer
from queueboard.values.swap import MissingKnife, SetCheck, SwapRound, SwapSet

_NOT_DAMAGE = {ChargeSort.RUSH, ChargeSort.MINIMUM, ChargeSort.DISCOUNT, ChargeSort.SHIPPING}


@dataclass(frozen=True, slots=True, kw_only=True)
class SetSeen:
    """One set with its knives by kind and place."""

    set: SwapSet
    kinds: tuple[KindOfSet, ...]
    place: Place

    @property
    def box_left_open(self) -> int | None:
        """The number of a box that was brought back to the kitchen and still stands on the board."""
        box = self.place.box
        return box.number if self.place.with_kitchen and box is not None and box.closed_at is None else None


@dataclass(frozen=True, slots=True, kw_only=True)
class MissingSeen:
    """A knife that is missing, or was found after it had been charged."""

    knife: MissingKnife
    set_name: str
    since: date
    due_on: date
    on_statement: bool
    """True from the day on when the shop has waited long enough."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Damage:
    """What was found on a knife of the newest round, and what it costs; 0 for a nick that is free."""

    tag: str
    kind: str
    what: str
    cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """A customer with swap sets."""

    customer: Customer
    sets: tuple[SetSeen, ...]
    missing: tuple[MissingSeen, ...]
    chef: Mapping[str, int]
    """What was missing in each of the last two rounds and still is, by kind."""
    damage: tuple[Damage, ...]
    last_round: date | None
    next_round: date | None
    next_set: SwapSet | None
    """The set that goes out next; None where none is here."""
    check: SetCheck | None
    """How that set stood when it was looked through for that day."""
    check_due: bool
    """True from the day before the round on, until the set was found complete."""
    hold: Account | None


def kitchens(shop: Shop, now: datetime) -> tuple[Kitchen, ...]:
    """Every kitchen with swap sets, by name; empty while they are switched off."""
    with shop.reading() as database:
        settings = settings_in(database)
        if not settings.swaps.on:
            return ()
        of_kitchens = {one.customer_id for one in sets_of(database, "TRUE")}
        of_kitchens -= erased_customers(database)
        customers = [customer for customer in customers_of(database) if customer.id in of_kitchens]
    held = {account.customer.id: account for account in owing(shop, now) if account.on_hold} if customers else {}
    with shop.reading() as database:
        return tuple(_kitchen(database, settings, one, held.get(one.id), now) for one in customers)


def _kitchen(
    database: ShopDatabase, settings: Settings, customer: Customer, hold: Account | None, now: datetime
) -> Kitchen:
    today = now.astimezone(settings.zone).date()
    sets = tuple(_seen(database, one) for one in sets_of(database, "s.customer_id = ?", customer.id))
    rounds = rounds_of(database, customer.id)
    lost = missing_knives(database, f"m.set_id {OF_CUSTOMER}", customer.id)
    day, following = next_round(database, customer.id, settings), _next_set(sets, rounds)
    check = None if following is None or day is None else newest_check(database, following.id, day)
    eve = day is not None and today >= day - timedelta(days=1)
    names = {one.set.id: one.set.name for one in sets}
    return Kitchen(
        customer=customer,
        sets=sets,
        missing=tuple(
            _missing(one, names[one.set_id], settings, today)
            for one in lost
            if one.found_at is None or one.charged_cents is not None
        ),
        chef=_for_chef(rounds, lost),
        damage=_damage(database, settings, rounds),
        last_round=rounds[-1].noted_at.astimezone(settings.zone).date() if rounds else None,
        next_round=day,
        next_set=following,
        check=check,
        check_due=eve and following is not None and (check is None or not check.complete),
        hold=hold,
    )


def _seen(database: ShopDatabase, one: SwapSet) -> SetSeen:
    place = place_of_set(database, one)
    return SetSeen(set=one, kinds=kinds_of_set(database, one, place), place=place)


def _next_set(sets: Sequence[SetSeen], rounds: Sequence[SwapRound]) -> SwapSet | None:
    """The one that is here for the longest time; one that never was on a round goes last."""
    came = {one.dull_set_id: place for place, one in enumerate(rounds)}
    here = [one.set for one in sets if not one.place.with_kitchen]
    return min(here, key=lambda one: came.get(one.id, len(rounds)), default=None)


def _missing(knife: MissingKnife, name: str, settings: Settings, today: date) -> MissingSeen:
    since, wait = knife.missed_at.astimezone(settings.zone).date(), settings.swaps.waiting_days
    return MissingSeen(
        knife=knife,
        set_name=name,
        since=since,
        due_on=since + timedelta(days=wait),
        on_statement=goes_on_statement(since, today, wait),
    )


def _for_chef(rounds: Sequence[SwapRound], lost: Sequence[MissingKnife]) -> dict[str, int]:
    """A knife is missing in a round when it was missed by then and not found by then; one found since is not told."""
    by_round = [
        Counter(
            one.kind
            for one in lost
            if one.missed_at <= x.noted_at and (one.found_at is None or one.found_at > x.noted_at)
        )
        for x in rounds
    ]
    still = Counter(one.kind for one in lost if one.found_at is None)
    return {kind: min(count, still[kind]) for kind, count in tell_the_chef(by_round).items() if still[kind]}


def _damage(database: ShopDatabase, settings: Settings, rounds: Sequence[SwapRound]) -> tuple[Damage, ...]:
    """What the newest dull set is charged for beside the work, and its free nicks, knife by knife."""
    box_id = next((one.box_id for one in reversed(rounds) if one.box_id is not None), None)
    found: list[Damage] = []
    for knife in rows.knives_of_box(database, box_id) if box_id is not None else ():
        charges = [x for x in charges_of(database, "c.knife_id = ?", knife.id) if x.sort not in _NOT_DAMAGE]
        found += (Damage(tag=knife.tag, kind=knife.kind, what=x.sort.value, cents=x.cents) for x in charges)
        free = knife.chip_um is not None and nick_is_free(knife.chip_um, settings.swaps.free_nick_um)
        if free and not any(x.sort is ChargeSort.CHIPS for x in charges):
            found.append(Damage(tag=knife.tag, kind=knife.kind, what="small nick", cents=0))
    return tuple(found)
