"""Grit labels and the sizes behind them. The same number names different sizes on different scales.

Median sizes in micrometres. P: ISO 6344 (FEPA P); CAMI: ANSI B74.18; F: ISO 8486 (FEPA F, wheels and stones);
JIS: JIS R 6001:1998. All from memory; what tests/outside/values/grit.json has is checked against it.
"""

import re
from enum import Enum
from math import log

from queueboard.slotted import dataclass


class Scale(Enum):
    """What the number on a belt counts."""

    P = "P"
    CAMI = "CAMI"
    F = "F"
    JIS = "JIS"
    MICRONS = "um"


SIZES_UM: dict[Scale, dict[int, float]] = {
    Scale.P: {
        12: 1815, 16: 1324, 20: 1000, 24: 764, 30: 642, 36: 538, 40: 425, 50: 336, 60: 269, 80: 201, 100: 162, 120: 125,
        150: 100, 180: 82, 220: 68, 240: 58.5, 280: 52.2, 320: 46.2, 360: 40.5, 400: 35.0, 500: 30.2, 600: 25.8,
        800: 21.8, 1000: 18.3, 1200: 15.3, 1500: 12.6, 2000: 10.3, 2500: 8.4,
    },
    Scale.CAMI: {
        24: 708, 30: 632, 36: 530, 40: 425, 50: 348, 60: 265, 80: 190, 100: 140, 120: 115, 150: 92, 180: 82, 220: 68,
        240: 53.0, 280: 44.0, 320: 36.0, 360: 28.0, 400: 23.0, 500: 20.0, 600: 16.0, 800: 12.6, 1000: 10.3,
    },
    Scale.F: {
        16: 1230, 20: 1040, 24: 745, 30: 625, 36: 525, 40: 438, 46: 370, 54: 310, 60: 260, 70: 218, 80: 185, 90: 154,
        100: 129, 120: 109, 150: 82, 180: 69, 220: 58, 230: 53.0, 240: 44.5, 280: 36.5, 320: 29.2, 360: 22.8, 400: 17.3,
        500: 12.8, 600: 9.3, 800: 6.5, 1000: 4.5, 1200: 3.0, 1500: 2.0, 2000: 1.2,
    },
    Scale.JIS: {
        240: 57.0, 280: 48.0, 320: 40.0, 360: 35.0, 400: 30.0, 500: 25.0, 600: 20.0, 700: 17.0, 800: 14.0, 1000: 11.5,
        1200: 9.5, 1500: 8.0, 2000: 6.7, 2500: 5.5, 3000: 4.0, 4000: 3.0, 6000: 2.0, 8000: 1.2,
    },
}  # fmt: skip
"""Grit to size, coarse to fine, one line a scale."""

SCALE_OF = {"P": Scale.P, "CAMI": Scale.CAMI, "F": Scale.F, "JIS": Scale.JIS, "J": Scale.JIS}
LABEL = re.compile(r"\s*(P|CAMI|F|JIS|J)?\s*#?\s*([0-9]{2,5})\s*", re.IGNORECASE)
MICRONS = re.compile(r"(?:^|.*[^0-9])([0-9]{1,4}(?:[.,][0-9]+)?)\s*(?:um|µm|μm|micron|microns)\b.*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Grit:
    """One reading of a label."""

    scale: Scale
    size_um: float


def grits_meant(label: str) -> tuple[Grit, ...]:
    """What a label may mean: one for "P240" or "16 um", several for a bare "800", none when no scale has it."""
    microns = MICRONS.fullmatch(label)
    if microns:
        return (Grit(Scale.MICRONS, float(microns[1].replace(",", "."))),)
    said = LABEL.fullmatch(label)
    if not said:
        return ()
    scales = (SCALE_OF[said[1].upper()],) if said[1] else (Scale.P, Scale.CAMI, Scale.JIS)
    number = int(said[2])
    return tuple(Grit(scale, SIZES_UM[scale][number]) for scale in scales if number in SIZES_UM[scale])


def nearest_label(size_um: float, scale: Scale) -> str:
    """The label of a scale whose size is nearest by ratio, such as "P1200" for 15 um; above 0."""
    if scale is Scale.MICRONS:
        return f"{size_um:g} um"
    sizes = SIZES_UM[scale]
    number = min(sizes, key=lambda grit: abs(log(sizes[grit] / size_um)))
    return f"{scale.value}{number}" if scale is not Scale.CAMI else f"CAMI {number}"
