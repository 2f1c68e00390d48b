"""Kitchens that swap whole sets: a sharp one is brought, the dull one is taken and becomes a box."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.intake.swapping import brought, by_kind, taken
from queueboard.priced_words import ChargeSort
from queueboard.records.charge_table import ChargeRow
from queueboard.records.charges import CHARGED_BOX, charges_of
from queueboard.records.reading import customers_of
from queueboard.records.swaps import kitchens_of, last_round, missing_of, sets_of
from queueboard.records.swaps_tables import SwapKindRow, SwapMissingRow, SwapRoundRow, SwapSetRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.charging import insert_charge
from queueboard.shop.numbers import settings_in
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.owing import Account, held
from queueboard.shop.receiving import store_box
from queueboard.values.customer import Customer
from queueboard.values.new import NewBox, NewCharge, NewKnife, NewPromise
from queueboard.values.swapped import Missing, Round, SetKind, SwapSet
from queueboard.words import CameBy, GoesBy, PromiseKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """A kitchen with its sets and what is missing of them."""

    customer: Customer
    sets: tuple[SwapSet, ...]
    missing: tuple[Missing, ...]
    last: Round | None
    next_on: date | None
    """The day of the next round; None before the first."""
    hold: Account | None
    """Its account where it is on hold."""

    @property
    def next_set(self) -> SwapSet | None:
        """The set that is brought next: the first that was not brought last."""
        brought_id = None if self.last is None else self.last.brought_id
        return next((one for one in self.sets if one.id != brought_id), None)


def kitchens(shop: Shop, now: datetime) -> tuple[Kitchen, ...]:
    """Every kitchen that has sets."""
    with shop.reading() as database:
        settings = settings_in(database)
        known = {customer.id: customer for customer in customers_of(database)}
        read = tuple(
            (known[one], sets_of(database, one), missing_of(database, one), last_round(database, one))
            for one in kitchens_of(database)
            if one in known
        )
    step = timedelta(days=settings.swaps.round_days)
    return tuple(
        Kitchen(
            customer=customer,
            sets=sets,
            missing=missing,
            last=last,
            next_on=None if last is None else last.at.astimezone(settings.zone).date() + step,
            hold=held(shop, now, customer.id),
        )
        for customer, sets, missing, last in read
    )


@operation()
def make_set(writing: Writing, customer_id: int, name: str, kinds: Mapping[str, int]) -> None:
    """Note a set of a kitchen by kind; all of it is here and clean."""
    rows.known_customer(writing, customer_id)
    called = clean(name, limit=20, field="name of the set")
    if not called or not kinds:
        raise TypedError("A set needs a name, such as A, and its knives by kind.")
    settings = settings_in(writing.database)
    writing.tell(to=called)
    set_id = writing.insert(SwapSetRow, customer_id=customer_id, name=called)
    for kind, count in kinds.items():
        if settings.kind(kind) is None or not 1 <= count <= 999:
            raise TypedError(f"{count} {clean(kind, field='kind')}: type 1 to 999 of a kind that the shop has.")
        writing.insert(SwapKindRow, set_id=set_id, kind=kind, owned=count, kitchen=0, here=count, missing=0)


@operation(undo_needs_reason=True)
def swap_sets(
    writing: Writing, customer_id: int, bring: SwapSet | None, take: SwapSet | None, knives: Sequence[NewKnife] = ()
) -> int | None:
    """Bring what is clean of one set and take what was counted of another; returns the number of the box it becomes.

    What is not counted is missing from now on; what was missing longer than the shop waits goes on the new box's bill.
    """
    settings = settings_in(writing.database)
    if bring is None and take is None:
        raise TypedError("Neither a set to bring nor one to take: choose one.")
    if bring is not None and take is not None and bring.id == take.id:
        raise RuleError(f"Set {bring.name} cannot be brought and taken at once.")
    if take is None and knives:
        raise RuleError("Knives were counted, but no set is with the kitchen. Receive them as a box.")
    box_id, number = None, None
    if take is not None:
        box_id, number = _take(writing, settings, customer_id, take, knives)
    for kind in () if bring is None else bring.kinds:
        _store(writing, kind, brought(kind))
    writing.insert(
        SwapRoundRow,
        customer_id=customer_id,
        brought_id=None if bring is None else bring.id,
        taken_id=None if take is None else take.id,
        box_id=box_id,
        at_us=writing.now_us,
    )
    return number


def _take(
    writing: Writing, settings: Settings, customer_id: int, take: SwapSet, knives: Sequence[NewKnife]
) -> tuple[int | None, int | None]:
    counted = by_kind(knife.kind for knife in knives)
    strange = set(counted) - {kind.kind for kind in take.kinds}
    if strange:
        raise TypedError(f"Set {take.name} has no {', '.join(sorted(strange))}; receive it as a box of its own.")
    old = missing_of(writing.database, customer_id)
    for kind in take.kinds:
        after = taken(kind, counted.get(kind.kind, 0))
        _store(writing, kind, after)
        if after.missing > kind.missing:
            more = after.missing - kind.missing
            writing.insert(
                SwapMissingRow, kind_id=kind.id, knives=more, since_us=writing.now_us, charged=0
            )
        _come_back(writing, [one for one in old if one.kind_id == kind.id], kind.missing - after.missing)
    if not knives:
        return None, None
    today = writing.actor.now.astimezone(settings.zone).date()
    back = NewPromise(kind=PromiseKind.NEXT_ROUND, day=today + timedelta(days=settings.swaps.round_days))
    made = NewBox(
        customer_id=customer_id,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=len(knives),
        knives=tuple(knives),
        promise=back,
    )
    number = store_box(writing, made)
    box_id = rows.newest_box(writing.database, number).id
    _nicks_are_free(writing, settings, box_id)
    for one in missing_of(writing.database, customer_id):
        if not one.charged and (writing.actor.now - one.since).days >= settings.swaps.wait_days:
            text = f"missing {one.kind}, set {one.set_name}"
            cents = one.knives * settings.swaps.missing_cents
            insert_charge(writing, settings, box_id, NewCharge(sort=ChargeSort.OTHER, cents=cents, text=text))
            writing.change(SwapMissingRow, one.id, None, charged=1)
    return box_id, number


def _store(writing: Writing, before: SetKind, after: SetKind) -> None:
    row = writing.row(SwapKindRow, before.id)
    if row is None or (row["kitchen"], row["here"], row["missing"]) != (
        before.kitchen,
        before.dull + before.clean,
        before.missing,
    ):
        raise RuleError("That set was swapped meanwhile; nothing was stored. Look again, then decide.")
    here = after.dull + after.clean
    writing.change(SwapKindRow, before.id, None, kitchen=after.kitchen, here=here, missing=after.missing)


def _come_back(writing: Writing, missing: Sequence[Missing], knives: int) -> None:
    """Knives that were missing are there again, those not charged yet first."""
    for one in sorted(missing, key=lambda one: one.charged):
        found = min(one.knives, max(0, knives))
        knives -= found
        if found == one.knives:
            writing.remove(SwapMissingRow, one.id)
        elif found:
            writing.change(SwapMissingRow, one.id, None, knives=one.knives - found)


def _nicks_are_free(writing: Writing, settings: Settings, box_id: int) -> None:
    small = {
        knife.id
        for knife in rows.knives_of_box(writing.database, box_id)
        if knife.chip_um is not None and knife.chip_um <= settings.swaps.nick_um
    }
    for charge in charges_of(writing.database, f"{CHARGED_BOX} = ?", box_id):
        if charge.sort is ChargeSort.CHIPS and charge.knife_id in small:
            writing.remove(ChargeRow, charge.id)
