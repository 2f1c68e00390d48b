"""Days that people name: stored only where the shop can still count with them."""

from datetime import date
from typing import TYPE_CHECKING

from queueboard.errors import TypedError
from queueboard.shop.settings_now import settings_in

if TYPE_CHECKING:
    from queueboard.records.writing import Writing

DAYS_BACK = 366
DAYS_AHEAD = 3 * 366


def today_of(writing: "Writing") -> date:
    """The day on which the person acts, in the shop's zone."""
    return writing.actor.now.astimezone(settings_in(writing.database).zone).date()


def checked_day(writing: "Writing", day: date, what: str) -> str:
    """A day as it is stored; TypedError, naming *what* it is, for one beyond a year back or three years ahead."""
    today = today_of(writing)
    if not -DAYS_BACK <= (day - today).days <= DAYS_AHEAD:
        raise TypedError(f"The {what}, {day.isoformat()}, is too far from today, {today.isoformat()}. Type it anew.")
    return day.isoformat()
