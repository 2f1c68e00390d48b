"""What the tests of the house need: the invented shop as a file."""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from queueboard.shop.demo import make_demo_shop
from queueboard.shop.opening import close_shop


@pytest.fixture(scope="session")
def shop_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The invented shop's file, as it stands today."""
    path = tmp_path_factory.mktemp("shop") / "shop.qb"
    close_shop(make_demo_shop(path, datetime.now(UTC)))
    return path
