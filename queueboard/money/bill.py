"""What a box comes to: knives, add-ons, rush, minimum, discount, shipping, tax, and what was paid.

It depends only on what is stored with the box, never on the price list of today; and on nothing's order.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace

from queueboard.money.rounding import MILLION, payable, share
from queueboard.priced_words import ChargeSort
from queueboard.slotted import dataclass
from queueboard.values.box import Charge, Payment
from queueboard.values.knife import Knife
from queueboard.values.totals import Totals
from queueboard.words import Rounding

_OF_THE_WHOLE = (ChargeSort.RUSH, ChargeSort.MINIMUM, ChargeSort.DISCOUNT, ChargeSort.SHIPPING)
"""Sorts that look at all the work of a box, or at none of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bill:
    """Everything that a box is charged for, and what was paid for it."""

    knives: tuple[Knife, ...]
    charges: tuple[Charge, ...] = ()
    payments: tuple[Payment, ...] = ()
    rounding: Rounding = Rounding.HALF_UP

    def without(self, knife_ids: Collection[int]) -> "Bill":
        """The bill without some knives and what is charged for them."""
        return replace(self, knives=tuple(knife for knife in self.knives if knife.id not in knife_ids))

    def only(self, knife_ids: Collection[int]) -> "Bill":
        """The bill of some knives, with all that concerns the whole box."""
        return replace(self, knives=tuple(knife for knife in self.knives if knife.id in knife_ids))

    def add_ons(self) -> tuple[Charge, ...]:
        """Charges for the work on a knife that is charged, and other work of the box."""
        charged = {knife.id for knife in self.knives if not knife.free}
        return add_ons(self.charges, {one.knife_id for one in self.charges} - charged - {None})

    def of_sort(self, sort: ChargeSort) -> tuple[Charge, ...]:
        """The charges of one sort."""
        return tuple(charge for charge in self.charges if charge.sort is sort)

    @property
    def lines(self) -> "BillLines":
        """What its sums are made from."""
        return BillLines(
            knives=tuple((knife.tax_ppm, knife.charged_cents) for knife in self.knives),
            add_ons=self.add_ons(),
            whole=of_the_whole(self.charges),
            paid_cents=sum(payment.in_cents for payment in self.payments),
            rounding=self.rounding,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BillLines:
    """A bill without its knives and payments one by one: all that its sums need."""

    knives: tuple[tuple[int, int], ...]
    """Tax rate in millionths, and cents, of each knife or of several together."""
    add_ons: tuple[Charge, ...] = ()
    """Those that are charged."""
    whole: tuple[Charge, ...] = ()
    """What concerns the whole box."""
    paid_cents: int = 0
    rounding: Rounding = Rounding.HALF_UP

    def of_sort(self, sort: ChargeSort) -> tuple[Charge, ...]:
        """The charges of one sort."""
        return tuple(charge for charge in self.whole if charge.sort is sort)


def add_ons(charges: Iterable[Charge], free: Collection[int | None]) -> tuple[Charge, ...]:
    """Charges for single knives, but for those for which nothing is asked, and for other work of the box."""
    return tuple(one for one in charges if one.sort not in _OF_THE_WHOLE and one.knife_id not in free)


def of_the_whole(charges: Iterable[Charge]) -> tuple[Charge, ...]:
    """Charges that look at all the work of a box, or at none of it."""
    return tuple(one for one in charges if one.sort in _OF_THE_WHOLE)


def totals(bill: Bill) -> Totals:
    """All sums of a bill."""
    return totals_of(bill.lines)


def totals_of(bill: BillLines) -> Totals:
    """All sums of a bill's lines.

    A rush and a discount in percent are shares of the work (the knives with their add-ons), the discount after rush and
    minimum. The minimum counts once there is any work to pay. A discount never goes below nothing. Tax is added for
    each rate on the sum of its lines, once, with the discount spread over the work in proportion.
    """
    lines = bill.knives
    extras = [(one.tax_ppm, one.cents) for one in bill.add_ons]
    done = _sum(lines) + _sum(extras)
    rush = [(one.tax_ppm, _amount(one, done, bill.rounding)) for one in bill.of_sort(ChargeSort.RUSH)]
    work = done + _sum(rush)
    lowest = max(bill.of_sort(ChargeSort.MINIMUM), key=lambda one: (one.cents, one.tax_ppm), default=None)
    lifted = [] if lowest is None or work == 0 else [(lowest.tax_ppm, max(0, lowest.cents - work))]
    work += _sum(lifted)
    discount = min(work, sum(_amount(one, work, bill.rounding) for one in bill.of_sort(ChargeSort.DISCOUNT)))
    shipping = [(one.tax_ppm, one.cents) for one in bill.of_sort(ChargeSort.SHIPPING)]
    bases = _less(_by_rate([*lines, *extras, *rush, *lifted]), discount)
    tax = sum(share(cents, ppm, bill.rounding) for ppm, cents in _by_rate([*bases.items(), *shipping]).items())
    sums = Totals(
        knives_cents=_sum(lines),
        add_ons_cents=_sum(extras),
        rush_cents=_sum(rush),
        minimum_cents=_sum(lifted),
        discount_cents=discount,
        shipping_cents=_sum(shipping),
        tax_cents=tax,
        paid_cents=bill.paid_cents,
    )
    return replace(sums, rounding_cents=payable(sums.total_cents, bill.rounding) - sums.total_cents)


def _amount(charge: Charge, of_cents: int, rule: Rounding) -> int:
    """The cents of a charge: its own, or its share of an amount."""
    return charge.cents if charge.ppm is None else share(of_cents, charge.ppm, rule)


def _sum(lines: Iterable[tuple[int, int]]) -> int:
    return sum(cents for _, cents in lines)


def _by_rate(lines: Iterable[tuple[int, int]]) -> dict[int, int]:
    """The cents to be taxed at each rate, the lowest rate first."""
    bases: dict[int, int] = {}
    for ppm, cents in lines:
        bases[ppm] = bases.get(ppm, 0) + cents
    return dict(sorted(bases.items()))


def _less(bases: Mapping[int, int], discount: int) -> dict[int, int]:
    """The bases less a discount in proportion; cents that do not divide go where the largest parts of one are left."""
    whole = sum(bases.values())
    if not whole:
        return dict(bases)
    parts = {ppm: divmod(cents * discount, whole) for ppm, cents in bases.items()}
    left = discount - sum(part for part, _ in parts.values())
    first = sorted(parts, key=lambda ppm: (-parts[ppm][1], ppm))[:left]
    return {ppm: cents - parts[ppm][0] - (ppm in first) for ppm, cents in bases.items()}


def percent(ppm: int) -> str:
    """A share as a person writes it: 7.25 for 72,500 millionths."""
    whole, rest = divmod(ppm, MILLION // 100)
    return f"{whole}.{rest:04}".rstrip("0").rstrip(".")
