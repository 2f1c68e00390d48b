"""The shop's own numbers: taken in as text, read back, and the day list's order as it was fixed."""

from collections.abc import Sequence
from datetime import date, datetime
from functools import lru_cache

from queueboard.calendar.days import ShopCalendar
from queueboard.errors import SettingsError
from queueboard.records import asking
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import to_us
from queueboard.records.tables import ClosedDayRow, DayOrderRow, SettingsRow
from queueboard.records.writing import Writing, canonical
from queueboard.settings.locate import lines_of
from queueboard.settings.reading import read_settings
from queueboard.settings.shapes import Settings
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation

YEARS_AHEAD = 2
"""Public holidays are filled in for this year and so many more."""


@operation()
def take_settings(writing: Writing, text: str) -> None:
    """Take in a whole text of settings; a mistake names its line and leaves the old ones in force.

    The public holidays of the country and region are filled in for this year and two more.
    """
    settings = read_settings(text)
    _insist_on_currency(writing.database, settings, text)
    days = _holidays(settings, text, writing.actor.now.astimezone(settings.zone).year) if settings.country else ()
    settings_id = writing.insert(SettingsRow, text=text, taken_us=writing.now_us)
    for day, name in days:
        writing.insert(ClosedDayRow, settings_id=settings_id, day=day.isoformat(), name=name)


def _holidays(settings: Settings, text: str, year: int) -> tuple[tuple[date, str], ...]:
    from queueboard.calendar.public_holidays import public_holidays

    try:
        return public_holidays(settings.country, settings.region, year, year + YEARS_AHEAD)
    except SettingsError as error:
        raise _in_line(text, "region" if settings.region else "country", str(error)) from None


def _insist_on_currency(database: ShopDatabase, settings: Settings, text: str) -> None:
    """An amount is stored without its currency: another one would turn 10 of these into 10 of those."""
    if asking.settings_id(database) is None:
        return
    before = settings_in(database).currency
    if settings.currency != before and asking.has_amounts(database):
        sentence = f"the amounts in the shop's file are in {before}, and nothing turns them into {settings.currency}. "
        raise _in_line(text, "currency", sentence + "Write the old one again, or start a new file.")


def _in_line(text: str, key: str, sentence: str) -> SettingsError:
    return SettingsError(f"line {lines_of(text)[('shop', key)]}: {sentence}")


def settings_text(shop: Shop) -> str:
    """The settings in force, as they were taken in."""
    with shop.reading() as database:
        return asking.settings_text(database)


def settings_of(database: ShopDatabase) -> tuple[int, Settings]:
    """The id and the values of the settings in force."""
    return asking.settings_id(database) or 0, settings_in(database)


def settings_in(database: ShopDatabase) -> Settings:
    """The settings in force."""
    return _read(asking.settings_text(database))


def calendar_at(database: ShopDatabase, at: datetime) -> ShopCalendar:
    """The calendar as the shop knew it at an instant (aware)."""
    then = asking.settings_id_at(database, to_us(at))
    return ShopCalendar(_read(asking.text_of_settings(database, then)), asking.closed_days(database, then))


@lru_cache(maxsize=4)
def _read(text: str) -> Settings:
    """Reading takes longer than most actions, and the text hardly ever changes."""
    return read_settings(text)


def holidays_run_out(shop: Shop, today: date) -> bool:
    """True when the filled-in holidays end within a year, so that the settings should be taken in again."""
    with shop.reading() as database:
        settings_id, settings = settings_of(database)
        if not settings.country:
            return False
        last = max(asking.closed_days(database, settings_id), default=today)
    return last.year <= today.year


@operation(step=False)
def fix_day_list(writing: Writing, day: date, order: Sequence[Sequence[int]]) -> None:
    """Fix the order of the day list: the ids of its knives run by run, for one day, until it is asked for again."""
    writing.insert(DayOrderRow, day=day.isoformat(), knife_ids=canonical([list(run) for run in order]))
