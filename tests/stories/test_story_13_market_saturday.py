"""Story 13: a market Saturday, 31 customers and 112 knives, no power after 13:00. All of it is invented."""

from datetime import UTC, date, datetime, timedelta

import pytest

from queueboard.board.desk import Desk
from queueboard.board.market_typed import TypedMarket
from queueboard.cli import main
from queueboard.errors import TypedError
from queueboard.phrases.market import ask_first, stops_taking_in
from queueboard.shop import numbers
from queueboard.shop.looking import look
from queueboard.shop.market import take_market
from queueboard.shop.market_pad import pad_of
from queueboard.shop.opening import Shop
from queueboard.shop.undoing import steps, undo
from queueboard.values.actor import Actor
from queueboard.words import PromiseKind
from tests.shop.undo_market import MARKET_ON

SATURDAY = datetime(2026, 11, 14, 20, tzinfo=UTC)
"""In the evening; the market is each Saturday, the next one on the 21st."""
NAMES = (
    *("Abel", "Brack", "Corrin", "Dunn", "Estry", "Fallow", "Garran", "Hask", "Ilver", "Jarro", "Kelp", "Lorn"),
    *("Marl", "Nessim", "Oake", "Prall", "Quist", "Rendal", "Sallow", "Tarn", "Ulley", "Verrin", "Wick", "Yarrow"),
    *("Zell", "Ashby", "Birk", "Coll", "Darr", "Ennis", "Forr"),
)
COUNTS = (4,) * 19 + (3,) * 12
TAGS = (*range(503, 533), 534)
"""Tags 500 to 502 were used the week before; 533 went to nobody."""
STAY = (526, 530, 534)
"""Three customers who fetch theirs at the next market, three knives each."""
MORNING_KEYS = 20
JARRO = 9
"""The line that got the tag of the one before it."""
PRICE_CENTS = 900
"""A chef's knife by the list of the settings."""


def entry(place: int, *, tag: bool = False) -> str:
    """What is typed of a customer in the morning: count, name and phone; the tag only where it is not the next one."""
    count, phone = COUNTS[place], f"555{1000 + place}"
    return f"{TAGS[place] if tag else ''} {count} {NAMES[place]} {phone}".strip()


@pytest.fixture
def typed(shop: Shop) -> TypedMarket:
    """All 31 lines in the pad of a shop with a stall; Jarro's got the tag of the line before, 511 for 512."""
    numbers.take_settings(shop, Actor(initials="K", now=SATURDAY), MARKET_ON)
    desk = Desk(shop, "K", lambda: SATURDAY)
    desk.look()
    typed = TypedMarket(desk)
    typed.take("503-560")
    for place in range(31):
        line = entry(place, tag=place in {10, 30})
        typed.take(f"511 {line}" if place == JARRO else line)
    return typed


def mended(typed: TypedMarket) -> TypedMarket:
    """The double mended in its line, all paid but what stays for the next market."""
    typed.place = JARRO
    assert typed.mend().startswith("511 4 Jarro")
    typed.take(entry(JARRO, tag=True))
    typed.to_end()
    for tag, count in zip(TAGS, COUNTS, strict=True):
        typed.take(f"{tag} >" if tag in STAY else f"{tag} {count} *")
    return typed


def test_the_story_is_what_it_says() -> None:
    """31 customers and 112 knives, of which 9 stay for the next market."""
    assert (len(NAMES), len(set(NAMES)), len(TAGS), sum(COUNTS)) == (31, 31, 31, 112)
    assert sum(COUNTS[TAGS.index(tag)] for tag in STAY) == 9


def test_a_morning_entry_is_under_twenty_keys_beyond_the_name() -> None:
    """Count, blank, name, blank, phone, Enter: no line of the day needs twenty keys beside the name's own."""
    for place in range(31):
        assert len(entry(place, tag=True)) + len("\n") - len(NAMES[place]) < MORNING_KEYS


def test_gaps_and_duplicates_are_shown(typed: TypedMarket) -> None:
    """533 was printed and never used, as was 512 while 511 stands in two lines; nothing is taken in like that."""
    day = typed.day
    assert (day.tags.gaps, day.tags.duplicates, day.tags.not_printed) == ((512, 533), (511,), ())
    assert (len(day.lines), day.knives) == (31, 112)
    assert "511" in stops_taking_in(day)
    with pytest.raises(TypedError, match="511 stands in two lines"):
        take_market(typed.desk.shop, Actor(initials="K", now=SATURDAY), day.boxes, typed.pad.id)
    assert mended(typed).day.tags.gaps == (533,)
    assert ask_first(typed.day, typed.desk.picture.settings).startswith("Printed, never used: 533.")


def test_the_evening_types_tag_count_paid(typed: TypedMarket) -> None:
    """A count that is not the morning's is asked back and changes nothing; what is right adds up to 103 knives paid."""
    with pytest.raises(TypedError, match="5 knives here, and 4 in the line of 503"):
        typed.take("503 5 *")
    assert sum(seen.paid_cents for seen in typed.day.lines) == 0
    day = mended(typed).day
    assert (sum(seen.paid_cents for seen in day.lines), day.stays, day.unpaid) == (103 * PRICE_CENTS, 9, ())


def test_nothing_typed_is_lost_with_the_power(typed: TypedMarket) -> None:
    """Each line lies on the disk: another window, or the same one after the cut, goes on behind the last."""
    again, taken = pad_of(typed.desk.shop, SATURDAY)
    assert (len(again.lines), again.tags, taken) == (31, (503, 560), False)


def test_it_is_taken_in_once_and_what_stays_is_brought_along(
    typed: TypedMarket, capsys: pytest.CaptureFixture[str]
) -> None:
    """One step: 28 customers have theirs, 9 knives in three boxes are due on the 21st; undo takes all back."""
    shop, by = mended(typed).desk.shop, Actor(initials="K", now=SATURDAY)
    done = take_market(shop, by, typed.day.boxes, typed.pad.id)
    assert (done.numbers, done.knives, done.cents) == (TAGS, 112, 103 * PRICE_CENTS)

    picture = look(shop, SATURDAY)
    assert [box.box.number for box in picture.boxes] == list(STAY)
    assert {(box.promise.kind, box.promise.day) for box in picture.boxes if box.promise} == {
        (PromiseKind.NEXT_ROUND, date(2026, 11, 21))
    }
    assert sum(len(box.on_hand) for box in picture.boxes) == 9
    assert {box.owed_cents for box in picture.boxes} == {3 * PRICE_CENTS}

    assert main(["market", "--file", str(shop.path)], clock=lambda: SATURDAY) == 0
    shown = capsys.readouterr().out
    assert "BRING TO MARKET, 9 knives" in shown
    assert "530  Sat 21 Nov: 0 of 3 ready, 27.00 to pay, Coll" in shown

    later = Actor(initials="K", now=SATURDAY + timedelta(minutes=1))
    with pytest.raises(TypedError, match="Box 526 is on the board already"):
        take_market(shop, later, typed.day.boxes, "another pad")
    (step,) = [one for one in steps(shop, "K") if one.operation == "take_market"]
    undo(shop, later, step.group_id, "typed on the wrong day")
    assert not look(shop, SATURDAY).boxes
    assert pad_of(shop, SATURDAY)[1] is False


def test_an_evening_belongs_to_the_day_of_the_shop(shop: Shop) -> None:
    """At half past one in the night of UTC it is still the market's evening in the shop."""
    numbers.take_settings(shop, Actor(initials="K", now=SATURDAY), MARKET_ON)
    desk = Desk(shop, "K", lambda: datetime(2026, 11, 15, 1, 30, tzinfo=UTC))
    desk.look()
    typed = TypedMarket(desk)
    typed.take("4 Verrin")
    assert typed.pad.day == date(2026, 11, 14)
