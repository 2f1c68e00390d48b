"""Doubtful belts in words."""

from queueboard.abrasives.grit import Grit, Scale
from queueboard.abrasives.order import Trouble
from queueboard.shop.belts import AskedBelt


def belt_words(asked: AskedBelt) -> str:
    """Process plain, belt 2, 800: 800 may be P800 (21.8 um) or CAMI 800 (12.6 um); write which."""
    return f"process {asked.process.name}, belt {asked.doubt.place + 1}, {asked.belt.label}: {_what(asked)}"


def _what(asked: AskedBelt) -> str:
    belt, doubt = asked.belt, asked.doubt
    match doubt.trouble:
        case Trouble.COARSER:
            before = asked.process.belts[doubt.place - 1]
            return (
                f"{belt.grit_um:g} um comes after {before.label} with {before.grit_um:g} um; "
                "each belt is finer than the one before. Worn and demoted on purpose? Then it may stay."
            )
        case Trouble.NO_SCALE:
            meant = " or ".join(_grit_words(grit, belt.label) for grit in doubt.may_mean)
            return f"may be {meant}: not the same grit. Write which; {belt.grit_um:g} um is reckoned with."
        case Trouble.OTHER_SIZE:
            (meant_grit,) = doubt.may_mean
            return (
                f"is {meant_grit.size_um:g} um by its label, {belt.grit_um:g} um by its number. One of them is wrong."
            )


def _grit_words(grit: Grit, label: str) -> str:
    number = label.strip().lstrip("#").strip()
    gap = "" if grit.scale is Scale.P else " "
    return f"{grit.scale.value}{gap}{number} ({grit.size_um:g} um)"
