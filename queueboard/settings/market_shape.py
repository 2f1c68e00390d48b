"""The shape of what the shop does at market stalls."""

from queueboard.slotted import dataclass

MOST_TAGS = 999
"""More are not printed for one stall."""
HIGHEST_TAG = 9999


@dataclass(frozen=True, slots=True, kw_only=True)
class Market:
    """The shop's own choices; a shop that says nothing goes to no market."""

    on: bool = False
    """True for a shop that works at a stall and gives out tags that were printed before."""
    kind: str = ""
    """What a knife is taken for where only the count was written down; empty for the first kind of the list."""
    first_tag: int = 500
    """The lowest printed tag, 1 to 9999."""
    last_tag: int = 560
    """The highest printed tag, at least first_tag."""

    @property
    def tags(self) -> range:
        """The numbers that stand on printed tags, and are given to no other box; none while it is off."""
        return range(self.first_tag, self.last_tag + 1) if self.on else range(0)
