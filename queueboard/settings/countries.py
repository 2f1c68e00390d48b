"""What a new shop is offered by its country: currency, clock, unit of lengths, paper."""

import tomllib

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Country:
    """One country as the starter file has it; nothing of it is a rule, all of it can be typed over."""

    code: str
    """ISO 3166, two capital letters."""
    currency: str
    """ISO 4217."""
    zone: str
    """A name of the IANA time zone list."""
    length_unit: str
    """in or cm."""
    paper: str
    """letter or A4."""
    short: str = ""
    """How it is called where it is chosen by a digit; empty for those whose letters are typed."""


def read_countries(text: str) -> tuple[Country, ...]:
    """The countries of the starter file, in its order."""
    return tuple(Country(**row) for row in tomllib.loads(text)["countries"])
