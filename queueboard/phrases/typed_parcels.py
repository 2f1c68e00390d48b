"""Weights and sizes of parcels as a person types them; what can be read two ways is asked back."""

import re
from decimal import ROUND_HALF_UP, Decimal

from queueboard.clean import shown
from queueboard.errors import TypedError
from queueboard.settings.parcel_shapes import HEAVIEST_G, LONGEST_SIDE_MM, SHORTEST_SIDE_MM
from queueboard.values.units import GRAMS_PER_OUNCE, GRAMS_PER_POUND, MM_PER_CM, MM_PER_INCH

WEIGHT_HINT = "900 g, 2.5 kg, 4 lb 8 oz"

_GRAMS_PER = {"g": Decimal(1), "kg": Decimal(1000), "oz": GRAMS_PER_OUNCE, "lb": GRAMS_PER_POUND}
_NUMBER = r"([0-9]{1,6}(?:[.,][0-9]{1,3})?)"
_WEIGHT = re.compile(rf"{_NUMBER}\s*(g|kg|oz|lbs?)(?:\s*{_NUMBER}\s*oz)?")
_SIDES = re.compile(rf"{_NUMBER}\s*[x*×\s]\s*{_NUMBER}\s*[x*×\s]\s*{_NUMBER}\s*(mm|cm|in|\")?")
_MM_PER = {"mm": Decimal(1), "cm": MM_PER_CM, "in": MM_PER_INCH, '"': MM_PER_INCH}


def parse_grams(text: str) -> int:
    """Read a weight such as 900 g, 2.5 kg, 12 oz, 4 lb or 4 lb 8 oz as whole grams, half up; 1 g to 200 kg.

    A number without its unit is asked back, and so is one that may have a sign for thousands.
    """
    typed = text.strip().lower()
    if re.fullmatch(_NUMBER, typed):
        raise TypedError(f"{typed} of what? Type it with its unit: {WEIGHT_HINT}, 12 oz.")
    match = _WEIGHT.fullmatch(typed)
    if match is None or (match[3] is not None and match[2][:2] != "lb"):
        raise TypedError(f"“{shown(text)}” is no weight. Type it with its unit: {WEIGHT_HINT}, 12 oz.")
    unit = match[2].removesuffix("s")
    if re.search(r"[.,][0-9]{3}$", match[1]) and unit != "kg":
        raise TypedError(f"{match[1]} {unit} can be read two ways; type it without a sign for thousands.")
    exact = _number(match[1]) * _GRAMS_PER[unit] + _number(match[3] or "0") * GRAMS_PER_OUNCE
    grams = int(exact.quantize(Decimal(1), rounding=ROUND_HALF_UP))
    if not 1 <= grams <= HEAVIEST_G:
        raise TypedError(f"A weight of {shown(typed)} is outside 1 g to {HEAVIEST_G // 1000} kg. Type it anew.")
    return grams


def parse_sides(text: str, unit: str) -> tuple[int, int, int]:
    """Read length, width and height, 45 x 25 x 10 in the shop's unit (cm or in) or with their own, as whole mm.

    Each is 10 to 2000 mm, half up.
    """
    match = _SIDES.fullmatch(text.strip().lower())
    if match is None:
        raise TypedError(f"“{shown(text)}” is no size. Type three sides in {unit}: 45 x 25 x 10, or with mm, cm or in.")
    per = _MM_PER[match[4] or unit]
    length, width, height = (
        int((_number(side) * per).quantize(Decimal(1), rounding=ROUND_HALF_UP)) for side in match.group(1, 2, 3)
    )
    for side in (length, width, height):
        if not SHORTEST_SIDE_MM <= side <= LONGEST_SIDE_MM:
            raise TypedError(
                f"A side of {side} mm is outside {SHORTEST_SIDE_MM} to {LONGEST_SIDE_MM} mm; cm or inches?"
            )
    return length, width, height


def _number(text: str) -> Decimal:
    return Decimal(text.replace(",", "."))
