"""Questions at the end of a day: what lies there of one way of paying, and closing the day."""

from datetime import date

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.figures.evening import WayMoney
from queueboard.phrases.evening import closing_words, difference_words, evening_title, open_ends, way_words
from queueboard.phrases.typed import parse_cents
from queueboard.shop.evening import close_day, count_till
from queueboard.shop.evening_seen import Evening, evening, not_done


class TillDialog(Dialog):
    """How much was counted."""

    hint = "digits, Enter: it is written down with your initials · Esc leaves it as it was"

    def __init__(self, desk: Desk, day: date, money: WayMoney) -> None:
        super().__init__(desk)
        self.day = day
        self.money = money
        self.counted = Field(hint="145.00", check=parse_cents)

    def heading(self) -> str:
        return f"Count it: {way_words(self.money, self.desk.picture.settings)}"

    def fields(self) -> ComposeResult:
        yield Row(("there is", self.counted))

    def go(self) -> None:
        cents = self.read(self.counted, parse_cents)
        more = self.attempt(count_till, self.day, self.money.way, cents, self.money.count)
        if more is not None:
            self.app.notify(f"{self.money.way.value}: {difference_words(more[0])}", markup=False)
        self.done(more)

    def anew(self) -> "TillDialog | None":
        """Over what is counted now."""
        seen = evening(self.desk.shop, self.desk.picture, self.day)
        return TillDialog(self.desk, self.day, next(one for one in seen.money if one.way is self.money.way))


class CloseDayDialog(Dialog):
    """The day is closed, with a note for the next morning."""

    hint = "Enter closes it; u on the screen below takes it back · Esc leaves it open"

    def __init__(self, desk: Desk, seen: Evening) -> None:
        super().__init__(desk)
        self.seen = seen
        self.note = Field(hint="no names; may stay empty")

    def heading(self) -> str:
        return f"Close {evening_title(self.seen).partition(',')[0]}: {closing_words(self.seen, self.desk.picture)}"

    def fields(self) -> ComposeResult:
        for said in open_ends(self.seen):
            yield Static(Content(f"! {said}"))
        yield Row(("for tomorrow", self.note))

    def go(self) -> None:
        ends = open_ends(self.seen)
        if ends:
            self.insist(ends, f"{'; '.join(ends)}. Enter once more closes the day all the same.")
        left = len(not_done(self.desk.picture)) if self.seen.is_today else 0
        self.done(self.attempt(close_day, self.seen.day, left, self.note.value))
