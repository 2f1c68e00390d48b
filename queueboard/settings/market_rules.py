"""Market days: the part of RFC 5545 that names days. Its library is loaded only when there are market days."""

import re
from collections.abc import Iterator, Mapping
from datetime import date, datetime, time, timedelta
from itertools import islice

from queueboard.settings.shapes import MarketDay

EARLIEST, LATEST = date(1990, 1, 1), date(2100, 12, 31)
"""Where a rule may count from. Each look counts on from there, so a start in the year 1 would cost seconds."""

_COMES_WITHIN = timedelta(days=41 * 366)
"""29 February falls on each weekday once in 28 years, over 2100 once in 40; what has not come by then never comes."""

_A_YEAR = timedelta(days=365)
"""With the day it begins on 366 days, as long as a closure may be."""

_WEEKDAY = "(?:MO|TU|WE|TH|FR|SA|SU)"
_VALUES: Mapping[str, tuple[str, str, int]] = {
    # the part, how one of its values is written, in words, and the greatest number in it
    "FREQ": ("DAILY|WEEKLY|MONTHLY|YEARLY", "one of DAILY, WEEKLY, MONTHLY, YEARLY", 0),
    "INTERVAL": (r"[0-9]{1,4}", "a number from 1 to 999", 999),
    "COUNT": (r"[0-9]{1,6}", "a number from 1 to 99999", 99_999),
    "UNTIL": (r"[0-9]{8}(?:T[0-9]{6}Z?)?", "a day like 20261231", 99_991_231),
    "BYDAY": (rf"[+-]?[0-9]{{0,2}}{_WEEKDAY}", "weekdays like SA, or with 1 to 53 before them like 3SA or -1SU", 53),
    "BYMONTHDAY": (r"[+-]?[0-9]{1,2}", "numbers from 1 to 31, or with - from the end", 31),
    "BYYEARDAY": (r"[+-]?[0-9]{1,3}", "numbers from 1 to 366, or with - from the end", 366),
    "BYWEEKNO": (r"[+-]?[0-9]{1,2}", "numbers from 1 to 53, or with - from the end", 53),
    "BYMONTH": (r"[0-9]{1,2}", "numbers from 1 to 12", 12),
    "BYSETPOS": (r"[+-]?[0-9]{1,3}", "numbers from 1 to 366, or with - from the end", 366),
    "WKST": (_WEEKDAY, "a weekday like MO", 0),
}
"""The parts of a rule that speak of days; those that speak of hours and minutes have no place here."""

_BELONG: Mapping[str, tuple[str, ...]] = {
    "BYMONTHDAY": ("DAILY", "MONTHLY", "YEARLY"),
    "BYYEARDAY": ("YEARLY",),
    "BYWEEKNO": ("YEARLY",),
    "BYSETPOS": ("MONTHLY", "YEARLY"),
}
"""With which FREQ a part means something (the table in RFC 5545, 3.3.10; BYSETPOS is kept to where a shop needs it)."""

_LONGEST_MONTHS = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def rule_trouble(rule: str, start: date) -> str:
    """What is wrong with a rule of market days, as a sentence without its beginning; empty when it is right."""
    parts = _parts(rule)
    values = dict(parts)
    unknown = [name for name, _ in parts if name not in _VALUES]
    if unknown:
        return f"“{unknown[0]}” is no part of a rule for days; the parts are {', '.join(sorted(_VALUES))}"
    if len(values) < len(parts):
        return "a part stands in it twice"
    if "FREQ" not in values:
        return f"it needs FREQ with {_VALUES['FREQ'][1]}"
    if "COUNT" in values and "UNTIL" in values:
        return "COUNT and UNTIL cannot stand together"
    if not EARLIEST <= start <= LATEST:
        return f"it counts from {start.isoformat()}; write a start from {EARLIEST} to {LATEST}"
    return _wrong_value(values) or _no_day(rule, start)


def _parts(rule: str) -> list[tuple[str, str]]:
    """The parts of a rule as they stand in it: name and value."""
    parts = (part.partition("=") for part in rule.upper().split(";"))
    return [(name, value) for name, _, value in parts]


def _wrong_value(values: Mapping[str, str]) -> str:
    """The first part whose value is none that RFC 5545 knows (3.3.10)."""
    for name, value in values.items():
        pattern, in_words, most = _VALUES[name]
        if not all(_is_one(pattern, most, one) for one in value.split(",")):
            return f"{name} is {in_words}, not “{value}”; a whole rule looks like FREQ=MONTHLY;BYDAY=3SA"
    if "UNTIL" in values and _until(values["UNTIL"]) is None:
        return f"there is no day {values['UNTIL']}, which stands behind UNTIL"
    return _misplaced(values)


def _misplaced(values: Mapping[str, str]) -> str:
    """The first part that means nothing with this FREQ, and days that are in none of the months."""
    freq = values["FREQ"]
    most = {"MONTHLY": 5, "YEARLY": 53}.get(freq, 0)
    strange = [name for name, freqs in _BELONG.items() if name in values and freq not in freqs]
    strange += ["BYDAY"] if any(number > most for number in _numbers(values, "BYDAY")) else []
    if strange:
        return f"{freq} knows no {strange[0]}={values[strange[0]]}; a whole rule looks like FREQ=MONTHLY;BYDAY=3SA"
    days, months = _numbers(values, "BYMONTHDAY"), _numbers(values, "BYMONTH")
    if days and months and min(days) > max(_LONGEST_MONTHS[month - 1] for month in months):
        return f"no month of BYMONTH={values['BYMONTH']} has a day BYMONTHDAY={values['BYMONTHDAY']}"
    return ""


def _numbers(values: Mapping[str, str], name: str) -> list[int]:
    """The numbers in a part, without their signs."""
    return [int(number) for number in re.findall(r"[0-9]+", values.get(name, ""))]


def _is_one(pattern: str, most: int, value: str) -> bool:
    """True for a value that is written so, with a number from 1 to the greatest if there is one in it."""
    number = re.search(r"[0-9]+", value)
    return bool(re.fullmatch(pattern, value)) and (number is None or 1 <= int(number[0][:8]) <= most)


def _until(value: str) -> date | None:
    try:
        return date.fromisoformat(value[:8])
    except ValueError:
        return None


def _no_day(rule: str, start: date) -> str:
    """Whether it gives no day at all, or every day of a whole year."""
    try:
        first = next(_days(rule, start, start + _COMES_WITHIN), None)
        of_a_year = sum(1 for _ in _days(rule, start, start + _A_YEAR))
    except ValueError as trouble:
        return f"{trouble}; a whole rule looks like FREQ=MONTHLY;BYDAY=3SA"
    if first is None:
        return f"it gives no day from {start.isoformat()} on"
    if of_a_year > _A_YEAR.days:
        return (
            f"it gives every day from {start.isoformat()} on for a year, and the shop would never open; say for how "
            "long with COUNT=5 or UNTIL=20261231, or which days with BYDAY=SA"
        )
    return ""


def rule_days(market: MarketDay, first: date, last: date) -> frozenset[date]:
    """The market's days from *first* to *last*, both included; a rule gives none before its own start.

    The start is a market day only where the rule says so.
    """
    return frozenset(day for day in _days(market.rule, market.start, last) if day >= first)


def _days(rule: str, start: date, last: date) -> Iterator[date]:
    """A rule's days in order from its start to *last*; a count, which takes no end beside it, is kept here."""
    from dateutil.rrule import rrulestr

    parts = _parts(rule)
    values = dict(parts)
    own_end = _until(values["UNTIL"]) if "UNTIL" in values else None
    endless = ";".join(f"{name}={value}" for name, value in parts if name not in {"COUNT", "UNTIL"})
    end = last if own_end is None else min(last, own_end)
    moments = rrulestr(f"{endless};UNTIL={end:%Y%m%d}", dtstart=_midnight(start))
    count = int(values["COUNT"]) if "COUNT" in values else None
    return islice((moment.date() for moment in moments), count)


def _midnight(day: date) -> datetime:
    """The instant that stands for a day; rules count days, so no zone belongs to it."""
    return datetime.combine(day, time())
