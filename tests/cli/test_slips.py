"""Stub and tags from the command line: the same papers as on the board, and printing twice changes nothing."""

from pathlib import Path

import pytest
from rich.cells import cell_len

from queueboard.cli import main
from queueboard.cli.common import FINE, NOTHING_FOUND, USAGE
from queueboard.papers.slips import handle_tags, stub
from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from tests.cli.schema import clock
from tests.shop.place import state


def test_stub_and_tags_are_those_of_the_board(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Each command prints its paper, twice alike, and the shop's file is as before."""
    shop = open_shop(Path(file))
    before, picture = state(shop), look(shop, clock())
    first = picture.boxes[0]
    for command, paper in (("stub", stub(first, picture)), ("tags", handle_tags(first, picture))):
        for _ in range(2):
            assert main([command, str(first.box.number), "--file", file], clock=clock) == FINE
            assert capsys.readouterr().out == paper
    assert state(shop) == before
    close_shop(shop)


def test_one_tag_alone_on_wide_paper(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A tag prints only itself, and --wide takes the width of the paper."""
    assert main(["tags", "100-2", "--wide", "--file", file], clock=clock) == FINE

    lines = capsys.readouterr().out.splitlines()
    assert "100-2" in lines
    assert "100-1" not in lines
    assert max(map(cell_len, lines)) == 48


@pytest.mark.parametrize(
    ("asked", "code", "says"),
    [
        (["stub", "9"], NOTHING_FOUND, "Box 9 is not open"),
        (["tags", "9-1"], NOTHING_FOUND, "Box 9 is not open"),
        (["tags", "100-99"], NOTHING_FOUND, "100-99"),
        (["stub", "x"], USAGE, "is no tag"),
    ],
)
def test_what_is_not_there_is_said(
    asked: list[str], code: int, says: str, file: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A sentence and a code of its own, nothing on standard output."""
    assert main([*asked, "--file", file], clock=clock) == code

    said = capsys.readouterr()
    assert said.out == ""
    assert says in said.err
