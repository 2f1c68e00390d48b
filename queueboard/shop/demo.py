"""The demo shop: invented people and boxes from the seed, put through the shop's own operations."""

import re
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.shop.demo_edges import bench_events
from queueboard.shop.demo_script import read_script
from queueboard.shop.opening import Shop, open_shop
from queueboard.shop.starting import new_shop
from queueboard.values.actor import Actor

OWNER = "MB"
OPENED_DAYS_AGO = 40

MORNING_ZONES = (
    "America/New_York",
    "America/Los_Angeles",
    "Pacific/Honolulu",
    "Pacific/Auckland",
    "Asia/Tokyo",
    "Asia/Dhaka",
    "Asia/Dubai",
    "Europe/Berlin",
    "Atlantic/Azores",
    "America/Sao_Paulo",
)
"""Spread around the clock, the starter's own first."""

_EARLIEST_HOUR, _BEST_HOUR, _LATEST_HOUR = 6, 8.5, 11


def make_demo_shop(path: Path, now: datetime) -> Shop:
    """Make the demo shop in a new file, as it stands at now (aware); an existing file is refused with FileError.

    The demo stands where it is morning at now, so that the whole day lies ahead whenever it is looked at. Everything
    in it happened before now.
    """
    zone = morning_zone(now)
    local = now.astimezone(ZoneInfo(zone))
    text = demo_settings(zone)
    events = read_script(seed_text("demo.toml"), read_settings(text), local)
    opened = Actor(initials=OWNER, now=local - timedelta(days=OPENED_DAYS_AGO))
    with new_shop(path, opened, text) as shop:
        for event in sorted((*events, *bench_events(OWNER, local)), key=lambda event: event.planned):
            event.happen(shop)
    return open_shop(path)


def morning_zone(now: datetime) -> str:
    """The first zone if it is morning there at now (aware), else the one where it is nearest half past eight."""
    home = MORNING_ZONES[0]
    if _EARLIEST_HOUR <= _hour_in(home, now) < _LATEST_HOUR:
        return home
    return min(MORNING_ZONES, key=lambda zone: abs(_hour_in(zone, now) - _BEST_HOUR))


def demo_settings(zone: str) -> str:
    """The starter's settings with the demo's own tables in place of theirs, in this zone."""
    own = _tables(seed_text("demo-settings.toml"))
    text = "".join(own.get(name, table) for name, table in _tables(seed_text("settings.toml")).items())
    return re.sub(r'(?m)^zone = "[^"]*"', f'zone = "{zone}"', text, count=1)


def _hour_in(zone: str, now: datetime) -> float:
    local = now.astimezone(ZoneInfo(zone))
    return local.hour + local.minute / 60


def _tables(text: str) -> dict[str, str]:
    """The tables of a text by name, with what stands before the first under the empty name.

    Lists of tables ([[kinds]]) stay with the plain table before them.
    """
    parts = re.split(r"(?m)^(?=\[\w+\])", text)
    return {(found[1] if (found := re.match(r"\[(\w+)\]", part)) else ""): part for part in parts}
