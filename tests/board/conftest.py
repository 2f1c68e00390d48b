"""A shop with two boxes for tests of screens."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from queueboard.board.widgets.notice import Notice
from queueboard.shop.opening import Shop, close_shop
from tests.shop.place import small_shop, two_boxes_shop


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """A fresh shop."""
    made = small_shop(tmp_path)
    yield made
    close_shop(made)


@pytest.fixture
def two_boxes(tmp_path: Path) -> Iterator[Shop]:
    """A shop with a parcel from R. Tallis (100, three knives) and a counter box from Ms Verrin (101, two knives)."""
    made = two_boxes_shop(tmp_path)
    yield made
    close_shop(made)


@pytest.fixture(autouse=True)
def notices_stay(monkeypatch: pytest.MonkeyPatch) -> None:
    """No notice goes by itself while a slow machine is still on its way to look at it."""
    monkeypatch.setattr(Notice, "on_mount", lambda _: None)
