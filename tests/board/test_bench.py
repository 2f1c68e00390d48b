"""The bench screen: belts, the tester, trials, before and after, charts."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.bench import BenchScreen
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.dialogs.bench import BeginStudyDialog, OffDialog, SparesDialog, StudyDialog, TrialDialog
from queueboard.records.belts import fitted_belts, spares_rows
from queueboard.records.trials import open_trials
from queueboard.shop.fitting import count_spares, fit_belt
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.stable import set_stable
from queueboard.shop.trialling import begin_trial
from queueboard.shop.wobbling import study_now, wobble_now
from queueboard.words import Column
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host, until
from tests.board.typing import fill
from tests.shop.place import NOW, by, parcel, small_shop
from tests.shop.readings import read

FORCES = [180, 184, 178, 182, 186, 180, 176, 183, 181, 179, 185, 180, 240, *[190] * 8]


@pytest.fixture
def read_shop(tmp_path: Path) -> Iterator[Shop]:
    """A shop with two belts up, one of them past its life's half, a trial, and knives read before and after."""
    made = small_shop(tmp_path)
    count_spares(made, by(), "16 um", 3)
    fit_belt(made, by(), "plain", "P240")
    fit_belt(made, by(), "plain", "16 um")
    begin_trial(made, by(), kind="chef", process="plain", belt="16 um")
    knives = parcel(made, knives=len(FORCES)).knives
    move_knives(made, by(minutes=1), knives, Column.ON_BENCH)
    for place, knife in enumerate(knives):
        force = FORCES[place]
        read(made, by(minutes=2 + place), knife, {"heel": force, "tip": force + 9}, {"heel": 900, "tip": 990})
    set_stable(made, by(minutes=60), "plain", by(minutes=2).now, by(minutes=13).now)
    yield made
    close_shop(made)


def bench(shop: Shop) -> Host:
    """The bench screen alone."""
    desk = Desk(shop, "MB", lambda: NOW + timedelta(hours=2))
    return Host(desk, lambda: BenchScreen(desk))


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
@pytest.mark.parametrize("section", ["1", "2", "3", "4", "5"])
async def test_each_section_reads_at_both_sizes(
    section: str, size: tuple[int, int], read_shop: Shop, request: pytest.FixtureRequest
) -> None:
    """Belts with their knives, the tester's wobble, a trial, before and after, and a chart."""
    app = bench(read_shop)

    async with app.run_test(size=size) as pilot:
        await pilot.press(section)
        await pilot.pause()
        assert_screen(app, f"bench-{section}-{size[0]}")


async def test_an_empty_bench_says_what_to_do(shop: Shop) -> None:
    """Without a reading, a trial or a belt each section has a sentence."""
    app = bench(shop)

    async with app.run_test(size=SMALL) as pilot:
        seen = []
        for section in "12345":
            await pilot.press(section)
            await pilot.pause()
            seen.append(dump(app))

    for text, says in zip(
        seen, ("no belt is up", "from memory", "No belt trial yet", "nothing is said before 6", "nothing to draw"),
        strict=True,
    ):  # fmt: skip
        assert says in text


async def test_k_leads_there_and_back(two_boxes: Shop) -> None:
    """From the board and back to it."""
    app = QueueboardApp(Desk(two_boxes, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await pilot.press("k")
        await until(pilot, lambda: isinstance(app.screen, BenchScreen))
        await pilot.press("k")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))


async def open_bench(app: Host, pilot: Pilot[int]) -> None:
    """The bench screen is there, its first belt under the cursor."""
    await until(pilot, lambda: isinstance(app.screen, BenchScreen))
    await until(pilot, lambda: app.screen.query_one(OptionList).highlighted is not None)


async def test_plus_fits_a_belt_and_asks_what_becomes_of_it(shop: Shop) -> None:
    """Up at once where none is; once more asks why it comes off, a digit takes the reason."""
    app = bench(shop)
    async with app.run_test(size=SMALL) as pilot:
        await open_bench(app, pilot)
        await pilot.press("plus")
        await pilot.pause()
        (belt,) = fitted_belts(shop.database)
        assert (belt.process, belt.label) == ("plain", "P240")
        await pilot.press("plus")
        await until(pilot, lambda: isinstance(app.screen, OffDialog))
        await pilot.press("2")
        await fill(pilot, "blue at the edge")
        await until(pilot, lambda: isinstance(app.screen, BenchScreen))

    assert fitted_belts(shop.database) == ()


async def test_a_worn_belt_goes_to_a_finer_step(shop: Shop) -> None:
    """Behind the reasons stand the finer steps without a belt, those of the same process first."""
    fit_belt(shop, by(), "plain", "P240")
    app = bench(shop)
    async with app.run_test(size=SMALL) as pilot:
        await open_bench(app, pilot)
        await pilot.press("plus")
        await until(pilot, lambda: isinstance(app.screen, OffDialog))
        await pilot.press("6", "enter")
        await until(pilot, lambda: isinstance(app.screen, BenchScreen))

    (belt,) = fitted_belts(shop.database)
    assert (belt.label, belt.step, belt.demoted) == ("P240", "P400", True)


@pytest.mark.parametrize("typed", ["-1", "20000", "ten", "2,5"])
async def test_a_wrong_count_of_spares_keeps_what_was_typed(shop: Shop, typed: str) -> None:
    """A sentence, and the line as it was."""
    app = bench(shop)
    async with app.run_test(size=SMALL) as pilot:
        await open_bench(app, pilot)
        await pilot.press("slash")
        await until(pilot, lambda: isinstance(app.screen, SparesDialog))
        await fill(pilot, typed)
        assert "! “" in dump(app)
        assert typed in dump(app)
        await fill(pilot, "7")
        await until(pilot, lambda: isinstance(app.screen, BenchScreen))

    assert spares_rows(shop.database)["P240"][1] == 7


async def test_a_study_goes_reading_by_reading_from_the_pad(shop: Shop) -> None:
    """Begun with what was changed, fifteen readings finish it; a wrong one gets a sentence and stays typed."""
    app = bench(shop)
    async with app.run_test(size=SMALL) as pilot:
        await open_bench(app, pilot)
        await pilot.press("2", "plus")
        await until(pilot, lambda: isinstance(app.screen, BeginStudyDialog))
        await pilot.press("2")
        await fill(pilot, "5")
        await until(pilot, lambda: isinstance(app.screen, BenchScreen))
        assert "filament" in wobble_now(shop).changed
        await pilot.press("plus")
        await until(pilot, lambda: isinstance(app.screen, StudyDialog))
        for wrong in ("0", "-1", "20000", "sharp", "180,5"):
            await fill(pilot, wrong)
            assert "! " in dump(app)
            assert wrong in dump(app)
        for place in range(15):
            await fill(pilot, str(170 + 10 * (place % 3)))
        await until(pilot, lambda: isinstance(app.screen, BenchScreen))

    assert study_now(shop) is None
    assert wobble_now(shop).gf == pytest.approx(10)


async def test_a_trial_s_rule_is_written_down_first(shop: Shop) -> None:
    """Kind, belt, fall, share and number are typed; fewer than twenty each is refused and stays typed."""
    app = bench(shop)
    async with app.run_test(size=SMALL) as pilot:
        await open_bench(app, pilot)
        await pilot.press("3", "plus")
        await until(pilot, lambda: isinstance(app.screen, TrialDialog))
        await fill(pilot, "chef", "P400", "2,5", "<enter>", "12", "<enter>")
        assert "Type 20 to 500" in dump(app)
        assert "12" in dump(app)
        await pilot.press("shift+tab")
        await fill(pilot, "24", "<enter>")
        await until(pilot, lambda: isinstance(app.screen, BenchScreen))

    (trial,) = open_trials(shop.database)
    assert (trial.kind, trial.belt, trial.rule.fall_wobbles, trial.rule.each) == ("chef", "P400", 2.5, 24)


async def test_the_day_list_says_the_half_at_the_bench(read_shop: Shop) -> None:
    """Each knife of the trial carries what is done with it: with or without the belt."""
    from queueboard.papers.day_sheet import day_sheet
    from queueboard.shop.looking import look

    sheet = day_sheet(look(read_shop, NOW + timedelta(hours=2)))

    assert "TRIAL: with 16 um" in sheet
    assert "TRIAL: without 16 um" in sheet


async def test_another_section_begins_at_its_top(read_shop: Shop) -> None:
    """Wherever the cursor was among the belts, what is read first in the next section has it."""
    app = bench(read_shop)

    async with app.run_test(size=SMALL) as pilot:
        await pilot.press(*("down",) * 9, "4")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, BenchScreen)
        here = screen.current()
        assert here is not None
        assert here.id == "said"
