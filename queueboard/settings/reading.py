"""The shop's own numbers, read from TOML; every mistake is one sentence with its line."""

import re
import tomllib
from decimal import Decimal, InvalidOperation
from functools import lru_cache
from pathlib import Path
from zoneinfo import ZoneInfo, available_timezones

from queueboard.errors import SettingsError
from queueboard.settings.fields import Table, meant, written
from queueboard.settings.locate import lines_of
from queueboard.settings.market_rules import rule_trouble
from queueboard.settings.reading_belts import read_belt_kinds
from queueboard.settings.reading_checked import read_checked
from queueboard.settings.reading_evening import read_evening
from queueboard.settings.reading_gauge import read_gauge
from queueboard.settings.reading_hours import read_bench, read_hours
from queueboard.settings.reading_market import read_market
from queueboard.settings.reading_papers import read_papers
from queueboard.settings.reading_parcels import read_parcels
from queueboard.settings.reading_planning import read_planning
from queueboard.settings.reading_prices import read_prices
from queueboard.settings.reading_shelf import read_shelf
from queueboard.settings.reading_swaps import read_swaps
from queueboard.settings.reading_work import read_edges, read_kinds, read_processes
from queueboard.settings.shapes import Closure, Handling, Keeping, MarketDay, Settings

MOST_CHARACTERS = 200_000
"""The most the shop's file takes as one text; the starter has about 10,000."""
LONGEST_LINE = 1000
MOST_MARKETS = 50
LONGEST_CLOSURE = 366
"""Days; a longer one is a slip in its year."""

TABLES = (
    "shop",
    "hours",
    "bench",
    "closures",
    "markets",
    "parcels",
    "carriers",
    "handling",
    "planning",
    "gauge",
    "prices",
    "belts",
    "keeping",
    "shelf",
    "evening",
    "papers",
    "swaps",
    "market",
    "processes",
    "edges",
    "kinds",
    "last_checked",
)
"""The tables of a text of settings; the shop's own screen shows each of them."""

_HANDLING = (
    "intake_per_knife",
    "intake_per_box",
    "test_per_knife",
    "wrap_per_knife",
    "pack_per_parcel",
    "counter_per_box",
)


@lru_cache(maxsize=4)  # reading takes longer than most actions, and the text hardly ever changes
def read_settings(text: str) -> Settings:
    """The checked settings in *text*, which is TOML; SettingsError names the line of the first mistake.

    Whether the country has a list of public holidays is seen later, when that list is asked for.
    """
    whole = _whole(text)
    whole.only(*TABLES)
    shop = whole.table("shop")
    shop.only("name", "currency", "length_unit", "zone", "country", "region", "ready_by", "open_on_holidays")
    country, region = _place(shop)
    hours = read_hours(whole.table("hours"))
    processes = read_processes(whole)
    edges = read_edges(whole, processes)
    kinds = read_kinds(whole, processes, edges)
    return Settings(
        name=shop.text("name", longest=60),
        currency=shop.text("currency", longest=8),
        country=country,
        region=region,
        zone=_zone(shop),
        length_unit=_length_unit(shop),
        hours=hours,
        bench=read_bench(whole.table("bench"), hours),
        ready_by=shop.clock("ready_by"),
        closures=tuple(_closure(table) for table in whole.tables("closures")),
        markets=_markets(whole.tables("markets")),
        kinds=kinds,
        processes=processes,
        edges=edges,
        handling=_handling(whole.table("handling")),
        parcels=read_parcels(whole, hours, kinds),
        open_on_holidays=_open_on(shop),
        planning=read_planning(whole),
        belt_kinds=read_belt_kinds(whole),
        gauge=read_gauge(whole, kinds),
        prices=read_prices(whole, kinds),
        keeping=_keeping(whole),
        shelf=read_shelf(whole),
        evening=read_evening(whole),
        checked=read_checked(whole),
        papers=read_papers(whole),
        swaps=read_swaps(whole),
        market=read_market(whole, kinds),
    )


def _whole(text: str) -> Table:
    """The text as one table with its lines; what TOML itself forbids is refused here."""
    _measure(text)
    try:
        values: dict[str, object] = tomllib.loads(text, parse_float=_decimal)
        return Table(values=values, path=(), lines=lambda: lines_of(text)).without_controls()
    except RecursionError:
        raise SettingsError("line 1: lists stand in lists too deeply to be settings; take them apart") from None
    except ValueError as trouble:
        raise SettingsError(_unreadable(f"{trouble}", text)) from None


def _decimal(written: str) -> Decimal:
    """The exact number; one with an exponent beyond all measure is none, and is refused at its line like nan."""
    try:
        return Decimal(written)
    except InvalidOperation:
        return Decimal("NaN")


def _measure(text: str) -> None:
    """Refuse a text that is no shop's, before anything in it is read: what is read must be read at once."""
    if len(text) > MOST_CHARACTERS:
        raise SettingsError(
            f"line 1: this text has more than {MOST_CHARACTERS} characters, the most that fit. Shorten it."
        )
    for number, line in enumerate(text.split("\n"), 1):
        if len(line) > LONGEST_LINE:
            raise SettingsError(
                f"line {number}: this line has {len(line)} characters; at most {LONGEST_LINE} fit. Break it up."
            )
        if any("\ud800" <= sign <= "\udfff" for sign in line):
            raise SettingsError(f"line {number}: this line holds half of a character; type that sign anew.")


def _unreadable(trouble: str, text: str) -> str:
    found = re.search(r"\(at line (\d+), column (\d+)\)", trouble)
    line = int(found[1]) if found else text.rstrip().count("\n") + 1
    reason = trouble.partition(" (at ")[0]
    return (
        f"line {line}: this cannot be read ({reason}); a setting is written name = value, "
        "texts and times in quotes, a table begins with its name in square brackets"
    )


def _place(shop: Table) -> tuple[str, str]:
    country = shop.text("country", longest=2, shortest=0)
    region = shop.text("region", longest=12, shortest=0) if shop.has("region") else ""
    if not re.fullmatch("([A-Z]{2})?", country):
        raise shop.wrong(f"country is two capital letters like US, or empty, not {written(country)}", "country")
    if region and not country:
        raise shop.wrong(f"region {written(region)} needs a country", "region")
    return country, region


def _open_on(shop: Table) -> frozenset[str]:
    """The holidays on which the shop opens; their names are those of the country's list, whatever their case."""
    if not shop.has("open_on_holidays"):
        return frozenset()
    return frozenset(name.casefold() for name in shop.texts("open_on_holidays", longest=80))


def _zone(shop: Table) -> ZoneInfo:
    name = shop.text("zone", longest=60)
    try:
        return ZoneInfo(name)
    except (KeyError, ValueError, OSError):
        hint = meant(name, available_timezones(), "a zone looks like Europe/Berlin")
        raise shop.wrong(f"{written(name)} is no time zone; {hint}", "zone") from None


def _length_unit(shop: Table) -> str:
    unit = shop.text("length_unit", longest=10)
    if unit not in ("cm", "in"):
        raise shop.wrong(f'length_unit is "cm" or "in", not {written(unit)}', "length_unit")
    return unit


def _closure(table: Table) -> Closure:
    table.only("first", "last", "reason")
    first = table.day("first")
    last = table.day("last") if table.has("last") else first
    if last < first:
        raise table.wrong(
            f"this closure ends on {last}, before it begins on {first}; write the earlier day first", "last"
        )
    if (last - first).days >= LONGEST_CLOSURE:
        raise table.wrong(
            f"this closure lasts {(last - first).days + 1} days, from {first} to {last}; is the year right? "
            f"At most {LONGEST_CLOSURE} days stand in one",
            "last",
        )
    return Closure(first=first, last=last, reason=table.text("reason", longest=60))


def _markets(tables: tuple[Table, ...]) -> tuple[MarketDay, ...]:
    if len(tables) > MOST_MARKETS:
        raise tables[MOST_MARKETS].wrong(f"there are {len(tables)} [[markets]]; write at most {MOST_MARKETS}")
    return tuple(map(_market, tables))


def _market(table: Table) -> MarketDay:
    table.only("name", "rule", "start")
    rule, start = table.text("rule", longest=200), table.day("start")
    trouble = rule_trouble(rule, start)
    if trouble:
        raise table.wrong(f"the market rule {rule}: {trouble}", "rule")
    return MarketDay(name=table.text("name", longest=60), rule=rule, start=start)


def _keeping(whole: Table) -> Keeping:
    """How data are kept; what is not written is as in Keeping."""
    if not whole.has("keeping"):
        return Keeping()
    table, usual = whole.table("keeping"), Keeping()
    table.only("second_folder", "erase_after_days")
    folder = table.text("second_folder", longest=400, shortest=0) if table.has("second_folder") else ""
    if folder and not Path(folder).is_absolute():
        raise table.wrong(
            f"the second folder {written(folder)} is no full path; write it from the root on, so that it is the same "
            "wherever queueboard is started",
            "second_folder",
        )
    days = table.whole("erase_after_days", 0, 4000, "days") if table.has("erase_after_days") else usual.erase_after_days
    return Keeping(second_folder=folder, erase_after_days=days)


def _handling(table: Table) -> Handling:
    table.only(*_HANDLING)
    minutes = {name: table.whole(name, 0, 240, "minutes") for name in _HANDLING}
    return Handling(**minutes)
