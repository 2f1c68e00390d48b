"""Runs at the day list over a real shop: begun with the clock, the bell, finished, and whose they are."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.run_ask import RunDialog
from queueboard.records.runs import open_runs, run_by_id
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.running import start_run
from queueboard.values.measured import BenchRun
from queueboard.words import Column
from tests.board.dump import dump
from tests.board.host import SMALL, Host, until
from tests.shop.place import NOW, box, by, counter, parcel, picture, small_shop


class Clock:
    """The instant that a test has come to."""

    def __init__(self) -> None:
        self.now = NOW

    def __call__(self) -> datetime:
        return self.now


class ADay:
    """A shop with a box due tomorrow and one due on Friday, the day list of MB over it, and its clock."""

    def __init__(self, shop: Shop) -> None:
        self.shop, self.clock = shop, Clock()
        self.first, self.second = counter(shop).box.number, parcel(shop).box.number

    def open(self, initials: str = "MB") -> Host:
        """An app with the day list."""
        desk = Desk(self.shop, initials, self.clock)
        return Host(desk, lambda: DayScreen(desk))

    def wait(self, minutes: int) -> None:
        """Let time go by."""
        self.clock.now += timedelta(minutes=minutes)

    def run(self) -> BenchRun:
        """The one run under way."""
        (run,) = open_runs(self.shop.database)
        return run

    def columns(self, number: int) -> set[Column]:
        """Where the knives of a box stand."""
        return {knife.column for knife in box(self.shop, number).knives}


@pytest.fixture
def day(tmp_path: Path) -> Iterator[ADay]:
    """The day, its shop closed at the end."""
    made = ADay(small_shop(tmp_path))
    yield made
    close_shop(made.shop)


async def test_plus_begins_a_run_and_again_finishes_it_with_its_time(day: ADay) -> None:
    """The clock runs from the first + to the second; the knives go to the bench, then to testing."""
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("plus")
        await pilot.pause()
        began = day.run()
        day.wait(14)
        app.look_around()
        await pilot.pause()
        seen = dump(app)
        assert "UNDER WAY plain" in seen
        assert f"MB since 09:00, 14 of {-(-began.planned_seconds // 60)} min" in seen
        assert day.columns(day.first) == {Column.ON_BENCH}
        await pilot.press("plus")
        await pilot.pause()
        assert "finished after 14 min, to testing" in dump(app)

    done = run_by_id(day.shop.database, began.id)
    assert done is not None
    assert done.timed
    assert done.worked_seconds(day.clock.now) == 14 * 60
    assert day.columns(day.first) == {Column.TESTING}


async def test_a_double_plus_does_not_finish_what_it_began(day: ADay) -> None:
    """The second + right after the first is asked back, and n finishes the run without its time."""
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("plus", "plus")
        await pilot.pause()
        said = " ".join(dump(app).split())
        assert "The clock runs" not in said
        assert "Only just begun: 0 min of" in said
        began = day.run()
        assert began.finished_at is None
        await pilot.press("n")
        await pilot.pause()

    done = run_by_id(day.shop.database, began.id)
    assert done is not None
    assert not done.timed
    assert day.columns(day.first) == {Column.TESTING}


@pytest.mark.parametrize(("minutes", "word"), [(0, "under a fifth of"), (4, "under a fifth of"), (99, "over twice")])
async def test_a_time_that_is_no_work_is_said_not_to_be_learned_from(day: ADay, minutes: int, word: str) -> None:
    """* is another key and meant: the knives go, and it is said why a time so short or so long teaches nothing."""
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("plus")
        await pilot.pause()
        assert "+ done, to testing" in " ".join(dump(app).split())
        day.wait(minutes)
        await pilot.press("asterisk")
        await pilot.pause()
        said = " ".join(dump(app).split())
        assert word in said
        assert "nothing is learned from its time. To ready:" in said

    assert day.columns(day.first) == {Column.READY}


async def test_a_run_keeps_what_the_plan_gave_it(day: ADay) -> None:
    """Knives, set-up and seconds of the run are those of the plan's first run."""
    first = picture(day.shop).plan.runs[0]
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()

    run = day.run()
    assert run.knife_ids == tuple(sorted(first.knife_ids))
    assert (run.set_up_seconds, run.planned_seconds) == (first.set_up_seconds, first.seconds + first.set_up_seconds)
    assert run.started_by == "MB"


async def test_the_bell_stops_the_clock_until_it_goes_on(day: ADay) -> None:
    """- pauses, - goes on; the minutes between do not count, and * finishes straight to ready."""
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("plus")
        day.wait(5)
        await pilot.press("minus")
        await pilot.pause()
        assert "PAUSED plain" in dump(app)
        assert "paused since 09:05, 5 of" in dump(app)
        day.wait(20)
        await pilot.press("minus")
        began = day.run()
        day.wait(4)
        await pilot.press("asterisk")
        await pilot.pause()

    done = run_by_id(day.shop.database, began.id)
    assert done is not None
    assert done.worked_seconds(day.clock.now) == 9 * 60
    assert day.columns(day.first) == {Column.READY}


async def test_done_without_timing_counts_for_nothing(day: ADay) -> None:
    """N finishes the run under the cursor to testing, and its time teaches nothing."""
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("plus")
        await pilot.pause()
        began = day.run()
        await pilot.press("n")
        await pilot.pause()
        assert "done without timing, to testing" in dump(app)

    done = run_by_id(day.shop.database, began.id)
    assert done is not None
    assert not done.timed
    assert day.columns(day.first) == {Column.TESTING}


async def test_the_time_just_measured_can_be_thrown_away(day: ADay) -> None:
    """X right after a run is finished lets its time count for nothing; a second x has nothing to throw away."""
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("plus")
        await pilot.pause()
        began = day.run()
        day.wait(14)
        await pilot.press("plus", "x")
        await pilot.pause()
        assert "counts for nothing" in dump(app)
        await pilot.press("x")
        await pilot.pause()
        assert "not under way" in dump(app)

    done = run_by_id(day.shop.database, began.id)
    assert done is not None
    assert not done.timed


async def test_two_runs_at_once_are_refused_with_the_operation_s_sentence(day: ADay) -> None:
    """Whoever has a run going on is told so, and nothing is begun."""
    started = picture(day.shop).plan.runs[0]
    knives = tuple(knife for knife in box(day.shop, day.first).knives)
    start_run(day.shop, by("MB"), started.process, knives[:1], 90)
    app = day.open()

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("down", "plus")
        await pilot.pause()
        assert "MB has a run of plain going on" in dump(app)

    assert len(open_runs(day.shop.database)) == 1


async def test_the_second_person_is_handed_the_next_run_and_asked_before_the_other_s(day: ADay) -> None:
    """The cursor of K begins below J's run; + on J's run asks first, by whose it is."""
    knives = box(day.shop, day.first).knives
    start_run(day.shop, by("J"), "plain", knives, 90)
    app = day.open("K")

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert isinstance(app.screen, DayScreen)
        line = app.screen.current()
        assert line is not None
        assert line.mentions == {day.second}
        await pilot.press("up", "plus")
        await pilot.pause()
        assert isinstance(app.screen, RunDialog)
        assert "J has this run." in dump(app)
        await pilot.press("minus", "down", "plus")
        await pilot.pause()

    assert {run.started_by for run in open_runs(day.shop.database)} == {"J", "K"}


async def test_who_comes_second_to_a_run_is_told_and_then_asked(day: ADay, monkeypatch: pytest.MonkeyPatch) -> None:
    """J begins what K's list still shows as free: K's + is refused with whose it is, and the next one asks."""
    app = day.open("K")
    # On a busy machine a second goes by here, and K's window would see the run before the key comes.
    monkeypatch.setattr(app.desk, "changed_elsewhere", lambda: False)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        first = picture(day.shop).plan.runs[0]
        other = open_shop(day.shop.path)
        start_run(other, by("J"), first.process, box(other, day.first).knives, first.set_up_seconds, first.seconds)
        close_shop(other)
        await pilot.press("plus")
        await pilot.pause()
        assert f"{day.first}-1 is in J's run; finish that first, or leave it." in " ".join(dump(app).split())
        assert "J since 09:00" in dump(app)
        assert day.run().started_by == "J"
        await pilot.press("plus")
        await until(pilot, lambda: isinstance(app.screen, RunDialog))

    assert day.run().started_by == "J"


@pytest.mark.parametrize("key", ["plus", "asterisk", "n"])
async def test_a_run_of_somebody_else_is_finished_only_after_a_yes(day: ADay, key: str) -> None:
    """Whatever finishes a run asks first when it is another's; a no leaves it, a yes finishes it as its own."""
    start_run(day.shop, by("J"), "plain", box(day.shop, day.first).knives, 90)
    day.wait(14)
    app = day.open("K")

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("up", key)
        await pilot.pause()
        assert isinstance(app.screen, RunDialog)
        assert "J has this run." in dump(app)
        await pilot.press("minus")
        await pilot.pause()
        began = day.run()
        assert day.columns(day.first) == {Column.ON_BENCH}
        await pilot.press(key, "plus")
        await pilot.pause()

    done = run_by_id(day.shop.database, began.id)
    assert done is not None
    assert (done.started_by, done.timed, done.finished_at) == ("J", key != "n", day.clock.now)
    assert day.columns(day.first) == {Column.READY if key == "asterisk" else Column.TESTING}


async def test_the_bell_on_another_s_run_says_whose_it_is(day: ADay) -> None:
    """Who stops somebody else's clock, or throws their time away, is told so, and how to take it back."""
    first = picture(day.shop).plan.runs[0]
    start_run(day.shop, by("J"), first.process, box(day.shop, day.first).knives, first.set_up_seconds, first.seconds)
    app = day.open()
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        await pilot.press("up", "b")
        await until(pilot, lambda: day.run().paused_at is not None)
        assert "Paused. - or b lets it go on. The run is J's; u takes this back." in " ".join(dump(app).split())
        await pilot.press("b")
        await until(pilot, lambda: day.run().paused_at is None)
        await pilot.press("x")
        await until(pilot, lambda: not day.run().timed)
        assert "counts for nothing. The run is J's; u takes this back." in " ".join(dump(app).split())
