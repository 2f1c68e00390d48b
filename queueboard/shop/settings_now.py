"""The shop's own numbers, read back: the settings in force, and those of another time."""

from datetime import date, datetime
from functools import lru_cache

from queueboard.calendar.days import ShopCalendar
from queueboard.errors import SettingsError
from queueboard.records import asking
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import to_us
from queueboard.settings.reading import read_settings
from queueboard.settings.shapes import Settings
from queueboard.shop.opening import Shop


def settings_text(shop: Shop) -> str:
    """The settings in force, as they were taken in."""
    with shop.reading() as database:
        return asking.settings_text(database)


def settings_of(database: ShopDatabase) -> tuple[int, Settings]:
    """The id and the values of the settings in force."""
    settings_id, text = asking.settings_now(database)
    return settings_id, read_settings(text)


def settings_in(database: ShopDatabase) -> Settings:
    """The settings in force."""
    return read_settings(asking.settings_text(database))


def calendar_now(database: ShopDatabase) -> tuple[int, ShopCalendar]:
    """The id of the settings in force, and the calendar by them."""
    settings_id, text = asking.settings_now(database)
    closed = asking.closed_days(database, settings_id)
    return settings_id, _calendar(text, tuple(closed.items()))


@lru_cache(maxsize=4)
def _calendar(text: str, closed: tuple[tuple[date, str], ...]) -> ShopCalendar:
    """Kept with all that it has said of its days: each look asks for the same ones."""
    return ShopCalendar(read_settings(text), dict(closed))


def calendar_at(database: ShopDatabase, at: datetime) -> ShopCalendar:
    """The calendar as the shop knew it at an instant (aware); today's where that one cannot be read any more."""
    then = asking.settings_id_at(database, to_us(at))
    settings = if_readable(asking.text_of_settings(database, then)) or settings_in(database)
    return ShopCalendar(settings, asking.closed_days(database, then))


def if_readable(text: str) -> Settings | None:
    """Settings that were taken in once; None where the rules of today refuse them."""
    try:
        return read_settings(text)
    except SettingsError:
        return None


def holidays_run_out(shop: Shop, today: date) -> bool:
    """True when the filled-in holidays end within a year, so that the settings should be taken in again."""
    with shop.reading() as database:
        settings_id, settings = settings_of(database)
        if not settings.country:
            return False
        last = max(asking.closed_days(database, settings_id), default=today)
    return last.year <= today.year
