"""What must hold of the days at the bench that are kept for the next start."""

from queueboard.calendar.days import ShopCalendar
from queueboard.records.asking import closed_days
from queueboard.records.kept_days import read_days
from queueboard.shop.measuring import days_known, worked_days
from queueboard.shop.opening import Shop
from queueboard.shop.picture import Picture
from queueboard.shop.settings_now import settings_of


def is_counted_as_it_is_counted_anew(shop: Shop, picture: Picture) -> None:
    """The days at the bench, as a look knows them and as a start takes them from beside the file, are as counted."""
    assert shop.minutes_cache is not None
    with shop.reading() as database:
        settings_id, settings = settings_of(database)
        calendar = ShopCalendar(settings, closed_days(database, settings_id))
        anew = worked_days(database, calendar, picture.now)
        kept = read_days(shop.path, database)
        started = days_known(database, calendar, picture.now, kept, (settings_id, picture.last_line))
    for known in (shop.minutes_cache[0], started):
        assert tuple(day for _, day in known.days) == anew
