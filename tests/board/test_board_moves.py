"""Moving on the board: one knife, marked knives, a tray after one question; the shop is asked for what was meant."""

from queueboard.board.app import QueueboardApp
from queueboard.board.screens.board import BoardScreen
from queueboard.errors import RuleError
from queueboard.values.knife import Knife
from queueboard.words import ON_BOARD, Column
from tests.board.dump import assert_screen, dump
from tests.board.host import SMALL, FakeDesk
from tests.pictures import box_picture, knives, picture

R, B, T, OK = ON_BOARD


def opened() -> tuple[QueueboardApp, FakeDesk]:
    """The board with box 417: two received, three on the bench, one in testing, one ready."""
    desk = FakeDesk(picture(box_picture(417, knives_=knives(417, R, R, B, B, B, T, OK))))
    return QueueboardApp(desk), desk


def moved(desk: FakeDesk) -> list[tuple[list[int], Column]]:
    """The numbers of the knives of each move, and where they went."""
    found = []
    for done in desk.done:
        assert done.name == "move_knives"
        going, to = done.args
        assert isinstance(going, tuple)
        assert isinstance(to, Column)
        assert all(isinstance(knife, Knife) for knife in going)
        found.append(([knife.number for knife in going], to))
    return found


def board(app: QueueboardApp) -> BoardScreen:
    """The board of the app."""
    screen = app.screen_stack[0]
    assert isinstance(screen, BoardScreen)
    return screen


async def test_one_press_moves_the_knife_under_the_cursor() -> None:
    """+ on a received knife puts it on the bench, without a question, and says how to take it back."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down", "plus")

        assert moved(desk) == [([1], B)]
        assert "417-1 moved to on bench.   u takes it back" in dump(app)


async def test_marked_knives_move_together() -> None:
    """Two knives marked one after the other with one key move in one step, and the marks are gone."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("down", "asterisk", "asterisk", "plus")

        assert moved(desk) == [([1, 2], B)]
        assert board(app).marked == frozenset()


async def test_marked_on_a_heading_are_the_knives_of_that_column() -> None:
    """* on the heading at the bench marks the three knives there and no other; again takes the marks away."""
    app, _ = opened()
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("right", "asterisk")
        assert [k.number for k in board(app).marked_knives()] == [3, 4, 5]

        await pilot.press("asterisk")
        assert not board(app).marked


async def test_marked_knives_of_two_columns_each_go_one_on() -> None:
    """A knife in received goes to the bench and one in testing to ready, none of them twice."""
    app, desk = opened()
    async with app.run_test(size=SMALL):
        board(app).marked = frozenset({417001, 417006})
        board(app).action_move(1)

        assert moved(desk) == [([1], B), ([6], OK)]


async def test_a_box_asks_once_before_its_tray_moves() -> None:
    """417 and + shows how many go where; numbers typed stay; Enter moves the others in one step."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("4", "1", "7", "plus", "1", "full_stop", "4")
        await pilot.pause()
        assert_screen(app, "board-tray-80")
        assert not desk.done

        await pilot.press("enter")
        assert moved(desk) == [([2], B)]
        assert "1 knife of 417 moved to on bench." in dump(app)


async def test_no_leaves_the_tray_where_it_is() -> None:
    """- in the question moves nothing."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        board(app).action_move(1)
        await pilot.press("minus")

        assert not desk.done
        assert app.screen is board(app)


async def test_another_tray_of_the_box_is_one_key_away() -> None:
    """/ in the question goes from the received tray to the one at the bench."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        board(app).action_move(1)
        await pilot.press("slash", "enter")

        assert moved(desk) == [([3, 4, 5], T)]


async def test_straight_to_ready_takes_bench_and_testing() -> None:
    """417 and * offers all knives that are at work, and Enter makes them ready."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("4", "1", "7", "asterisk", "enter")

        assert moved(desk) == [([3, 4, 5, 6], OK)]


async def test_a_refusal_is_said_and_changes_nothing() -> None:
    """The shop's sentence stands at the foot until the next key; the marks stay."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        board(app).marked = frozenset({417001})
        desk.refusal = RuleError("417-1 waits for belts; say that it goes on before it moves.")
        board(app).action_move(1)
        await pilot.pause()
        assert "! 417-1 waits for belts" in dump(app)
        assert board(app).marked == frozenset({417001})

        await pilot.press("down")
        assert "waits for belts" not in dump(app)


async def test_ready_knives_do_not_move_on() -> None:
    """+ on a ready knife says that a box leaves by its close-out, and asks nothing of the shop."""
    app, desk = opened()
    async with app.run_test(size=SMALL) as pilot:
        board(app).move_by((desk.picture.boxes[0].knives[6],), 1)
        await pilot.pause()

        assert not desk.done
        assert "close-out" in dump(app)
