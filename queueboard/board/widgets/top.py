"""The day on top of the board: two lines that are always in sight."""

from rich.cells import cell_len
from textual.app import RenderResult
from textual.content import Content
from textual.widget import Widget

from queueboard.board.desk import Desk
from queueboard.phrases.dates import date_words, saved_words, time_words, when_words
from queueboard.phrases.day import day_line_words
from queueboard.shop.picture import Picture

ALWAYS = 3
"""The first parts of the day line, which stand on the upper line: bench, work, leaves today."""


class DayTop(Widget):
    """Bench and work, what leaves, labels, late and waiting; at the right when it was saved, and copied."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(id="top")
        self.desk = desk
        self._shown = Content()

    def look(self) -> None:
        """Show what the picture says by now, where it says something else."""
        if self._content() != self._shown:
            self.refresh()

    def render(self) -> RenderResult:
        self._shown = self._content()
        return self._shown

    def _content(self) -> Content:
        picture, width = self.desk.seen, self.size.width
        parts = day_line_words(picture.day_line, len(picture.found), working_out=picture.plan_follows)
        when = f"{date_words(picture.now.date(), picture.now.date())} {time_words(picture.now)}"
        upper = between((when, *parts[:ALWAYS]), saved_words(picture.saved_at), width)
        kept = f"DEMO, {self.desk.demo}" if self.desk.demo else copied_words(picture)
        kept = "on a server" if self.desk.on_server else kept
        kept = "ONLY TO READ" if self.desk.only_read else kept
        lower = between(parts[ALWAYS:] or ("nobody is late, nobody is waited for",), kept, width)
        return Content("\n").join((upper, lower))


def between(parts: tuple[str, ...], right: str, width: int) -> Content:
    """Parts on the left, as wide apart as fits; at the right what was saved."""
    room = width - cell_len(right) - 1
    gap = next((gap for gap in (4, 3, 2, 1) if cell_len((" " * gap).join(parts)) <= room), 1)
    left = Content(" " * gap).join([styled(part) for part in parts]).truncate(max(1, room), ellipsis=True)
    return Content.assemble(left, " " * max(1, width - left.cell_length - cell_len(right)), (right, "$text-muted"))


def styled(part: str) -> Content:
    """A part of the day line; what is late or tight stands out, by its word first."""
    if part.startswith(("LATE", "WILL BE LATE")):
        return Content.styled(part, "bold $text-error")
    return Content.styled(part, "bold" if part.startswith(("TIGHT", "WAIT")) else "")


def copied_words(picture: Picture) -> str:
    """When the newest good copy was made: copy 07:45, copy yesterday 07:45, no copy yet."""
    if picture.backup_at is None:
        return "no copy yet"
    same_day = picture.backup_at.date() == picture.now.date()
    return f"copy {time_words(picture.backup_at) if same_day else when_words(picture.backup_at, picture.now)}"
