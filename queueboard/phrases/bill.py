"""What a box is charged for, in words: its charges and sums, from whole cents; people's words last in each."""

from queueboard.money.bill import percent
from queueboard.phrases.dates import when_words
from queueboard.phrases.money import amount, money
from queueboard.priced_words import ChargeSort, MoneySort
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.box import Charge, Payment
from queueboard.values.knife import Knife
from queueboard.values.totals import Totals


def charge_words(charge: Charge, box: BoxPicture) -> str:
    """One charge as it was told: 214-1 chips 6.00, 2 mm deep; discount 10 %, regular; return shipping 12.00."""
    tag = next((f"{knife.tag} " for knife in box.knives if knife.id == charge.knife_id), "")
    return f"{tag}{_named(charge)}"


def _named(charge: Charge) -> str:
    told = amount(charge.cents) if charge.ppm is None else f"{percent(charge.ppm)} %"
    of = " of" if charge.sort is ChargeSort.MINIMUM else ""
    tax = f" and {percent(charge.tax_ppm)} % tax" if charge.tax_ppm else ""
    return f"{charge.sort.value}{of} {told}{tax}" + (f", {charge.text}" if charge.text else "")


def add_on_words(knife: Knife, box: BoxPicture) -> str:
    """What is charged for a knife beside its price: chips 6.00, 2 mm deep; rust 4.00."""
    return "; ".join(_named(charge) for charge in box.charges if charge.knife_id == knife.id)


def price_words(knife: Knife, box: BoxPicture, settings: Settings) -> str:
    """The price of a knife with its add-ons in a narrow column: 9.00 USD, 9.00+6.00, 8.00 apart, free."""
    add_ons = sum(charge.cents for charge in box.charges if charge.knife_id == knife.id)
    if knife.declined is not None:
        return "free"
    if knife.apart:
        return f"{amount(knife.price_cents + add_ons)} apart"
    return f"{amount(knife.price_cents)}+{amount(add_ons)}" if add_ons else money(knife.price_cents, settings)


def sums_words(totals: Totals, settings: Settings) -> str:
    """What a total is made of: knives 35.00, add-ons 6.00, shipping 12.00, tax 2.97 = 55.97 USD.

    Empty where it is the knives' prices alone.
    """
    return f"{parts_words(totals)} {settings.currency}".rstrip() if not totals.plain else ""


def parts_words(totals: Totals) -> str:
    """The same where the next line names the currency: knives 35.00, add-ons 6.00 = 41.00; empty as there."""
    if totals.plain:
        return ""
    parts = (
        ("knives", totals.knives_cents),
        ("add-ons", totals.add_ons_cents),
        ("rush", totals.rush_cents),
        ("minimum", totals.minimum_cents),
        ("discount", -totals.discount_cents),
        ("shipping", totals.shipping_cents),
        ("tax", totals.tax_cents),
        ("rounding", totals.rounding_cents),
    )
    said = ", ".join(f"{name} {amount(cents)}" for name, cents in parts if cents or name == "knives")
    return f"{said} = {amount(totals.total_cents)}"


def bill_lines(box: BoxPicture) -> tuple[str, ...]:
    """What is charged for the whole box, in a line; none where nothing is. What a knife adds stands with the knife."""
    idle = ChargeSort.MINIMUM if not box.totals.minimum_cents else None  # a minimum that lifts nothing is no charge
    own = [charge_words(one, box) for one in box.charges if one.knife_id is None and one.sort is not idle]
    return (f"charged: {'; '.join(own)}",) if own else ()


def limit_words(box: BoxPicture, settings: Settings) -> str:
    """The most that the customer agreed to; above it what to do. Empty where nothing was agreed."""
    limit = box.box.not_above_cents
    if limit is None:
        return ""
    agreed = money(limit, settings)
    if not box.above_limit:
        return f"not above {agreed}"
    return f"ABOVE LIMIT: {money(box.price_cents, settings)}, agreed up to {agreed}. Call; w lets it wait"


def payment_words(paid: Payment, picture: Picture) -> str:
    """Paid 20.00 USD cash, today 09:20, J; deposit ...; given back ..."""
    named = {MoneySort.PAYMENT: "paid", MoneySort.DEPOSIT: "deposit", MoneySort.REFUND: "given back"}[paid.sort]
    when = when_words(paid.at.astimezone(picture.now.tzinfo), picture.now)
    return f"{named} {money(paid.cents, picture.settings)} {paid.way.value}, {when}, {paid.by}"
