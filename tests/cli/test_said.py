"""The said command: chances, dates and minutes, as text and by its schema."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from queueboard.cli import board, main
from queueboard.cli.common import FINE
from queueboard.shop.first_look import say_first_look
from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.saying import is_said
from tests.cli.schema import clock, valid
from tests.shop.place import NOW, by


def test_said_and_seen_as_text_and_json(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    """After a morning and some days the chances said are counted; JSON holds the same figures."""
    shop = open_shop(Path(file))
    seen = look(shop, NOW)
    say_first_look(shop, by(), seen)
    close_shop(shop)

    def later() -> datetime:
        return NOW + timedelta(days=9)

    assert main(["said", "--file", file], clock=later) == FINE
    said = capsys.readouterr().out
    assert main(["said", "--json", "--file", file], clock=later) == FINE
    facts = valid("said", capsys.readouterr().out)

    assert "were late" in said
    chances = facts["chances"]
    assert isinstance(chances, list)
    assert sum(tenth["boxes"] for tenth in chances) == sum(b.forecast.late_permille is not None for b in seen.boxes)


def test_an_empty_shop_has_said_nothing(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing said and nothing told is said so, and JSON is as documented."""
    assert main(["said", "--file", empty], clock=clock) == FINE
    assert "Nothing yet" in capsys.readouterr().out
    assert main(["said", "--json", "--file", empty], clock=clock) == FINE

    assert valid("said", capsys.readouterr().out)["chances"] == []


def test_the_board_s_first_start_of_a_day_keeps_the_chances(file: str) -> None:
    """What is done before the board opens keeps what the plan says of its boxes."""
    shop = open_shop(Path(file))
    assert not is_said(shop, NOW.date())
    assert board._morning(shop, NOW) == ""

    assert is_said(shop, NOW.date())
    close_shop(shop)
