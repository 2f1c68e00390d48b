"""The owing command: what is owed as text and by its schema."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE
from queueboard.shop.opening import close_shop, open_shop
from queueboard.words import Settling
from tests.cli.schema import clock, valid
from tests.shop.place import NOW
from tests.shop.undo_charging import gone_as


def test_what_is_owed_as_text_and_json(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A box gone on account stands with sum, age and HOLD; JSON holds the same figures."""
    shop = open_shop(Path(empty))
    gone_as(shop, Settling.ON_ACCOUNT)
    close_shop(shop)

    def later() -> datetime:
        return NOW + timedelta(days=50)

    assert main(["owing", "--file", empty], clock=later) == FINE
    said = capsys.readouterr().out
    assert main(["owing", "--json", "--file", empty], clock=later) == FINE
    facts = valid("owing", capsys.readouterr().out)

    assert "18.00 USD for 1 box, 50 days, HOLD · Ms Verrin · 555 0199" in said
    assert "18.00 USD owed by 1 customer, 1 on HOLD" in said
    assert facts["owed_cents"] == 1800
    accounts = facts["accounts"]
    assert isinstance(accounts, list)
    assert [(account["days"], account["hold"]) for account in accounts] == [(50, True)]


def test_nothing_owed_is_said(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Where nobody owes, that is said, and JSON is as documented."""
    assert main(["owing", "--file", empty], clock=clock) == FINE
    assert "Nobody owes for anything that has left." in capsys.readouterr().out
    assert main(["owing", "--json", "--file", empty], clock=clock) == FINE
    assert valid("owing", capsys.readouterr().out)["accounts"] == []
