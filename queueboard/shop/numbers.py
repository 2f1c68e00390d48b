"""The shop's own numbers, taken in as text, and the day list's order as it was fixed."""

from collections.abc import Sequence
from datetime import date

from queueboard.errors import ChangedError, RuleError, SettingsError
from queueboard.records import asking
from queueboard.records.database import ShopDatabase
from queueboard.records.tables import ClosedDayRow, DayOrderRow, SettingsRow
from queueboard.records.writing import Writing, canonical
from queueboard.settings.comparing import changed_words
from queueboard.settings.locate import lines_of
from queueboard.settings.reading import read_settings
from queueboard.settings.reading_checked import insist_on_days_that_were
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import if_readable

YEARS_AHEAD = 2
"""Public holidays are filled in for this year and so many more."""


@operation()
def take_settings(writing: Writing, text: str, *, seen: str | None = None) -> None:
    """Take in a whole text of settings; a mistake names its line and leaves the old ones in force.

    The public holidays of the country and region are filled in for this year and two more. RuleError for another
    currency once there is a box. *seen* is the text that was changed; ChangedError where another is in force by now.
    """
    if seen is not None and seen != asking.settings_text(writing.database):
        raise ChangedError("The shop's numbers were changed in another window meanwhile; nothing was stored.")
    settings = read_settings(text)
    before = currency_of(writing.database)
    today = writing.actor.now.astimezone(settings.zone).date()
    insist_on_days_that_were(settings, text, today)
    year = today.year
    days = _holidays(settings, text, year)
    if asking.settings_id(writing.database) is not None:
        writing.tell(to=changed_words(asking.settings_text(writing.database), text) or None)
    settings_id = writing.insert(SettingsRow, text=text, taken_us=writing.now_us)
    for day, name in days:
        writing.insert(ClosedDayRow, settings_id=settings_id, day=day.isoformat(), name=name)
    rows.no_gauge_for(writing, settings.gauge.by_cutting)
    insist_on_currency(writing.database, before)


def _holidays(settings: Settings, text: str, year: int) -> Sequence[tuple[date, str]]:
    """The public holidays of a year and those after it, by day; SettingsError with the line of an unknown place."""
    if not settings.country:
        return ()
    from queueboard.calendar.public_holidays import UnknownPlaceError, public_holidays

    try:
        days = public_holidays(settings.country, settings.region, year, year + YEARS_AHEAD)
    except UnknownPlaceError as trouble:
        raise SettingsError(f"line {lines_of(text)['shop', trouble.key]}: {trouble}") from None
    known = _names(days)
    if settings.region and settings.open_on_holidays - known:  # one that the country has and this region has not
        known |= _names(public_holidays(settings.country, "", year, year + YEARS_AHEAD))
    if strange := sorted(settings.open_on_holidays - known):
        from difflib import get_close_matches

        close = get_close_matches(strange[0], known, n=1)
        hint = f"do you mean “{close[0]}”?" if close else f"these are: {', '.join(sorted(known))}"
        line = lines_of(text)["shop", "open_on_holidays"]
        raise SettingsError(f"line {line}: “{strange[0]}” is no public holiday of {settings.country}; {hint}")
    return days


def _names(days: Sequence[tuple[date, str]]) -> frozenset[str]:
    """The names of public holidays, in small letters; a day may carry two."""
    return frozenset(part.strip().casefold() for _, name in days for part in name.split(";"))


def settings_before(shop: Shop) -> Settings | None:
    """The settings that new ones are to take the place of; None for those of a time when less was refused."""
    with shop.reading() as database:
        return if_readable(asking.settings_text(database))


def currency_of(database: ShopDatabase) -> str | None:
    """The currency of the settings in force; None before there are any, and where they cannot be read any more."""
    settings = None if asking.settings_id(database) is None else if_readable(asking.settings_text(database))
    return None if settings is None else settings.currency


def insist_on_currency(database: ShopDatabase, before: str | None) -> None:
    """Refuse another currency than *before* once there is a box: prices and payments are bare cents of the old one.

    A box is enough, since somebody may just be typing a price or a payment for it.
    """
    now = currency_of(database)
    if before not in (None, now) and asking.newest_box_number(database) is not None:
        raise RuleError(
            f"The currency stays {before}: prices and payments of the boxes in this file are in it, and would all be "
            f"called {now} with these settings. Write {before} again, or begin a new file for {now} with "
            "`queueboard --file NEW start --settings FILE`. Nothing was stored."
        )


@operation(step=False)
def fix_day_list(writing: Writing, day: date, order: Sequence[Sequence[int]]) -> None:
    """Fix the order of the day list: the ids of its knives run by run, for one day, until it is asked for again."""
    writing.insert(DayOrderRow, day=day.isoformat(), knife_ids=canonical([list(run) for run in order]))
