"""What a box comes to: each sum on its own, and all of them under any order."""

from dataclasses import replace
from datetime import UTC, datetime
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.money.bill import Bill, percent, totals
from queueboard.priced_words import ChargeSort, MoneySort
from queueboard.values.box import Charge, Payment
from queueboard.values.knife import Knife
from queueboard.values.totals import Totals
from queueboard.words import DeclineReason, PayWay, Rounding
from tests.pictures import knife

NOW = datetime(2026, 11, 10, 9, 20, tzinfo=UTC)
KNIVES = tuple(knife(f"214-{place}", price_cents=cents) for place, cents in enumerate((900, 900, 500, 1200), start=1))
"""Two chef's knives, a paring and a bread knife."""


def charge(
    sort: ChargeSort, cents: int = 0, *, ppm: int | None = None, of: Knife | None = None, tax_ppm: int = 0, id: int = 1
) -> Charge:
    """A charge on a knife, or on the whole box."""
    whose = None if of is None else of.id
    return Charge(
        id=id, version=1, box_id=214, knife_id=whose, sort=sort, text="", cents=cents, ppm=ppm, tax_ppm=tax_ppm
    )


def paid(cents: int, sort: MoneySort = MoneySort.PAYMENT) -> Payment:
    """Money taken or given back."""
    return Payment(id=1, box_id=214, cents=cents, way=PayWay.CASH, at=NOW, by="J", sort=sort)


def test_knives_and_a_chip_come_to_41() -> None:
    """Two chef's knives, a paring and a bread knife are 35.00, with a chip of two millimetres 41.00."""
    assert totals(Bill(knives=KNIVES)).total_cents == 3500

    chipped = totals(Bill(knives=KNIVES, charges=(charge(ChargeSort.CHIPS, 600, of=KNIVES[0]),)))

    assert (chipped.knives_cents, chipped.add_ons_cents, chipped.total_cents) == (3500, 600, 4100)


def test_what_is_free_takes_its_add_ons_along() -> None:
    """A knife that was declined, is looked for or is priced apart costs nothing, and nothing of its chips either."""
    for changes in ({"declined": DeclineReason.CRACKED}, {"looking_for": True}, {"apart": True}):
        free = replace(KNIVES[0], **changes)
        bill = Bill(knives=(free, *KNIVES[1:]), charges=(charge(ChargeSort.CHIPS, 600, of=free),))
        assert totals(bill).total_cents == 2600


def test_a_rush_is_a_share_of_the_work() -> None:
    """Half as much again on the knives and their add-ons; shipping is no work."""
    charges = (
        charge(ChargeSort.CHIPS, 600, of=KNIVES[0]),
        charge(ChargeSort.RUSH, ppm=500_000),
        charge(ChargeSort.SHIPPING, 1200),
    )

    assert totals(Bill(knives=KNIVES, charges=charges)) == Totals(
        knives_cents=3500, add_ons_cents=600, rush_cents=2050, shipping_cents=1200
    )


def test_the_minimum_lifts_what_is_less_and_follows_the_work() -> None:
    """A minimum adds what is missing, nothing where there is enough, and nothing where no work is to be paid."""
    lowest = charge(ChargeSort.MINIMUM, 1500)

    assert totals(Bill(knives=KNIVES[:1], charges=(lowest,))).minimum_cents == 600
    assert totals(Bill(knives=KNIVES, charges=(lowest,))).minimum_cents == 0
    assert totals(Bill(knives=(replace(KNIVES[0], declined=DeclineReason.CRACKED),), charges=(lowest,))) == Totals()


def test_a_discount_never_goes_below_nothing() -> None:
    """A discount comes off the work, in percent or as an amount, and at most all of it; shipping stays."""
    for discount, work in (
        (charge(ChargeSort.DISCOUNT, ppm=100_000), 3150),
        (charge(ChargeSort.DISCOUNT, 500), 3000),
        (charge(ChargeSort.DISCOUNT, 9_900), 0),
    ):
        sums = totals(Bill(knives=KNIVES, charges=(discount, charge(ChargeSort.SHIPPING, 1200))))
        assert (sums.work_cents, sums.total_cents) == (work, work + 1200)


def test_tax_is_put_on_once_a_rate() -> None:
    """Each rate is taken of the sum of its lines, not of each: 7.25 % of 35.00 is 2.54, and 5 % of 12.00 is 0.60."""
    taxed = tuple(replace(one, tax_ppm=72_500) for one in KNIVES)
    charges = (charge(ChargeSort.SHIPPING, 1200, tax_ppm=50_000),)

    assert totals(Bill(knives=taxed, charges=charges)).tax_cents == 254 + 60


def test_a_discount_lowers_the_tax_in_proportion() -> None:
    """A discount on lines of two rates is spread over both: a tenth off each before the tax."""
    taxed = (replace(KNIVES[0], tax_ppm=100_000), replace(KNIVES[1], tax_ppm=200_000))

    sums = totals(Bill(knives=taxed, charges=(charge(ChargeSort.DISCOUNT, ppm=100_000),)))

    assert (sums.work_cents, sums.tax_cents) == (1620, 81 + 162)


@pytest.mark.parametrize(
    ("rule", "tax"), [(Rounding.HALF_UP, 3), (Rounding.HALF_EVEN, 2), (Rounding.DOWN, 2), (Rounding.UP, 3)]
)
def test_a_tie_goes_as_the_shop_rounds(rule: Rounding, tax: int) -> None:
    """Half a cent of tax, 5 % of 0.50, goes as the rule of the box says."""
    one = replace(KNIVES[0], price_cents=50, tax_ppm=50_000)

    assert totals(Bill(knives=(one,), rounding=rule)).tax_cents == tax


def test_five_cents_round_the_total_and_say_so() -> None:
    """Where the shop rounds to five cents the total ends in 0 or 5, and the difference stands in the sums."""
    odd = replace(KNIVES[0], price_cents=908)

    sums = totals(Bill(knives=(odd,), rounding=Rounding.FIVE))

    assert (sums.total_cents, sums.rounding_cents) == (910, 2)


def test_refunds_come_off_what_is_paid() -> None:
    """A deposit and a payment add to what is paid, a refund comes off it."""
    payments = (paid(2000, MoneySort.DEPOSIT), paid(1500), paid(300, MoneySort.REFUND))

    sums = totals(Bill(knives=KNIVES, payments=payments))

    assert (sums.paid_cents, sums.owed_cents) == (3200, 300)


def test_a_part_of_a_bill_is_a_bill() -> None:
    """Knives left out leave with their add-ons; those of one part and the other together are the whole."""
    bill = Bill(knives=KNIVES, charges=(charge(ChargeSort.CHIPS, 600, of=KNIVES[0]),))
    first = {KNIVES[0].id}

    assert totals(bill.only(first)).total_cents == 1500
    assert totals(bill.without(first)).total_cents == 2600


@pytest.mark.parametrize(("ppm", "words"), [(72_500, "7.25"), (100_000, "10"), (1, "0.0001"), (0, "0")])
def test_a_share_is_written_as_a_person_does(ppm: int, words: str) -> None:
    """Millionths are written as a percentage without needless noughts."""
    assert percent(ppm) == words


RATES = st.sampled_from((0, 50_000, 72_500, 190_000))
MONEY_KNIVES = st.lists(
    st.builds(lambda cents, tax, declined: (cents, tax, declined), st.integers(0, 99_999), RATES, st.booleans()),
    min_size=1,
    max_size=8,
).map(
    lambda rows: tuple(
        replace(
            knife(f"214-{place}", price_cents=cents, declined=DeclineReason.CRACKED if declined else None), tax_ppm=tax
        )
        for place, (cents, tax, declined) in enumerate(rows, start=1)
    )
)


@st.composite
def bills(draw: st.DrawFn) -> Bill:
    """Any bill: knives, add-ons on them, what concerns the box, money in and out."""
    knives = draw(MONEY_KNIVES)
    add_ons = draw(st.lists(st.tuples(st.sampled_from(knives), st.integers(0, 9_999), RATES), max_size=5))
    whole = draw(
        st.lists(
            st.one_of(
                st.builds(lambda ppm, tax: (ChargeSort.RUSH, 0, ppm, tax), st.integers(0, 1_000_000), RATES),
                st.builds(lambda ppm: (ChargeSort.DISCOUNT, 0, ppm, 0), st.integers(0, 1_000_000)),
                st.builds(lambda cents: (ChargeSort.DISCOUNT, cents, None, 0), st.integers(0, 99_999)),
                st.builds(lambda cents, tax: (ChargeSort.MINIMUM, cents, None, tax), st.integers(0, 99_999), RATES),
                st.builds(lambda cents, tax: (ChargeSort.SHIPPING, cents, None, tax), st.integers(0, 9_999), RATES),
                st.builds(lambda cents, tax: (ChargeSort.OTHER, cents, None, tax), st.integers(0, 9_999), RATES),
            ),
            max_size=5,
        )
    )
    charges = [
        *(charge(ChargeSort.RUST, cents, of=of, tax_ppm=tax) for of, cents, tax in add_ons),
        *(charge(sort, cents, ppm=ppm, tax_ppm=tax) for sort, cents, ppm, tax in whole),
    ]
    money = draw(st.lists(st.tuples(st.integers(1, 99_999), st.sampled_from(tuple(MoneySort))), max_size=4))
    return Bill(
        knives=knives,
        charges=tuple(replace(one, id=place) for place, one in enumerate(charges, start=1)),
        payments=tuple(paid(cents, sort) for cents, sort in money),
        rounding=draw(st.sampled_from(tuple(Rounding))),
    )


@given(
    bills().flatmap(
        lambda bill: st.tuples(st.just(bill), *map(st.permutations, (bill.knives, bill.charges, bill.payments)))
    )
)
def test_totals_are_the_same_under_any_order(
    mixed: tuple[Bill, list[Knife], list[Charge], list[Payment]],
) -> None:
    """Whatever was charged or paid first, the sums are the same to the cent."""
    bill, knives, charges, payments = mixed
    other = replace(bill, knives=tuple(knives), charges=tuple(charges), payments=tuple(payments))

    assert totals(other) == totals(bill)


@given(bills())
def test_sums_add_up_and_stay_in_bounds(bill: Bill) -> None:
    """The total is the sum of its parts, owed is the total less what is paid, and no work is less than nothing."""
    sums = totals(bill)

    assert sums.work_cents >= 0
    assert 0 <= sums.discount_cents <= sums.work_cents + sums.discount_cents
    parts = sums.knives_cents + sums.add_ons_cents + sums.rush_cents + sums.minimum_cents - sums.discount_cents
    assert sums.total_cents == parts + sums.shipping_cents + sums.tax_cents + sums.rounding_cents
    assert sums.owed_cents + sums.paid_cents == sums.total_cents
    assert abs(sums.rounding_cents) <= 2
    assert sums.knives_cents == sum(one.price_cents for one in bill.knives if one.declined is None)


@given(bills())
def test_tax_is_within_a_cent_a_rate_of_the_exact_one(bill: Bill) -> None:
    """Rounding once a rate, the tax strays from the exact one by no more than a cent for each rate that there is."""
    sums = totals(bill)
    gross = sums.work_cents + sums.discount_cents
    kept = Fraction(sums.work_cents, gross) if gross else Fraction(1)
    done = sums.knives_cents + sums.add_ons_cents
    lines = [(one.tax_ppm, Fraction(one.charged_cents)) for one in bill.knives]
    lines += [(one.tax_ppm, Fraction(one.cents)) for one in bill.add_ons()]
    rushes = bill.of_sort(ChargeSort.RUSH)
    lines += [(one.tax_ppm, Fraction(done * (one.ppm or 0), 1_000_000)) for one in rushes]
    lowest = max(
        (one for one in bill.of_sort(ChargeSort.MINIMUM)), key=lambda one: (one.cents, one.tax_ppm), default=None
    )
    lines += [] if lowest is None else [(lowest.tax_ppm, Fraction(sums.minimum_cents))]
    exact = sum((kept * cents * ppm / 1_000_000 for ppm, cents in lines), Fraction())
    exact += sum(
        (Fraction(one.cents * one.tax_ppm, 1_000_000) for one in bill.of_sort(ChargeSort.SHIPPING)), Fraction()
    )

    assert abs(sums.tax_cents - exact) <= 4 + len(rushes)
