"""Rules for market days, and those that are refused."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.settings.market_rules import EARLIEST, LATEST, rule_days, rule_trouble
from tests.calendars import market

START = date(2026, 1, 1)


@pytest.mark.parametrize(
    ("rule", "says"),
    [
        ("", "is no part of a rule"),
        ("BYDAY=SA", "it needs FREQ"),
        ("FREQ=SECONDLY", "FREQ is one of DAILY"),
        ("FREQ=DAILY;BYHOUR=9", "“BYHOUR” is no part"),
        ("FREQ=DAILY;INTERVAL=0", "INTERVAL is a number from 1 to 999, not “0”"),
        ("FREQ=DAILY;INTERVAL=x", "INTERVAL is a number from 1 to 999, not “X”"),
        ("FREQ=DAILY;INTERVAL=999999999", "INTERVAL is a number from 1 to 999"),
        ("FREQ=DAILY;FREQ=WEEKLY", "a part stands in it twice"),
        ("FREQ=WEEKLY;COUNT=2;UNTIL=20261231", "cannot stand together"),
        ("FREQ=WEEKLY;BYDAY=", "BYDAY is weekdays like SA"),
        ("FREQ=WEEKLY;UNTIL=20261331", "there is no day 20261331"),
        ("FREQ=WEEKLY;UNTIL=20251231", "gives no day from 2026-01-01 on"),
        ("FREQ=WEEKLY;COUNT=0", "COUNT is a number from 1"),
        ("FREQ=MONTHLY;BYDAY=999SA", "BYDAY is weekdays like SA"),
        ("FREQ=MONTHLY;BYDAY=6SA", "MONTHLY knows no BYDAY=6SA"),
        ("FREQ=YEARLY;BYDAY=54SA", "1 to 53"),
        ("FREQ=WEEKLY;BYDAY=2SA", "WEEKLY knows no BYDAY=2SA"),
        ("FREQ=MONTHLY;BYMONTHDAY=0", "BYMONTHDAY is numbers from 1 to 31"),
        ("FREQ=MONTHLY;BYMONTHDAY=32", "BYMONTHDAY is numbers from 1 to 31"),
        ("FREQ=YEARLY;BYMONTH=13", "BYMONTH is numbers from 1 to 12"),
        ("FREQ=YEARLY;BYWEEKNO=-54", "BYWEEKNO is numbers from 1 to 53"),
        ("FREQ=YEARLY;BYYEARDAY=367", "BYYEARDAY is numbers from 1 to 366"),
        ("FREQ=MONTHLY;BYSETPOS=0;BYDAY=SA", "BYSETPOS is numbers from 1 to 366"),
        ("FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30", "no month of BYMONTH=2 has a day BYMONTHDAY=30"),
        ("FREQ=DAILY;BYMONTH=2,4;BYMONTHDAY=-31;COUNT=3", "no month of BYMONTH=2,4 has a day BYMONTHDAY=-31"),
        ("FREQ=YEARLY;BYWEEKNO=53;BYMONTH=6", "gives no day from 2026-01-01 on"),
        ("FREQ=WEEKLY;BYMONTHDAY=3", "WEEKLY knows no BYMONTHDAY=3"),
        ("FREQ=MONTHLY;BYYEARDAY=3", "MONTHLY knows no BYYEARDAY=3"),
        ("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "no month of BYMONTH=2"),
        ("RRULE:FREQ=DAILY", "is no part of a rule"),
        ("FREQ=DAILY\nEXDATE:20260101", "FREQ is one of DAILY"),
    ],
)
def test_a_rule_that_names_no_days_is_refused(rule: str, says: str) -> None:
    """What is wrong with a rule is said, and rules that would never end are never run."""
    assert says in rule_trouble(rule, START)


@pytest.mark.parametrize("start", [date.min, date(1989, 12, 31), date(2101, 1, 1), date.max])
def test_a_rule_that_counts_from_another_age_is_refused(start: date) -> None:
    """Each look counts on from the start: from the year 1 that would take seconds, for a market nobody ever held."""
    assert "write a start from 1990-01-01 to 2100-12-31" in rule_trouble("FREQ=DAILY", start)


@pytest.mark.parametrize("start", [EARLIEST, LATEST])
def test_the_first_and_the_last_start_are_taken(start: date) -> None:
    """Both ends of the starts belong to them."""
    assert not rule_trouble("FREQ=DAILY;COUNT=3", start)
    assert rule_days(market("FREQ=DAILY;COUNT=3", start), start, start + timedelta(days=2)) == {
        start + timedelta(days=more) for more in range(3)
    }


@pytest.mark.parametrize(
    ("rule", "taken"),
    [
        ("FREQ=DAILY", False),
        ("FREQ=DAILY;UNTIL=20270102", False),
        ("FREQ=DAILY;COUNT=366", False),
        ("FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR,SA,SU", False),
        ("FREQ=DAILY;COUNT=365", True),
        ("FREQ=DAILY;COUNT=5", True),
        ("FREQ=DAILY;UNTIL=20260110", True),
        ("FREQ=DAILY;INTERVAL=2", True),
        ("FREQ=DAILY;BYMONTH=12", True),
    ],
)
def test_a_rule_of_every_day_ends_within_a_year(rule: str, taken: bool) -> None:
    """A fair of some days is a market; every day for a year and more would shut the shop, and is a slip."""
    trouble = rule_trouble(rule, START)

    assert (trouble == "") is taken
    assert taken or "every day from 2026-01-01 on for a year, and the shop would never open" in trouble


def test_a_day_that_comes_once_in_forty_years_is_waited_for() -> None:
    """29 February on a Monday comes after 2072 only in 2112, since 2100 is no leap year."""
    rule = "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29;BYDAY=MO"

    assert not rule_trouble(rule, date(2072, 3, 1))
    assert rule_days(market(rule, date(2072, 3, 1)), date(2072, 3, 1), date(2112, 12, 31)) == {date(2112, 2, 29)}


NUMBERS = st.integers(-400, 400) | st.sampled_from([10**12, -(10**12)])
WEEKDAYS = st.sampled_from(["MO", "TU", "WE", "TH", "FR", "SA", "SU"])
ONE = st.one_of(NUMBERS.map(str), WEEKDAYS, st.tuples(NUMBERS, WEEKDAYS).map(lambda pair: f"{pair[0]}{pair[1]}"))
PARTS = st.tuples(
    st.sampled_from(["BYDAY", "BYMONTHDAY", "BYYEARDAY", "BYWEEKNO", "BYMONTH", "BYSETPOS", "INTERVAL", "COUNT"]),
    st.lists(ONE, min_size=1, max_size=3).map(",".join),
).map("=".join)
RULES = st.tuples(
    st.sampled_from(["DAILY", "WEEKLY", "MONTHLY", "YEARLY"]).map("FREQ={}".format), st.lists(PARTS, max_size=3)
).map(lambda rule: ";".join([rule[0], *rule[1]]))


@given(RULES, st.dates(date(2015, 1, 1), date(2035, 1, 1)))
def test_any_rule_gives_days_or_a_sentence(rule: str, start: date) -> None:
    """Whatever numbers stand in a rule, it is refused in words, or every look at a year gives days of that year."""
    if rule_trouble(rule, start):
        return
    first, last = date(2026, 1, 1), date(2026, 12, 31)

    assert all(max(first, start) <= day <= last for day in rule_days(market(rule, start), first, last))


def test_small_letters_are_taken() -> None:
    """A rule may be typed in small letters."""
    assert not rule_trouble("freq=monthly;byday=3sa", START)
    assert rule_days(market("freq=monthly;byday=3sa", START), START, date(2026, 2, 28)) == {
        date(2026, 1, 17),
        date(2026, 2, 21),
    }


def test_the_start_is_a_market_day_only_where_the_rule_says_so() -> None:
    """The first market day is the first that the rule names, and none lies before the start."""
    saturdays = market("FREQ=WEEKLY;BYDAY=SA", date(2026, 1, 7))

    assert rule_days(saturdays, date(2026, 1, 1), date(2026, 1, 17)) == {date(2026, 1, 10), date(2026, 1, 17)}
