"""Days and months that are over, as a person types them."""

import re
from datetime import date, timedelta

from queueboard.clean import shown
from queueboard.errors import TypedError
from queueboard.phrases.typed import MONTHS, WEEKDAYS, read_day

FIRST_YEAR = 1990
"""No shop file reaches further back."""

_DAY_HELP = "Type it like 2026-11-09, 9.11.2026, mon (the last one), yesterday or today."
_MONTH_HELP = "Type it like 2026-11, november 2026, or nov (the last one)."


def parse_past_day(text: str, today: date) -> date:
    """Read today or a day before it: 2026-11-09, 9.11.2026, 9 nov 2026, mon (the last one), yesterday, today."""
    typed = text.strip().lower()
    weekday = _place(typed, WEEKDAYS)
    if typed == "yesterday":
        day = today - timedelta(days=1)
    elif weekday is not None:
        back = (today.weekday() - weekday) % 7
        if back == 0:
            raise TypedError(f"Today is {WEEKDAYS[weekday]}: type today, or the date of the one before.")
        day = today - timedelta(days=back)
    elif typed == "today" or re.search(r"[0-9]{4}", typed):
        day = read_day(typed, today)
    else:
        raise TypedError(f"“{shown(text)}” is no day that can be looked back at. {_DAY_HELP}")
    if day > today:
        raise TypedError(f"{day.isoformat()} has not come; today is {today.isoformat()}. {_DAY_HELP}")
    if day.year < FIRST_YEAR:
        raise TypedError(f"{day.isoformat()} is too long ago. {_DAY_HELP}")
    return day


def parse_month(text: str, today: date) -> date:
    """Read this month or one before it, as its first day: 2026-11, november 2026, nov (the last one)."""
    typed = text.strip().lower()
    year, month = today.year, 0
    if match := re.fullmatch(r"([0-9]{4})-([0-9]{1,2})", typed):
        year, month = int(match[1]), int(match[2])
    elif match := re.fullmatch(r"([a-z]{3,9})(?: +([0-9]{4}))?", typed):
        place = _place(match[1], MONTHS)
        month = 0 if place is None else place + 1
        year = int(match[2]) if match[2] else today.year - (month > today.month)
    if not 1 <= month <= 12:
        raise TypedError(f"“{shown(text)}” is no month. {_MONTH_HELP}")
    if (year, month) > (today.year, today.month) or year < FIRST_YEAR:
        asked = f"{year:04}-{month:02}"
        raise TypedError(f"{asked} is not one that can be looked back at; it is {today:%Y-%m}. {_MONTH_HELP}")
    return date(year, month, 1)


def _place(typed: str, names: tuple[str, ...]) -> int | None:
    """The place of the name that begins so, from two letters on; None for none."""
    if len(typed) < 2:
        return None
    return next((n for n, name in enumerate(names) if name.lower().startswith(typed)), None)
