"""Parcels in words: what they weigh, what their size counts as, and whether that is above the label's limit."""

from decimal import ROUND_HALF_UP, Decimal

from queueboard.settings.shapes import Settings
from queueboard.values.parcel import BySize, ParcelWeight
from queueboard.values.units import GRAMS_PER_POUND, MM_PER_CM, MM_PER_INCH

_TENTH, _HUNDREDTH = Decimal("0.1"), Decimal("0.01")


def grams_words(grams: int) -> str:
    """900 g; from a kilogram on 2.41 kg, all its grams where they are odd: 2.415 kg."""
    return f"{grams} g" if grams < 1000 else f"{_bare(Decimal(grams) / 1000)} kg"


def weight_words(grams: int, settings: Settings) -> str:
    """A weight as the shop reads it: 2.41 kg; where it measures in inches with its pounds, 2.41 kg (5.31 lb)."""
    if settings.length_unit != "in":
        return grams_words(grams)
    pounds = (grams / GRAMS_PER_POUND).quantize(_HUNDREDTH, rounding=ROUND_HALF_UP)
    return f"{grams_words(grams)} ({_bare(pounds)} lb)"


def size_words(size_mm: tuple[int, ...], unit: str) -> str:
    """45 x 25 x 10 cm; 17.7 x 9.8 x 3.9 in."""
    per = MM_PER_INCH if unit == "in" else MM_PER_CM
    sides = ((Decimal(side) / per).quantize(_TENTH, rounding=ROUND_HALF_UP) for side in size_mm)
    return f"{' x '.join(map(_bare, sides))} {unit}"


def parcel_words(weight: ParcelWeight, settings: Settings) -> tuple[str, ...]:
    """The weight, what its size counts as, and a warning where that is above the label's limit; a line each."""
    over = over_words(weight, settings)
    return (*weight_lines(weight, settings), over) if over else weight_lines(weight, settings)


def weight_lines(weight: ParcelWeight, settings: Settings) -> tuple[str, ...]:
    """The weight, and what its size counts as; a line each."""
    return tuple(line for line in (_weight_line(weight, settings), _size_line(weight, settings)) if line)


def over_words(weight: ParcelWeight, settings: Settings) -> str:
    """ABOVE THE LABEL'S LIMIT: 2.72 kg counts, the label takes 2 kg; empty where it is not."""
    if not weight.over_g or weight.limit_g is None:
        return ""
    counts = "counts for its size" if weight.size_counts else "on the scale" if weight.scale_g else "by its parts"
    told = f"{weight_words(weight.billable_g, settings)} {counts}"
    return f"ABOVE THE LABEL'S LIMIT: {told}, the label takes {weight_words(weight.limit_g, settings)}"


def _weight_line(weight: ParcelWeight, settings: Settings) -> str:
    parts = weight.sum
    limit = "" if weight.limit_g is None else f"; the label takes {weight_words(weight.limit_g, settings)}"
    if weight.scale_g is not None:
        told = f"weighs {weight_words(weight.scale_g, settings)} on the scale"
        return f"{told}, {grams_words(parts.all_g)} by its parts{limit}"
    boxes = f"{parts.boxes} boxes" if parts.boxes > 1 else "box"
    things = f" + things {parts.things_g}" if parts.things_g else ""
    told = f"knives {parts.knives_g} + guards and wrap {parts.wrap_g}{things} + {boxes} {parts.box_g} g"
    return f"should weigh {weight_words(parts.all_g, settings)}: {told}{limit}"


def _size_line(weight: ParcelWeight, settings: Settings) -> str:
    if not weight.size_mm:
        return "no size: type it from the parcel" if weight.sum.boxes != 1 and settings.parcels.boxes else ""
    size = size_words(weight.size_mm, settings.length_unit)
    whose = size if weight.measured else f"its box of {size}"
    counted = _counts(weight.by_size, settings)
    larger = f": the {'size' if weight.size_counts else 'weight'} counts, being larger" if counted else ""
    return f"{whose}{counted}{larger}"


def _counts(by_size: BySize | None, settings: Settings) -> str:
    """Counts as 6 lb (18 x 10 x 4 in / 139)."""
    if by_size is None or settings.parcels.volume is None:
        return ""
    unit = "lb" if by_size.unit == "in" else "kg"
    sides = " x ".join(map(_bare, by_size.sides))
    billed = _bare(by_size.billed.quantize(_HUNDREDTH, rounding=ROUND_HALF_UP))
    return f" counts as {billed} {unit} ({sides} {by_size.unit} / {settings.parcels.volume.divisor})"


def _bare(number: Decimal) -> str:
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
