"""Kitchens with swap sets: a sharp set is brought, the dull one comes along and is a box of the shop from then on.

Whatever is about the bench, the tags and the bill is that of a box. Here stands only what a box does not know: what
belongs to a set, what was missing in a round, and that it was looked through before the next one.
"""

from collections import Counter
from collections.abc import Mapping
from datetime import timedelta

from queueboard.clean import clean
from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.intake.lines import read_lines
from queueboard.intake.swap_sets import counts_of, goes_on_statement, missing_of, nick_is_free, where_it_is
from queueboard.priced_words import ChargeSort
from queueboard.records.charge_table import ChargeRow
from queueboard.records.charges import charges_of
from queueboard.records.swaps import kind_rows, missing_knives, sets_of
from queueboard.records.swaps_tables import SwapCheckRow, SwapKindRow, SwapMissingRow, SwapRoundRow, SwapSetRow
from queueboard.records.tables import BoxRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.charging import insert_charge
from queueboard.shop.days import today_of
from queueboard.shop.operation import operation
from queueboard.shop.receiving import insert_customer, store_box
from queueboard.shop.settings_now import settings_in
from queueboard.shop.swap_places import kinds_of_set, next_round, place_of_set
from queueboard.values.box import Box
from queueboard.values.new import NewBox, NewCharge, NewCustomer, NewPromise
from queueboard.values.swap import MissingKnife, NewRound, SwapSet
from queueboard.words import CameBy, GoesBy, PromiseKind

LONGEST_NAME, MOST_EVERY, MOST_KNIVES = 20, 60, 999

SWITCH_ON = "Swap sets are switched off; write on = true under [swaps] in the shop's own numbers (N on the board)."


@operation()
def define_set(writing: Writing, whose: int | NewCustomer, name: str, typed: str, every_days: int = 7) -> int:
    """Say what a kitchen's set has when it is whole, such as `4 chef, 3 paring`; returns its id.

    A set of this kitchen with the same name gets these kinds in place of those it had.
    """
    settings = _switched_on(writing)
    text = clean(name, limit=LONGEST_NAME, field="name of the set")
    if not text:
        raise TypedError("The set has no name; type one, like A.")
    if not 1 <= every_days <= MOST_EVERY:
        raise TypedError(f"Every {every_days} days is outside 1 to {MOST_EVERY}.")
    whole = counts_of(read_lines(typed, settings))
    if sum(whole.values()) > MOST_KNIVES:
        raise TypedError(f"A set of {sum(whole.values())} knives is more than {MOST_KNIVES}; make two of it.")
    customer_id = whose if isinstance(whose, int) else insert_customer(writing, whose)
    rows.known_customer(writing, customer_id)
    known = sets_of(writing.database, "s.customer_id = ? AND lower(s.name) = lower(?)", customer_id, text)
    if known:
        set_id = known[0].id
        writing.change(SwapSetRow, set_id, None, every_days=every_days)
        writing.touch(SwapSetRow, set_id)
        for row_id in kind_rows(writing.database, set_id):
            writing.remove(SwapKindRow, row_id)
    else:
        set_id = writing.insert(SwapSetRow, customer_id=customer_id, name=text, every_days=every_days)
    for kind, knives in whole.items():
        writing.insert(SwapKindRow, set_id=set_id, kind=kind, knives=knives)
    return set_id


@operation(undo_needs_reason=True)
def note_round(writing: Writing, new: NewRound) -> int | None:
    """Note a visit: which set was brought sharp, and what came back dull; returns the number of the dull set's box.

    What a set should have and did not is missing from now on; a knife that was missing and is counted again is found.
    """
    settings = _switched_on(writing)
    if new.sharp_set_id == new.dull_set_id:
        raise TypedError("One set is brought and another one comes back; name two sets, or one of them alone.")
    sharp, dull = _set(writing, new.sharp_set_id), _set(writing, new.dull_set_id)
    if sharp is not None and dull is not None and sharp.customer_id != dull.customer_id:
        raise RuleError("These sets belong to two kitchens; note a round for each.")
    if sharp is not None:
        _only_sharp(writing, sharp)
    number, box_id = (None, None) if dull is None else _take_along(writing, settings, dull, new.dull)
    round_id = writing.insert(
        SwapRoundRow,
        sharp_set_id=new.sharp_set_id,
        dull_set_id=new.dull_set_id,
        box_id=box_id,
        noted_us=writing.now_us,
        noted_by=writing.actor.initials,
    )
    if dull is not None:
        _note_missing(writing, round_id, dull, counts_of(read_lines(new.dull, settings)))
    return number


@operation()
def found_again(writing: Writing, missing: MissingKnife) -> None:
    """A missing knife turned up; a charge for it goes off the bill while that box is here."""
    writing.tell(to=missing.kind)
    if missing.found_at is not None:
        raise RuleError(f"That {missing.kind} was found already.")
    writing.change(SwapMissingRow, missing.id, missing.version, found_us=writing.now_us)
    if missing.charge_id is not None and missing.charged_box_id is not None:
        box = rows.box_now(writing.database, missing.charged_box_id)
        if box.closed_at is None:
            writing.remove(ChargeRow, missing.charge_id)
            writing.touch(BoxRow, box.id)


@operation()
def charge_missing(writing: Writing, missing: MissingKnife, box: Box, cents: int) -> None:
    """Charge a missing knife on an open box of its kitchen, once it was waited for as long as the shop waits."""
    settings = _switched_on(writing)
    one = _set(writing, missing.set_id)
    missed_on, wait = missing.missed_at.astimezone(settings.zone).date(), settings.swaps.waiting_days
    if one is None or box.customer_id != one.customer_id:
        raise RuleError(f"Box {box.number} is not a box of this kitchen.")
    if missing.found_at is not None or missing.charged_cents is not None:
        raise RuleError(f"That {missing.kind} was found or charged already.")
    if not goes_on_statement(missed_on, today_of(writing), wait):
        due = (missed_on + timedelta(days=wait)).isoformat()
        raise RuleError(f"The {missing.kind} is missing since {missed_on}, and the shop waits until {due}.")
    rows.fresh_box(writing, box)
    writing.tell(number=box.number, to=missing.kind, cents=rows.checked_cents(cents, lowest=1))
    text = f"{missing.kind} missing since {missed_on.isoformat()}"[:120]
    insert_charge(writing, settings, box.id, NewCharge(sort=ChargeSort.OTHER, cents=cents, text=text))
    charge = charges_of(writing.database, "c.box_id = ?", box.id)[-1]
    writing.change(SwapMissingRow, missing.id, missing.version, charge_id=charge.id)
    writing.touch(BoxRow, box.id)


@operation()
def check_set(writing: Writing, set_id: int) -> bool:
    """Note how a set stands for its next round; True when every knife of it is here and clean."""
    settings = _switched_on(writing)
    one = _known(writing, set_id)
    place = place_of_set(writing.database, one)
    if place.with_kitchen:
        raise RuleError("That set is with the kitchen; check the one that is here.")
    kinds = kinds_of_set(writing.database, one, place)
    missing, not_clean = sum(missing_of(kinds).values()), sum(kind.dull_here for kind in kinds)
    day = next_round(writing.database, one.customer_id, settings) or today_of(writing)
    writing.tell(to="complete" if missing + not_clean == 0 else "not complete")
    writing.insert(
        SwapCheckRow,
        set_id=one.id,
        for_day=day.isoformat(),
        missing=missing,
        not_clean=not_clean,
        checked_us=writing.now_us,
        checked_by=writing.actor.initials,
    )
    return missing + not_clean == 0


def _switched_on(writing: Writing) -> Settings:
    settings = settings_in(writing.database)
    if not settings.swaps.on:
        raise RuleError(SWITCH_ON)
    return settings


def _set(writing: Writing, set_id: int | None) -> SwapSet | None:
    return None if set_id is None else _known(writing, set_id)


def _known(writing: Writing, set_id: int) -> SwapSet:
    found = sets_of(writing.database, "s.id = ?", set_id)
    if not found:
        raise ChangedError("That set is not in the shop file any more; look again.")
    return found[0]


def _only_sharp(writing: Writing, one: SwapSet) -> None:
    place = place_of_set(writing.database, one)
    if place.with_kitchen:
        raise RuleError("The set that was brought is with the kitchen by the last round; look again.")
    dull = sum(kind.dull_here for kind in kinds_of_set(writing.database, one, place))
    if dull:
        raise RuleError(f"{dull} knives of the set that was brought are not ready; move them to ready first.")


def _take_along(writing: Writing, settings: Settings, one: SwapSet, typed: str) -> tuple[int, int]:
    """Number and id of the box that a dull set becomes, ready the day before the next round."""
    place = place_of_set(writing.database, one)
    if not place.is_new and not place.with_kitchen:
        raise RuleError("The set that came back is here by the last round; look again.")
    lines = read_lines(typed, settings)
    where_it_is(one.whole, with_kitchen={}, dull_here=counts_of(lines), clean_here={})
    knives = tuple(line.knife for line in lines for _ in range(line.count))
    ready = today_of(writing) + timedelta(days=one.every_days - 1)
    box = NewBox(
        customer_id=one.customer_id,
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=len(knives),
        knives=knives,
        promise=NewPromise(kind=PromiseKind.DAY, day=ready),
    )
    number = store_box(writing, box)
    box_id = max(box_id for box_id in writing.boxes if rows.box_now(writing.database, box_id).number == number)
    _nicks_are_free(writing, settings, box_id)
    return number, box_id


def _nicks_are_free(writing: Writing, settings: Settings, box_id: int) -> None:
    """Take what the price list asks for a nick off the knives whose nicks the shop grinds out for nothing."""
    for knife in rows.knives_of_box(writing.database, box_id):
        if knife.chip_um is not None and nick_is_free(knife.chip_um, settings.swaps.free_nick_um):
            for charge in charges_of(writing.database, "c.knife_id = ?", knife.id):
                if charge.sort is ChargeSort.CHIPS:
                    writing.remove(ChargeRow, charge.id)


def _note_missing(writing: Writing, round_id: int, one: SwapSet, counted: Mapping[str, int]) -> None:
    """Note each knife that is missing anew, and each that is there again."""
    missing = missing_knives(writing.database, "m.set_id = ? AND m.found_us IS NULL", one.id)
    known = Counter(knife.kind for knife in missing)
    for kind, whole in one.whole.items():
        here = whole - known[kind]
        for _ in range(here - counted.get(kind, 0)):
            writing.insert(
                SwapMissingRow,
                round_id=round_id,
                set_id=one.id,
                kind=kind,
                missed_us=writing.now_us,
                found_us=None,
                charge_id=None,
            )
        again = [knife for knife in missing if knife.kind == kind][: max(0, counted.get(kind, 0) - here)]
        for knife in again:
            writing.change(SwapMissingRow, knife.id, knife.version, found_us=writing.now_us)
