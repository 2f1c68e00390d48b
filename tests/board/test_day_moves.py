"""The day list while runs move: the cursor stays with the knives, and a shared run leaves the bench only on a yes."""

from dataclasses import replace

from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.run_ask import RunDialog
from queueboard.shop.picture import Picture
from queueboard.words import Column, RunReason
from tests import pictures as made
from tests.board.dump import dump
from tests.board.host import SMALL, Done, FakeDesk, Host

R, B = Column.RECEIVED, Column.ON_BENCH
OTHERS = tuple(range(501, 511))
"""Boxes with one run each, enough to fill more than a small screen."""


def shop(*, merged: bool) -> Picture:
    """A run of 417 and 421 on the bench, ten runs of others, one of 430 at the end; merged: 430 lies on the bench."""
    ours = made.box_picture(417, knives_=made.knives(417, B))
    hers = made.box_picture(421, knives_=made.knives(421, B))
    last = made.box_picture(430, knives_=made.knives(430, B if merged else R))
    others = [made.box_picture(number, knives_=made.knives(number, R)) for number in OTHERS]
    runs = [made.run(number * 1000 + 1) for number in OTHERS]
    bench = made.run(417001, 421001, *((430001,) if merged else ()), why=RunReason.BEGUN)
    plan = made.plan(bench, *runs, *(() if merged else (made.run(430001),)))
    return replace(made.picture(ours, hers, *others, last, plan_=plan), order_fixed=True)


def host(after: Picture) -> tuple[Host, FakeDesk]:
    """The day list, and a desk on which any move makes this picture."""
    desk = FakeDesk(shop(merged=False))
    desk.effect = lambda _: after
    return Host(desk, lambda: DayScreen(desk)), desk


def on_line(app: Host) -> frozenset[int]:
    """The boxes named by the line under the cursor."""
    assert isinstance(app.screen, DayScreen)
    line = app.screen.current()
    assert line is not None
    return line.mentions


def tags(done: Done) -> tuple[list[str], object]:
    """What was moved, and where to."""
    knives, to = done.args
    assert isinstance(knives, tuple)
    return [knife.tag for knife in knives], to


async def test_the_cursor_goes_with_the_knives_that_were_put_on_the_bench() -> None:
    """A run started far below merges with the bench run on top: the cursor is there, and in sight."""
    app, desk = host(shop(merged=True))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("end", "plus")
        await pilot.pause()
        assert on_line(app) == {417, 421, 430}
        assert "▸" in dump(app)
        assert "430-1 chef" in dump(app)

    (begun,) = desk.done
    process, knives, set_up_seconds, planned_seconds = begun.args
    assert (begun.name, process, set_up_seconds, planned_seconds) == ("start_run", "plain", 90, 600)
    assert isinstance(knives, tuple)
    assert [knife.tag for knife in knives] == ["430-1"]


async def test_when_the_run_leaves_the_list_the_cursor_goes_to_the_one_after_it() -> None:
    """Knives straight to ready are no run any more; the run that followed is under the cursor."""
    before = shop(merged=False)
    runs = before.plan.runs[1:]
    app, _ = host(replace(before, plan=replace(before.plan, runs=runs)))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("asterisk", "enter")
        await pilot.pause()
        assert on_line(app) == {OTHERS[0]}


async def test_a_run_of_several_boxes_leaves_the_bench_only_on_a_yes() -> None:
    """+ and * on such a run ask with count, boxes and place; - moves nothing, Enter moves all of it."""
    app, desk = host(shop(merged=False))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("plus")
        await pilot.pause()
        assert isinstance(app.screen, RunDialog)
        assert "2 knives of 2 boxes: on bench → testing" in dump(app)
        await pilot.press("minus")
        await pilot.pause()
        assert desk.done == []

        await pilot.press("asterisk")
        await pilot.pause()
        assert "on bench → ready" in dump(app)
        await pilot.press("enter")
        await pilot.pause()

    assert [tags(done) for done in desk.done] == [(["417-1", "421-1"], Column.READY)]


async def test_a_run_of_one_box_moves_at_once() -> None:
    """Where all knives are of one box nothing is asked."""
    before = shop(merged=False)
    alone = replace(before, plan=made.plan(made.run(417001, why=RunReason.BEGUN)))
    desk = FakeDesk(alone)
    app = Host(desk, lambda: DayScreen(desk))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("plus")
        await pilot.pause()

    assert [tags(done) for done in desk.done] == [(["417-1"], Column.TESTING)]
