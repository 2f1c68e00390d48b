"""When somebody last looked each part of the settings through, read from a table that may be missing."""

from collections.abc import Iterator
from datetime import date

from queueboard.errors import SettingsError
from queueboard.settings.fields import Table
from queueboard.settings.locate import Path, lines_of
from queueboard.settings.shapes import Checked, Settings

CHECKED_PARTS = (
    *("shop", "hours", "closed", "bench", "processes", "kinds", "lines", "gauge", "prices", "shipping", "tax"),
    *("boxes", "handling", "planning", "keeping", "evening", "papers", "swaps", "market"),
)
"""The parts of the settings that may have a day in [last_checked]; carriers and the shelf have one of their own."""


def read_checked(whole: Table) -> Checked:
    """The days by part, and after how many of them a part counts as old."""
    if not whole.has("last_checked"):
        return Checked()
    table = whole.table("last_checked")
    table.only("after_days", *CHECKED_PARTS)
    return Checked(
        after_days=table.whole("after_days", 1, 4000, "days") if table.has("after_days") else Checked().after_days,
        on={part: table.day(part) for part in CHECKED_PARTS if table.has(part)},
    )


def insist_on_days_that_were(settings: Settings, text: str, today: date) -> None:
    """Refuse a day of checking that lies after today: SettingsError with its line."""
    for path, day in _days(settings):
        if day is not None and day > today:
            raise SettingsError(
                f"line {lines_of(text)[path]}: {day} is still to come, and today is {today}; what is last checked was "
                "checked on a day that has been"
            )


def _days(settings: Settings) -> Iterator[tuple[Path, date | None]]:
    yield from ((("last_checked", part), day) for part, day in settings.checked.on.items())
    yield ("parcels", "last_checked"), settings.parcels.last_checked
    yield ("shelf", "last_checked"), settings.shelf.last_checked
    for place, carrier in enumerate(settings.parcels.carriers):
        yield ("carriers", place, "last_checked"), carrier.last_checked
