"""The wall: read from afar, follows the shop by itself, and shows nothing of whose the boxes are."""

from dataclasses import replace

import pytest

from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.wall import WallScreen
from queueboard.papers.large import enlarged
from queueboard.phrases.boxes import ready_to_fetch
from queueboard.phrases.wall import MOST_BOXES, wall_boxes
from tests import pictures as made
from tests.board.dump import assert_screen, dump
from tests.board.host import LARGE, SMALL, FakeDesk, Host
from tests.busy_morning import busy_morning

WIDER = (200, 60)


def test_twelve_boxes_the_soonest_first() -> None:
    """At most twelve; what only waits to be fetched comes last, and what is only announced is not here."""
    boxes = wall_boxes(busy_morning())
    fetch = [ready_to_fetch(box) for box in boxes]
    due = [box.ship_by for box in boxes if box.ship_by is not None and not ready_to_fetch(box)]

    assert len(boxes) <= MOST_BOXES
    assert due == sorted(due)
    assert True in fetch
    assert fetch == sorted(fetch)
    assert not any(box.box.announced for box in boxes)


def test_a_number_is_drawn_as_large_as_asked() -> None:
    """Three signs of three columns with one between, in five rows, each so many times."""
    small, double = enlarged("417", 1, 1), enlarged("417", 4, 2)

    assert (len(small), max(map(len, small))) == (5, 11)
    assert (len(double), max(map(len, double))) == (10, 44)


@pytest.mark.parametrize(("size", "width"), [(SMALL, 80), (LARGE, 120), (WIDER, 200)])
async def test_the_wall_reads_as_kept(size: tuple[int, int], width: int) -> None:
    """Numbers, when they are due, how much is ready; larger where there is room, and nobody's name."""
    desk = FakeDesk(busy_morning())
    app = Host(desk, lambda: WallScreen(desk))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert_screen(app, f"wall-{width}")
        assert not [box.customer.name for box in desk.picture.boxes if box.customer.name in dump(app)]


async def test_it_follows_the_shop_and_any_way_out_leads_back() -> None:
    """A box that is gone goes from the wall with the next look; V and escape lead to the board."""
    desk = FakeDesk(made.picture(made.box_picture(417), made.box_picture(423)))
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        for leave in ("V", "escape"):
            await pilot.press("V")
            await pilot.pause()
            assert isinstance(app.screen, WallScreen)
            both = dump(app)
            desk.next_picture = replace(desk.picture, boxes=desk.picture.boxes[:1])
            app.screen.refresh_picture()
            await pilot.pause()
            assert dump(app) != both
            desk.next_picture = made.picture(made.box_picture(417), made.box_picture(423))
            app.screen.refresh_picture()
            await pilot.press(leave)
            await pilot.pause()
            assert isinstance(app.screen, BoardScreen)
