"""What is told at the counter: the earliest day with its sum, yes or no to a day, the room that is left."""

from datetime import date, time

import pytest

from queueboard.phrases.promising import BEYOND, advice_lines, answer_words, sure_words, wish_words
from queueboard.shop.quoting import Answer, Late, Offer
from queueboard.shop.wishing import Advice, Wish
from queueboard.values.new import NewKnife
from queueboard.values.plan import Overload
from queueboard.words import Edge, GoesBy, PromiseKind, WhyNot
from tests.plans import NOW, TODAY, at

FRIDAY = date(2026, 11, 27)
KNIFE = NewKnife(kind="chef", edge=Edge.PLAIN)


def wish(
    *,
    goes_by: GoesBy = GoesBy.PARCEL,
    kind: PromiseKind = PromiseKind.DAY,
    clock: time | None = None,
    carrier_days: int = 0,
) -> Wish:
    """One knife, wished for Friday."""
    return Wish(knives=(KNIFE,), goes_by=goes_by, kind=kind, day=FRIDAY, at=clock, carrier_days=carrier_days)


def offer(
    *, sure_permille: int = 981, binds: int | None = 417, safety_days: int = 0, closed: tuple[date, ...] = ()
) -> Offer:
    """A day with its sum."""
    return Offer(
        day=FRIDAY,
        leaves=at(15, 45),
        sure_permille=sure_permille,
        open_minutes=120,
        own_minutes=25,
        day_minutes=180,
        kept_minutes=60,
        spare_minutes=95,
        safety_days=safety_days,
        closed=closed,
        binds=binds,
    )


def answer(why: WhyNot | None = None, *, costs: tuple[Late, ...] = (), presses: int | None = None) -> Answer:
    """Yes to a day, or no with the reason."""
    return Answer(yes=why is None, sure_permille=974, costs=costs, presses=presses, why=why)


def advice(
    *,
    offered: Offer | None = None,
    asked: Answer | None = None,
    about: Wish | None = None,
    overloads: tuple[Overload, ...] = (),
) -> Advice:
    """Everything that is answered to a wish."""
    return Advice(
        wish=about or wish(), offer=offered, answer=asked, room_today=40, room_tomorrow=110, overloads=overloads
    )


OVERLOADED = (Overload(before=at(16, days=1), minutes=340),)


def test_the_offer_shows_its_sum_and_the_room() -> None:
    """The day, how sure it is, what it stands behind, the sum that leads to it, and what room is left."""
    assert advice_lines(advice(offered=offer()), NOW) == (
        "earliest: in hand by Fri 27 Nov (98 % sure), behind box 417",
        "open 120 + this box 25 + to spare 95 (60 kept free) = 240 bench min · 180 a day",
        "room for a rush: 40 min today, 110 min by tomorrow",
    )


def test_the_sum_shown_adds_up() -> None:
    """What stands right of the equals sign is the sum of what stands left of it."""
    _, line, _ = advice_lines(advice(offered=offer()), NOW)
    left, right = line.replace("(60 kept free) ", "").partition(" bench")[0].split(" = ")

    assert sum(int(word) for word in left.split() if word.isdigit()) == int(right)


def test_what_lies_between_bench_and_day_is_told() -> None:
    """Days on which the shop is shut, by name while they are few, and the carrier's days."""
    shut = tuple(date(2026, 11, day) for day in (22, 23, 24))
    on_the_way = wish(carrier_days=3)

    _, few, _ = advice_lines(advice(offered=offer(closed=shut[:2]), about=on_the_way), NOW)
    _, many, _ = advice_lines(advice(offered=offer(closed=shut), about=wish(kind=PromiseKind.SHIPS_BY)), NOW)

    assert few.endswith(" a day · shut Sun 22 Nov, Mon 23 Nov · 3 carrier days")
    assert many.endswith(" a day · shut 3 days")


def test_safety_days_and_coming_first_are_told() -> None:
    """A day on top for safety is named; a box that comes first stands behind nobody."""
    first, line, _ = advice_lines(advice(offered=offer(binds=None, safety_days=2)), NOW)

    assert "behind" not in first
    assert line.endswith("+ 2 days for safety")


@pytest.mark.parametrize(
    ("goes_by", "kind", "says"),
    [
        (GoesBy.PARCEL, PromiseKind.DAY, "earliest: in hand by Fri 27 Nov"),
        (GoesBy.PARCEL, PromiseKind.SHIPS_BY, "earliest: ships by Fri 27 Nov"),
        (GoesBy.PICK_UP, PromiseKind.DAY, "earliest: ready by Fri 27 Nov"),
    ],
)
def test_a_day_is_told_as_what_it_promises(goes_by: GoesBy, kind: PromiseKind, says: str) -> None:
    """In hand, leaving or ready at the counter, as it would be promised."""
    line = advice_lines(advice(offered=offer(), about=wish(goes_by=goes_by, kind=kind)), NOW)[0]

    assert line.startswith(says)


def test_no_day_is_said_so() -> None:
    """Beyond the days planned ahead no day is made up."""
    assert advice_lines(advice(), NOW) == (BEYOND, "room for a rush: 40 min today, 110 min by tomorrow")


def test_in_heavy_overload_no_chance_is_told() -> None:
    """The overload takes the place of the percentage, in the offer and in a yes."""
    lines = advice_lines(advice(offered=offer(), asked=answer(), overloads=OVERLOADED), NOW)

    assert lines[0] == "earliest: in hand by Fri 27 Nov (overloaded by 340 min before tomorrow 16:00), behind box 417"
    assert lines[-1] == "Fri 27 Nov: yes"
    assert "%" not in "".join(lines)


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (answer(), "yes, 97 % sure"),
        (
            answer(
                WhyNot.MAKES_LATE,
                costs=(
                    Late(number=417, customer="Maren Tallis", minutes=120),
                    Late(number=420, customer="O. Brandt", minutes=40),
                ),
            ),
            "no, it would make box 417 late by 2 h, box 420 by 40 min · Maren Tallis, O. Brandt",
        ),
        (answer(WhyNot.PRESSES, presses=417), "no, too little would be left free before the promise of box 417"),
        (answer(WhyNot.PRESSED, presses=417), "no, too little is free already before the promise of box 417"),
        (answer(WhyNot.BEHIND_LATE, presses=417), "no, nothing can go before a box that is late already: box 417"),
        (answer(WhyNot.TOO_MUCH), "no, it is not sure to be done by then, even as the first of all"),
        (answer(WhyNot.OVER), "no, that time is over"),
    ],
)
def test_yes_or_no_and_what_it_costs_whom(asked: Answer, says: str) -> None:
    """The day comes first, then yes with its chance, or no with whom it would make late."""
    assert answer_words(advice(asked=asked), asked, TODAY) == f"Fri 27 Nov: {says}"


def test_many_that_would_be_late_are_counted() -> None:
    """Three are named, the others counted, so that the line stays a line."""
    asked = answer(
        WhyNot.MAKES_LATE, costs=tuple(Late(number=n, customer=f"Ms {n}", minutes=500 - n) for n in range(400, 430))
    )

    said = answer_words(advice(asked=asked), asked, TODAY)

    assert "and 27 boxes more · Ms 400, Ms 401, Ms 402" in said
    assert "403" not in said


def test_a_wish_by_a_time_has_its_time() -> None:
    """A wish by a time is repeated with it."""
    assert wish_words(wish(clock=time(16)), TODAY) == "Fri 27 Nov 16:00"


@pytest.mark.parametrize(
    ("permille", "says"),
    [(1000, "over 99 % sure"), (991, "over 99 % sure"), (990, "99 % sure"), (505, "51 % sure"), (9, "under 1 % sure")],
)
def test_nothing_is_told_as_quite_sure(permille: int, says: str) -> None:
    """A chance is never told as nought or a hundred."""
    assert sure_words(permille) == says
