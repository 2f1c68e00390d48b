"""What a person types, taken as it stands or refused with a sentence; nothing is guessed."""

import re
from datetime import date, time, timedelta

from queueboard.clean import shown
from queueboard.errors import TypedError
from queueboard.settings.shapes import MOST_CENTS
from queueboard.shop.days import DAYS_AHEAD, DAYS_BACK
from queueboard.slotted import dataclass

WEEKDAYS: tuple[str, ...] = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")

MONTHS: tuple[str, ...] = (
    *("January", "February", "March", "April", "May", "June", "July"),
    *("August", "September", "October", "November", "December"),
)

_DAY_HELP = "Type it like 2026-11-27, 27.11, 27 nov, fri, today, tomorrow or +3."


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """A tag as typed: 417-3, or 417 for the whole box."""

    box: int
    knife: int | None = None

    def __str__(self) -> str:
        return f"{self.box}" if self.knife is None else f"{self.box}-{self.knife}"


def parse_tag(text: str) -> Tag:
    """Read a tag such as 417 or 417-3; box 1 to 999999, knife 1 to 999."""
    match = re.fullmatch(r"([0-9]{1,6})(?:\s*-\s*([0-9]{1,3}))?", text.strip())
    box, knife = (int(match[1]), int(match[2]) if match[2] else None) if match else (0, None)
    if box == 0 or knife == 0:
        raise TypedError(f"“{shown(text)}” is no tag. A tag is a box number, or box-knife: 417 or 417-3.")
    return Tag(box=box, knife=knife)


def parse_count(text: str) -> int:
    """Read how many knives, 1 to 999."""
    typed = text.strip()
    if not re.fullmatch(r"[0-9]+", typed):
        raise TypedError(f"“{shown(typed)}” is no count. Type a whole number from 1 to 999.")
    digits = typed.lstrip("0")
    if not 1 <= len(digits) <= 3:
        raise TypedError(f"A count of {shown(digits or typed)} cannot be right. Type a number from 1 to 999.")
    return int(digits)


def parse_cents(text: str) -> int:
    """Read an amount such as 12, 12.50 or 12,50 as whole cents, 0 to 99999.99."""
    typed = text.strip()
    match = re.fullmatch(r"([0-9]{1,9})(?:[.,]([0-9]{1,2}))?", typed)
    if match is None:
        raise TypedError(f"“{shown(typed)}” is no amount. Type digits like 12 or 12.50, no sign for thousands.")
    cents = int(match[1]) * 100 + int((match[2] or "").ljust(2, "0"))
    if cents > MOST_CENTS:
        raise TypedError(f"{typed} is more than 99999.99. Type a smaller amount.")
    return cents


def parse_charge(text: str) -> tuple[int, int | None]:
    """Read an amount, or a percentage such as 10 % or 7.5%: whole cents and None, or 0 and millionths."""
    typed = text.strip()
    if not typed.endswith("%"):
        return parse_cents(typed), None
    match = re.fullmatch(r"([0-9]{1,3})(?:[.,]([0-9]{1,2}))?\s*%", typed)
    if match is None:
        raise TypedError(f"“{shown(typed)}” is no percentage. Type it like 10 % or 7.5 %.")
    return 0, int(match[1]) * 10_000 + int((match[2] or "").ljust(2, "0")) * 100


def parse_time(text: str) -> time:
    """Read a time of day such as 16:00, 16.30, 1630, 16, 4pm or 4:30 pm.

    An hour from 1 to 6 without a leading zero or am/pm is asked back: the counter says 4 and means 16:00.
    """
    typed = text.strip().lower()
    match = re.fullmatch(r"([0-9]{1,2})(?:[:.]([0-9]{2}))?\s*(am|pm|)", typed) or re.fullmatch(
        r"([0-9]{2})([0-9]{2})()", typed
    )
    if match is None:
        raise TypedError(f"“{shown(text)}” is no time of day. Type it like 16:00 or 4pm.")
    hour, minute, half = int(match[1]), int(match[2] or 0), match[3]
    if hour > (12 if half else 23) or minute > 59 or (half and hour == 0):
        raise TypedError(f"There is no {shown(text)} on the clock. Type it like 16:00 or 4pm.")
    if not half and len(match[1]) == 1 and 1 <= hour <= 6:
        raise TypedError(f"{shown(text)} can be read two ways: type {hour:02}:{minute:02} or {hour + 12}:{minute:02}.")
    if not half and match[2] is None and 1 <= hour <= 12 and len(match[1]) == 1:
        raise TypedError(f"{shown(text)} can be read two ways: type {hour:02}:00 or {hour + 12}:00.")
    return time(hour % 12 + (12 if half == "pm" else 0) if half else hour, minute)


def parse_day(text: str, today: date) -> date:
    """Read a day as of read_day, at most a year back and three years ahead."""
    day = read_day(text, today)
    if not -DAYS_BACK <= (day - today).days <= DAYS_AHEAD:
        raise TypedError(f"{day.isoformat()} is too far from today, {today.isoformat()}. {_DAY_HELP}")
    return day


def parse_day_and_time(text: str, today: date) -> tuple[date, time | None]:
    """Read a day, and the time behind it where there is one: today 16:00, fri, 27 nov 4pm."""
    before, _, last = text.strip().rpartition(" ")
    try:
        return parse_day(text, today), None
    except TypedError:
        try:
            day = parse_day(before, today)
        except TypedError:
            day = None
        if day is None:
            raise
    return day, parse_time(last)


def read_day(text: str, today: date) -> date:
    """Read a day: 2026-11-27, 27.11, 27.11.2026, 27 nov, november 27 2026, fri, today, +3 (days from *today*).

    A weekday is the next one after today; on that weekday itself it is asked back. A day without a year is the next
    such day, and is asked back when that is more than half a year away.
    """
    typed = text.strip().lower()
    day = _spoken_day(typed, today) or _written_day(typed, today)
    if day is None:
        if re.fullmatch(r"[0-9]{1,4}[/-][0-9]{1,2}([/-][0-9]{1,4})?", typed):
            raise TypedError(f"{typed} can be read as day and month or month and day. {_DAY_HELP}")
        raise TypedError(f"“{shown(text)}” is no day. {_DAY_HELP}")
    return day


def _spoken_day(typed: str, today: date) -> date | None:
    """Today, tomorrow, +3 and weekdays; None when it is none of them."""
    if typed in {"today", "tomorrow"}:
        return today + timedelta(days=int(typed == "tomorrow"))
    if match := re.fullmatch(r"\+([0-9]{1,4})", typed):
        return today + timedelta(days=int(match[1]))
    if len(typed) < 2:
        return None
    weekday = next((n for n, name in enumerate(WEEKDAYS) if name.lower().startswith(typed)), None)
    if weekday is None:
        return None
    days = (weekday - today.weekday()) % 7
    if days == 0:
        raise TypedError(f"Today is {WEEKDAYS[weekday]}: type today, or +7 for the next one.")
    return today + timedelta(days=days)


def _written_day(typed: str, today: date) -> date | None:
    """2026-11-27, 27.11.2026 and 27.11, or with the month's name; None when it is none of them."""
    if match := re.fullmatch(r"([0-9]{4})-([0-9]{2})-([0-9]{2})", typed):
        return _existing(int(match[1]), int(match[2]), int(match[3]))
    if match := re.fullmatch(r"([0-9]{1,2})\.([0-9]{1,2})\.([0-9]{4})", typed):
        return _existing(int(match[3]), int(match[2]), int(match[1]))
    if match := re.fullmatch(r"([0-9]{1,2})\.([0-9]{1,2})\.?", typed):
        return _coming(typed, int(match[1]), int(match[2]), today)
    return _named_day(typed, today)


def _named_day(typed: str, today: date) -> date | None:
    """27 nov, nov 27, 27th november 2026, november 27, 2026; None when it is none of them."""
    day, month, year = (
        r"(?P<day>[0-9]{1,2})(?:st|nd|rd|th|\.)?",
        r"(?P<month>[a-z]{3,9})\.?",
        r"(?:,? +(?P<year>[0-9]{4}))?",
    )
    match = re.fullmatch(f"{day} *{month}{year}", typed) or re.fullmatch(f"{month} *{day}{year}", typed)
    number = (
        0 if match is None else next((n for n, m in enumerate(MONTHS, 1) if m.lower().startswith(match["month"])), 0)
    )
    if match is None or number == 0:
        return None
    if match["year"] is not None:
        return _existing(int(match["year"]), number, int(match["day"]))
    return _coming(typed, int(match["day"]), number, today)


def _coming(typed: str, day: int, month: int, today: date) -> date:
    """The next such day, asked back when it is more than half a year away."""
    passed = (month, day) < (today.month, today.day)
    coming = _existing(today.year + passed, month, day)
    if (coming - today).days > 183:
        raise TypedError(f"{typed} is more than half a year away. Type it with its year: {coming.isoformat()}.")
    return coming


def _existing(year: int, month: int, day: int) -> date:
    try:
        return date(year, month, day)
    except ValueError:
        raise TypedError(f"There is no {day}.{month}.{year} in the calendar. {_DAY_HELP}") from None
