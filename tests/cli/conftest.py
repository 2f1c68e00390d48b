"""Shops for the command line: one with a box for each hostile name, one with nothing in it."""

from pathlib import Path

import pytest

from queueboard.shop.opening import Shop, close_shop
from tests.pictures import HOSTILE_NAMES
from tests.shop.place import another, counter, own_path, parcel, small_shop, started


def _hostile(path: Path) -> Shop:
    shop = another(started, path)
    for name in HOSTILE_NAMES:
        parcel(shop, name=name, things=(name[:60],))
        counter(shop, name=name)
    return shop


@pytest.fixture
def file(tmp_path: Path) -> str:
    """A shop with a parcel and a counter box for each hostile name."""
    shop = another(_hostile, own_path(tmp_path))
    close_shop(shop)
    return str(shop.path)


@pytest.fixture
def empty(tmp_path: Path) -> str:
    """A shop with nothing in it."""
    shop = small_shop(tmp_path)
    close_shop(shop)
    return str(shop.path)
