"""The shop file of many years, which the figures of speed are measured on, is as sound as a file that was lived."""

import sqlite3
from datetime import timedelta
from pathlib import Path

import pytest

from queueboard.records.auditing import audit
from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from tests.bench import years
from tests.bench.years_open import open_more

pytestmark = pytest.mark.sqlite_file


def test_a_file_of_many_years_is_sound(tmp_path: Path) -> None:
    """Its rows follow from its history, its chain holds, and the board shows the open boxes that were asked for."""
    path = tmp_path / "years.qb"
    years.make(path, 400)
    open_more(path, 300)
    connection = sqlite3.connect(path)
    try:
        assert list(audit(connection)) == []
        gone, boxes = connection.execute(
            "SELECT count(*), count(DISTINCT box_id) FROM knife WHERE place = 'gone'"
        ).fetchone()
        assert gone > 400
        assert boxes >= 400 / years.KNIVES_A_BOX
        first, last = connection.execute("SELECT min(at_us), max(at_us) FROM history").fetchone()
        assert timedelta(microseconds=last - first) > timedelta(days=9 * 365)
    finally:
        connection.close()
    shop = open_shop(path)

    assert 300 <= sum(len(box.on_hand) for box in look(shop, years.MORNING).boxes) < 330
    close_shop(shop)
