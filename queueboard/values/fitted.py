"""A belt on the machine."""

from datetime import datetime

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedBelt:
    """A belt that is up now, in the step of the process that it does."""

    id: int
    version: int
    process: str
    label: str
    """The text on its back."""
    step: str
    """The label of the step that it does: its own, or a finer one for a worn belt."""
    fitted_at: datetime
    fitted_by: str
    """Initials of who put it up."""
    was_id: int | None = None
    """The id that it had in its duty before; None for a new belt."""

    @property
    def demoted(self) -> bool:
        """True for a worn belt that was moved to finer duty."""
        return self.was_id is not None
