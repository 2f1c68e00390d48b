"""The shop's price list: flat and by length, by edge, add-ons, and what concerns the whole box."""

from dataclasses import replace
from decimal import Decimal

import pytest

from queueboard.intake.lengths import read_length_mm
from queueboard.money.pricing import charged_length, minimum_cents, quote, shipping_cents, tax_ppm, whole_box_charges
from queueboard.priced_words import ChargeSort, Finding
from queueboard.settings.price_list import LengthPrice, Prices, ShippingBand
from queueboard.settings.shapes import Settings
from queueboard.values.new import NewCharge, NewKnife
from queueboard.words import CameBy, Edge, Rounding, Taxed
from tests.shop_settings import KINDS, settings

PRICES = Prices(
    by_length={"bread": LengthPrice(base_cents=300, each_cents=100)},
    edge_percent={Edge.SERRATED: 150, Edge.SINGLE_LEFT: 200},
    chip_mm_cents=300,
    add_on_cents={ChargeSort.TIP: 700, ChargeSort.RUST: 400},
    rush_percent=50,
    minimum_cents=500,
    mail_minimum_cents=1500,
    shipping=(ShippingBand(knives=3, cents=1200), ShippingBand(knives=9, cents=1700)),
    free_shipping_cents=12_000,
)
CHEF, BREAD = KINDS[0], KINDS[3]


def shop(prices: Prices = PRICES, unit: str = "in") -> Settings:
    """The small shop with a price list."""
    return replace(settings(length_unit=unit), prices=prices)


def chef(**changes: object) -> NewKnife:
    """A chef's knife."""
    return replace(NewKnife(kind="chef", edge=Edge.PLAIN), **changes)  # type: ignore[arg-type]  # a test's own words


def test_a_flat_price_is_the_kinds() -> None:
    """A kind without a price by length costs its flat price, whatever its length."""
    assert quote(shop(), CHEF, chef(length_mm=300)).cents == 900


def test_a_bread_knife_of_eight_inches_is_eleven() -> None:
    """Three and one an inch make 11.00 for eight inches (common practice, no source), and 12.00 for a bit more."""
    bread = NewKnife(kind="bread", edge=Edge.SERRATED, length_mm=203)

    assert quote(shop(), BREAD, bread).cents == 1100
    assert quote(shop(), BREAD, replace(bread, length_mm=206)).cents == 1200


def test_a_length_that_nobody_measured_is_the_usual_one() -> None:
    """Without a length the kind's usual one counts: 230 mm are charged as 10 inches."""
    assert quote(shop(), BREAD, NewKnife(kind="bread", edge=Edge.SERRATED)).cents == 1300


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("halves", range(4, 70))
def test_a_typed_length_is_charged_as_typed(unit: str, halves: int) -> None:
    """Half and whole inches and centimetres are charged as typed, though they are stored in whole millimetres."""
    typed = Decimal(halves) / 2
    by_halves = shop(replace(PRICES, length_step=Decimal("0.5")), unit)
    stored_mm = read_length_mm(f"{typed} {unit}", shop_unit=unit)

    assert charged_length(by_halves, stored_mm) == typed


def test_an_odd_edge_costs_its_share() -> None:
    """An edge that the kind does not usually have costs its percentage; the usual one is in the price."""
    assert quote(shop(), CHEF, chef(edge=Edge.SERRATED)).price_cents == 1350
    assert quote(shop(), CHEF, chef(edge=Edge.SCALLOPED)).price_cents == 900
    assert quote(shop(), BREAD, NewKnife(kind="bread", edge=Edge.SERRATED, length_mm=203)).price_cents == 1100


@pytest.mark.parametrize(("um", "cents"), [(2000, 600), (500, 150), (1000, 300), (3500, 1050)])
def test_chips_cost_by_the_deepest(um: int, cents: int) -> None:
    """Two millimetres at 3.00 are 6.00, half a one is 1.50."""
    told = quote(shop(), CHEF, chef(chip_um=um, chips=3))

    assert [(one.sort, one.cents) for one in told.add_ons] == [(ChargeSort.CHIPS, cents)]
    assert told.cents == 900 + cents


def test_findings_are_charged_where_the_list_has_a_price() -> None:
    """Rust is charged once however it is found; what has no price on the list costs nothing."""
    found = chef(findings=(Finding.FRECKLES, Finding.PITTED, Finding.BENT, Finding.HEIRLOOM), tip_um=5000)

    assert quote(shop(), CHEF, found).add_ons == (
        NewCharge(sort=ChargeSort.TIP, cents=700, text="5 mm missing"),
        NewCharge(sort=ChargeSort.RUST, cents=400),
    )


def test_a_price_typed_by_hand_holds() -> None:
    """What was typed takes the place of the list's price; add-ons come on top."""
    assert quote(shop(), CHEF, chef(price_cents=0, chip_um=2000)).cents == 600


def test_nothing_is_asked_beside_the_flat_price_without_a_list() -> None:
    """A shop that wrote no prices but those of its kinds asks nothing more."""
    plain = shop(Prices())
    told = quote(plain, CHEF, chef(chip_um=2000, tip_um=900, findings=tuple(Finding), edge=Edge.SERRATED))

    assert (told.cents, told.add_ons) == (900, ())
    assert not whole_box_charges(Prices(), came_by=CameBy.MAIL, rush=True, shop_ships=True, quotes=(told,))


def test_what_concerns_the_whole_box() -> None:
    """A rush by mail in the shop's own parcel: a share, the minimum for mail, and the band for its knives."""
    told = quote(shop(), CHEF, chef())

    assert whole_box_charges(PRICES, came_by=CameBy.MAIL, rush=True, shop_ships=True, quotes=(told,) * 4) == (
        NewCharge(sort=ChargeSort.RUSH, ppm=500_000),
        NewCharge(sort=ChargeSort.MINIMUM, cents=1500),
        NewCharge(sort=ChargeSort.SHIPPING, cents=1700),
    )
    assert minimum_cents(PRICES, CameBy.COUNTER) == 500


@pytest.mark.parametrize(
    ("knives", "work", "cents"), [(1, 900, 1200), (3, 900, 1200), (4, 900, 1700), (10, 900, None), (4, 12_000, 0)]
)
def test_the_way_back_costs_by_bands(knives: int, work: int, cents: int | None) -> None:
    """The first band that holds the knives; free from so much work on; by hand beyond the last band."""
    assert shipping_cents(PRICES, knives, work) == cents


def test_tax_is_off_unless_typed() -> None:
    """Without a rate nothing is taxed; a rate counts for its kind of line alone."""
    assert tax_ppm(PRICES, None) == 0
    repairs = replace(PRICES, tax_ppm={Taxed.ADD_ONS: 72_500})
    assert [tax_ppm(repairs, sort) for sort in (None, ChargeSort.CHIPS, ChargeSort.SHIPPING)] == [0, 72_500, 0]


@pytest.mark.parametrize(("rule", "cents"), [(Rounding.HALF_UP, 2), (Rounding.HALF_EVEN, 2), (Rounding.DOWN, 1)])
def test_parts_of_a_cent_go_as_the_shop_rounds(rule: Rounding, cents: int) -> None:
    """A chip of half a millimetre at 0.03 is 1.5 cents, made whole by the shop's rule."""
    told = quote(shop(replace(PRICES, chip_mm_cents=3, rounding=rule)), CHEF, chef(chip_um=500))

    assert told.add_ons[0].cents == cents
