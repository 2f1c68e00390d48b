"""The closed lists of words about money and about what an inspection finds; each value is shown on a screen."""

from enum import StrEnum


class MoneySort(StrEnum):
    """What an amount of money is."""

    PAYMENT = "payment"
    DEPOSIT = "deposit"
    REFUND = "refund"


class ChargeSort(StrEnum):
    """What is charged beside the price of a knife (common practice, no source)."""

    CHIPS = "chips"
    TIP = "tip"
    RUST = "rust"
    THINNING = "thinning"
    BOLSTER = "bolster"
    STRAIGHTENING = "straightening"
    HANDLE = "handle"
    RUSH = "rush"
    MINIMUM = "up to the minimum"
    DISCOUNT = "discount"
    SHIPPING = "return shipping"
    OTHER = "other"


class Finding(StrEnum):
    """What an inspection finds on a knife beside its condition (common practice, no source)."""

    VERY_DULL = "very dull"
    ROLLED = "edge rolled"
    BURNT = "edge burnt"
    TIP_ROUNDED = "tip rounded"
    TIP_BROKEN = "tip broken"
    TIP_BENT = "tip bent"
    BENT = "blade bent"
    WARPED = "blade warped"
    OVER_GROUND = "over-ground"
    RECURVE = "recurve at the heel"
    PITTED = "pitted"
    HANDLE_LOOSE = "handle loose"
    HANDLE_CRACKED = "handle cracked"
    HANDLE_MELTED = "handle melted"
    RIVET_GONE = "rivet gone"
    WET_SWOLLEN = "handle wet-swollen"
    FRECKLES = "rust freckles"
    EDGE_PITS = "rust pits at the edge"
    PLAY = "pivot has play"
    NO_LOCK = "does not lock"
    HEIRLOOM = "heirloom, slow down"
    THIN = "to be thinned"
    PHOTO = "photo taken"
