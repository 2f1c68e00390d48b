"""Money in words; always from whole cents."""

from queueboard.money.bill import percent
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture
from queueboard.values.new import NewCharge


def amount(cents: int) -> str:
    """41.00, with a minus in front when it is negative."""
    whole, rest = divmod(abs(cents), 100)
    return f"{'-' if cents < 0 else ''}{whole}.{rest:02}"


def money(cents: int, settings: Settings) -> str:
    """41.00 EUR, with the shop's own sign or code behind it."""
    return f"{amount(cents)} {settings.currency}".rstrip()


def charge_text(charge: NewCharge) -> str:
    """A charge as it is typed into a field: 6.00, or 50 %."""
    return amount(charge.cents) if charge.ppm is None else f"{percent(charge.ppm)} %"


def owed_words(cents: int, settings: Settings) -> str:
    """What is still to be paid: 41.00 EUR to pay; paid; 2.00 EUR too much paid."""
    if cents > 0:
        return f"{money(cents, settings)} to pay"
    return "paid" if cents == 0 else f"{money(-cents, settings)} too much paid"


def too_much_words(cents: int, owed_cents: int, settings: Settings) -> str:
    """What is asked back before more money is taken than is owed."""
    owed = f"{money(owed_cents, settings)} is owed" if owed_cents > 0 else "nothing is owed"
    return f"{owed[0].upper()}{owed[1:]}, not {money(cents, settings)}. The same key once more takes it all the same."


def credit_words(cents: int, settings: Settings) -> str:
    """What is asked back before a box leaves for which more was paid than it comes to."""
    return (
        f"{money(cents, settings)} too much was paid: give it back first (. leaves, then y and ↑ on the box). "
        "The same key once more lets it go as it is."
    )


def box_owed_words(box: BoxPicture, settings: Settings) -> str:
    """What a box still has to pay; not priced yet before it is opened, nothing to pay where nothing is charged."""
    if not box.box.opened:
        return "not priced yet"
    return owed_words(box.owed_cents, settings) if box.price_cents or box.paid_cents else "nothing to pay"


def box_money_words(box: BoxPicture, settings: Settings) -> str:
    """The money of a box in one line: 86.00 EUR, 40.00 paid, 46.00 EUR to pay; 86.00 EUR, paid."""
    owed = box_owed_words(box, settings)
    if not box.paid_cents:
        return owed
    paid = "" if owed == "paid" else f"{amount(box.paid_cents)} paid, "
    return f"{money(box.price_cents, settings)}, {paid}{owed}"
