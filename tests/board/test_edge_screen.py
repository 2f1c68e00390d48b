"""The test of an edge: digits and Enter for each spot, the verdict at once, and the next knife."""

from datetime import timedelta

import pytest
from textual.pilot import Pilot
from textual.widgets import Digits

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.dialogs.edge import SecondLookDialog, SpotsDialog, WrongDialog
from queueboard.board.screens.edge import EdgeScreen
from queueboard.board.screens.tray import TrayDialog
from queueboard.board.screens.undo import UndoScreen
from queueboard.shop.gauging import edge, read_spot
from queueboard.shop.moving import move_knives
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_knife
from queueboard.shop.testing import judge_edge
from queueboard.values.knife import Knife
from queueboard.values.new import NewKnife
from queueboard.words import Column, Edge, EdgeTestWay, SecondLook, Stage
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, Host, until
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, counter
from tests.shop.undo_edges import ALWAYS, at_the_test


def begun(shop: Shop) -> Knife:
    """A chef's knife in testing for which the gauge is asked, read before the work and not after it."""
    take_settings(shop, by(), ALWAYS)
    (knife,) = counter(shop, knives=1).knives
    for spot, force in (("heel", 1180), ("middle", 940), ("tip", 1320)):
        read_spot(shop, by(), now(shop, knife), spot, force, Stage.BEFORE)
    for minutes, to in enumerate((Column.ON_BENCH, Column.TESTING)):
        move_knives(shop, by(minutes=minutes), [now(shop, knife)], to)
    for spot, force in (("heel", 180), ("middle", 170), ("tip", 210)):
        read_spot(shop, by(minutes=1), now(shop, knife), spot, force)
    judge_edge(shop, by(minutes=1), now(shop, knife), ok=False)
    move_knives(shop, by(minutes=2), [now(shop, knife)], Column.TESTING)
    return now(shop, knife)


def now(shop: Shop, knife: Knife) -> Knife:
    """The knife as it stands."""
    return box(shop, knife.box_number).knives[knife.number - 1]


def at_test(shop: Shop, knife: Knife) -> Host:
    """The test of one knife, an hour after the shop's morning began."""
    desk = Desk(shop, "MB", lambda: NOW + timedelta(hours=1))
    return Host(desk, lambda: EdgeScreen(desk, knife))


async def press(pilot: Pilot[int], keys: str) -> None:
    """Press signs one after the other; a space stands for Enter."""
    names = {" ": "enter", "+": "plus", "-": "minus", "*": "asterisk", "/": "slash", ".": "full_stop", ",": "comma"}
    await pilot.press(*(names.get(sign, sign) for sign in keys))
    await pilot.pause()


@pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80", "120"])
async def test_three_spots_and_a_verdict(shop: Shop, size: tuple[int, int]) -> None:
    """Three numbers from the pad; the cursor goes from spot to spot and then to the worst one once more."""
    app = at_test(shop, begun(shop))
    async with app.run_test(size=size) as pilot:
        await press(pilot, "165 150 180 ")
        assert_screen(app, f"edge-{size[0]}")
        await press(pilot, "184 ")

        assert "180, 184" in dump(app)
        assert "OK: the tip needs 184 gf, the line is 250." in dump(app)


@pytest.mark.parametrize(
    ("keys", "says"),
    [
        ("165 ", "So far: OK: the heel needs 165 gf"),
        ("165 150 310 ", "NOT OK: the tip needs 310 gf, the line is 250."),
        ("225 230 245 ", "TOO CLOSE TO CALL: the tip needs 245 gf"),
        ("90 100 195 ", "LOOK AGAIN: the spots are 105 gf apart, more than 100."),
    ],
)
async def test_each_verdict_has_its_words(shop: Shop, keys: str, says: str) -> None:
    """OK, not OK, too close to call within two wobbles of the line, and look again when heel and tip differ."""
    app = at_test(shop, begun(shop))
    async with app.run_test(size=LARGE) as pilot:
        await press(pilot, keys)

        assert says in dump(app)


@pytest.mark.parametrize("typed", ["0", "20000", "18,5", "18.5", "1x", "1٣"])
async def test_what_is_no_reading_stays_typed(shop: Shop, typed: str) -> None:
    """A sentence names it, nothing is stored, and it stands there to be mended."""
    knife = begun(shop)
    before = edge(shop, knife).readings
    app = at_test(shop, knife)
    async with app.run_test(size=LARGE) as pilot:
        await press(pilot, f"{typed} ")

        assert "! " in dump(app)
        assert f"after, deburred: {typed}_" in dump(app)
    assert edge(shop, knife).readings == before


async def test_plus_is_ready_and_the_next_one_comes(shop: Shop) -> None:
    """OK by the gauge, with who; the next knife that waits stands there, and after the last one the board."""
    knife = begun(shop)
    other = counter(shop, name="other", knives=1).knives[0]
    for to in (Column.ON_BENCH, Column.TESTING):
        move_knives(shop, by(minutes=3), [now(shop, other)], to)
    app = at_test(shop, knife)
    async with app.run_test(size=SMALL) as pilot:
        await press(pilot, "165 150 180 +")
        assert f"{knife.tag} is OK: ready. Next: {other.tag}." in dump(app)
        await press(pilot, "*")
        await until(pilot, lambda: app.left)

    assert app.answer == f"{other.tag} let go by eye, by MB.   u takes it back"
    tests = [edge(shop, one).tests[-1] for one in (knife, other)]
    assert [(one.way, one.ok, one.tested_by) for one in tests] == [
        (EdgeTestWay.GAUGE, True, "MB"),
        (EdgeTestWay.EYE, True, "MB"),
    ]


async def test_over_its_line_it_only_goes_by_eye(shop: Shop) -> None:
    """Plus is refused with the figures; the star lets it go, with who."""
    knife = begun(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=LARGE) as pilot:
        await press(pilot, "165 150 310 +")
        assert f"{knife.tag} needs 310 gf at the tip; its line is 250: not OK, or let it go by eye." in dump(app)
        await press(pilot, "*")
        assert "the line is 250. * once more lets it go by eye." in dump(app)
        await press(pilot, "*")
        await until(pilot, lambda: app.left)

    assert now(shop, knife).column is Column.READY


async def test_a_number_half_typed_is_never_judged(shop: Shop) -> None:
    """Plus, minus and star say so; Escape drops the number first."""
    knife = begun(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=LARGE) as pilot:
        for key in "+-*":
            await press(pilot, f"18{key}")
            assert "still typed" in dump(app)
            await pilot.press("escape")
        assert not app.left
        await pilot.press("escape")
        await until(pilot, lambda: app.left)
    assert now(shop, knife).column is Column.TESTING


async def test_the_second_not_ok_asks_what_becomes_of_it(shop: Shop) -> None:
    """Minus opens the choices; the one taken, with its reason, decides."""
    knife = begun(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=SMALL) as pilot:
        await press(pilot, "310 290 420 -")
        await until(pilot, lambda: isinstance(app.screen, SecondLookDialog))
        assert_screen(app, "dialog-second-look")
        await pilot.press("2")
        await fill(pilot, "steel too soft; told her")
        await until(pilot, lambda: app.left)

    assert shop.database.rows("SELECT choice, why FROM second_look") == [(SecondLook.LOWER, "steel too soft; told her")]
    assert now(shop, knife).column is Column.READY


async def test_not_ok_goes_back_to_the_belt_chosen(shop: Shop) -> None:
    """B turns through the belts from the last one back; the first not OK asks nothing."""
    knife = at_the_test(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=LARGE) as pilot:
        await press(pilot, "b-")
        await until(pilot, lambda: app.left)

    assert edge(shop, knife).tests[-1].belt == "P400"


async def test_between_belts_the_burr_is_told(shop: Shop) -> None:
    """The slash leads there; with the burr unless d says it was taken off; neither counts for the verdict."""
    knife = begun(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=LARGE) as pilot:
        await press(pilot, "/b300 d200 ")
        assert "Not read yet after the work" in dump(app)

    seen = edge(shop, knife)
    between = [one for one in seen.readings if one.stage is Stage.BETWEEN]
    assert [(one.belt, one.force_gf, one.deburred) for one in between] == [("P400", 300, False), ("P400", 200, True)]


async def test_a_wrong_reading_is_struck_with_a_reason(shop: Shop) -> None:
    """E asks what is right and why; without a reason it stays, and what was typed stands there still."""
    knife = at_the_test(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("e")
        await until(pilot, lambda: isinstance(app.screen, WrongDialog))
        await fill(pilot, "190", "")
        assert "Say why" in dump(app)
        await fill(pilot, "misread the display")
        await until(pilot, lambda: isinstance(app.screen, EdgeScreen))

    assert 190 in [one.force_gf for one in edge(shop, knife).readings]


async def test_spots_are_marked_by_name_and_place(shop: Shop) -> None:
    """S shows the usual ones to be changed; a number without a name is refused and stays."""
    made = counter(shop, knives=1)
    app = at_test(shop, made.knives[0])
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("s")
        await until(pilot, lambda: isinstance(app.screen, SpotsDialog))
        await fill(pilot, "heel 20, 100")
        assert "“100” has no name" in dump(app)
        await fill(pilot, "heel 20, belly 90 mm, point")
        await until(pilot, lambda: isinstance(app.screen, EdgeScreen))

    spots = edge(shop, made.knives[0]).spots
    assert [(spot.name, spot.from_heel_mm) for spot in spots] == [("heel", 20), ("belly", 90), ("point", None)]


async def test_the_pad_alone_leads_to_the_test_and_back(shop: Shop) -> None:
    """Plus on a knife that waits for the gauge opens its test; the point goes back to the board."""
    knife = begun(shop)
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await press(pilot, f"{knife.tag}+")
        await until(pilot, lambda: isinstance(app.screen, EdgeScreen))
        await press(pilot, ".")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await press(pilot, "E")
        await until(pilot, lambda: isinstance(app.screen, EdgeScreen))


async def test_a_tray_says_which_of_it_stay_at_the_test(shop: Shop) -> None:
    """The large count leaves out the knife for which the gauge is asked, a line names it; the other is ready."""
    knife = begun(shop)
    add_knife(shop, by(minutes=3), box(shop, knife.box_number).box, NewKnife(kind="paring", edge=Edge.PLAIN))
    for to in (Column.ON_BENCH, Column.TESTING):
        move_knives(shop, by(minutes=4), [box(shop, knife.box_number).knives[1]], to)
    app = QueueboardApp(Desk(shop, "MB", lambda: NOW))
    async with app.run_test(size=SMALL) as pilot:
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))
        await press(pilot, f"{knife.box_number}*")
        await until(pilot, lambda: isinstance(app.screen, TrayDialog))
        assert app.screen.query_one("#tray-count", Digits).value == "1"
        assert f"at the test for the gauge: {knife.tag}" in dump(app)
        await press(pilot, " ")
        await until(pilot, lambda: isinstance(app.screen, BoardScreen))

    assert [one.column for one in box(shop, knife.box_number).knives] == [Column.TESTING, Column.READY]


async def test_minus_of_a_half_read_knife_is_asked_back_once(shop: Shop) -> None:
    """A minus typed as in -5 sends nothing back by itself; the second one does."""
    knife = begun(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=LARGE) as pilot:
        await press(pilot, "165 -")
        assert "The middle, tip are not read yet: - once more sends it back." in dump(app)
        assert now(shop, knife).column is Column.TESTING
        await press(pilot, "-")
        await until(pilot, lambda: isinstance(app.screen, SecondLookDialog))


@pytest.mark.parametrize(("force", "says"), [(5, "a razor blade needs about 50"), (2400, "a butter knife")])
async def test_an_unusual_reading_is_asked_back_once(shop: Shop, force: int, says: str) -> None:
    """So few or so many gf are hardly an edge; Enter once more writes them down."""
    knife = begun(shop)
    app = at_test(shop, knife)
    async with app.run_test(size=LARGE) as pilot:
        await press(pilot, f"{force} ")
        assert says in dump(app)
        assert force not in [one.force_gf for one in edge(shop, knife).readings]
        await press(pilot, " ")

    assert edge(shop, knife).readings[-1].force_gf == force


async def test_the_next_knife_is_said_large_and_undo_leads_back(shop: Shop) -> None:
    """Behind a test the heading says that another knife lies here; undone, the first one is here again."""
    knife = begun(shop)
    other = counter(shop, name="other", knives=1).knives[0]
    for to in (Column.ON_BENCH, Column.TESTING):
        move_knives(shop, by(minutes=3), [now(shop, other)], to)
    app = at_test(shop, knife)
    async with app.run_test(size=SMALL) as pilot:
        await press(pilot, "165 150 180 +")
        assert f"= NEXT: {other.tag} =" in dump(app)
        await press(pilot, "u")
        await until(pilot, lambda: isinstance(app.screen, UndoScreen))
        await press(pilot, " ")
        await until(pilot, lambda: isinstance(app.screen, EdgeScreen))
        assert f"Undone: {knife.tag} is here again." in dump(app)

    assert now(shop, knife).column is Column.TESTING


async def test_digits_at_a_knife_tested_by_cutting_are_refused_at_once(shop: Shop) -> None:
    """No gauge reads scissors, so no number is taken and the keys offer none."""
    made = counter(shop, knives=1)
    tag = add_knife(shop, by(), made.box, NewKnife(kind="scissors", edge=Edge.PLAIN))
    app = at_test(shop, next(one for one in box(shop, made.box.number).knives if one.tag == tag))
    async with app.run_test(size=SMALL) as pilot:
        await press(pilot, "1")
        assert f"No gauge reads {tag}: cut with it." in dump(app)
        assert "digits" not in dump(app)
