"""The sentence that is read aloud on the phone: as the shop asked for it, and true of every state of a box."""

from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.phrases.phone import answer, gone_answer
from queueboard.phrases.spoken import good_to, number_words, ordinal, spoken_day
from queueboard.shop.picture import BoxPicture
from queueboard.values.knife import Knife
from queueboard.values.shelf import GoneSeen
from queueboard.words import Column, DeclineReason, GoesBy, LabelState, Lateness, PromiseKind, Settling, WaitingFor
from tests.pictures import NOW, TODAY, at, box, box_picture, customer, forecast, knife, knives, label, payment, picture
from tests.pictures import promise as told

OK, BENCH = Column.READY, Column.ON_BENCH


def test_the_sentence_of_the_issue() -> None:
    """Eleven of thirteen done, two on rework, ships Thursday, 86.00 to pay, label good to the 20th."""
    redone = tuple(replace(one, rework=1) for one in knives(417, *[OK] * 11, BENCH, BENCH)[11:])
    here = (*knives(417, *[OK] * 11), *redone)
    now = datetime(2026, 12, 5, 9, 12, tzinfo=NOW.tzinfo)
    ships = now.replace(day=10, hour=15)
    one = box_picture(
        box(goes_by=GoesBy.PARCEL),
        knives_=here,
        payments=(payment(13 * 900 - 8600),),
        ship_by=ships,
        label_=label(expires_on=date(2026, 12, 20)),
    )

    assert answer(one, picture(one, now=now)) == (
        "Eleven of thirteen done, two on rework, ships Thursday, 86.00 EUR to pay, label good to the 20th."
    )


@pytest.mark.parametrize(
    ("number", "words"),
    [(0, "none"), (1, "one"), (13, "thirteen"), (20, "twenty"), (21, "twenty-one"), (99, "ninety-nine"), (100, "100")],
)
def test_numbers_are_said_as_words(number: int, words: str) -> None:
    """Up to ninety-nine as a word, beyond that in figures."""
    assert number_words(number) == words


@pytest.mark.parametrize(
    ("day", "said"), [(1, "1st"), (2, "2nd"), (3, "3rd"), (11, "11th"), (13, "13th"), (22, "22nd")]
)
def test_days_of_the_month_have_their_endings(day: int, said: str) -> None:
    """First, second, third; eleventh to thirteenth are not of them."""
    assert ordinal(day) == said


@pytest.mark.parametrize("days", range(-40, 41))
def test_a_day_said_short_can_mean_one_day_only(days: int) -> None:
    """A weekday alone lies within six days, a day of the month alone within four weeks; else the month is said."""
    day = TODAY + timedelta(days=days)
    said, good = spoken_day(day, TODAY), good_to(day, TODAY)

    assert ("November" in said or "December" in said or "January" in said or "October" in said) == (not -1 <= days <= 6)
    assert good.startswith("the ") == (2 <= days <= 27)


@st.composite
def boxes(draw: st.DrawFn) -> BoxPicture:
    """A box of up to 25 knives in any states, with or without promise, label, money, lateness."""
    count = draw(st.integers(0, 25))
    here = tuple(_knife(draw, number) for number in range(1, count + 1))
    goes_by = draw(st.sampled_from(GoesBy))
    opened = draw(st.booleans())
    promised = draw(st.booleans())
    due = NOW + timedelta(days=draw(st.integers(-40, 40)))
    lateness = draw(st.sampled_from(Lateness))
    one = box_picture(
        box(goes_by=goes_by, opened=opened, waiting_for=draw(st.none() | st.sampled_from(WaitingFor))),
        knives_=here if opened else (),
        promises=(told(due.date()),) if promised else (),
        ship_by=due if promised else None,
        payments=(payment(draw(st.integers(1, 30000))),) if draw(st.booleans()) else (),
        label_=draw(
            st.none()
            | st.builds(
                label,
                state=st.sampled_from(LabelState),
                expires_on=st.none() | st.dates(TODAY - timedelta(days=60), TODAY + timedelta(days=400)),
            )
        ),
        forecast_=forecast(lateness=lateness),
        honest_day=draw(st.none() | st.just(TODAY + timedelta(days=3))),
    )
    return one if promised else replace(one, ship_by=None)


def _knife(draw: st.DrawFn, number: int) -> Knife:
    made = knife(
        f"417-{number}",
        column=draw(st.sampled_from(Column)),
        rework=draw(st.integers(0, 2)),
        declined=draw(st.none() | st.sampled_from(DeclineReason)),
        waiting_for=draw(st.none() | st.sampled_from(WaitingFor)),
    )
    return replace(made, looking_for=draw(st.booleans()), apart=draw(st.booleans()))


@given(boxes())
def test_it_always_names_count_rest_date_and_money(one: BoxPicture) -> None:
    """Whatever state a box is in: one sentence that says how many are done, where each other is, when, how much."""
    said = answer(one, picture(one))
    here = one.on_hand
    done = sum(each.can_leave and each.declined is None for each in here)
    words = said[0].lower() + said[1:-1]
    parts = words.split(", ")

    assert said.endswith(".")
    assert said.count(".") == 1 + sum(part.count(".") for part in parts)
    if one.box.opened and here:
        assert parts[0] in {f"{number_words(done)} of {number_words(len(here))} done"} | (
            {f"all {number_words(done)} knives done", "the knife done", "both knives done"}
            if done == len(here)
            else set()
        )
        assert sum(map(_counted, parts[1:])) == len(here) - done + len(one.in_column(Column.GONE))
    if one.owed_cents > 0 and one.box.opened:
        assert any(part.endswith("EUR to pay") for part in parts)
    dated = ("ships ", "to be fetched", "it can be fetched", "no date told", "promised ")
    assert any(part.startswith(dated) for part in parts)


_RESTS = ("on rework", "not begun", "on the bench", "in testing", "being looked for", "not sharpened")
_MORE = ("gone already", "held until your yes to the count")


def _counted(part: str) -> int:
    """How many knives a part of the sentence accounts for."""
    words = {number_words(number): number for number in range(1, 26)}
    first, _, rest = part.partition(" ")
    counts = rest.startswith("waiting for ") or rest in (*_RESTS, *_MORE)
    return words.get(first, 0) if counts else 0


def gone(**changes: object) -> GoneSeen:
    """A parcel of two that left yesterday."""
    made = GoneSeen(
        box=box(402, goes_by=GoesBy.PARCEL),
        customer=customer(),
        knives=knives(402, Column.GONE, Column.GONE),
        left_at=at(16, days=-1),
        handed_to="",
        carrier="Quay Post",
        settled=Settling.PAID,
        owed_cents=0,
    )
    return replace(made, **changes)  # type: ignore[arg-type]  # a test says what fits


def test_a_box_that_is_gone_has_a_sentence_too() -> None:
    """When it left, with whom or to whom, and what is still to pay."""
    shop = picture().settings

    assert gone_answer(gone(), NOW, shop) == "Both knives left yesterday with Quay Post, paid."
    assert gone_answer(gone(carrier="", handed_to="Ms Verrin", owed_cents=4700), NOW, shop) == (
        "Both knives left yesterday, handed to Ms Verrin, 47.00 EUR to pay."
    )
    assert gone_answer(gone(knives=()), NOW, shop) == "Nothing of it is here, closed yesterday."


def test_what_is_looked_for_is_said_instead_of_a_day() -> None:
    """Three went and the last cannot be found: nobody is told a day that rests on finding it."""
    lost = replace(knives(407, OK)[0], looking_for=True)
    one = box_picture(
        407, knives_=(lost,), ship_by=at(16, days=-1), forecast_=forecast(407, lateness=Lateness.LATE), honest_day=TODAY
    )

    said = answer(one, picture(one))

    assert "and late, no new day before 407-1 chef is found" in said
    assert "instead" not in said


def late(kind: PromiseKind, promised_in: int, honest_in: int, goes_by: GoesBy = GoesBy.PICK_UP) -> str:
    """What is said of a box told for a day so many days off, whose honest day is so many days off."""
    in_time = promised_in >= 0
    told_at = at(16, days=promised_in)
    one = box_picture(
        box(goes_by=goes_by),
        knives_=knives(417, BENCH),
        promises=(told(told_at.date(), kind=kind, at=told_at.time() if kind.has_time else None),),
        ship_by=told_at,
        forecast_=forecast(lateness=Lateness.WILL_BE_LATE if in_time else Lateness.LATE, finish=at(17, days=honest_in)),
        honest_day=TODAY + timedelta(days=honest_in),
    )
    return answer(one, picture(one))


def test_the_day_that_was_told_is_not_told_again_in_its_own_place() -> None:
    """A round missed by hours: that it will not hold, when the work is done, and that no sure day is known."""
    said = late(PromiseKind.NEXT_ROUND, 1, 1)

    assert (
        "promised to come on the round of tomorrow, which will not hold, its work will be done by tomorrow 17:00"
        in said
    )
    assert "and no sure day can be told yet" in said
    assert "instead" not in said
    assert "no sure time can be told yet" in late(PromiseKind.BY_TIME, 1, 1)


@pytest.mark.parametrize(
    ("kind", "goes_by", "words"),
    [
        (
            PromiseKind.SHIPS_BY,
            GoesBy.PARCEL,
            "promised to leave by yesterday and late, it can leave by Monday instead",
        ),
        (
            PromiseKind.DAY,
            GoesBy.PARCEL,
            "promised to be in hand by yesterday and late, it can be in hand by Monday instead",
        ),
        (
            PromiseKind.DAY,
            GoesBy.PICK_UP,
            "promised to be ready by yesterday and late, it can be ready by Monday instead",
        ),
        (
            PromiseKind.NEXT_ROUND,
            GoesBy.PICK_UP,
            "promised to come on the round of yesterday and late, it can come on the round of Monday instead",
        ),
    ],
)
def test_what_is_late_is_said_in_whole_english(kind: PromiseKind, goes_by: GoesBy, words: str) -> None:
    """Each kind of promise reads aloud behind "promised to" and behind "it can"."""
    monday = (7 - TODAY.weekday()) % 7 or 7

    assert words in late(kind, -1, monday, goes_by)
