"""What a comparison of names and addresses has found."""

from collections.abc import Mapping
from enum import StrEnum

from queueboard.slotted import dataclass


class Source(StrEnum):
    """Where a name and an address stand."""

    FILE = "on file"
    LABEL = "on the label"
    NOTE = "on the note"


class Part(StrEnum):
    """What of a name or an address differs; the worst first."""

    HOUSE = "house number"
    POSTCODE = "postcode"
    FLAT = "flat or box"
    STREET = "street"
    TOWN = "town"
    STREET_OR_TOWN = "street or town"
    NAME = "name"


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """One part that is not the same everywhere."""

    part: Part
    says: Mapping[Source, str]
    """What stands there, as it was written, without what all others have too; empty where there is nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What was held against what, and what differs."""

    differences: tuple[Difference, ...]
    names: tuple[Source, ...]
    """Where a name stands at all; fewer than two were not compared."""
    addresses: tuple[Source, ...]

    @property
    def is_complete(self) -> bool:
        """True when both the name and the address were held against another."""
        return len(self.names) > 1 and len(self.addresses) > 1
