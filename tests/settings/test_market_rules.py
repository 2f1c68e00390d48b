"""Rules for market days, and those that are refused."""

from datetime import date

import pytest

from queueboard.settings.market_rules import rule_days, rule_trouble
from tests.calendars import market

START = date(2026, 1, 1)


@pytest.mark.parametrize(
    ("rule", "says"),
    [
        ("", "is no part of a rule"),
        ("BYDAY=SA", "it needs FREQ"),
        ("FREQ=SECONDLY", "it needs FREQ"),
        ("FREQ=DAILY;BYHOUR=9", "“BYHOUR” is no part"),
        ("FREQ=DAILY;INTERVAL=0", "INTERVAL counts from 1"),
        ("FREQ=DAILY;INTERVAL=x", "INTERVAL counts from 1"),
        ("FREQ=DAILY;FREQ=WEEKLY", "a part stands in it twice"),
        ("FREQ=WEEKLY;COUNT=2;UNTIL=20261231", "cannot stand together"),
        ("FREQ=WEEKLY;BYDAY=", "invalid 'BYDAY'"),
        ("FREQ=WEEKLY;UNTIL=20261331", "invalid 'UNTIL'"),
        ("FREQ=WEEKLY;COUNT=0", "gives no day from 2026-01-01 on"),
        ("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "gives no day from 2026-01-01 on"),
        ("RRULE:FREQ=DAILY", "is no part of a rule"),
        ("FREQ=DAILY\nEXDATE:20260101", "it needs FREQ"),
    ],
)
def test_a_rule_that_names_no_days_is_refused(rule: str, says: str) -> None:
    """What is wrong with a rule is said, and rules that would never end are never run."""
    assert says in rule_trouble(rule, START)


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
