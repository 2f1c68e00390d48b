"""Orders from a file become announced boxes: tried first without storing anything, then all taken in one action."""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace

from queueboard.clean import figures, folded
from queueboard.errors import QueueboardError, RuleError
from queueboard.intake.orders import BadLine, Order, Orders
from queueboard.records.asking import announced_alike
from queueboard.records.database import ShopDatabase
from queueboard.records.erasing import erased_customers
from queueboard.records.reading import customers_of
from queueboard.records.writing import Writing
from queueboard.shop.announcing import store_announced
from queueboard.shop.laws import keep_laws
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.receiving import insert_customer
from queueboard.values.actor import Actor
from queueboard.values.customer import Customer
from queueboard.values.new import NewAnnounced

Everybody = dict[str, list[Customer]]
"""The customers by their name as it is compared."""


class _LetGoError(Exception):
    """Ends a trial: what was written is not kept."""


def try_orders(shop: Shop, actor: Actor, orders: Orders) -> Orders:
    """Which of the good ones the shop would take, each tried and let go of again; nothing is stored."""
    with shop.reading() as database:
        everybody = _everybody(database)
    good: list[Order] = []
    bad = list(orders.bad)
    for order in orders.good:
        try:
            with suppress(_LetGoError), shop.writing(actor, take_orders.__name__) as writing:
                _store(writing, order.box, everybody)
                keep_laws(writing)
                raise _LetGoError
            _not_before(order, good)
            good.append(order)
        except QueueboardError as error:
            bad.append(BadLine(line=order.line, why=str(error)))
    return Orders(good=tuple(good), bad=tuple(sorted(bad, key=lambda one: one.line)))


@operation(undo_needs_reason=True)
def take_orders(writing: Writing, orders: Sequence[Order]) -> tuple[int, ...]:
    """Announce a box for each order, all of them or none; returns their numbers."""
    if not orders:
        raise RuleError("There is no order to take in.")
    writing.tell(to=f"{len(orders)}")
    everybody, numbers = _everybody(writing.database), []
    for order in orders:
        number, new = _store(writing, order.box, everybody)
        numbers.append(number)
        if new is not None:  # whoever is new in one line is known in the next
            everybody.setdefault(folded(new.name), []).append(new)
    return tuple(numbers)


def _not_before(order: Order, others: Sequence[Order]) -> None:
    """Refuse an order that stands in the same file twice."""
    twin = next((other for other in others if other.box == order.box), None)
    if twin is not None:
        raise RuleError(f"It says the same as line {twin.line}.")


def _everybody(database: ShopDatabase) -> Everybody:
    """All customers but those who were erased; read once, for a file may have hundreds of orders."""
    gone, named = erased_customers(database), dict[str, list[Customer]]()
    for one in customers_of(database):
        if one.id not in gone:
            named.setdefault(folded(one.name), []).append(one)
    return named


def _store(writing: Writing, box: NewAnnounced, everybody: Everybody) -> tuple[int, Customer | None]:
    """Announce one box, for the customer who is known by name and phone, or for a new one.

    Returns its number, and the customer when that is a new one.
    """
    known, new = _known(box, everybody), box.new_customer
    if known is None and new is not None:
        customer_id = insert_customer(writing, new)
        number = store_announced(writing, replace(box, customer_id=customer_id, new_customer=None))
        return number, Customer(id=customer_id, version=1, name=new.name, phone=new.phone, town=new.town)
    if known is None:
        return store_announced(writing, box), None
    twin = announced_alike(writing.database, known.id, box.expected_knives, box.expected_on, box.note)
    if twin is not None:
        raise RuleError(f"Box {twin} says the same already; it was taken in before.")
    return store_announced(writing, replace(box, customer_id=known.id, new_customer=None)), None


def _known(box: NewAnnounced, everybody: Everybody) -> Customer | None:
    """The customer of the same name, and the same phone where both have one; None for somebody new.

    RuleError where several could be meant.
    """
    new = box.new_customer
    if new is None:
        return None
    named = [one for one in everybody.get(folded(new.name), ()) if _same_phone(one.phone, new.phone)]
    sure = [one for one in named if figures(one.phone) and figures(new.phone)]
    found = sure or named
    if len(found) > 1:
        raise RuleError(f"There are {len(found)} customers called {new.name}; the phone says which is meant.")
    return found[0] if found else None


def _same_phone(one: str, other: str) -> bool:
    return not figures(one) or not figures(other) or figures(one) == figures(other)
