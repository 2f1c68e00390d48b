"""What customers owe for boxes that have left, how long they have owed it, and who is on hold."""

from datetime import datetime

from queueboard.money.bill import totals_of
from queueboard.records.accounts import left_owing
from queueboard.records.database import ShopDatabase
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in
from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.words import Settling


@dataclass(frozen=True, slots=True, kw_only=True)
class OwedBox:
    """A box, or a part of one, that has left without all of its money."""

    box: Box
    owed_cents: int
    """At least 1; of an open box what has left comes to, less all that was paid."""
    paid_cents: int
    left_at: datetime
    """In the shop's zone."""
    settled: Settling
    """How it left: on account, or gone unpaid."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """All that one customer owes for what has left."""

    customer: Customer
    boxes: tuple[OwedBox, ...]
    """The oldest first."""
    days: int
    """Calendar days since the oldest left."""
    on_hold: bool
    """True when it is open longer than the shop's days."""

    @property
    def owed_cents(self) -> int:
        """The sum of its boxes."""
        return sum(box.owed_cents for box in self.boxes)


def owing(shop: Shop, now: datetime, customer_id: int | None = None) -> tuple[Account, ...]:
    """Who owes, or what one customer owes, the oldest debt first; empty where nobody does."""
    with shop.reading() as database:
        settings = settings_in(database)
        left = left_owing(database, customer_id)
    local = now.astimezone(settings.zone)
    accounts: dict[int, list[OwedBox]] = {}
    customers: dict[int, Customer] = {}
    for one in left:
        sums = totals_of(one.lines)
        if sums.owed_cents > 0:
            customers[one.customer.id] = one.customer
            accounts.setdefault(one.customer.id, []).append(
                OwedBox(
                    box=one.box,
                    owed_cents=sums.owed_cents,
                    paid_cents=sums.paid_cents,
                    left_at=one.left_at.astimezone(settings.zone),
                    settled=one.settled,
                )
            )
    hold = settings.prices.hold_after_days
    return tuple(
        Account(
            customer=customers[whose],
            boxes=tuple(boxes),
            days=(days := (local.date() - boxes[0].left_at.date()).days),
            on_hold=0 < hold < days,
        )
        for whose, boxes in accounts.items()
    )


def held(shop: Shop, now: datetime, customer_id: int) -> Account | None:
    """The account of a customer that is on hold; None when it is not, or nothing is owed."""
    return next((account for account in owing(shop, now, customer_id) if account.on_hold), None)


def owed_by(database: ShopDatabase, customer_id: int) -> dict[int, int]:
    """What a customer owes, whole cents by the number of the box, the oldest debt first; empty where nothing is."""
    owed: dict[int, int] = {}
    for one in left_owing(database, customer_id):
        if (cents := totals_of(one.lines).owed_cents) > 0:
            owed[one.box.number] = owed.get(one.box.number, 0) + cents
    return owed
