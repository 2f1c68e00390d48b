"""Rules for market days against the examples of RFC 5545, section 3.8.5.3 (values/rfc5545.json)."""

import json
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TypedDict

import pytest

from queueboard.calendar.days import market_days
from queueboard.settings.market_rules import rule_trouble
from tests.calendars import market
from tests.shop_settings import settings


class Example(TypedDict):
    """A rule, the day it counts from, and the first days that the RFC prints."""

    rule: str
    start: str
    first: list[str]


PUBLISHED: list[Example] = json.loads((Path(__file__).parent / "values" / "rfc5545.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("example", PUBLISHED, ids=lambda example: str(example["rule"]))
def test_a_rule_gives_its_published_days(example: Example) -> None:
    """The market days begin as printed; a rule that counts its days gives no more than those."""
    start = date.fromisoformat(example["start"])
    numbers = replace(settings(), markets=(market(example["rule"], start),))

    days = [day.isoformat() for day in market_days(numbers, start, date(start.year + 12, 12, 31))]

    assert not rule_trouble(example["rule"], start)
    assert days[: len(example["first"])] == example["first"]
    if "COUNT" in example["rule"]:
        assert len(days) == len(example["first"])
