"""The close-out in words."""

from dataclasses import replace

import pytest

from queueboard.phrases.closing import (
    STEP_QUESTIONS,
    going_words,
    gone_sentence,
    label_check_words,
    missing_words,
    settle_choices,
    step_question,
)
from queueboard.values.box import CloseCheck
from queueboard.values.gone import GoneBox
from queueboard.values.totals import Totals
from queueboard.words import CloseStep, Column, GoesBy, Settling
from tests.pictures import NOW, TODAY, at, box, box_picture, knife, knives, label, settings, thing

SHOP = settings()
PARCEL = box_picture(
    box(goes_by=GoesBy.PARCEL),
    knives_=knives(417, Column.READY, Column.READY, Column.ON_BENCH),
    label_=label(carrier="post", expires_on=TODAY, name_on="M. Tallis"),
)


def gone(*, closed: bool = True) -> GoneBox:
    """Two knives and a roll left, all paid."""
    return GoneBox(
        box=PARCEL.box,
        customer=PARCEL.customer,
        knives=PARCEL.knives[:2],
        things=(thing(),),
        missing=(),
        missing_things=(),
        missing_reason="",
        staying=(),
        totals=Totals(knives_cents=1800, paid_cents=1800),
        settled=Settling.PAID,
        settled_why="",
        handed_to="",
        at=at(15),
        by="MB",
        closed=closed,
    )


def test_every_step_asks_something() -> None:
    """Each step has a question, and a pick-up is asked who collects it where a parcel is asked for its label."""
    assert set(STEP_QUESTIONS) == set(CloseStep)
    assert step_question(PARCEL, CloseStep.LABEL) == "Is this label on the box?"
    assert step_question(box_picture(), CloseStep.LABEL) == "Who collects it? Type the name."
    assert step_question(PARCEL, CloseStep.MONEY) == STEP_QUESTIONS[CloseStep.MONEY]


@pytest.mark.parametrize("step", [CloseStep.COUNT, CloseStep.TICK])
def test_the_count_is_asked_blind(step: CloseStep) -> None:
    """Before the count and while ticking, no figure stands in the question, and nothing is said about what goes."""
    assert not any(sign.isdigit() for sign in step_question(PARCEL, step))
    assert going_words(PARCEL) == ""
    assert going_words(replace(PARCEL, close_check=CloseCheck(step=step))) == ""


def test_after_the_count_what_goes_and_stays_is_said() -> None:
    """Knives that go are counted; those that stay or are missing are named by tag."""
    check = CloseCheck(step=CloseStep.GO, going=(417001,), missing=(417002,), staying=(417003,))

    assert going_words(replace(PARCEL, close_check=check)) == ("1 knife goes; 1 not ready: 417-3; 1 looked for: 417-2")


def test_a_missing_knife_is_named_with_where_it_was_last_seen() -> None:
    """Tag, place, time and initials, then what it looks like."""
    lost = knife("417-3", column=Column.READY, moved_at=at(16, 20, days=-1), mark="black handle")

    assert missing_words(lost, SHOP, NOW) == ("417-3 last seen ready, yesterday 16:20, MB: chef 20 cm, black handle")


def test_the_label_in_hand_is_held_against_what_was_typed() -> None:
    """Owner, state, last day, carrier and the name on it each can be compared; no label shows nothing."""
    assert label_check_words(PARCEL, NOW, settings()) == (
        "customer's label, here, good to Thu 26 Nov",
        "carrier: post",
        "name on the label: M. Tallis",
    )
    assert label_check_words(box_picture(), NOW, settings()) == ()


def test_money_may_stand_in_three_ways() -> None:
    """Paid, on account and gone unpaid are offered, the sum owed with the first."""
    choices = dict(settle_choices(PARCEL, SHOP))

    assert set(choices) == set(Settling)
    assert choices[Settling.PAID] == "paid now (27.00 EUR to pay)"


def test_the_last_sentence_says_what_left() -> None:
    """All of it, or a part with what stays and what is looked for, and how the money stood."""
    part = replace(
        gone(closed=False),
        staying=(PARCEL.knives[2],),
        missing=(knife("417-4"),),
        totals=Totals(knives_cents=1800),
        settled=Settling.UNPAID,
        settled_why="known for years",
    )

    assert gone_sentence(gone(), SHOP) == "Box 417 is gone: 2 knives, roll, paid."
    assert gone_sentence(part, SHOP) == (
        "A part of box 417 is gone: 2 knives, roll, gone unpaid, 18.00 EUR to pay, because known for years. "
        "417-3 stays on the board. Looked for: 417-4."
    )
