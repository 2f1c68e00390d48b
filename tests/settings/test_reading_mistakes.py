"""A mistake in the settings is one sentence that names its line."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings

STARTER = seed_text("settings.toml")

MISTAKES = [
    # what stands in the starter, what somebody wrote instead, what the sentence says
    ('mon = ["08:00-10:30"', 'mon = ["08:00-07:00"', "bench hours 08:00-07:00 end before they begin"),
    ('sat = ["08:00-13:00"]', 'sat = "08:00-13:00"', "sat is a list"),
    ('sat = ["08:00-13:00"]', 'sat = ["8-13"]', "opening hours look like"),
    ('sat = ["08:00-13:00"]', 'sat = ["08:00-24:00"]', "opening hours look like"),
    ('sat = ["08:00-13:00"]', 'sat = ["08:00-13:00", "12:00-14:00"]', "begin before 08:00-13:00 end"),
    ('sat = ["08:00-13:00"]', 'sat = ["13:00-13:00"]', "end before they begin"),
    ('sat = ["08:00-13:00"]', 'saturday = ["08:00-13:00"]', "do you mean sat?"),
    ('fri = ["08:00-10:30", "12:30-14:30"]', 'fri = ["07:00-10:30"]', "lie outside the opening hours of fri"),
    ('fri = ["08:00-10:30", "12:30-14:30"]', 'sun = ["08:00-10:30"]', "outside the opening hours of sun (closed)"),
    ('ready_by = "16:00"', "ready_by = 16:00", "texts and times in quotes"),
    ('ready_by = "16:00"', 'ready_by = "25:00"', "ready_by is a time of day"),
    ('ready_by = "16:00"', "ready_by = 16:00:00", "ready_by is a time of day"),
    ('ready_by = "16:00"', 'redy_by = "16:00"', "do you mean ready_by?"),
    ('name = "Fernlea Edge"', 'name = ""', "name is empty"),
    ('name = "Fernlea Edge"', "name = 12", "name is a text"),
    ('name = "Fernlea Edge"', f'name = "{"x" * 61}"', "61 characters"),
    ('name = "Fernlea Edge"', r'name = "a\u0000b"', "The name holds a control character (U+0000)"),
    ('"America/New_York"', '"America/New_Yrk"', "do you mean America/New_York?"),
    ('"America/New_York"', '"../../etc/passwd"', "is no time zone"),
    ('"America/New_York"', '"America"', "is no time zone"),
    ('length_unit = "in"', 'length_unit = "ft"', 'length_unit is "cm" or "in"'),
    ('country = "US"', 'country = "us"', "two capital letters"),
    ('country = "US"', 'country = "USA"', "at most 2 fit"),
    ('region = ""', "region = 5", "region is a text"),
    ("carrier_days = 3", "carrier_days = -1", "from 0 to 60"),
    ("carrier_days = 3", "carrier_days = 2.5", "whole number"),
    ("carrier_days = 3", "carrier_days = true", "not true"),
    ('collection = ["mon"', 'collection = ["monday"', "“monday” is no weekday"),
    ('["mon", "tue", "wed", "thu", "fri"]    #', '["sun"]  #', "collects on no weekday"),
    ("test_per_knife = 1", "test_per_knife = -1", "from 0 to 240"),
    ("wrap_per_knife = 1", "", "needs “wrap_per_knife”"),
    ("change_seconds = 30", "change_seconds = 3601", "from 0 to 3600"),
    ("grit_um = 58.5", "grit_um = 0", "above 0"),
    ("grit_um = 58.5", "grit_um = nan", "above 0"),
    ("grit_um = 58.5", 'grit_um = "58.5"', "above 0"),
    ('label = "P240"', 'lable = "P240"', "do you mean label?"),
    ("life_knives = 100", "life_knives = 0", "from 1 to 100000"),
    ("reorder_at = 2", "reorder_at = -1", "from 0 to 999"),
    ("cost = 4.50", "cost = 4.505", "parts of a cent"),
    ('label = "diamond 9"\nlife', 'label = "9 UM"\nlife', "stands in two [[belts.kinds]]"),
    ("run_size = 10", "run_size = 0", "from 1 to 200"),
    ('name = "thin hard"', 'name = "Plain"', "stands for two things"),
    ('serrated = "serrated"', 'serrated = "serated"', "do you mean serrated?"),
    ('serrated = "serrated"', 'toothed = "serrated"', "[edges] has no “toothed”"),
    ('process = "thin hard"', 'process = "quick"', "there is no process “quick”"),
    ('process = "serrated"', 'process = "plain"', "the process for plain edges"),
    ('edge = "serrated"', 'edge = "wavy"', "“wavy” is no edge"),
    ("price = 9.00", "price = -9", "an amount from 0"),
    ("price = 9.00", "price = 9.005", "parts of a cent"),
    ("price = 9.00", "price = inf", "an amount from 0"),
    ("price = 9.00", "price = 100000", "an amount from 0"),
    ("dull = 6", "dull = 0", "from 1 to 600"),
    ("dull = 6", "dul = 6", "do you mean dull?"),
    ("{ tired = 1, dull = 2, small_chips = 3 }", "{ }", "minutes are empty"),
    ("{ tired = 1, dull = 2, small_chips = 3 }", "3", "minutes is a table"),
    ('short = ["p", "par"]', 'short = ["p", "C"]', "“C” stands for two things"),
    ('name = "deba"', 'name = "CHEF"', "“CHEF” stands for two things"),
    ('name = "deba"', 'name = "4 steak"', "cannot be typed as a kind"),
    ('name = "deba"', 'name = "steak, house"', "cannot be typed as a kind"),
    ("length_mm = 254", "length_mm = 10", "from 20 to 900"),
    ('order = "fewest late"', 'order = "fewest"', "do you mean fewest late?"),
    ('order = "fewest late"', 'order = "by weight"', "write one of fewest late, earliest due first"),
    ('order = "fewest late"', "order = 1", "order is a text"),
    ("people = 1", "people = 4", "people from 1 to 3"),
    ("saved_percent = 100", "saved_percent = 101", "percent from 0 to 100"),
    ("sure_percent = 97", "sure_percent = 100", "percent from 50 to 99"),
    ("safety_days = 0", "safety_days = -1", "working days from 0 to 10"),
    ("walk_in_minutes = 30", "walk_in_minutes = 601", "minutes from 0 to 600"),
    ("tight_percent = 20", "tight_percent = 0", "percent from 1 to 99"),
    ("announced_minutes = 7", "announced_minutes = 0", "minutes from 1 to 120"),
    ("announced_minutes = 7", "anounced_minutes = 7", "do you mean announced_minutes?"),
    ("[handling]", "[handlng]", "do you mean handling?"),
    ("[belts]", "[[belts]]", "belts is a table"),
    ("[shop]", "[shop", "this cannot be read"),
]


def line_of(text: str, piece: str) -> int:
    """The line on which a piece stands for the first time."""
    return text[: text.index(piece)].count("\n") + 1


@pytest.mark.parametrize(("was", "wrong", "says"), MISTAKES, ids=lambda value: f"{value}"[:30])
def test_a_mistake_names_its_line(was: str, wrong: str, says: str) -> None:
    """The sentence begins with the line of the mistake and says what is wrong."""
    line = line_of(STARTER, was)
    if not wrong:
        line = line_of(STARTER, "[handling]")

    with pytest.raises(SettingsError) as caught:
        read_settings(STARTER.replace(was, wrong, 1))

    assert f"{caught.value}".startswith(f"line {line}: ")
    assert says in f"{caught.value}"


LAST_LINE = STARTER.count("\n")

ADDED = [
    ("[[closures]]\nfirst = 2026-12-24\nlast = 2026-12-01\nreason = 'x'", 3, "before it begins"),
    ("[[closures]]\nfirst = '2026-12-24'\nreason = 'x'", 2, "without quotes like 2026-11-27"),
    ("[[closures]]\nfirst = 2026-12-24T08:00:00\nreason = 'x'", 2, "without quotes like 2026-11-27"),
    ("[[closures]]\nfirst = 2026-13-24\nreason = 'x'", 2, "this cannot be read"),
    ("[[closures]]\nfirst = 2026-12-24\nlast = 2028-01-02\nreason = 'x'", 3, "lasts 375 days"),
    (
        "[[closures]]\nfirst = 2026-01-01\nlast = 2027-01-02\nreason = 'x'",
        3,
        "367 days, from 2026-01-01 to 2027-01-02; is the year right?",
    ),
    ("[[closures]]\nfirst = 2026-12-24", 1, "[[closures]] needs “reason”"),
    ("[[markets]]\nname = 'm'\nstart = 2026-01-01\nrule = 'FREQ=MONTHLY;BYDAY=QQ'", 4, "BYDAY is weekdays like SA"),
    ("[[markets]]\nname = 'm'\nstart = 2026-01-01\nrule = 'FREQ=MONTHLY;BYDAY=999SA'", 4, "not “999SA”"),
    ("[[markets]]\nname = 'm'\nstart = 0001-01-01\nrule = 'FREQ=DAILY'", 4, "it counts from 0001-01-01"),
    ("[[markets]]\nname = 'm'\nstart = 2026-01-01\nrule = 'FREQ=DAILY'", 4, "every day from 2026-01-01 on for a year"),
    ("[[markets]]\nname = 'm'\nstart = 2026-01-01\nrule = 'FREQ=HOURLY'", 4, "FREQ is one of DAILY"),
    ("[[markets]]\nname = 'm'\nstart = 2026-01-01\nrule = 'every saturday'", 4, "is no part of a rule"),
    ("[shop]\nname = 'again'", 1, "this cannot be read"),
    ("closed = [", 1, "this cannot be read"),
    ("deep = " + "[" * 900 + "\n" + "[" * 999, None, "too deeply"),
    ("[extra]\nx = 1", 1, "has no “extra”"),
]


@pytest.mark.parametrize(("added", "line", "says"), ADDED, ids=lambda value: f"{value}"[:40])
def test_a_mistake_at_the_end_names_its_line(added: str, line: int | None, says: str) -> None:
    """What is added below the starter is found at its own line."""
    with pytest.raises(SettingsError) as caught:
        read_settings(STARTER + added)

    expected = LAST_LINE + line if line else 1
    assert f"{caught.value}".startswith(f"line {expected}: ")
    assert says in f"{caught.value}"


@pytest.mark.parametrize("table", ["shop", "hours", "bench", "parcels", "handling", "belts"])
def test_a_missing_table_is_named(table: str) -> None:
    """A table that is missing altogether is named, at the last line."""
    start = STARTER.index(f"\n[{table}]") + 1
    end = re.compile(rf"\n\[(?!\[?{table}\.)").search(STARTER, start)
    assert end is not None
    text = STARTER[:start] + STARTER[end.start() + 1 :]

    with pytest.raises(SettingsError, match=rf"line {text.count(chr(10))}: .*needs “{table}”"):
        read_settings(text)


@pytest.mark.parametrize("table", ["processes", "kinds"])
def test_a_shop_needs_work_to_do(table: str) -> None:
    """Without any process or any kind the sentence says which table to add."""
    text = "\n\n".join(part for part in STARTER.split("\n\n") if f"[[{table}]]" not in part)

    with pytest.raises(SettingsError, match=rf"line \d+: .*add a \[\[{table}\]\]"):
        read_settings(text)


@pytest.mark.parametrize("table", ["hours", "bench"])
def test_a_shop_that_never_works_is_refused(table: str) -> None:
    """No opening hours or no bench hours at all are refused at the head of their table."""
    start = STARTER.index(f"\n[{table}]") + len(f"\n[{table}]")
    text = STARTER[:start] + STARTER[STARTER.index("\n\n", start) :]

    with pytest.raises(SettingsError, match=f"line {line_of(STARTER, f'[{table}]')}: .*write at least one weekday"):
        read_settings(text)


def outcome(text: str) -> str:
    """How many kinds were read, or what was said instead."""
    try:
        return f"{len(read_settings(text).kinds)} kinds"
    except SettingsError as trouble:
        return f"{trouble}"


@given(st.text())
def test_any_text_is_settings_or_a_sentence(text: str) -> None:
    """Whatever is handed in, the answer is a SettingsError with a line, never another error."""
    with pytest.raises(SettingsError, match=r"^line \d+: "):
        read_settings(text)


@given(st.integers(0, len(STARTER)), st.integers(0, 40), st.sampled_from(["", "\n", "]", '"', "= 1", "[x]", "\0"]))
def test_a_damaged_starter_is_read_or_refused(at: int, length: int, put: str) -> None:
    """With a piece cut out of the starter or put into it, it is read whole or refused with a line."""
    text = STARTER[:at] + put + STARTER[at + length :]

    assert outcome(text).startswith(("17 kinds", "16 kinds", "line "))
