"""What the shop's price list says: for a knife with its add-ons, and for what concerns the whole box."""

from collections.abc import Mapping, Sequence
from decimal import ROUND_CEILING, Decimal

from queueboard.money.rounding import whole_cents
from queueboard.priced_words import ChargeSort, Finding
from queueboard.settings.price_list import Prices
from queueboard.settings.shapes import Kind, Settings
from queueboard.slotted import dataclass
from queueboard.values.new import NewCharge, NewKnife
from queueboard.values.units import MM_PER_CM, MM_PER_INCH
from queueboard.words import CameBy, Taxed

FINDS: Mapping[Finding, ChargeSort] = {
    Finding.TIP_BROKEN: ChargeSort.TIP,
    Finding.FRECKLES: ChargeSort.RUST,
    Finding.PITTED: ChargeSort.RUST,
    Finding.EDGE_PITS: ChargeSort.RUST,
    Finding.THIN: ChargeSort.THINNING,
    Finding.RECURVE: ChargeSort.BOLSTER,
    Finding.BENT: ChargeSort.STRAIGHTENING,
    Finding.WARPED: ChargeSort.STRAIGHTENING,
    Finding.TIP_BENT: ChargeSort.STRAIGHTENING,
    Finding.HANDLE_LOOSE: ChargeSort.HANDLE,
    Finding.RIVET_GONE: ChargeSort.HANDLE,
}
"""The work that a finding asks for (common practice, no source); each sort is charged once a knife."""

_HALF_MM = Decimal("0.5")


@dataclass(frozen=True, slots=True, kw_only=True)
class Quote:
    """The price of one knife as it is told and stored."""

    price_cents: int
    add_ons: tuple[NewCharge, ...]

    @property
    def cents(self) -> int:
        """All of it."""
        return self.price_cents + sum(charge.cents for charge in self.add_ons)


def quote(settings: Settings, kind: Kind, knife: NewKnife) -> Quote:
    """A knife by the price list; a price typed by hand takes the place of the list's, and add-ons come on top."""
    listed = list_price(settings, kind, knife) if knife.price_cents is None else knife.price_cents
    return Quote(price_cents=listed, add_ons=_add_ons(settings.prices, knife))


def list_price(settings: Settings, kind: Kind, knife: NewKnife) -> int:
    """The price without add-ons: flat, or by the length; times the share of an edge its kind does not usually have."""
    prices = settings.prices
    length_mm = kind.length_mm if knife.length_mm is None else knife.length_mm
    by_length = prices.by_length.get(kind.name)
    if by_length is None or length_mm is None:
        exact = Decimal(kind.price_cents)
    else:
        exact = by_length.base_cents + by_length.each_cents * charged_length(settings, length_mm)
    if knife.edge is not kind.edge:
        exact = exact * prices.edge_percent.get(knife.edge, 100) / 100
    return whole_cents(exact, prices.rounding)


def charged_length(settings: Settings, length_mm: int) -> Decimal:
    """The length that is paid for, in the shop's unit, up to the next step.

    Lengths are kept in whole millimetres, so that 12 inches are 305 mm: half a millimetre past a step is the step.
    """
    unit_mm = MM_PER_INCH if settings.length_unit == "in" else MM_PER_CM
    step = settings.prices.length_step
    return ((length_mm - _HALF_MM) / unit_mm / step).to_integral_value(rounding=ROUND_CEILING) * step


def _add_ons(prices: Prices, knife: NewKnife) -> tuple[NewCharge, ...]:
    charges: list[NewCharge] = []
    if knife.chip_um is not None and prices.chip_mm_cents:
        cents = whole_cents(Decimal(prices.chip_mm_cents * knife.chip_um) / 1000, prices.rounding)
        charges.append(NewCharge(sort=ChargeSort.CHIPS, cents=cents, text=f"{mm_words(knife.chip_um)} deep"))
    sorts = dict.fromkeys(FINDS[finding] for finding in Finding if finding in knife.findings and finding in FINDS)
    if knife.tip_um is not None:
        sorts = {ChargeSort.TIP: None, **sorts}
    for sort in sorts:
        if prices.add_on_cents.get(sort):
            text = f"{mm_words(knife.tip_um)} missing" if sort is ChargeSort.TIP and knife.tip_um is not None else ""
            charges.append(NewCharge(sort=sort, cents=prices.add_on_cents[sort], text=text))
    return tuple(charges)


def mm_words(um: int) -> str:
    """Micrometres as millimetres: 2 mm, 0.5 mm."""
    whole, rest = divmod(um, 1000)
    return f"{whole}.{rest:03}".rstrip("0").rstrip(".") + " mm"


def whole_box_charges(
    prices: Prices, *, came_by: CameBy, rush: bool, shop_ships: bool, quotes: Sequence[Quote]
) -> tuple[NewCharge, ...]:
    """What the list asks for a whole box: rush, minimum, and the way back where the shop pays the carrier."""
    charges: list[NewCharge] = []
    if rush and prices.rush_percent:
        charges.append(NewCharge(sort=ChargeSort.RUSH, ppm=prices.rush_percent * 10_000))
    lowest = minimum_cents(prices, came_by)
    if lowest:
        charges.append(NewCharge(sort=ChargeSort.MINIMUM, cents=lowest))
    shipping = shipping_cents(prices, len(quotes), sum(one.cents for one in quotes)) if shop_ships else None
    if shipping:
        charges.append(NewCharge(sort=ChargeSort.SHIPPING, cents=shipping))
    return tuple(charges)


def minimum_cents(prices: Prices, came_by: CameBy) -> int:
    """What the work of a box comes to at least."""
    by_mail = came_by is CameBy.MAIL and prices.mail_minimum_cents is not None
    return prices.mail_minimum_cents or 0 if by_mail else prices.minimum_cents


def shipping_cents(prices: Prices, knives: int, work_cents: int) -> int | None:
    """The way back for so many knives; 0 where it is free, None where the list has no band for so many."""
    if prices.free_shipping_cents is not None and work_cents >= prices.free_shipping_cents:
        return 0
    return next((band.cents for band in prices.shipping if knives <= band.knives), None)


def listed_charge(
    prices: Prices, sort: ChargeSort, *, chip_um: int | None, came_by: CameBy, knives: int, work_cents: int
) -> NewCharge | None:
    """What the list asks for a sort of charge; None where it says nothing. Of a chip of unknown depth a millimetre."""
    if sort is ChargeSort.RUSH:
        return NewCharge(sort=sort, ppm=prices.rush_percent * 10_000) if prices.rush_percent else None
    if sort is ChargeSort.CHIPS:
        exact = Decimal(prices.chip_mm_cents * (1000 if chip_um is None else chip_um)) / 1000
        cents: int | None = whole_cents(exact, prices.rounding)
    elif sort is ChargeSort.MINIMUM:
        cents = minimum_cents(prices, came_by)
    elif sort is ChargeSort.SHIPPING:
        cents = shipping_cents(prices, knives, work_cents)
    else:
        cents = prices.add_on_cents.get(sort)
    return NewCharge(sort=sort, cents=cents) if cents else None


def tax_ppm(prices: Prices, sort: ChargeSort | None) -> int:
    """The shop's rate for a sort of charge, or for a knife (None); 0 unless one is typed."""
    if sort is None:
        taxed = Taxed.KNIVES
    elif sort is ChargeSort.SHIPPING:
        taxed = Taxed.SHIPPING
    elif sort is ChargeSort.DISCOUNT:
        return 0  # it comes off what is taxed
    elif sort in {ChargeSort.RUSH, ChargeSort.MINIMUM}:
        taxed = Taxed.KNIVES
    else:
        taxed = Taxed.ADD_ONS
    return prices.tax_ppm.get(taxed, 0)
