"""What else can be done where a return label dies, in words, with the key behind each."""

from collections.abc import Sequence

from queueboard.phrases.money import money
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture
from queueboard.values.offer import LabelOffer, OfferKind

KEYS = {OfferKind.ALL_TODAY: "c", OfferKind.PART_TODAY: "c", OfferKind.ASK_NEW: "a", OfferKind.SHOP_LABEL: "s"}
"""The keys of the list of labels."""


def offers_words(offers: Sequence[LabelOffer], settings: Settings) -> str:
    """C part today, 9 of 12 ready · a ask for a new label · s shop label, about 17.00 USD; empty without any."""
    return " · ".join(f"{KEYS[offer.kind]} {offer_words(offer, settings)}" for offer in offers)


def offer_words(offer: LabelOffer, settings: Settings) -> str:
    """Part today, 9 of 12 ready; shop label, about 17.00 USD."""
    if offer.kind is OfferKind.PART_TODAY:
        return f"{offer.kind.value}, {offer.ready} of {offer.here} ready"
    if offer.kind is OfferKind.SHOP_LABEL and offer.cents is not None:
        return f"{offer.kind.value}, about {money(offer.cents, settings)}"
    return offer.kind.value


def asked_words(box: BoxPicture) -> str:
    """What is said once the customer is asked: whom to ask, and how it is taken back."""
    phone = f", {box.customer.phone}" if box.customer.phone else ""
    return f"Box {box.box.number}: a new label is to come. u on the board takes it back. Ask {box.customer.name}{phone}"


def to_buy_words(box: BoxPicture, offer: LabelOffer, settings: Settings) -> str:
    """What is said once the shop is to buy a label: at what price, and how it is taken back."""
    price = "" if offer.cents is None else f" at about {money(offer.cents, settings)}"
    return f"Box {box.box.number}: the shop buys a label{price}; + when it is bought. u on the board takes it back."
