"""A fresh shop for each test."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from queueboard.shop.opening import Shop, close_shop
from tests.shop.place import small_shop


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """A shop with the starter settings and nothing in it."""
    made = small_shop(tmp_path)
    yield made
    close_shop(made)
