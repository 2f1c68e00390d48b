"""The bell: a walk-in taken in within a few keys, told what holds, and the clock of a run meanwhile."""

from datetime import date, time

import pytest

from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.received import ReceivedScreen
from queueboard.shop.opening import Shop
from queueboard.shop.running import finish_run, pause_run, start_run
from queueboard.words import CameBy, GoesBy, PromiseKind
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, until
from tests.board.ringing import board, said, top
from tests.board.typing import fill
from tests.shop.place import NOW, by, counter, picture


async def test_a_walk_in_is_taken_in_and_printed(two_boxes: Shop) -> None:
    """Surname, count, kinds, Enter: stored as told, stub and tags on the screen and in a file, then back."""
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        await fill(pilot, "Oake", "", "4", "2 chef, paring, bread")
        assert "35.00 USD, today 16:00?" in dump(app)
        await pilot.press("enter")
        assert isinstance(app.screen, ReceivedScreen)
        assert "Oake" in dump(app)
        await pilot.press("enter")
        assert isinstance(app.screen, BoardScreen)

    box = picture(two_boxes).box(102)
    assert box is not None
    assert (box.customer.name, box.box.came_by, box.box.goes_by) == ("Oake", CameBy.COUNTER, GoesBy.PICK_UP)
    assert [knife.kind for knife in box.knives] == ["chef", "chef", "paring", "bread"]
    assert box.promise is not None
    assert (box.promise.kind, box.promise.day, f"{box.promise.at}") == (PromiseKind.BY_TIME, NOW.date(), "16:00:00")
    written = (two_boxes.path.parent / "papers" / "received-102.txt").read_text(encoding="utf-8")
    assert "4, four knives" in written
    assert "102-4" in written


async def test_the_clock_of_the_own_run_stands_still(two_boxes: Shop) -> None:
    """The bell pauses the run that the person has going on, and lets it go on at the way back; both are said."""
    knives = picture(two_boxes).boxes[0].knives
    start_run(two_boxes, by("MB"), "plain", knives[:1], 90)
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("d", "f4")
        assert "The clock of your run of plain stands still" in dump(app)
        (run,) = picture(two_boxes).runs
        assert run.paused_at is not None
        await pilot.press("f4")
        await until(pilot, lambda: isinstance(app.screen, DayScreen))
        await until(pilot, lambda: "Your run of plain goes on; its clock stood still for 0 min." in said(app))
        (run,) = picture(two_boxes).runs
        assert run.paused_at is None


async def test_other_clocks_are_left_alone(two_boxes: Shop) -> None:
    """Another person's run goes on, and an own run that was paused before stays paused."""
    first, second = picture(two_boxes).boxes
    start_run(two_boxes, by("J"), "plain", first.knives, 90)
    start_run(two_boxes, by("MB"), "plain", second.knives, 90)
    own = next(run for run in picture(two_boxes).runs if run.started_by == "MB")
    pause_run(two_boxes, by("MB"), own)
    before = picture(two_boxes).runs
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4", "f4")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.pause()

        assert picture(two_boxes).runs == before
        assert said(app) == ""


async def test_a_run_that_somebody_ended_meanwhile(two_boxes: Shop) -> None:
    """When the paused run is over at the way back, that is said and nothing else is touched."""
    start_run(two_boxes, by("MB"), "plain", picture(two_boxes).boxes[0].knives, 90)
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        finish_run(two_boxes, by("J", minutes=20), picture(two_boxes).runs[0])
        app.desk.look()
        await pilot.press("f4")
        await until(pilot, lambda: "was changed meanwhile" in said(app))


async def test_several_of_a_name_are_side_by_side(two_boxes: Shop) -> None:
    """With two customers of a surname Enter asks, the arrow chooses, and the box is the chosen one's."""
    counter(two_boxes, name="Bo Tallis")
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        await fill(pilot, "tallis")
        assert "2 customers fit “tallis”" in dump(app)
        await fill(pilot, "<down>", "<down>", "<enter>", "1", "bread", "<enter>")

    box = picture(two_boxes).box(103)
    assert box is not None
    assert box.customer.name == "R. Tallis"


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("2 chef, pairing, bread", "Do you mean “paring”?"),
        ("4 chef chip 2", "2 chips, or 2 mm deep?"),
        ("2 chef", "You counted 4 and typed 2 knives"),
        ("-3 chef, bread", "whole number of 1 or more"),
        ("", "kind of knife is missing"),
    ],
)
async def test_what_is_in_doubt_is_asked_back(line: str, says: str, two_boxes: Shop) -> None:
    """Nothing is guessed or taken in, what was typed stays, and the cursor stays in it."""
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("f4")
        await fill(pilot, "verrin", "4", line, "<f2>")

        assert says in " ".join(dump(app).split())
        assert (app.focused, top(app).line.value) == (top(app).line, line)
    assert len(picture(two_boxes).boxes) == 2


@pytest.mark.parametrize(
    ("typed", "kind", "day", "at"),
    [
        ("fri", PromiseKind.DAY, date(2026, 11, 13), None),
        ("tomorrow 11:30", PromiseKind.BY_TIME, date(2026, 11, 10), time(11, 30)),
    ],
)
async def test_another_date_is_typed(
    typed: str, kind: PromiseKind, day: date, at: time | None, two_boxes: Shop
) -> None:
    """What is typed takes the place of the offer, with a time or without."""
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        await fill(pilot, "verrin", "1", "bread", typed)

    box = picture(two_boxes).box(102)
    assert box is not None
    assert box.promise is not None
    assert (box.promise.kind, box.promise.day, box.promise.at) == (kind, day, at)


async def test_no_date_and_a_date_that_cannot_be(two_boxes: Shop) -> None:
    """A word that is no day is asked back, a day with a no is insisted on, and - tells no date."""
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("f4")
        await fill(pilot, "verrin", "1", "bread", "never")
        assert "“never” is no day" in dump(app)
        await fill(pilot, "today 08:00")
        assert "The answer to that day is no" in dump(app)
        await fill(pilot, "-")

    box = picture(two_boxes).box(102)
    assert box is not None
    assert box.promise is None


async def test_a_full_bench_offers_the_earliest_day(two_boxes: Shop) -> None:
    """When today does not hold any more the question names the day that does."""
    counter(two_boxes, knives=40, name="Kitchen of the Blue Heron")
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("f4")
        await fill(pilot, "verrin", "30", "30 chef")

        asked = next(line for line in dump(app).splitlines() if "270.00 USD," in line)
        assert "today" not in asked
        await pilot.press("enter")
    box = picture(two_boxes).box(103)
    assert box is not None
    assert box.promise is not None
    assert (box.promise.kind, box.promise.at) == (PromiseKind.DAY, None)
    assert box.promise.day > NOW.date()


async def test_papers_that_cannot_be_written_lose_no_box(two_boxes: Shop) -> None:
    """Where the papers go lies a file: the box is in, once, that is said, and v tries again."""
    (two_boxes.path.parent / "papers").write_text("in the way", encoding="utf-8")
    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        await fill(pilot, "verrin", "1", "bread", "<enter>")
        await until(pilot, lambda: "could not be written" in said(app))
        (two_boxes.path.parent / "papers").unlink()
        await pilot.press("v", "v")
        await until(pilot, lambda: "Written to" in said(app))

    assert len(picture(two_boxes).boxes) == 3


async def test_a_power_cut_in_the_walk_in(two_boxes: Shop) -> None:
    """What was typed up to the last Enter is there at the next bell; let go with two escapes it is not."""
    async with board(two_boxes).run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        await fill(pilot, "Oake", "", "4")

    app = board(two_boxes)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        await pilot.pause()
        assert (top(app).picker.new_name, top(app).counted.value) == ("Oake", "4")
        await pilot.press("escape", "escape", "f4")
        await pilot.pause()
        assert not top(app).touched


async def test_nobody_acts_yet(two_boxes: Shop) -> None:
    """Before somebody has said who acts the bell does not ring."""
    app = board(two_boxes, "")
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("f4")
        await pilot.pause()
        assert type(app.screen).__name__ == "InitialsScreen"


async def test_hostile_names_are_shown_literally(two_boxes: Shop) -> None:
    """A name that looks like markup goes through the walk-in onto the paper and the way back."""
    name = "[/][@click=app.quit]x[/]"
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("f4")
        await fill(pilot, name, "", "1", "bread ! [red]x[/]")
        assert f"new: {name}" in dump(app)
        assert "[RED]X[/]" in dump(app)
        await fill(pilot, "<enter>", "<enter>")
        await until(pilot, lambda: name in said(app))


async def test_stub_and_tags_are_shown_again(two_boxes: Shop) -> None:
    """T on a box's own screen shows its papers once more; v writes them, and no box is taken in by it."""
    app = board(two_boxes)
    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("enter", "t")
        assert "Stub and tags: 100 R. Tallis" in dump(app)
        await pilot.press("v", "v", "enter")
        assert type(app.screen).__name__ == "BoxScreen"

    assert "100-3" in (two_boxes.path.parent / "papers" / "received-100.txt").read_text(encoding="utf-8")
    assert len(picture(two_boxes).boxes) == 2


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["small", "large"])
async def test_the_walk_in_before_the_last_enter(two_boxes: Shop, size: tuple[int, int]) -> None:
    """The one question stands with its sum in both sizes."""
    app = board(two_boxes)
    async with app.run_test(size=size) as pilot:
        await pilot.press("f4")
        await fill(pilot, "Oake", "", "4", "2 chef, paring ! sharp tip, bread 9")

        assert_screen(app, f"bell-{size[0]}")
