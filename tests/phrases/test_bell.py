"""The bell in words: the one question before a walk-in is taken in, and what became of the clock."""

from datetime import date, time, timedelta

import pytest

from queueboard.intake.lines import read_lines
from queueboard.phrases.bell import (
    asked_words,
    ended_meanwhile_words,
    goes_on_words,
    knives_lines,
    paused_words,
    taken_in_words,
)
from queueboard.values.measured import BenchRun
from queueboard.values.new import NewPromise
from queueboard.words import PromiseKind
from tests.pictures import NOW, TODAY, box_picture, customer, settings

LINES = read_lines("2 chef, paring, bread", settings())
RUN = BenchRun(
    id=1,
    version=2,
    process="plain",
    knife_ids=(1,),
    started_at=NOW - timedelta(minutes=30),
    started_by="MB",
    nominal_seconds=600,
    planned_seconds=600,
    set_up_seconds=0,
    starter_seconds=600,
    paused_at=NOW - timedelta(minutes=4),
)


@pytest.mark.parametrize(
    ("told", "says"),
    [
        (NewPromise(kind=PromiseKind.BY_TIME, day=TODAY, at=time(16)), "today 16:00?"),
        (NewPromise(kind=PromiseKind.DAY, day=TODAY + timedelta(days=2)), "Saturday?"),
        (NewPromise(kind=PromiseKind.DAY, day=date(2026, 12, 10)), "Thu 10 Dec?"),
        (None, "no date?"),
    ],
)
def test_price_and_date_are_one_question(told: NewPromise | None, says: str) -> None:
    """The sum of all lines, then the day as it is said at the counter."""
    cents = sum(line.count * line.price_cents for line in LINES)

    said = asked_words(LINES, told, settings(), NOW)

    assert said.startswith(f"{cents // 100}.{cents % 100:02} ")
    assert said.endswith(says)


def test_every_kind_is_echoed() -> None:
    """A line for each kind, then how many are typed of those counted."""
    said = knives_lines(LINES, 4, settings())

    assert [line.split(" · ")[0] for line in said] == ["2 chef", "1 paring", "1 bread", "4 of 4 typed"]


def test_the_clock_of_the_run() -> None:
    """That it stands still, that it goes on and for how long it stood, that somebody else changed it."""
    assert paused_words(RUN) == "The clock of your run of plain stands still until you are back."
    assert goes_on_words(RUN, NOW) == "Your run of plain goes on; its clock stood still for 4 min."
    assert "was changed meanwhile" in ended_meanwhile_words(RUN)


def test_what_is_said_back_at_the_place() -> None:
    """Number, count, date, and whose it is, literally and last."""
    said = taken_in_words(box_picture(214, customer_=customer("[red]x[/]")), NOW)

    assert said.startswith("214 is in, ")
    assert said.endswith(": [red]x[/]")
