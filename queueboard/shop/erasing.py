"""One customer's data: shown to them, and erased after the shop's own period. Counts, money and the chain stay."""

from datetime import datetime, timedelta
from pathlib import Path

from queueboard.clean import clean, folded
from queueboard.errors import ReasonNeededError, RuleError
from queueboard.records import asking, erased_list, erasing
from queueboard.records import database as db
from queueboard.records.cells import whole
from queueboard.records.database import Cell
from queueboard.records.instants import from_us
from queueboard.records.keeping_tables import ErasedCustomerRow
from queueboard.records.reading import customers_of
from queueboard.records.tables import STATE
from queueboard.records.writing import Writing
from queueboard.shop.market_pad import pad_of
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.owing import owed_by
from queueboard.shop.settings_now import settings_in
from queueboard.slotted import dataclass
from queueboard.values.actor import Actor
from queueboard.values.customer import Customer

BOXES_NAMED = 5
"""Up to so many boxes that are owed for are named, the oldest first."""

Known = dict[str, list[dict[str, Cell]]]
"""Rows by table."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AllKnown:
    """All that the shop file holds of one customer."""

    customer: Customer
    rows: Known
    earlier_words: tuple[tuple[datetime, str, str, str], ...]
    """Words that stood or stand in these rows, from beside history: when, of what, which field, the text."""


def find_customers(shop: Shop, text: str) -> tuple[Customer, ...]:
    """The customers whose name, town or phone hold all the words, or the one with this number; erased ones are none."""
    words = folded(text).split()
    with shop.reading() as database:
        gone = erasing.erased_customers(database)
        there = tuple(one for one in customers_of(database) if one.id not in gone)
    if len(words) == 1 and (same := tuple(one for one in there if str(one.id) == words[0])):
        return same
    fits = ((one, folded(f"{one.name} {one.town} {one.phone}")) for one in there)
    return tuple(one for one, known in fits if words and all(word in known for word in words))


def all_known(shop: Shop, customer: Customer) -> AllKnown:
    """Everything in the file that hangs on a customer: boxes, knives, payments, and words from before."""
    with shop.reading() as database:
        reached = erasing.reached_from(database, customer.id)
        rows: Known = {}
        for name, ids in reached.items():
            found = (
                STATE[name].select().where(STATE[name].id == row_id).dicts().execute(database) for row_id in sorted(ids)
            )
            rows[name] = [dict(row) for one in found for row in one]
        words = erasing.earlier_words(database, erasing.words_of(database, reached))
    told = tuple((from_us(at), entity, name, text) for at, entity, name, text in words)
    return AllKnown(customer=customer, rows={name: there for name, there in rows.items() if there}, earlier_words=told)


def erase(shop: Shop, actor: Actor, customer: Customer, reason: str, *, though_owing: bool = False) -> None:
    """Erase a customer's words for good, and remember it beside the file for copies from before."""
    erase_customer(shop, actor, customer.id, reason, though_owing=though_owing)
    pad_of(shop, actor.now)  # lets go of a market day that is over, whose lines lie beside the file with their names
    with shop.reading() as database:
        hashes = frozenset({erasing.hash_of_customer(database, customer.id)})
    with db.faults(shop.path):
        shop.database.bring_home()
    erased_list.add_to(erased_list.list_in(shop.path.parent, shop.path), hashes)


def erase_again(shop: Shop, actor: Actor, hashes: frozenset[str]) -> int:
    """Erase in a copy from before who was erased since; how many customers that were."""
    with shop.reading() as database:
        ids = erasing.customers_by_hash(database, hashes)
    for customer_id in ids:
        erase_customer(shop, Actor(initials=actor.initials, now=actor.now), customer_id, "erased before", again=True)
    return len(ids)


@operation(step=False, for_good=True)
def erase_customer(
    writing: Writing, customer_id: int, reason: str, *, again: bool = False, though_owing: bool = False
) -> None:
    """Empty every word about a customer, in the rows and beside history; amounts, counts and days stay.

    RuleError before the shop's own period is over, while a box is here, and, unless it is said to be known, while
    money is owed. again: it was erased before, and only a copy brought it back.
    """
    database = writing.database
    writing.reason = clean(reason, limit=500, field="reason")
    if not writing.reason:
        raise ReasonNeededError("This is for good: say why with --reason, without names.")
    row = writing.row(STATE["customer"], customer_id)
    if row is None or row["merged_into"] is not None or customer_id in erasing.erased_customers(database):
        raise RuleError(
            f"There is no customer {customer_id} who could be erased. `queueboard customer NAME` finds them."
        )
    if not again:
        _insist_on_period(writing, customer_id)
    if not again and not though_owing:
        _insist_on_money(writing, customer_id)
    database.leave_no_trace()
    reached = erasing.reached_from(database, customer_id)
    words = erasing.words_of(database, reached)
    writing.words_kept = False
    writing.about = {"customer": customer_id, "emptied": list(words)}
    writing.insert(ErasedCustomerRow, customer_id=customer_id, erased_us=writing.now_us)
    erasing.blank_rows(writing, reached)
    erasing.empty_words(database, words)


def _insist_on_period(writing: Writing, customer_id: int) -> None:
    """Refuse while a box is here, and until the period after the last one is over."""
    database, settings = writing.database, settings_in(writing.database)
    boxes = [asking.box_by_id(database, box_id) for box_id in asking.boxes_of_customer(database, customer_id)]
    here = [str(box.number) for box in boxes if box is not None and box.closed_at is None]
    if here:
        noun, verb, it = ("Boxes", "are", "them") if len(here) > 1 else ("Box", "is", "it")
        raise RuleError(f"{noun} {', '.join(here)} of this customer {verb} still here. Close {it} out first.")
    went = [box.closed_at for box in boxes if box is not None and box.closed_at is not None]
    told = "SELECT max(at_us) FROM history WHERE entity = 'customer' AND entity_id = ?"
    last = max(went, default=None) or from_us(whole(database.one(told, (customer_id,))))
    days = settings.keeping.erase_after_days
    earliest = (last + timedelta(days=days)).astimezone(settings.zone)
    if writing.actor.now < earliest:
        raise RuleError(
            f"This customer can be erased from {earliest.date().isoformat()} on: {days} days after the last box, as "
            "erase_after_days in the settings says. Local law says how long you must keep, and how soon erase."
        )


def _insist_on_money(writing: Writing, customer_id: int) -> None:
    """Refuse while something is owed: afterwards nobody could say by whom."""
    owed, currency = owed_by(writing.database, customer_id), settings_in(writing.database).currency
    if not owed:
        return
    named = [f"{cents / 100:.2f} for box {number}" for number, cents in owed.items()]
    more = (f"{len(named) - BOXES_NAMED} more",) if len(named) > BOXES_NAMED else ()
    raise RuleError(
        f"This customer still owes {sum(owed.values()) / 100:.2f} {currency} "
        f"({', '.join((*named[:BOXES_NAMED], *more))}), and once they are erased nobody can say who owes it. "
        "Take the money first (O on the board), or erase all the same with --though-owing. Nothing was erased."
    )


def lists_for(path: Path, copy: Path) -> frozenset[str]:
    """Who was erased, as the lists beside a shop file and beside a copy say."""
    return erased_list.listed(erased_list.list_in(path.parent, path), *copy.parent.glob("*-erased.txt"))
