"""Messages to customers: true of the box or refused, its own money alone, and never a word of getting rid of knives."""

import re
from dataclasses import replace
from datetime import date, timedelta

import pytest

from queueboard.errors import RuleError
from queueboard.phrases.cautions import HAND_OVER
from queueboard.phrases.dates import WILL
from queueboard.phrases.messages import CHECK_LAW, gone_message, law_words, message, sorts_of
from queueboard.shelf_words import MessageSort
from queueboard.shop.picture import BoxPicture
from queueboard.words import Column, DeclineReason, GoesBy, Lateness, PromiseKind
from tests.house.tree import ROOT, sources
from tests.phrases.test_phone import gone
from tests.pictures import HOSTILE_NAMES, NOW, TODAY, at, box, box_picture, customer, forecast, knives, picture
from tests.pictures import promise as told

OK = Column.READY


def ready(goes_by: GoesBy = GoesBy.PICK_UP) -> BoxPicture:
    """A box of two ready knives, promised for tomorrow."""
    return box_picture(box(goes_by=goes_by), knives_=knives(417, OK, OK), ship_by=at(16, days=1))


def test_ready_says_how_many_and_what_is_owed() -> None:
    """To be fetched for a pick-up, when it leaves for a parcel; what goes back as it came is said."""
    name = picture().settings.name
    one = ready()
    first, second = one.knives
    as_it_was = replace(one, knives=(first, replace(second, declined=DeclineReason.CRACKED)))

    assert message(MessageSort.READY, one, picture(one)) == (
        f"{name}: Your two knives (box 417) are ready to be fetched. 18.00 EUR to pay."
    )
    assert "are ready and leave by Friday 27 November." in message(
        MessageSort.READY, ready(GoesBy.PARCEL), picture(ready(GoesBy.PARCEL))
    )
    assert "One of them could not be sharpened. 9.00 EUR to pay." in message(
        MessageSort.READY, as_it_was, picture(as_it_was)
    )


def test_ready_is_not_said_of_a_box_that_is_not() -> None:
    """One of two at the bench: refused with the count."""
    one = box_picture(knives_=knives(417, OK, Column.ON_BENCH))
    with pytest.raises(RuleError, match="is not ready: 1 of 2 can leave"):
        message(MessageSort.READY, one, picture(one))


def test_shipped_says_what_left_and_what_is_here() -> None:
    """Of a part it says how many are still here; of a box that is gone when, with whom, and what is owed."""
    shop = picture().settings
    part = box_picture(knives_=knives(417, Column.GONE, Column.GONE, OK))

    assert "Two of your three knives (box 417) left on Thursday 26 November. One more is still here." in (
        message(MessageSort.SHIPPED, part, picture(part)).replace("one more", "One more")
    )
    with pytest.raises(RuleError, match="Nothing of box 417 has left yet"):
        message(MessageSort.SHIPPED, ready(), picture(ready()))
    assert gone_message(MessageSort.SHIPPED, gone(owed_cents=4700), NOW, shop) == (
        f"{shop.name}: Your two knives (box 402) left on Wednesday 25 November with Quay Post. 47.00 EUR to pay."
    )
    with pytest.raises(RuleError, match="only that it has left"):
        gone_message(MessageSort.READY, gone(), NOW, shop)


def test_delayed_says_both_days() -> None:
    """What was told and what is honest now; after a second promise those two; refused while the day still holds."""
    first = told(date(2026, 11, 27), kind=PromiseKind.DAY)
    late = replace(
        box_picture(box(goes_by=GoesBy.PARCEL), promises=(first,), honest_day=date(2026, 12, 1)),
        forecast=forecast(lateness=Lateness.WILL_BE_LATE),
    )
    twice = box_picture(
        box(goes_by=GoesBy.PARCEL), promises=(first, replace(first, id=2, day=date(2026, 12, 2))), forecast_=forecast()
    )
    holds = box_picture(promises=(first,), forecast_=forecast())

    assert message(MessageSort.DELAYED, late, picture(late)).endswith(
        "We told you that your knives (box 417) would be in hand by Friday 27 November, and that will not hold. "
        "Now they will be in hand by Tuesday 1 December. We are sorry."
    )
    assert "Now they will be in hand by Wednesday 2 December." in message(MessageSort.DELAYED, twice, picture(twice))
    with pytest.raises(RuleError, match="still holds"):
        message(MessageSort.DELAYED, holds, picture(holds))
    unknown = replace(late, honest_day=None)
    with pytest.raises(RuleError, match="Nobody knows yet"):
        message(MessageSort.DELAYED, unknown, picture(unknown))
    same_day = replace(late, honest_day=first.day)
    with pytest.raises(RuleError, match="late within the day told"):
        message(MessageSort.DELAYED, same_day, picture(same_day))


def test_each_kind_of_promise_reads_as_a_sentence() -> None:
    """Whatever was promised stands behind would in plain English, and a day at the counter is the day it is ready."""
    assert set(WILL) == set(PromiseKind)
    for kind, way, says in (
        (PromiseKind.SHIPS_BY, GoesBy.PARCEL, "would leave by Friday 27 November"),
        (PromiseKind.DAY, GoesBy.PICK_UP, "would be ready by Friday 27 November"),
        (PromiseKind.NEXT_ROUND, GoesBy.PICK_UP, "would come on the round of Friday 27 November"),
    ):
        first = told(date(2026, 11, 27), kind=kind)
        twice = box_picture(
            box(goes_by=way), promises=(first, replace(first, id=2, day=date(2026, 12, 2))), forecast_=forecast()
        )
        assert says in message(MessageSort.DELAYED, twice, picture(twice))


def test_not_fetched_lists_the_knives_and_the_days() -> None:
    """Each knife with its tag; the line about the law is the shop's, and no part of the text."""
    one = replace(ready(), knives=tuple(replace(k, moved_at=NOW - timedelta(days=94)) for k in ready().knives))
    text = message(MessageSort.UNCLAIMED, one, picture(one))

    assert "are ready to be fetched since Monday 24 August, for 94 days." in text
    assert [line for line in text.splitlines() if line.startswith("-")] == ["- 417-1 chef 20 cm", "- 417-2 chef 20 cm"]
    assert CHECK_LAW not in text.casefold()
    assert "heck local law first" in law_words(picture().settings, TODAY)
    assert "nobody has noted when it was last read" in law_words(picture().settings, TODAY)
    parcel = ready(GoesBy.PARCEL)
    with pytest.raises(RuleError, match="does not wait to be fetched"):
        message(MessageSort.UNCLAIMED, parcel, picture(parcel))


@pytest.mark.parametrize("name", HOSTILE_NAMES, ids=ascii)
def test_no_message_holds_a_name_phone_or_address_of_the_customer(name: str) -> None:
    """It speaks of a box; whose it is, the envelope or the phone knows."""
    one = replace(ready(), customer=customer(name, phone="0555 014 417", town="Osterby"))
    for sort in sorts_of(one, picture(one)):
        text = message(sort, one, picture(one))
        assert name not in text
        assert "014 417" not in text
        assert "Osterby" not in text


NEVER = re.compile(
    r"\b(dispos\w+|auction\w*|yours now|ours now|sell|sold|selling|forfeit\w*|abandon\w*|scrapp?\w*|throw (it|them) out"
    r"|becomes? (ours|the shop's)|keep (it|them) for good|get rid)\b",
    re.IGNORECASE,
)
"""Words of getting rid of other people's knives."""


def test_no_sentence_speaks_of_getting_rid_of_knives() -> None:
    """Neither the program's sentences nor the screens kept beside the tests have such a word."""
    said = [
        f"{source.where}: {found.group()}" for source in sources("queueboard") for found in NEVER.finditer(source.text)
    ]
    shown = [
        f"{path.name}: {found.group()}"
        for path in sorted((ROOT / "tests" / "screens").rglob("*.txt"))
        for found in NEVER.finditer(path.read_text(encoding="utf-8"))
    ]

    assert not said + shown
    assert any("check local law first" in line for line in HAND_OVER)
