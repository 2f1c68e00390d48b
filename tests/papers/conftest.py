"""A shop for papers that read the file themselves."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from queueboard.shop.opening import Shop, close_shop
from tests.shop.place import small_shop


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """A fresh shop."""
    made = small_shop(tmp_path)
    yield made
    close_shop(made)
