"""How a shop file stands, as it was found: what is in order, and what is not."""

from datetime import datetime
from pathlib import Path

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Copies:
    """The copies of a shop file that are known."""

    newest_good: Path | None
    """The newest automatic copy that is as it was written."""
    made: datetime | None
    """When that was made, aware."""
    spoiled: tuple[Path, ...]
    """Copies that are not as they were written any more."""
    elsewhere: str
    """The folder on another disk that last took one; empty where none ever did."""
    elsewhere_at: datetime | None
    aside: tuple[Path, ...]
    """What was moved aside or copied before a great change; nothing thins these out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Health:
    """One look at a shop file; an empty tuple of troubles is a good sign."""

    path: Path
    now: datetime
    sqlite_version: str
    journal_mode: str
    wal_reset_fixed: bool
    layout: int
    newest_layout: int
    pages: int
    page_bytes: int
    file_bytes: int
    unfinished: bool
    """True while a log or a journal beside the file holds what is not in it yet; then its size tells nothing."""
    integrity: tuple[str, ...]
    """What SQLite itself finds wrong."""
    unmatched: int
    """Rows that point to a row which is not there."""
    history: tuple[str, ...]
    """Where history, its chain, the tables and the words beside do not fit each other."""
    lines: int
    """Lines of history."""
    share: str
    """The network file system that the file lies on; empty for a disk of this machine."""
    others_may_read: bool
    """True when more people than the owner may read the file."""
    copies: Copies

    @property
    def size_fits(self) -> bool:
        """True when the file is as long as its pages are."""
        return self.unfinished or self.pages * self.page_bytes == self.file_bytes

    @property
    def sound(self) -> bool:
        """True when nothing in the file is damaged."""
        return self.size_fits and not self.integrity and not self.unmatched and not self.history
