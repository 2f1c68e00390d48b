"""A day sheet that was written to be printed, and the same sheet half typed back: its order, and how far it is."""

import re

from queueboard.board.desk import Desk
from queueboard.board.forms.kept import Kept
from queueboard.board.screens.paper_out import write_paper
from queueboard.errors import TypedError
from queueboard.phrases.typed import parse_tag
from queueboard.phrases.typed_back import read_typed_line, sheet_order, sheet_tags
from queueboard.shop.picture import Picture
from queueboard.slotted import dataclass
from queueboard.values.box import Payment


def keep_order(desk: Desk) -> None:
    """Keep the tags of the sheet that is written now, a line each; FileError when the disk does not take them."""
    picture = desk.picture
    write_paper(desk, f"day-{picture.now.date().isoformat()}.tags", sheet_order(picture))


def written_sheet(desk: Desk) -> tuple[str, tuple[str, ...]]:
    """The day of the newest sheet that was written, and its tags in order; neither where none was."""
    for path in sorted((desk.shop.path.parent / "papers").glob("day-*.tags"), reverse=True):
        try:
            tags = tuple(str(parse_tag(line)) for line in path.read_text(encoding="utf-8").split("\n") if line)
        except (OSError, ValueError, TypedError):
            continue
        if tags:
            return path.stem.removeprefix("day-"), tags
    return "", ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CutOff:
    """A line that was being stored when the power went."""

    tag: str
    typed: str
    stored: bool
    """True when its own money came through."""
    meanwhile: tuple[Payment, ...]
    """All money of its box since then."""


class HalfTyped:
    """The sheet that is typed back. A line is kept before it is stored, with the last payment that stood before it."""

    def __init__(self, desk: Desk) -> None:
        """The newest sheet that was written; else the one that is half typed back, else the day's plan as it stands."""
        self._kept = Kept(desk, "sheet")
        self._initials = desk.initials
        self.day, self.tags = written_sheet(desk)
        if not self.tags:
            today = desk.picture.now.date().isoformat()
            day, *kept = (self._kept.read() or [""])[0].split("\t")
            self.day, self.tags = (day, tuple(kept)) if day == today else (today, sheet_tags(desk.picture))
        self.typed: dict[str, str] = {}
        """What was typed for each line, by its tag."""
        self.place = 0

    @property
    def due(self) -> str:
        """The tag of the line that is due; empty behind the last one."""
        return self.tags[self.place] if self.place < len(self.tags) else ""

    @property
    def left(self) -> int:
        """Of how many lines nothing was typed."""
        return sum(tag not in self.typed for tag in self.tags)

    def go_on(self, picture: Picture) -> CutOff | None:
        """Take up what was kept of this sheet; the line that a power cut has cut off, None without one."""
        kept = self._kept.read()
        if len(kept) < 2 or kept[0] != self._head:
            return None
        self.typed = dict(line.split("\t", 1) for line in kept[2:] if "\t" in line)
        self.place = next((n for n, tag in enumerate(self.tags) if tag not in self.typed), len(self.tags))
        tag, _, rest = kept[1].partition("\t")
        typed, _, last = rest.partition("\t")
        if tag not in self.tags or not re.fullmatch("[0-9]+", last):
            return None
        self.go_to(tag)
        line, box = read_typed_line(typed), picture.box(parse_tag(tag).box)
        new = tuple(one for one in box.payments if one.id > int(last)) if box is not None else ()
        own = [one for one in new if (one.by, one.in_cents, one.way) == (self._initials, line.cents, line.way)]
        return CutOff(tag=tag, typed=typed, stored=bool(line.cents and own), meanwhile=new)

    def go_to(self, tag: str) -> None:
        """To the line of a tag of this sheet."""
        self.place = self.tags.index(tag)

    def step(self, by: int) -> None:
        """To the line before or behind, whatever was typed of it."""
        self.place = min(max(0, self.place + by), max(0, len(self.tags) - 1))

    def begin(self, tag: str, typed: str, payments: tuple[Payment, ...]) -> None:
        """Keep the line that will be stored now, and which payments its box has until now.

        OSError when the disk does not take it.
        """
        self._write(f"{tag}\t{typed}\t{max((one.id for one in payments), default=0)}")

    def give_up(self) -> None:
        """The line that was begun is not stored; OSError as in begin."""
        self._write()

    def end(self, tag: str, typed: str) -> None:
        """The line is stored: on to the next of which nothing was typed; OSError as in begin."""
        self.typed[tag] = typed
        after = (n for n in range(self.tags.index(tag) + 1, len(self.tags)) if self.tags[n] not in self.typed)
        self.place = next(after, len(self.tags))
        self._write()

    def leave(self) -> None:
        """Let go of what was kept, once the whole sheet is typed back."""
        if not self.left:
            self._kept.forget()

    @property
    def _head(self) -> str:
        return "\t".join((self.day, *self.tags))

    def _write(self, pending: str = "") -> None:
        self._kept.write([self._head, pending, *(f"{tag}\t{typed}" for tag, typed in self.typed.items())])
