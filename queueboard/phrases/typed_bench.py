"""What is typed at the bench: a reading in grams-force, wobbles, a row of readings; refused with a sentence."""

import re

from queueboard.clean import shown
from queueboard.errors import TypedError
from queueboard.shop.wobbling import HIGHEST_GF, LOWEST_GF
from queueboard.values.edge import NewSpot


def parse_force(text: str) -> int:
    """Read a force such as 180, in whole grams-force from 1 to 5000."""
    typed = text.strip()
    if re.fullmatch(r"[0-9]+[.,][0-9]*", typed):
        raise TypedError(f"{shown(typed)} has a point or comma. Type whole grams-force, such as 180.")
    if not re.fullmatch(r"[0-9]+", typed):
        raise TypedError(f"“{shown(typed)}” is no reading. Type whole grams-force, such as 180.")
    force = int(typed[:9])
    if not LOWEST_GF <= force <= HIGHEST_GF:
        raise TypedError(
            f"{shown(typed)} gf is nothing a tester shows. Type a number from {LOWEST_GF} to {HIGHEST_GF}."
        )
    return force


def parse_spots(text: str, *, teeth: bool) -> tuple[NewSpot, ...]:
    """Read spots such as heel 25, middle 100, tip 175: the distance from the heel in mm, or the tooth from the heel.

    teeth: True where a number counts teeth; heel tooth 3 says it in so many words. The number may be missing.
    """
    spots = []
    for part in filter(None, (part.strip() for part in re.split(r"[,;]", text))):
        name, number = part, None
        if re.search(r"[0-9]", part):
            match = re.fullmatch(r"([^0-9]*)(?<=\s)([0-9]{1,4})\s*(?:mm)?", f" {part}")
            if match is None or match[1].rstrip().endswith("-"):
                raise TypedError(
                    f"“{shown(part)}” is not understood. Type a name, a space and whole millimetres or the tooth, "
                    "with commas between: heel 25, tip 175."
                )
            name, number = match[1].strip(), match[2]
        told = re.fullmatch(r"(.*?)\s*\b(?:tooth|teeth)", name, re.IGNORECASE)
        if told is not None:
            name = told[1]
            if number is None:
                raise TypedError(f"“{shown(part)}” does not say which tooth. Count from the heel: heel tooth 3.")
        if not name:
            raise TypedError(f"“{shown(part)}” has no name. Type a name before each number: heel 25, tip 175.")
        place = None if number is None else int(number)
        in_teeth = teeth or told is not None
        spots.append(NewSpot(name=name, from_heel_mm=None if in_teeth else place, tooth=place if in_teeth else None))
    return tuple(spots)


def parse_spares(text: str) -> int:
    """Read how many spares, 0 to 9999."""
    typed = text.strip()
    if not re.fullmatch(r"[0-9]{1,4}", typed):
        raise TypedError(f"“{shown(typed)}” is no count of spares. Type a whole number from 0 to 9999.")
    return int(typed)


def parse_wobbles(text: str) -> float:
    """Read how many wobbles, such as 2 or 2,5, from 0 to 10."""
    typed = text.strip().replace(",", ".")
    if not re.fullmatch(r"[0-9]{1,2}(\.[0-9])?", typed) or float(typed) > 10:
        raise TypedError(f"“{shown(text)}” is no fall in wobbles. Type a number from 0 to 10, such as 2 or 2.5.")
    return float(typed)


def parse_row(text: str, most: int) -> tuple[int, int]:
    """Read from which reading to which, such as 1-20, both from 1 to *most*."""
    match = re.fullmatch(r"([0-9]{1,6})\s*-\s*([0-9]{1,6})", text.strip())
    first, last = (int(match[1]), int(match[2])) if match else (0, 0)
    if not 1 <= first < last <= most:
        raise TypedError(f"“{shown(text)}” is no row of readings. Type it like 1-{most}: the first and the last.")
    return first, last
