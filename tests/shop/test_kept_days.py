"""The days at the bench that are kept for the next start: always what counting them anew would give."""

from collections import Counter
from collections.abc import Callable
from datetime import timedelta
from typing import ClassVar
from unittest.mock import patch

import pytest
from hypothesis import strategies as st
from hypothesis.stateful import rule

from queueboard.planning.learning import WorkedDay
from queueboard.records.instants import from_us
from queueboard.records.kept_days import kept_file
from queueboard.records.measuring import work_left
from queueboard.seedfiles import seed_text
from queueboard.shop import correcting, measuring, moving, numbers, receiving, undoing
from queueboard.shop.looking import look
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.picture import BoxPicture
from queueboard.words import Column, Edge
from tests import engines
from tests.bench.fuzz import live
from tests.shop.acts import FAMILIES
from tests.shop.place import box, by, parcel
from tests.shop.random_day import Day, attempt, chances

DAY = 24 * 60
DAYS, ACTS = engines.days(40), 12


class BenchDays(Day):
    """Days that go by, with much done at the bench, and put right later; of the random acts those about knives."""

    tried: ClassVar[Counter[tuple[str, bool]]] = Counter()

    @rule(days=st.sampled_from((1, 1, 1, 20)), chance=chances)
    def a_day_at_the_bench(self, days: int, chance: int) -> None:
        """The bench is done with some knives of a box, and the next day comes, or the next month."""
        moment = self.moment("J", chance)
        attempt(lambda: moving.move_knives(self.shop, moment.by, moment.some(moment.seen().on_hand), Column.TESTING))
        self.now += timedelta(days=days)

    @rule(chance=chances)
    def a_step_is_undone(self, chance: int) -> None:
        """Any of the newest steps is taken back, of whatever day."""
        moment = self.moment("J", chance)
        steps = [step for step in undoing.steps(self.shop, "J") if step.operation == "move_knives"]
        attempt(lambda: undoing.undo(self.shop, moment.by, moment.pick(steps).group_id, "a slip"))

    @rule(chance=chances)
    def a_knife_is_another(self, chance: int) -> None:
        """A knife was taken for another kind, whatever was done with it."""
        moment = self.moment("J", chance)
        kind = moment.pick(("bread", "chef"))
        attempt(lambda: correcting.correct_knife(self.shop, moment.by, moment.knife, kind=kind))


for other in FAMILIES.keys() - {"receiving", "moving", "runs"}:
    setattr(BenchDays, f"act_{other}", None)  # else most days would be about something else


@pytest.mark.own_folder
def test_what_is_kept_of_the_days_is_what_counting_them_anew_gives() -> None:
    """Whatever is done, undone, corrected or struck, on whatever day, behind each act."""
    BenchDays.tried.clear()

    live(DAYS, 3, ACTS, BenchDays)

    assert BenchDays.tried.total() >= DAYS


@pytest.mark.own_folder
def test_days_that_are_never_counted_again_are_noticed() -> None:
    """The control: were what is written later never looked at, those days at random would tell."""
    with patch.object(measuring, "reaches_back", return_value=False), pytest.raises(AssertionError):
        live(DAYS, 3, ACTS, BenchDays)


def done_on_tuesday(shop: Shop) -> BoxPicture:
    """A box of nine of which two went on on Tuesday; on Wednesday the shop was opened."""
    made = parcel(shop, knives=9)
    moving.move_knives(shop, by(minutes=DAY), made.knives[:2], Column.TESTING)
    known_after_a_start(shop)
    return box(shop, made.box.number)


def known_after_a_start(shop: Shop, *, after: int = 2 * DAY) -> tuple[WorkedDay, ...]:
    """The days as a window knows them that opens so many minutes after Monday, nine o'clock."""
    opened = open_shop(shop.path)
    try:
        look(opened, by(minutes=after).now)
        assert opened.minutes_cache is not None
        return tuple(day for _, day in opened.minutes_cache[0].days)
    finally:
        close_shop(opened)


def test_a_start_counts_only_the_days_that_are_over_since(shop: Shop) -> None:
    """History of before what is kept is not read: the first of the days asked for is the one that was not over."""
    made = done_on_tuesday(shop)
    moving.move_knives(shop, by(minutes=2 * DAY), made.knives[2:5], Column.TESTING)

    with patch.object(measuring, "work_left", wraps=work_left) as asked:
        tuesday, wednesday = known_after_a_start(shop, after=3 * DAY)

    assert (tuesday.knives, wednesday.knives) == (2, 3)
    ((_, since_us),) = (call.args for call in asked.call_args_list)
    assert from_us(since_us).astimezone(look(shop, by().now).now.tzinfo).isoformat()[:16] == "2026-11-11T00:00"


def test_a_start_with_nothing_new_counts_nothing(shop: Shop) -> None:
    """A second window on the same day takes what is kept."""
    done_on_tuesday(shop)

    with patch.object(measuring, "work_left") as asked:
        (tuesday,) = known_after_a_start(shop)

    assert tuesday.knives == 2
    asked.assert_not_called()


def corrected(shop: Shop, made: BoxPicture) -> None:
    """One of the two was a bread knife."""
    correcting.correct_knife(shop, by(minutes=2 * DAY), made.knives[0], kind="bread", edge=Edge.SERRATED)


def struck(shop: Shop, made: BoxPicture) -> None:
    """One of the others was never there."""
    receiving.strike_knife(shop, by(minutes=2 * DAY), made.knives[8], "never there")


def undone(shop: Shop, made: BoxPicture) -> None:
    """The two had not been worked at all."""
    (step,) = (step for step in undoing.steps(shop, "J") if step.operation == "move_knives")
    undoing.undo(shop, by(minutes=2 * DAY), step.group_id)


def other_numbers(shop: Shop, made: BoxPicture) -> None:
    """Another set-up is told."""
    text = seed_text("settings.toml").replace('name = "plain"', 'name = "plain"\nset_up_seconds = 95', 1)
    numbers.take_settings(shop, by(minutes=2 * DAY), text)


@pytest.mark.parametrize("goes", [corrected, struck, undone, other_numbers], ids=lambda way: way.__name__)
def test_what_is_put_right_later_counts(shop: Shop, goes: Callable[[Shop, BoxPicture], None]) -> None:
    """What is kept is given up when something written later is about the days in it."""
    made = done_on_tuesday(shop)
    before = known_after_a_start(shop)

    goes(shop, made)

    after = known_after_a_start(shop)
    assert after != before
    kept_file(shop.path).unlink()
    assert known_after_a_start(shop) == after


@pytest.mark.parametrize(
    ("old", "new"),
    [("", ""), ('"knives"', '"knife"'), ("2026-11-11", "2026-11-12"), ("[", "")],
    ids=["nothing in it", "other words", "another day", "cut short"],
)
def test_what_is_damaged_beside_the_file_says_nothing(shop: Shop, old: str, new: str) -> None:
    """Days that are not as they were written are counted again."""
    done_on_tuesday(shop)
    right, kept = known_after_a_start(shop), kept_file(shop.path)

    kept.write_text(kept.read_text(encoding="ascii").replace(old, new, 1) if old else "", encoding="ascii")

    assert known_after_a_start(shop) == right


def test_days_of_another_history_say_nothing(shop: Shop) -> None:
    """Of two shops that lay under one name in turn, neither takes the other's days."""
    done_on_tuesday(shop)
    text = kept_file(shop.path).read_text(encoding="ascii")
    for step in undoing.steps(shop, "J")[:1]:
        undoing.undo(shop, by(minutes=2 * DAY), step.group_id)
    assert known_after_a_start(shop) == ()

    head = str(shop.database.one("SELECT hash FROM history ORDER BY id DESC LIMIT 1"))
    assert head not in text


def test_a_place_that_cannot_be_written_is_no_trouble(shop: Shop) -> None:
    """Where nothing can be kept the days are counted again, and nobody is told."""
    kept_file(shop.path).mkdir()

    assert done_on_tuesday(shop).knives
    (tuesday,) = known_after_a_start(shop)
    assert tuesday.knives == 2
