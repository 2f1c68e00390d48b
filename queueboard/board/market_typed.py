"""The pad of a market day under somebody's hand: which line the cursor is on, which is typed anew, what is kept."""

from collections.abc import Callable
from datetime import datetime

from queueboard.board.desk import Desk
from queueboard.errors import RuleError, TypedError
from queueboard.phrases import market as words
from queueboard.phrases.typed_market import adds_to, read_market_line, read_tags, text_with_tag, with_added
from queueboard.shop.market_pad import Pad, PadLine, new_pad, pad_of, put_line, set_tags, strike_line
from queueboard.shop.receiving import customers

IS_TAKEN = "These lines are taken in already; u takes that back."


class TypedMarket:
    """What the screen of a market day works on; each answer is kept on the disk before it is answered."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self.pad, self.taken = pad_of(desk.shop, desk.picture.now)
        self.known = customers(desk.shop)
        """The customers as they were at the last look: a line needs them several times."""
        self.place: int | None = None
        """The line under the cursor; None at the end, where the next one comes."""
        self.mends: int | None = None
        """The id of the line that is typed anew."""

    @property
    def day(self) -> words.MarketDay:
        """The pad as it stands, read with the shop's numbers and customers."""
        picture = self.desk.picture
        taken = frozenset[int]() if self.taken else frozenset(box.box.number for box in picture.boxes)
        return words.market_day(self.pad, picture.settings, self.known, taken)

    def read_again(self, now: datetime) -> None:
        """Another window may have typed too, or the lines were taken in or undone."""
        if self.pad.lines:
            self.pad, self.taken = pad_of(self.desk.shop, now)
        self.known = customers(self.desk.shop)

    def step(self, by: int) -> None:
        """To the line before or behind; behind the last one is the end."""
        end = len(self.pad.lines)
        at = min(max(0, (end if self.place is None else self.place) + by), end)
        self.place = None if at == end else at

    def to_end(self) -> None:
        """Let go of the line under the cursor: the next one comes at the end."""
        self.place = self.mends = None

    def mend(self) -> str:
        """The text of the line under the cursor, to be typed over; empty where there is none."""
        if self.place is None or self.taken:
            return ""
        kept = self.day.lines[self.place].kept
        self.mends = kept.id
        return kept.text

    def take(self, text: str) -> str:
        """Keep what was typed and say how it was read: tags of the day, more for a line that is there, or a line."""
        tags = read_tags(text)
        if tags is not None:
            self._keep(lambda pad: set_tags(self.desk.shop, pad, tags))
            return f"Tags {tags[0]} to {tags[1]} were printed for this day."
        added = None if self.mends else adds_to(text)
        if added is not None:
            return self._add(added, text)
        before = None if self.mends is None else self.pad.line(self.mends)
        day = self.day
        kept = text_with_tag(text, day.first if self.taken else day.next_tag)
        read_market_line(kept, self.desk.picture.settings, next_tag=None)
        line = PadLine(id=self.mends or 0, text=kept, whose=before.whose if before else "")
        self._keep(lambda pad: put_line(self.desk.shop, pad, line))
        # Another window may have taken the line off that was mended here: then it stands at the end.
        there = self.pad.line(self.mends or 0) or self.pad.lines[-1]
        return self._said_of(there.id)

    def _add(self, tag: int, text: str) -> str:
        """What `512 *` says goes to the line of its tag."""
        there = [seen.kept for seen in self.day.lines if seen.line is not None and seen.line.tag == tag]
        if len(there) != 1:
            why = "stands in two lines; go to one with ↑" if there else "has no line yet; type count and name behind it"
            raise TypedError(f"Tag {tag} {why}.")
        (kept,) = there
        more = PadLine(id=kept.id, text=with_added(kept.text, text, self.desk.picture.settings), whose=kept.whose)
        self._keep(lambda pad: put_line(self.desk.shop, pad, more))
        return self._said_of(kept.id)

    def next_whose(self) -> str:
        """Say that a line is of the next one who may be meant, or of somebody new."""
        seen = self._under_cursor()
        if not seen.alike:
            raise RuleError("No known customer has this name or this phone.")
        changed = PadLine(id=seen.kept.id, text=seen.kept.text, whose=words.next_whose(seen))
        self._keep(lambda pad: put_line(self.desk.shop, pad, changed))
        return self._said_of(seen.kept.id)

    def strike(self) -> str:
        """Take the line under the cursor off; its text."""
        if self.place is None:
            raise RuleError("Go to a line with ↑ first; x takes it off.")
        kept = self._under_cursor().kept
        self._keep(lambda pad: strike_line(self.desk.shop, pad, kept.id))
        self.to_end()
        return kept.text

    def _keep(self, change: Callable[[Pad], Pad]) -> None:
        """Change the pad; the first line behind one that is taken in begins another."""
        if self.desk.only_read:
            raise RuleError("This shop file may only be read; nothing can be typed in here.")
        if self.taken:
            self.pad, self.taken = new_pad(self.desk.shop, self.desk.picture.now), False
        self.pad = change(self.pad)

    def _said_of(self, line_id: int) -> str:
        day = self.day
        seen = next(one for one in day.lines if one.kept.id == line_id)
        return f"{seen.kept.text.split(' ')[0]}: {words.line_words(seen, day)}"

    def _under_cursor(self) -> words.SeenLine:
        """The line under the cursor, or the newest one."""
        lines = self.day.lines
        if not lines:
            raise RuleError(words.NOTHING_TYPED)
        if self.taken:
            raise RuleError(IS_TAKEN)
        return lines[-1 if self.place is None else self.place]
