"""A blade length as it stands in a typed line, and the question asked back when cm and inches are in doubt."""

import re
from decimal import ROUND_HALF_UP, Decimal

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

_LENGTH = re.compile(r"(\d{1,4}(?:[.,]\d{1,2})?)(mm|cm|inches|inch|in|\")?")


def looks_like_length(word: str) -> bool:
    """True for `20`, `20,5`, `20cm`, `8in`, `8"`."""
    return _LENGTH.fullmatch(word) is not None


def read_length_mm(word: str, unit_word: str, *, shop_unit: str, usual_mm: int | None) -> int:
    """The length in mm, 20 to 900.

    `unit_word` is the unit that stood apart, or empty; `shop_unit` (cm or in) holds where none was typed. A bare number
    that fits the kind's usual length only in the other unit is asked back with a TypedError, as is one out of range.
    """
    match = _LENGTH.fullmatch(word)
    if match is None:
        raise TypedError(f"“{word}” is not a length. Type it like 20, 20.5, 20cm or 8in.")
    number = Decimal(match[1].replace(",", "."))
    unit = match[2] or unit_word
    if not unit and usual_mm is not None:
        _ask_unit(match[1], number, shop_unit, usual_mm)
    length_mm = int((number * MM_PER[unit or shop_unit]).quantize(Decimal(1), rounding=ROUND_HALF_UP))
    if not SHORTEST_MM <= length_mm <= LONGEST_MM:
        raise TypedError(
            f"A knife of {match[1]} {unit or shop_unit}? Lengths go from 2 to 90 cm (0.8 to 35.4 in); type it again."
        )
    return length_mm


def _ask_unit(typed: str, number: Decimal, shop_unit: str, usual_mm: int) -> None:
    other = "in" if shop_unit == "cm" else "cm"
    if not _near(number * MM_PER[shop_unit], usual_mm) and _near(number * MM_PER[other], usual_mm):
        raise TypedError(
            f"Is “{typed}” {typed} {shop_unit} or {typed} {other}? Type {typed}{shop_unit} or {typed}{other}."
        )


def _near(length_mm: Decimal, usual_mm: int) -> bool:
    """Within half and twice the usual length: what nobody would look at twice (common practice, no source)."""
    return usual_mm / 2 <= length_mm <= usual_mm * 2
