"""Market days: the part of RFC 5545 that names days. Its library is loaded only when there are market days."""

from datetime import date, datetime, time

from queueboard.settings.shapes import MarketDay

_FREQUENCIES = ("DAILY", "WEEKLY", "MONTHLY", "YEARLY")
_PARTS = frozenset(
    (
        "FREQ",
        "INTERVAL",
        "COUNT",
        "UNTIL",
        "BYDAY",
        "BYMONTHDAY",
        "BYYEARDAY",
        "BYWEEKNO",
        "BYMONTH",
        "BYSETPOS",
        "WKST",
    )
)
"""The parts of a rule that speak of days; those that speak of hours and minutes have no place here."""


def rule_trouble(rule: str, start: date) -> str:
    """What is wrong with a rule of market days, as a sentence without its beginning; empty when it is right."""
    parts = [part.partition("=") for part in rule.upper().split(";")]
    values = {name: value for name, _, value in parts}
    unknown = [name for name, _, _ in parts if name not in _PARTS]
    if unknown:
        return f"“{unknown[0]}” is no part of a rule for days; the parts are {', '.join(sorted(_PARTS))}"
    if len(values) < len(parts):
        return "a part stands in it twice"
    if values.get("FREQ") not in _FREQUENCIES:
        return f"it needs FREQ with one of {', '.join(_FREQUENCIES)}"
    if not values.get("INTERVAL", "1").isdecimal() or int(values.get("INTERVAL", "1")) < 1:
        return "INTERVAL counts from 1"
    if "COUNT" in values and "UNTIL" in values:
        return "COUNT and UNTIL cannot stand together"
    return _library_trouble(rule, start)


def _library_trouble(rule: str, start: date) -> str:
    from dateutil.rrule import rrulestr

    try:
        first = rrulestr(rule, dtstart=_midnight(start)).after(_midnight(start), inc=True)
    except ValueError as trouble:
        return f"{trouble}; a whole rule looks like FREQ=MONTHLY;BYDAY=3SA"
    return "" if first is not None else f"it gives no day from {start.isoformat()} on"


def rule_days(market: MarketDay, first: date, last: date) -> frozenset[date]:
    """The market's days from *first* to *last*, both included; a rule gives none before its own start.

    The start is a market day only where the rule says so.
    """
    from dateutil.rrule import rrulestr

    rule = rrulestr(market.rule, dtstart=_midnight(market.start))
    return frozenset(day.date() for day in rule.between(_midnight(first), _midnight(last), inc=True))


def _midnight(day: date) -> datetime:
    """The instant that stands for a day; rules count days, so no zone belongs to it."""
    return datetime.combine(day, time())
