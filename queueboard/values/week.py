"""Weeks as offices and restaurants count them."""

from datetime import date


def iso_week(day: date) -> str:
    """The ISO 8601 week date, 2026-W48-4: weeks begin on Monday, the first one holds the year's first Thursday."""
    year, week, weekday = day.isocalendar()
    return f"{year:04}-W{week:02}-{weekday}"
