"""What holds on every screen that stands over the board: asked of each in one walk, for opening one costs the most.

Each question lies in the module that is about it and answers with what it found. The last one leaves the screen.
"""

from collections.abc import Awaitable, Callable, Iterator, Mapping
from contextlib import contextmanager
from itertools import islice, pairwise
from pathlib import Path

import pytest
from textual.pilot import Pilot

from queueboard.board.desk import Desk
from tests.board.all_screens import SCREENS
from tests.board.every_screen import desks, opened, over_home
from tests.board.host import SMALL
from tests.board.test_bell_places import lost_by_the_bell
from tests.board.test_bursts import taken_along
from tests.board.test_readable import unreadable
from tests.shop.place import parcel, picture

ASKED: Mapping[str, Callable[[Pilot[int]], Awaitable[list[str]]]] = {
    "left for a walk-in it is found again as it was": lost_by_the_bell,
    "each word on it can be read in every theme": unreadable,
    "left twice it takes nothing with it": taken_along,
}
PARTS = 3
"""So that several processors share the walk."""


@contextmanager
def naming(what: str) -> Iterator[None]:
    """Say with an error what it happened to."""
    try:
        yield
    except Exception as error:
        error.add_note(what)
        raise


@pytest.mark.parametrize("part", range(PARTS))
async def test_every_screen_stands(tmp_path: Path, part: int) -> None:
    """The bell rings on it and leads back, it can be read, and it leaves alone."""
    app, wrong = over_home(tmp_path), []
    async with app.run_test(size=SMALL) as pilot:
        async for kind, make, desk in desks(tmp_path, pilot, dict(islice(SCREENS.items(), part, None, PARTS))):
            assert isinstance(await opened(make(desk), pilot), kind)
            for promise, look in ASKED.items():
                with naming(f"{kind.__name__}, {promise}"):
                    wrong += [f"{kind.__name__}, {promise}: {found}" for found in await look(pilot)]
            assert app.failure is None, kind.__name__
    assert not wrong


async def test_no_screen_finds_what_another_has_done(tmp_path: Path) -> None:
    """What is stored, kept in a file or done to the desk ends with its screen; a desk where nothing was done stays."""
    app, seen = over_home(tmp_path), list[Desk]()
    done: list[Callable[[Desk], object]] = [
        lambda desk: parcel(desk.shop),
        lambda _: None,
        lambda desk: setattr(desk, "initials", "J"),
        lambda _: (tmp_path / "half a word").touch(),
        lambda _: None,
    ]
    async with app.run_test(size=SMALL) as pilot:
        async for _, _, desk in desks(tmp_path, pilot, dict(islice(SCREENS.items(), len(done)))):
            assert (len(picture(desk.shop).boxes), desk.initials) == (2, "MB")
            done[len(seen)](desk)
            seen.append(desk)

    assert [desk is before for before, desk in pairwise(seen)] == [False, True, False, False]
