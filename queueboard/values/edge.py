"""Marked spots of an edge, what the tester read there, and how the edge was found OK or not."""

from collections.abc import Sequence
from datetime import datetime

from queueboard.slotted import dataclass
from queueboard.words import EdgeTestWay, SecondLook, Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class NewSpot:
    """A spot as typed: the same place before and after."""

    name: str
    from_heel_mm: int | None = None
    """Distance from the heel along the edge."""
    tooth: int | None = None
    """Which tooth from the heel on, of a serrated edge."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A marked place on an edge."""

    id: int
    name: str
    from_heel_mm: int | None
    tooth: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A push that an edge needed at a spot."""

    id: int
    version: int
    spot_id: int
    stage: Stage
    belt: str
    """The belt behind which it was read, for one between belts; else empty."""
    deburred: bool
    """False when the burr was still on: such a reading sees the burr and is never judged."""
    force_gf: int
    read_at: datetime
    read_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StruckReading:
    """A reading that was wrong: it stays, and counts for nothing."""

    spot_id: int
    stage: Stage
    force_gf: int
    read_at: datetime
    read_by: str
    struck_at: datetime
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeTest:
    """A test of an edge."""

    way: EdgeTestWay
    ok: bool
    belt: str
    """Where it goes back to when it was not OK; else empty."""
    tested_at: datetime
    tested_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondLookTaken:
    """What was chosen for a knife that was not OK the second time."""

    choice: SecondLook
    why: str
    chosen_at: datetime
    chosen_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KnifeEdge:
    """All that is known of one edge."""

    spots: tuple[Spot, ...]
    """In the order from heel to tip; empty while none is marked."""
    readings: tuple[Reading, ...]
    """Oldest first; struck ones are left out."""
    tests: tuple[EdgeTest, ...]
    """Oldest first."""
    looks: tuple[SecondLookTaken, ...]
    """The second looks, oldest first."""
    not_ok: int
    """Tests that were not OK since the last second look."""

    def at(self, spot: Spot, stage: Stage) -> tuple[Reading, ...]:
        """The readings of a spot at one stage, oldest first."""
        return tuple(one for one in self.readings if one.spot_id == spot.id and one.stage is stage)

    def counts(self, reading: Reading) -> bool:
        """True for a reading of the edge as it now is: after the work, deburred, and since it was worked last.

        A test not OK sends it back to be worked, unless a second look let it go or gave it back as it was.
        """
        stays = {look.chosen_at for look in self.looks if look.choice is not SecondLook.ONE_MORE}
        worked = max((t.tested_at for t in self.tests if not t.ok and t.tested_at not in stays), default=None)
        return reading.stage is Stage.AFTER and reading.deburred and (worked is None or reading.read_at > worked)

    def finished_gf(self) -> dict[str, Sequence[int]]:
        """By the spot's name, what its readings say of the finished edge."""
        return {
            spot.name: [one.force_gf for one in self.at(spot, Stage.AFTER) if self.counts(one)] for spot in self.spots
        }
