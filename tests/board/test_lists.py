"""The list screens over hand-built pictures: what they show, where their keys lead, names literal everywhere."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

import pytest
from textual.widgets import OptionList

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.boxes import BoxesScreen
from queueboard.board.screens.day import DayScreen
from queueboard.board.screens.dialogs.promise import PromiseDialog
from queueboard.board.screens.labels import LabelsScreen
from queueboard.board.screens.late import LateScreen
from queueboard.clean import cell_text
from queueboard.shop.picture import Picture
from queueboard.values.plan import OrderChange, Overload
from queueboard.words import Column, LabelState, LabelWord, Lateness, OrderWord, RunReason, WaitingFor
from tests import pictures as made
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, FakeDesk, Host

MakeScreen = Callable[[Desk], ShopScreen[int | None]]

ALL: tuple[MakeScreen, ...] = (DayScreen, LateScreen, LabelsScreen, BoxesScreen)


def shop_at_nine(name: str = "Ola Hale") -> Picture:
    """Five boxes: late with a dead label, a label to buy, waiting (the same customer), one that leaves today, tight."""
    late = made.box_picture(
        417,
        forecast_=made.forecast(417, minutes_left=14, lateness=Lateness.LATE, late_minutes=130, finish=made.at(13, 30)),
        label_=made.label(box_number=417, expires_on=made.TODAY),
        label_due_=made.label_due(417, LabelWord.TOO_LATE, made.TODAY),
    )
    to_buy = made.box_picture(
        made.box(421, customer_id=2),
        customer_=made.customer(name, id=2),
        label_=made.label(box_number=421, state=LabelState.TO_BUY),
        label_due_=made.label_due(421, LabelWord.BUY),
        forecast_=made.forecast(
            421, minutes_left=40, lateness=Lateness.WILL_BE_LATE, late_minutes=1500, finish=made.at(10, days=3)
        ),
    )
    waiting = made.box_picture(
        made.box(430, customer_id=2, waiting_for=WaitingFor.ESTIMATE, waiting_since=made.at(9, days=-3)),
        customer_=made.customer(name, id=2),
        promises=(),
    )
    today = made.box_picture(
        made.box(431, customer_id=3),
        customer_=made.customer("Åse Tallis", id=3, town="Vik", phone="0555 019 902"),
        promises=(made.promise(made.TODAY, box_number=431),),
    )
    tight = made.box_picture(
        made.box(433, customer_id=4),
        customer_=made.customer("Ines Morel", id=4),
        knives_=made.knives(433, Column.RECEIVED),
        forecast_=made.forecast(
            433, minutes_left=5, lateness=Lateness.TIGHT, slack_minutes=12, late_permille=310, finish=made.at(15, 40)
        ),
    )
    plan = made.plan(
        made.run(417001, 421001, 421002, start=made.at(9, 30)),
        made.run(417002, why=RunReason.BEGUN, start=made.at(13), start_second=3600),
        made.run(431001, 431002, process="serrated", start=made.at(8, days=1), start_second=12000),
        changes=(
            OrderChange(tag="417-1", what=OrderWord.LAST_CHANCE),
            OrderChange(tag="431-3", what=OrderWord.NEW),
        ),
    )
    return replace(made.picture(late, to_buy, waiting, today, tight, plan_=plan), order_fixed=True)


def host(make: MakeScreen, picture: Picture | None = None) -> tuple[Host, FakeDesk]:
    """An app with one list screen, and the desk that keeps what was asked."""
    desk = FakeDesk(picture or shop_at_nine())
    return Host(desk, lambda: make(desk)), desk


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
@pytest.mark.parametrize("make", ALL, ids=["day", "late", "labels", "boxes"])
async def test_each_list_reads_at_both_sizes(
    make: MakeScreen, size: tuple[int, int], request: pytest.FixtureRequest
) -> None:
    """The whole screen is as it was last looked at, at 80x24 and 120x40."""
    app, _ = host(make)

    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, f"list-{request.node.callspec.id}")


@pytest.mark.parametrize("make", ALL, ids=["day", "late", "labels", "boxes"])
async def test_an_empty_list_says_what_to_do_next(make: MakeScreen, request: pytest.FixtureRequest) -> None:
    """Without a single box each list still tells what it is for and what comes next."""
    app, _ = host(make, made.picture())

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert_screen(app, f"list-empty-{request.node.callspec.id}")


@pytest.mark.parametrize("name", made.HOSTILE_NAMES)
async def test_names_are_shown_literally(name: str) -> None:
    """A name that looks like markup, an order or a formula stands in every list as it was typed."""
    for make in ALL:
        app, _ = host(make, shop_at_nine(name))
        async with app.run_test(size=(400, 40)) as pilot:
            await pilot.pause()
            assert cell_text(name)[:11] in dump(app)


async def test_one_key_deeper_tells_chance_and_honest_day_of_the_box_under_the_cursor() -> None:
    """+ opens what is told of one box and closes it again; no percentage shows before, and the cursor stays."""
    box = made.box_picture(
        421,
        forecast_=made.forecast(
            421,
            minutes_left=40,
            lateness=Lateness.WILL_BE_LATE,
            late_minutes=1500,
            slack_minutes=-90,
            late_permille=976,
            finish=made.at(10, days=3),
        ),
        honest_day=made.TODAY + timedelta(days=4),
    )
    app, _ = host(LateScreen, made.picture(box))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert "%" not in dump(app)
        await pilot.press("plus")
        await pilot.pause()
        assert "98 % likely to be late" in dump(app)
        assert "90 bench min short · done by Sunday 10:00" in dump(app)
        assert "Mon 30 Nov at the earliest (p: what can be told)" in dump(app)
        await pilot.press("plus")
        await pilot.pause()
        assert "%" not in dump(app)
        await pilot.press("enter")
        await pilot.pause()

    assert app.answer == 421


async def test_a_late_box_can_be_told_another_date_from_the_list() -> None:
    """P opens the question for the date of the box under the cursor."""
    app, _ = host(LateScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("p")
        await pilot.pause()
        assert isinstance(app.screen, PromiseDialog)
        assert "box 417" in dump(app)


@pytest.mark.parametrize("make", [DayScreen, LateScreen], ids=["day", "late"])
async def test_an_overload_is_said_on_top(make: MakeScreen) -> None:
    """By how many minutes, and before when; nowhere a percentage."""
    seen = shop_at_nine()
    loads = (Overload(before=made.at(15, 45, days=1), minutes=600),)
    app, _ = host(make, replace(seen, plan=replace(seen.plan, overloads=loads)))

    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        assert "overloaded by 600 min before tomorrow 15:45" in " ".join(dump(app).splitlines()[:4])
        assert "%" not in dump(app)


async def test_a_typed_number_finds_its_line_and_enter_goes_there() -> None:
    """43 moves the cursor to the first box that begins so; the whole number and Enter leave with it."""
    app, _ = host(LateScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("4", "2")
        lines = app.screen.query_one(OptionList)
        assert lines.highlighted is not None
        assert "421" in str(lines.get_option_at_index(lines.highlighted).prompt)
        assert "box 42_" in dump(app)
        await pilot.press("1", "enter")
        await pilot.pause()

    assert app.answer == 421


async def test_a_number_that_is_not_open_is_said() -> None:
    """999 and Enter stays on the list with a sentence."""
    app, _ = host(LateScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("9", "9", "9", "enter")
        await pilot.pause()
        assert "There is no open box 999" in dump(app)
        assert not app.left


async def test_the_cursor_stays_on_its_box_when_the_list_changes() -> None:
    """Another window closes the worst box: the cursor is still on the one it was on."""
    picture = shop_at_nine()
    app, desk = host(LateScreen, picture)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down")
        rest = tuple(box for box in picture.boxes if box.box.number != 417)
        desk.next_picture = replace(picture, boxes=rest, last_line=2)
        app.look_around()
        await pilot.press("enter")
        await pilot.pause()

    assert app.answer == 421


async def test_enter_on_a_run_begins_it() -> None:
    """A run is begun with its knives and the clock; one that lies on the bench is left there with a sentence."""
    app, desk = host(DayScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("enter", "down", "enter")
        await pilot.pause()
        assert "This run is on the bench." in dump(app)

    (done,) = desk.done
    process, knives, set_up_seconds, planned_seconds = done.args
    assert (done.name, process, set_up_seconds, planned_seconds) == ("start_run", "plain", 90, 600)
    assert isinstance(knives, tuple)
    assert [knife.tag for knife in knives] == ["417-1", "421-1", "421-2"]


async def test_a_run_on_the_bench_goes_on_with_plus_or_straight_to_ready() -> None:
    """+ moves a begun run to testing, * to ready."""
    app, desk = host(DayScreen)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down", "plus", "asterisk")
        await pilot.pause()

    assert [done.args[1] for done in desk.done] == [Column.TESTING, Column.READY]
