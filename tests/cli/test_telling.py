"""The shelf and message commands, and find for what is gone: text, JSON by its schema, refusals with their codes."""

import unicodedata
from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, NOTHING_FOUND, REFUSED, USAGE
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.shelving import put_on_shelf
from queueboard.words import Column, GoesBy
from tests.cli.schema import clock, valid
from tests.shop.place import box, by, picture
from tests.shop.undo_shelf import gone


@pytest.fixture
def ready(file: str) -> str:
    """The shop of hostile names, everything that is picked up ready and at a hostile place."""
    shop = open_shop(Path(file))
    for one in picture(shop).boxes:
        if one.box.goes_by is GoesBy.PICK_UP:
            move_knives(shop, by(), one.knives, Column.READY)
            put_on_shelf(shop, by(), box(shop, one.box.number).box, one.customer.name[:60])
    close_shop(shop)
    return file


def test_the_shelf_with_hostile_names_as_text_and_json(ready: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Each name stands as it was typed, nothing commands the terminal, and the schema holds."""
    assert main(["shelf", "--file", ready], clock=clock) == FINE
    said = capsys.readouterr().out
    assert main(["shelf", "--json", "--file", ready], clock=clock) == FINE
    boxes = valid("shelf", capsys.readouterr().out)["boxes"]

    assert isinstance(boxes, list)
    assert len(boxes) == 11
    assert all(one["customer"]["name"] in said for one in boxes)
    assert not [sign for sign in said if sign != "\n" and unicodedata.category(sign) in {"Cc", "Cs"}]


def test_an_empty_shelf_says_so(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing waits; the shop's own days and the law line stand there all the same."""
    assert main(["shelf", "--file", empty], clock=clock) == FINE
    said = capsys.readouterr().out

    assert "Nothing is ready and waits to be fetched." in said
    assert "check local law first" in said


@pytest.mark.parametrize(
    ("arguments", "code", "says"),
    [
        (["999", "--ready"], NOTHING_FOUND, "There is no box 999, open or gone."),
        (["100", "--ready"], REFUSED, "is not ready: 0 of 3 can leave"),
        (["100", "--delayed"], REFUSED, "still holds"),
        (["x", "--ready"], USAGE, "is no tag"),
    ],
)
def test_a_message_that_would_not_be_true_is_refused(
    arguments: list[str], code: int, says: str, file: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """One sentence to standard error, nothing to standard output, and the code."""
    assert main(["message", *arguments, "--file", file], clock=clock) == code
    said = capsys.readouterr()

    assert said.out == ""
    assert says in said.err


def test_what_is_gone_is_found_and_its_message_told(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Find tells of it in a sentence and in JSON; shipped is the one message of it."""
    shop = open_shop(Path(empty))
    number = gone(shop).box.number
    close_shop(shop)

    assert main(["find", "tallis", "--file", empty], clock=clock) == FINE
    line = capsys.readouterr().out
    assert line == f"Box {number}, R. Tallis: All three knives left today, 27.00 USD to pay.\n"
    assert main(["find", "tallis", "--json", "--file", empty], clock=clock) == FINE
    found = valid("find", capsys.readouterr().out)
    assert found["boxes"] == []
    assert isinstance(found["gone"], list)
    assert [one["said"] + "\n" for one in found["gone"]] == [line]
    assert main(["message", str(number), "--shipped", "--json", "--file", empty], clock=clock) == FINE
    assert "left on Monday 9 November" in str(valid("message", capsys.readouterr().out)["text"])
    assert main(["message", str(number), "--ready", "--file", empty], clock=clock) == REFUSED
