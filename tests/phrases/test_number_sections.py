"""The screen of the shop's own numbers shows each of them, and takes back what it shows."""

from collections.abc import Iterator
from datetime import date

import pytest

from queueboard.errors import TypedError
from queueboard.phrases import number_sorts as sorts
from queueboard.phrases.number_sections import SECTIONS
from queueboard.phrases.number_sorts import Sort, Ways
from queueboard.phrases.own_numbers import (
    Entry,
    Section,
    ago_words,
    checked_on,
    checked_words,
    with_checked,
    with_typed,
)
from queueboard.seedfiles import seed_text
from queueboard.settings.editing import value_at, values_in
from queueboard.settings.locate import Path
from queueboard.settings.reading import TABLES, read_settings
from queueboard.settings.reading_checked import CHECKED_PARTS

WAYS = Ways(currency="USD", length_unit="in", today=date(2026, 11, 26))
STARTER = seed_text("settings.toml")
MORE = """
[prices.tax]
knives = 7.25
add_ons = 5
shipping = 0.5
[[closures]]
first = 2026-12-24
last = 2027-01-02
reason = "winter break"
[[markets]]
name = "Harbour market"
rule = "FREQ=MONTHLY;BYDAY=3SA"
start = 2026-01-01
[prices.by_length]
bread = { base = 4.00, each = 1.00 }
[[parcels.last_ship]]
ship_on = 2026-12-18
arrives_by = 2026-12-24
[[carriers]]
name = "Gull Post"
carrier_days = 2
collection = ["mon", "wed", "fri"]
cut_off = "14:30"
last_checked = 2026-11-02
[[carriers.last_ship]]
ship_on = 2026-12-19
arrives_by = 2026-12-24
"""
FULL = (
    STARTER.replace("# minimum =", "minimum =")
    .replace("# mail_minimum =", "mail_minimum =")
    .replace("# length_step =", "length_step =")
    .replace("hold_after_days = 45", "free_shipping_from = 120.00\nhold_after_days = 45")
    .replace("# tax = 2026", "tax = 2026")
    + MORE
)
"""Settings in which everything is written that can be."""


def entries(text: str) -> Iterator[Entry]:
    """Every line of every section."""
    for section in SECTIONS:
        for group in section.groups(text, WAYS):
            yield from group.entries


def leaves(value: object, path: Path = ()) -> Iterator[Path]:
    """The way to each single value, lists of texts and of belts taken whole."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    if isinstance(value, list) and not (value and isinstance(value[0], dict) and path[-1] != "belts"):
        yield path
        return
    if not isinstance(value, dict | list):
        yield path
    for key, one in inner:
        yield from leaves(one, (*path, key))


def test_the_full_settings_are_settings() -> None:
    """What these tests go by is taken as it stands."""
    assert read_settings(FULL).parcels.carriers[0].name == "Gull Post"


def test_every_table_of_the_settings_has_its_section() -> None:
    """A table that is added to the settings needs a section on the screen, or a part of one."""
    shown = {table.partition(".")[0] for section in SECTIONS for table in section.tables}

    assert set(TABLES) == shown, "declare a section in phrases/number_sections.py"
    assert {section.name for section in SECTIONS} - {"carriers", "shelf"} == set(CHECKED_PARTS), (
        "with a day of their own"
    )


def test_every_number_of_the_settings_has_its_line() -> None:
    """No value that may be written is out of reach of the screen."""
    shown = {number.path for entry in entries(FULL) for number in entry.numbers}
    checked = {section.checked_path() for section in SECTIONS}

    missing = set(leaves(values_in(FULL))) - shown - checked
    assert not missing, missing


def test_lines_are_told_apart() -> None:
    """No two lines of a section have one id, and every line says something."""
    for section in SECTIONS:
        ids = [entry.id for group in section.groups(FULL, WAYS) for entry in group.entries]
        assert len(ids) == len(set(ids)), section.name
    assert all(entry.words and entry.shows for entry in entries(FULL))


def test_what_a_field_offers_means_what_is_written() -> None:
    """Each number, typed just as its field offers it, is the very value that stands in the settings."""
    values, text = values_in(FULL), FULL
    for entry in entries(FULL):
        literals: list[str | None] = []
        for number in entry.numbers:
            typed = number.typed(values, WAYS)
            written = value_at(values, number.path) is not None
            assert written or typed == ""
            literals.append(number.literal(typed, WAYS) if written else None)
        text = with_typed(text, entry, literals)

    assert text != FULL
    assert read_settings_like(values_in(text)) == read_settings_like(values)


def read_settings_like(values: dict[str, object]) -> object:
    """The values, lengths to a tenth of a unit: that is how a field offers them."""
    return {
        path: round(int(f"{value_at(values, path)}") / 2.54) if path[-1] == "length_mm" else value_at(values, path)
        for path in leaves(values)
    }


@pytest.mark.parametrize(
    ("sort", "typed", "literal"),
    [
        (sorts.MONEY, "9", "9.00"),
        (sorts.MONEY, "9,5", "9.50"),
        (sorts.whole("minutes"), "6 minutes", "6"),
        (sorts.whole("percent"), "50 %", "50"),
        (sorts.number("percent"), "7,25", "7.25"),
        (sorts.CLOCK, "4pm", '"16:00"'),
        (sorts.SPANS, "8:00-12:30, 13.30 - 17:00", '["08:00-12:30", "13:30-17:00"]'),
        (sorts.SPANS, "closed", "[]"),
        (sorts.SPANS, "9-18", '["09:00-18:00"]'),
        (sorts.DAY, "24 dec", "2026-12-24"),
        (sorts.DAY, "today", "2026-11-26"),
        (sorts.COLLECTION, "mon-fri", '["mon", "tue", "wed", "thu", "fri"]'),
        (sorts.COLLECTION, "Fri, Mon sunday", '["fri", "mon", "sun"]'),
        (sorts.COLLECTION, "sat-mon", '["sat", "sun", "mon"]'),
        (sorts.LENGTH, "20 cm", "200"),
        (sorts.LENGTH, "8", "203"),
        (sorts.HANDLE, "13 cm", "130"),
        (sorts.GRAMS, "8 oz", "227"),
        (sorts.GRAMS, "0", "0"),
        (sorts.SIDES, "45 x 25 x 10 cm", "[450, 250, 100]"),
        (sorts.NAMES, "c, chefs ,", '["c", "chefs"]'),
        (sorts.YES, "n", "false"),
        (sorts.TEXT, 'a "b" \\ [red]', r'"a \"b\" \\ [red]"'),
        (sorts.BELTS, "P240 58.5, 16 um 16", '[{ label = "P240", grit_um = 58.5 }, { label = "16 um", grit_um = 16 }]'),
    ],
)
def test_numbers_are_typed_as_the_shop_speaks(sort: Sort, typed: str, literal: str) -> None:
    """Money, minutes, hours, dates, lengths in either unit, lists: each becomes what the settings write."""
    assert sort.literal(typed, WAYS) == literal


@pytest.mark.parametrize(
    ("sort", "typed", "says"),
    [
        (sorts.MONEY, "nine", "no amount"),
        (sorts.whole("minutes"), "-5", "no whole number of minutes"),
        (sorts.whole("minutes"), "6.5", "no whole number of minutes"),
        (sorts.CLOCK, "25:00", "no 25:00 on the clock"),
        (sorts.CLOCK, "4", "04:00 or 16:00"),
        (sorts.SPANS, "8", "no hours"),
        (sorts.DAY, "31.2.2027", "no 31.2.2027"),
        (sorts.COLLECTION, "monday-xyz", "no weekday"),
        (sorts.LENGTH, "long", "no length"),
        (sorts.GRAMS, "250", "250 of what"),
        (sorts.SIDES, "45 x 25", "no size"),
        (sorts.YES, "maybe", "neither yes nor no"),
        (sorts.BELTS, "P240", "no belt"),
        (sorts.TEXT, "x\0", "NUL"),
        (sorts.one_of({"a": "half up", "b": "half even"}), "half", "half up, half even"),
    ],
)
def test_what_is_no_such_number_is_said(sort: Sort, typed: str, says: str) -> None:
    """A sentence that says what to type instead."""
    with pytest.raises(TypedError, match=says):
        sort.literal(typed, WAYS)


@pytest.mark.parametrize(
    ("day", "says"),
    [
        (None, "never checked"),
        (date(2026, 11, 26), "checked today"),
        (date(2026, 11, 2), "checked Mon 2 Nov, 24 days ago"),
        (date(2026, 2, 26), "checked Thu 26 Feb, 8 months ago"),
        (date(2025, 9, 20), "OLD: checked 14 months ago"),
        (date(2023, 11, 1), "OLD: checked 3 years ago"),
    ],
)
def test_a_section_says_how_long_ago_it_was_checked(day: date | None, says: str) -> None:
    """Never, today, a while ago, or longer ago than the shop's own number of days."""
    assert checked_words(day, 365, WAYS.today) == says


def test_days_and_months_are_counted_whole() -> None:
    """Two months on it is said in months, two years on in years."""
    days = [date(2026, 11, 25), date(2026, 9, 27), date(2026, 9, 25), date(2024, 11, 27), date(2024, 11, 20)]

    assert [ago_words(day, WAYS.today) for day in days] == [
        "1 day ago", "60 days ago", "2 months ago", "23 months ago", "2 years ago",
    ]  # fmt: skip


@pytest.mark.parametrize("section", SECTIONS, ids=lambda section: section.name)
def test_each_section_keeps_the_day_it_was_checked(section: Section) -> None:
    """The day goes into the settings and is read from there; an older text without such a table takes it too."""
    line = f"{section.checked_path()[-1]} = 2026-11-26\n"
    for text in (STARTER, STARTER[: STARTER.index("# When somebody of the shop")]):
        after = with_checked(text, section.checked_path(), WAYS.today)

        assert checked_on(after, section) == WAYS.today
        assert read_settings(after).name == "Fernlea Edge"
        assert after.replace(line, "").removesuffix("\n[last_checked]\n") == text
