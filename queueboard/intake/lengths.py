"""A blade length as it is typed, and the question asked back when cm and inches are in doubt."""

import re
from decimal import ROUND_HALF_UP, Decimal

from queueboard.clean import shown
from queueboard.errors import TypedError
from queueboard.values.units import MM_PER_CM, MM_PER_INCH

SHORTEST_MM, LONGEST_MM = 20, 900
MM_PER = {
    "mm": Decimal(1),
    "cm": MM_PER_CM,
    "in": MM_PER_INCH,
    "inch": MM_PER_INCH,
    "inches": MM_PER_INCH,
    '"': MM_PER_INCH,
}
"""Millimetres in each unit that may be typed."""

_LENGTH = re.compile(r"([0-9]{1,4}(?:[.,][0-9]{1,3})?)\s*(mm|cm|inches|inch|in|\")?")


def looks_like_length(word: str) -> bool:
    """True for `20`, `20,5`, `20cm`, `8in`, `8"`."""
    return _LENGTH.fullmatch(word) is not None


def typed_unit(text: str) -> str | None:
    """The unit that is typed with a length, cm or in; None for a bare number, and for millimetres."""
    match = _LENGTH.fullmatch(text.strip().lower())
    if match is None or match[2] in {None, "mm"}:
        return None
    return "cm" if match[2] == "cm" else "in"


def fits_usual(typed: str, usual_mm: int | None) -> bool:
    """True where a bare number may be the length of such a knife, in cm or in inches; also where none is usual."""
    return usual_mm is None or any(_near(Decimal(typed) * MM_PER[unit], usual_mm) for unit in ("cm", "in"))


def read_length_mm(text: str, *, shop_unit: str, usual_mm: int | None = None, box_unit: str | None = None) -> int:
    """An edge length in the shop's unit (cm or in) or with its own: 20, 20.5, 8 in, 8", 205 mm; 20 to 900 mm.

    Rounded to whole millimetres, half up. A bare number that fits the kind's usual length only in the other unit is
    asked back with a TypedError, as is one out of range. box_unit: what was answered for this box already (cm or in);
    a bare number that fits in it is not asked about again.
    """
    match = _LENGTH.fullmatch(text.strip().lower())
    if match is None:
        raise TypedError(
            f"“{shown(text)}” is no length. Type a number in {shop_unit}, or with its unit: 20 cm, 8 in, 205 mm."
        )
    number = Decimal(match[1].replace(",", "."))
    unit = match[2] or _unit_meant(match[1], number, shop_unit, usual_mm, box_unit)
    exact_mm = number * MM_PER[unit]
    if not SHORTEST_MM <= exact_mm <= LONGEST_MM:
        ends = " to ".join(_short(Decimal(end) / MM_PER[unit]) for end in (SHORTEST_MM, LONGEST_MM))
        raise TypedError(
            f"{match[1]} {unit} is no edge length the shop knows: {ends} {unit}. "
            f"Another unit can be typed with it: 20 cm, 8 in, 205 mm."
        )
    return int(exact_mm.quantize(Decimal(1), rounding=ROUND_HALF_UP))


def _short(number: Decimal) -> str:
    return f"{number.quantize(Decimal('0.1')):f}".removesuffix(".0")


def _unit_meant(typed: str, number: Decimal, shop_unit: str, usual_mm: int | None, box_unit: str | None) -> str:
    """The unit of a bare number; TypedError where only the other unit makes such a knife of it."""
    first = box_unit or shop_unit
    if usual_mm is None or _near(number * MM_PER[first], usual_mm):
        return first
    other = "in" if shop_unit == "cm" else "cm"
    if first == shop_unit and _near(number * MM_PER[other], usual_mm):
        raise TypedError(
            f"Is “{typed}” {typed} {shop_unit} or {typed} {other}? Type {typed}{shop_unit} or {typed}{other}; "
            "it is asked once a box."
        )
    return shop_unit


def _near(length_mm: Decimal, usual_mm: int) -> bool:
    """Within half and twice the usual length: what nobody would look at twice (common practice, no source)."""
    return usual_mm / 2 <= length_mm <= usual_mm * 2
