"""Numbers and days as they are said aloud: eleven, the 20th, Thursday 3 December."""

from datetime import date

from queueboard.phrases.typed import MONTHS, WEEKDAYS

_TO_TEN = ("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_TEENS = ("eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")
_SMALL = (*_TO_TEN, *_TEENS)
_TENS = ("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_WEEK, _MONTH = 6, 27
"""Days as far as a weekday, or a day of the month, can mean only one day."""
_FAR_DAYS = 300


def number_words(number: int) -> str:
    """The number as a word up to ninety-nine: none, one, eleven, forty-two; beyond that in figures."""
    if not 0 <= number <= 99:
        return str(number)
    if number < len(_SMALL):
        return _SMALL[number]
    tens, rest = divmod(number, 10)
    return f"{_TENS[tens]}-{_SMALL[rest]}" if rest else _TENS[tens]


def spoken_knives(count: int) -> str:
    """One knife, thirteen knives."""
    return f"{number_words(count)} {'knife' if count == 1 else 'knives'}"


def ordinal(day: int) -> str:
    """A day of the month: 1st, 2nd, 3rd, 4th, 11th, 20th, 31st."""
    ending = "th" if 11 <= day % 100 <= 13 else {1: "st", 2: "nd", 3: "rd"}.get(day % 10, "th")
    return f"{day}{ending}"


def spoken_day(day: date, today: date) -> str:
    """Today, tomorrow, yesterday, Thursday (within six days), else Thursday 3 December; far off with the year."""
    days = (day - today).days
    if days in {-1, 0, 1}:
        return ("yesterday", "today", "tomorrow")[days + 1]
    if 0 < days <= _WEEK:
        return WEEKDAYS[day.weekday()]
    return full_day(day, today)


def full_day(day: date, today: date) -> str:
    """Thursday 3 December, for what is read on another day; with the year when it is far from *today*."""
    year = f" {day.year}" if abs((day - today).days) >= _FAR_DAYS else ""
    return f"{WEEKDAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}{year}"


def good_to(day: date, today: date) -> str:
    """The last day of a label: the 20th, as long as that can mean one day only; today; else Thursday 3 December."""
    days = (day - today).days
    if days in {0, 1}:
        return ("today", "tomorrow")[days]
    return f"the {ordinal(day.day)}" if 0 < days <= _MONTH else full_day(day, today)


def sentence(*parts: str) -> str:
    """Parts with commas between, a capital in front and a point behind; empty ones are left out."""
    said = ", ".join(filter(None, parts))
    return f"{said[:1].upper()}{said[1:]}." if said else ""
