"""The price list beside the flat prices, read from a table that may be missing."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from queueboard.priced_words import ChargeSort
from queueboard.settings.fields import Table, decimal_of, meant, written
from queueboard.settings.price_list import LengthPrice, Prices, ShippingBand
from queueboard.settings.reading_work import EDGES
from queueboard.settings.shapes import Kind
from queueboard.words import Edge, Rounding, Taxed

_ADD_ONS: Mapping[str, ChargeSort] = {
    "tip": ChargeSort.TIP,
    "rust": ChargeSort.RUST,
    "thinning": ChargeSort.THINNING,
    "bolster": ChargeSort.BOLSTER,
    "straightening": ChargeSort.STRAIGHTENING,
    "handle": ChargeSort.HANDLE,
}
_TAXED: Mapping[str, Taxed] = {taxed.name.lower(): taxed for taxed in Taxed}
_KNOWN = (
    *("rounding", "length_step", "by_length", "edges", "chip_mm", *_ADD_ONS, "rush_percent", "minimum"),
    *("mail_minimum", "shipping", "free_shipping_from", "tax", "hold_after_days"),
)


def read_prices(whole: Table, kinds: Sequence[Kind]) -> Prices:
    """The shop's price list; what is not written is not asked for."""
    if not whole.has("prices"):
        return Prices()
    table = whole.table("prices")
    table.only(*_KNOWN)
    return Prices(
        rounding=_rounding(table) if table.has("rounding") else Rounding.HALF_UP,
        by_length=_by_length(table, kinds),
        length_step=_length_step(table) if table.has("length_step") else Decimal(1),
        edge_percent=_edges(table),
        chip_mm_cents=_cents(table, "chip_mm") or 0,
        add_on_cents={sort: table.cents(name) for name, sort in _ADD_ONS.items() if table.has(name)},
        rush_percent=table.whole("rush_percent", 0, 200, "percent") if table.has("rush_percent") else 0,
        minimum_cents=_cents(table, "minimum") or 0,
        mail_minimum_cents=_cents(table, "mail_minimum"),
        shipping=_shipping(table),
        free_shipping_cents=_cents(table, "free_shipping_from"),
        tax_ppm=_tax(table),
        hold_after_days=table.whole("hold_after_days", 0, 999, "days") if table.has("hold_after_days") else 0,
    )


def _cents(table: Table, key: str) -> int | None:
    return table.cents(key) if table.has(key) else None


def _rounding(table: Table) -> Rounding:
    name = table.text("rounding", longest=20)
    if name not in list(Rounding):
        hint = meant(name, list(Rounding), f"write one of {', '.join(Rounding)}")
        raise table.wrong(f"{written(name)} is no way of rounding; {hint}", "rounding")
    return Rounding(name)


def _by_length(table: Table, kinds: Sequence[Kind]) -> Mapping[str, LengthPrice]:
    if not table.has("by_length"):
        return {}
    inner = table.table("by_length")
    inner.only(*(kind.name for kind in kinds))
    return {name: _length_price(inner.table(name)) for name in inner.values}


def _length_price(table: Table) -> LengthPrice:
    table.only("base", "each")
    return LengthPrice(base_cents=table.cents("base"), each_cents=table.cents("each"))


def _length_step(table: Table) -> Decimal:
    number = decimal_of(table.need("length_step"))
    if number is None or not Decimal("0.1") <= number <= 10:  # low, value, high reads as a range
        raise table.wrong(
            f"length_step is a number from 0.1 to 10 in the shop's unit, not {written(table.need('length_step'))}",
            "length_step",
        )
    return number


def _edges(table: Table) -> Mapping[Edge, int]:
    if not table.has("edges"):
        return {}
    inner = table.table("edges")
    inner.only(*EDGES)
    return {edge: inner.whole(name, 50, 500, "percent") for name, edge in EDGES.items() if inner.has(name)}


def _shipping(table: Table) -> tuple[ShippingBand, ...]:
    bands: list[ShippingBand] = []
    for inner in table.tables("shipping"):
        inner.only("knives", "price")
        band = ShippingBand(knives=inner.whole("knives", 1, 999, "knives"), cents=inner.cents("price"))
        if bands and band.knives <= bands[-1].knives:
            raise inner.wrong(
                f"shipping up to {band.knives} knives stands behind up to {bands[-1].knives}; write the fewest first",
                "knives",
            )
        bands.append(band)
    return tuple(bands)


def _tax(table: Table) -> Mapping[Taxed, int]:
    if not table.has("tax"):
        return {}
    inner = table.table("tax")
    inner.only(*_TAXED)
    return {taxed: _rate(inner, name) for name, taxed in _TAXED.items() if inner.has(name)}


def _rate(table: Table, key: str) -> int:
    """A percentage such as 7.25 in millionths."""
    number = decimal_of(table.need(key))
    if number is None or not 0 <= number <= 100 or number * 10_000 != int(number * 10_000):
        raise table.wrong(
            f"{key} is a percentage from 0 to 100 with at most four digits behind the point, "
            f"not {written(table.need(key))}",
            key,
        )
    return int(number * 10_000)
