"""Parts that several forms share: a date told to the customer, a return label, what is expected of a box."""

from collections.abc import Mapping
from datetime import date, timedelta
from typing import TypeVar

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Turned
from queueboard.board.forms.form import Form
from queueboard.errors import TypedError
from queueboard.phrases.typed import WEEKDAYS, parse_count, parse_day, parse_time
from queueboard.values.box import Box, Promise
from queueboard.values.new import NewPromise, Unseen
from queueboard.words import GoesBy, PromiseKind

Answer = TypeVar("Answer")

KINDS: Mapping[GoesBy, tuple[tuple[str, PromiseKind], ...]] = {
    GoesBy.PICK_UP: (
        ("on a day", PromiseKind.DAY),
        ("by a time", PromiseKind.BY_TIME),
        ("they wait", PromiseKind.WAITS),
        ("next round", PromiseKind.NEXT_ROUND),
    ),
    GoesBy.PARCEL: (("in hand by", PromiseKind.DAY), ("ships by", PromiseKind.SHIPS_BY)),
}
"""What can be promised, by how the box goes back: a parcel's time of day is the carrier's business."""


def day_hint(desk: Desk) -> str:
    """How a day may be typed, three times tomorrow by the shop's own clock: 2026-11-28, 28.11, sat, today, +3."""
    return f"{_tomorrow(desk).isoformat()}, {short_day_hint(desk)}"


def short_day_hint(desk: Desk) -> str:
    """The same for a narrow field: 28.11, sat, today, +3."""
    day = _tomorrow(desk)
    return f"{day.day}.{day.month}, {WEEKDAYS[day.weekday()][:3].lower()}, today, +3"


def _tomorrow(desk: Desk) -> date:
    """A day that can be told on any day; today's own weekday would be asked back."""
    return desk.picture.now.date() + timedelta(days=1)


class PromisePart(Vertical):
    """Kind, day and, for a promise by a time, the time."""

    DEFAULT_CSS = "PromisePart { height: auto; }"

    def __init__(self, desk: Desk, goes_by: GoesBy, before: Promise | None = None, *, hint_more: str = "") -> None:
        super().__init__()
        self.desk = desk
        kinds = [kind for _, kind in KINDS[goes_by]]
        at = kinds.index(before.kind) if before is not None and before.kind in kinds else 0
        self.kind = Choice(KINDS[goes_by], at=at)
        self.day = Field(hint=f"{day_hint(desk)}{hint_more}", check=self.day_of)
        self.time = Field(hint="16:00", check=parse_time)
        self.time_row = Row(("time", self.time))

    def compose(self) -> ComposeResult:
        yield Row(("promise", self.kind))
        yield Row(("day", self.day))
        yield self.time_row

    def on_mount(self) -> None:
        self.ask_time()

    @on(Turned)
    def ask_time(self) -> None:
        """Only a promise by a time asks for one."""
        self.time_row.display = self.kind.value.has_time

    def goes_back(self, goes_by: GoesBy) -> None:
        """Offer what can be promised for this way back."""
        self.kind.offer(KINDS[goes_by])

    def day_of(self, text: str) -> date:
        """The day typed, counted from today on the shop's calendar."""
        return parse_day(text, self.desk.picture.now.date())

    def so_far(self) -> NewPromise | None:
        """What is typed, read without a word; None while it is no day, or a time is still to come."""
        by_time = self.kind.value.has_time
        try:
            day, at = self.day_of(self.day.value), parse_time(self.time.value) if by_time else None
        except TypedError:
            return None
        return NewPromise(kind=self.kind.value, day=day, at=at)

    def take_day(self, day: date) -> None:
        """Put a day into its field, as if it had been typed."""
        self.day.value = day.isoformat()

    def read(self, form: Form[Answer], *, told_to: str = "", reason: str = "") -> NewPromise:
        """What was typed; TypedError, with the cursor back in the field, for what is no day or no time."""
        return NewPromise(
            kind=self.kind.value,
            day=form.read(self.day, self.day_of),
            at=form.read(self.time, parse_time) if self.kind.value.has_time else None,
            told_to=told_to,
            reason=reason,
        )


class ExpectedPart(Vertical):
    """How many knives a box should hold and on which day it should come; either may stay empty."""

    DEFAULT_CSS = "ExpectedPart { height: auto; }"

    def __init__(self, desk: Desk, before: Box | None = None) -> None:
        super().__init__()
        self.desk = desk
        knives = "" if before is None or before.expected_knives is None else str(before.expected_knives)
        day = "" if before is None or before.expected_on is None else before.expected_on.isoformat()
        self.knives = Field(knives, hint="as they say, if they do", check=parse_count)
        self.day = Field(day, hint=short_day_hint(desk), check=self.day_of)

    def compose(self) -> ComposeResult:
        yield Row(("knives", self.knives), ("comes on", self.day))

    def day_of(self, text: str) -> date:
        """The day typed, counted from today on the shop's calendar."""
        return parse_day(text, self.desk.picture.now.date())

    def so_far(self) -> Unseen | None:
        """What is typed, read without a word; None while nothing is, or it cannot be read."""
        knives, day = self.knives.value.strip(), self.day.value.strip()
        if not knives and not day:
            return None
        try:
            return Unseen(knives=parse_count(knives) if knives else None, comes_on=self.day_of(day) if day else None)
        except TypedError:
            return None

    def read(self, form: Form[Answer]) -> Unseen:
        """What was typed; TypedError, with the cursor back in the field, for what is no count or no day."""
        return Unseen(
            knives=form.read_or(self.knives, parse_count, None), comes_on=form.read_or(self.day, self.day_of, None)
        )
