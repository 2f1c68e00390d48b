"""The sets of belts in the shop's own numbers, and what to ask about them. Once: a set that stays is asked no more."""

from queueboard.abrasives.order import BeltDoubt, doubts
from queueboard.settings.shapes import Belt, Process, Settings
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True)
class AskedBelt:
    """A belt that may be wrong, in the process where it stands."""

    process: Process
    doubt: BeltDoubt

    @property
    def belt(self) -> Belt:
        """The belt itself."""
        return self.process.belts[self.doubt.place]


def belts_to_ask(before: Settings | None, now: Settings) -> tuple[AskedBelt, ...]:
    """What to ask about the sets that are new or changed since the settings before; None when there are none."""
    known = {process.name: process.belts for process in before.processes} if before is not None else {}
    return tuple(
        AskedBelt(process, doubt)
        for process in now.processes
        if known.get(process.name) != process.belts
        for doubt in doubts([(belt.label, belt.grit_um) for belt in process.belts])
    )
