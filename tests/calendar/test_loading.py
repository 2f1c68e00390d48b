"""What a daily look at the calendar loads."""

from tests.house.test_layers import modules_after

DAILY = """
from datetime import datetime, date
from queueboard.calendar.days import ShopCalendar, bench_windows
from queueboard.parcels.labels import last_use_day
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
text = seed_text("settings.toml")
"""
LOOK = """
calendar = ShopCalendar(read_settings(text), {})
bench_windows(calendar, datetime.now(calendar.settings.zone), 60)
last_use_day(calendar, date(2026, 11, 27))
"""
MARKETS = 'text += \'[[markets]]\\nname = "m"\\nrule = "FREQ=WEEKLY;BYDAY=SA"\\nstart = 2026-01-01\\n\''


def test_a_shop_without_markets_loads_no_rules() -> None:
    """Reading the settings and looking at two months of bench hours loads neither rules for markets nor holidays."""
    assert not modules_after(DAILY + LOOK) & {"dateutil", "holidays"}


def test_markets_load_their_rules_and_no_holidays() -> None:
    """With market days their library is loaded, that of public holidays is still not."""
    assert modules_after(DAILY + MARKETS + LOOK) & {"dateutil", "holidays"} == {"dateutil"}
