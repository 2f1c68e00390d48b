"""Return labels to buy or to use."""

from datetime import date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.calendar.days import ShopCalendar, can_ship
from queueboard.parcels.labels import label_due, last_use_day, worst_first
from queueboard.values.box import ReturnLabel
from queueboard.values.label import LabelDue
from queueboard.words import LabelOwner, LabelState, LabelWord
from tests.calendars import YEAR, calendars, shop_calendar
from tests.pictures import ZONE, label
from tests.pictures import label_due as due

CALENDAR = shop_calendar(holidays={date(2026, 11, 26): "Thanksgiving Day"})


def at(text: str) -> datetime:
    """An instant in the shop's zone."""
    return datetime.fromisoformat(text).replace(tzinfo=ZONE)


@pytest.mark.parametrize(
    ("expires_on", "last"),
    [
        ("2026-11-25", "2026-11-25"),
        ("2026-11-26", "2026-11-25"),  # the feast
        ("2026-11-28", "2026-11-27"),  # a Saturday: the shop is open, no collection
        ("2026-11-29", "2026-11-27"),
        ("2026-11-30", "2026-11-30"),
    ],
)
def test_a_label_dies_on_the_last_day_it_can_be_used(expires_on: str, last: str) -> None:
    """The last day of use is the last one up to the expiry on which a parcel can leave (worked out by hand)."""
    assert last_use_day(CALENDAR, date.fromisoformat(expires_on)) == date.fromisoformat(last)


@pytest.mark.parametrize(
    ("now", "finish", "word"),
    [
        ("2026-11-24T08:00", None, LabelWord.GOOD),
        ("2026-11-26T08:00", None, LabelWord.DIES_TOMORROW),
        ("2026-11-27T08:00", None, LabelWord.DIES_TODAY),
        ("2026-11-27T15:45", None, LabelWord.DIES_TODAY),
        ("2026-11-27T15:46", None, LabelWord.TOO_LATE),
        ("2026-11-28T08:00", None, LabelWord.TOO_LATE),
        ("2026-11-24T08:00", "2026-11-27T15:45", LabelWord.GOOD),
        ("2026-11-24T08:00", "2026-11-27T16:10", LabelWord.TOO_LATE),
        ("2026-11-27T08:00", "2026-11-30T09:00", LabelWord.TOO_LATE),
        ("2026-11-27T08:00", "2026-11-26T09:00", LabelWord.DIES_TODAY),
    ],
)
def test_a_label_in_the_shop_says_how_long_it_lives(now: str, finish: str | None, word: LabelWord) -> None:
    """A label that expires on Sunday dies on Friday at the packing cut-off, or is too late when the plan ends later."""
    here = label(expires_on=date(2026, 11, 29))

    found = label_due(CALENDAR, here, None, at(now), 417, at(finish) if finish else None)

    assert found == LabelDue(box_id=417, word=word, last_day=date(2026, 11, 27))


@pytest.mark.parametrize(
    ("ship_by", "word"),
    [
        (None, LabelWord.BUY),
        ("2026-11-28T15:45", LabelWord.BUY),
        ("2026-11-27T15:45", LabelWord.BUY_TODAY),
        ("2026-11-25T15:45", LabelWord.BUY_TODAY),
    ],
)
def test_a_label_is_bought_on_the_packing_day(ship_by: str | None, word: LabelWord) -> None:
    """A label to buy is bought on the day of the ship-by, and at once when that has passed."""
    to_buy = label(owner=LabelOwner.SHOP, state=LabelState.TO_BUY)

    found = label_due(CALENDAR, to_buy, at(ship_by) if ship_by else None, at("2026-11-27T09:00"), 417)

    assert found == LabelDue(box_id=417, word=word, last_day=None)


def test_a_label_without_expiry_is_good() -> None:
    """Where no expiry was typed, nothing is asked of the shop."""
    found = label_due(CALENDAR, label(), None, at("2026-11-27T09:00"), 417)

    assert found == LabelDue(box_id=417, word=LabelWord.GOOD, last_day=None)


@pytest.mark.parametrize("nothing", [None, label(state=LabelState.USED, expires_on=date(2026, 11, 1))])
def test_a_used_label_asks_for_nothing(nothing: ReturnLabel | None) -> None:
    """No label and a used one are not in the list."""
    assert label_due(CALENDAR, nothing, None, at("2026-11-27T09:00"), 417) is None


def test_the_worst_comes_first() -> None:
    """Too late, dies today, buy today, dies tomorrow, buy, good; in each the earlier day, then the box."""
    today = date(2026, 11, 27)
    dues = (
        due(9, LabelWord.GOOD, None),
        due(8, LabelWord.GOOD, today + timedelta(days=9)),
        due(7, LabelWord.GOOD, today + timedelta(days=5)),
        due(6, LabelWord.BUY, None),
        due(5, LabelWord.DIES_TOMORROW, today + timedelta(days=1)),
        due(4, LabelWord.BUY_TODAY, None),
        due(3, LabelWord.DIES_TODAY, today),
        due(2, LabelWord.TOO_LATE, today - timedelta(days=1)),
        due(1, LabelWord.TOO_LATE, today - timedelta(days=1)),
    )

    assert [found.box_id for found in worst_first(dues)] == [1, 2, 3, 4, 5, 6, 7, 8, 9]


@given(calendars(), YEAR)
def test_the_last_day_of_use_is_the_last(calendar: ShopCalendar, expires_on: date) -> None:
    """A parcel can leave on it, and on no later day up to the expiry."""
    last = last_use_day(calendar, expires_on)

    assert last <= expires_on
    assert can_ship(calendar, last)
    between = (last + timedelta(days=n) for n in range(1, (expires_on - last).days + 1))
    assert not any(can_ship(calendar, day) for day in between)


@given(calendars(), YEAR, st.integers(0, 400), st.integers(0, 400))
def test_a_label_never_comes_back_to_life(calendar: ShopCalendar, expires_on: date, hours: int, more: int) -> None:
    """As time passes the word goes good, tomorrow, today, too late, and never back."""
    here = label(expires_on=expires_on)
    start = datetime.combine(expires_on, datetime.min.time(), tzinfo=calendar.settings.zone) - timedelta(days=12)
    order = [LabelWord.GOOD, LabelWord.DIES_TOMORROW, LabelWord.DIES_TODAY, LabelWord.TOO_LATE]

    seen = [label_due(calendar, here, None, start + timedelta(hours=passed), 1) for passed in (hours, hours + more)]

    places = [order.index(found.word) for found in seen if found is not None]
    assert len(places) == 2
    assert places == sorted(places)
