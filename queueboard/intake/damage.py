"""Damage with a size, as it is typed: `chip 2mm`, `3 chips 1mm`, `tip 3mm`. A bare number is asked back."""

import re
from decimal import Decimal

from queueboard.errors import TypedError
from queueboard.slotted import dataclass
from queueboard.words import Condition

CHIP_WORDS = ("chip", "chips", "chipped")
TIP_WORDS = (("tip", "broken"), ("broken", "tip"), ("tip",))
MOST_CHIPS = 99
LONGEST_TIP_MM = 200
UM_PER_MM = 1000

_SIZE = re.compile(r"([0-9]+(?:[.,][0-9]+)?)(mm)?")
_WHOLE = re.compile(r"[0-9]{1,3}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Chips:
    """Chips as typed."""

    taken: int
    """Words that were read."""
    number: int | None
    """1 to 99; None for `chips 2mm`, which does not say how many."""
    depth_um: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Tip:
    """A broken tip as typed."""

    taken: int
    missing_um: int


def counts_chips(words: list[str]) -> bool:
    """True where the words begin with a number of chips: 3 chips."""
    return len(words) > 1 and _WHOLE.fullmatch(words[0]) is not None and words[1] in CHIP_WORDS


def read_chips(words: list[str], knives: int) -> Chips | None:
    """Chips at the front of the words; None where none stand there, or only a word for them without any size.

    knives: how many the line is about, for the question. TypedError asks what a bare number means.
    """
    counted = counts_chips(words)
    rest = words[1:] if counted else words
    if not rest or rest[0] not in CHIP_WORDS:
        return None
    size = _size(rest[1:])
    if size is None:
        if counted:
            raise TypedError(f"“{words[0]} {rest[0]}”: how deep is the deepest? Type “{words[0]} {rest[0]} 1mm”.")
        return None
    typed, has_unit, taken = size
    if not has_unit:
        raise TypedError(_what_number(" ".join((*words[: int(counted)], rest[0])), typed, knives, counted=counted))
    number = int(words[0]) if counted else 1 if rest[0] == "chip" else None
    if number is not None and not 1 <= number <= MOST_CHIPS:
        raise TypedError(f"{number} chips in one edge? Type 1 to {MOST_CHIPS}.")
    return Chips(taken=int(counted) + 1 + taken, number=number, depth_um=_um(typed))


def read_tip(words: list[str]) -> Tip | None:
    """A broken tip at the front of the words, with what is missing of it; TypedError asks how much it is."""
    begins = next((begin for begin in TIP_WORDS if tuple(words[: len(begin)]) == begin), None)
    if begins is None:
        return None
    size, said = _size(words[len(begins) :]), " ".join(begins)
    if size is None and begins == ("tip",):
        raise TypedError("“tip”: what of it? Type “tip 3mm” for what is missing, “tip rounded” or “tip bent”.")
    if size is None:
        raise TypedError(f"“{said}”: how much of it is missing? Type “{said} 3mm”.")
    typed, has_unit, taken = size
    if not has_unit:
        raise TypedError(f"“{said} {typed}”: are {typed} mm missing? Type “{said} {typed}mm”.")
    if not 0 < _um(typed) <= LONGEST_TIP_MM * UM_PER_MM:
        raise TypedError(f"{typed} mm missing of a tip cannot be right. Type more than 0, at most {LONGEST_TIP_MM} mm.")
    return Tip(taken=len(begins) + taken, missing_um=_um(typed))


def condition_of(depth_um: int) -> Condition:
    """The line of the shop's list for chips so deep: to 1 mm, or 2 to 3 mm; TypedError for what is in none of them."""
    if 0 < depth_um <= UM_PER_MM:
        return Condition.SMALL_CHIPS
    if 2 * UM_PER_MM <= depth_um <= 3 * UM_PER_MM:
        return Condition.BIG_CHIPS
    depth = f"{Decimal(depth_um) / UM_PER_MM:f}"
    raise TypedError(
        f"Chips of {depth} mm are not in the shop's list, which has chips to 1 mm and chips of 2-3 mm. "
        "Type “small chips” or “big chips”, and the rest behind a comma."
    )


def _size(words: list[str]) -> tuple[str, bool, int] | None:
    """The number typed, whether mm stands with it, and how many words that was; None where no number stands."""
    match = _SIZE.fullmatch(words[0]) if words else None
    if match is None:
        return None
    apart = words[1:2] == ["mm"]
    return match[1], match[2] is not None or apart, 2 if apart else 1


def _um(typed: str) -> int:
    return int(Decimal(typed.replace(",", ".")) * UM_PER_MM)


def _what_number(said: str, typed: str, knives: int, *, counted: bool) -> str:
    """The question about a number without a unit, and about whose chip it is where a line has several knives."""
    of_all = f" And have all {knives} knives it, or one?" if knives > 1 else ""
    behind = f" each” when all {knives} have it; one alone gets a line of its own" if knives > 1 else "”"
    if counted:
        return f"“{said} {typed}”: {typed} mm deep?{of_all} Type “{said} {typed}mm{behind}."
    return (
        f"“{said} {typed}”: {typed} chips, or {typed} mm deep?{of_all} "
        f"Type “{said} {typed}mm{behind}, “{typed} chips 1mm” with their depth, “small chips” (to 1 mm) or "
        "“big chips” (2-3 mm)."
    )
