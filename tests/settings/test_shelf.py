"""What the shop does about boxes that nobody fetches, and about call-backs, as its settings say."""

from datetime import date

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.shelf_shape import Shelf

STARTER = seed_text("settings.toml")
HEAD, _, _REST = STARTER.partition("[shelf]")
TAIL = "# What is asked" + _REST.partition("# What is asked")[2]


def test_the_table_may_be_left_out() -> None:
    """Without a word about it the usual days hold, and nobody has looked the law up."""
    assert read_settings(HEAD + TAIL).shelf == read_settings(STARTER).shelf == Shelf()
    assert Shelf().last_checked is None


def test_what_is_written_holds() -> None:
    """Days and the day of the last look are taken as they stand; no notices at all is an answer too."""
    text = "[shelf]\nnotice_days = []\nlong_days = 90\nredo_days = 0\nlast_checked = 2026-11-02\n"

    assert read_settings(HEAD + text + TAIL).shelf == Shelf(
        notice_days=(), long_days=90, redo_days=0, last_checked=date(2026, 11, 2)
    )


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("notice_days = [21, 7]", "each larger than the one before"),
        ("notice_days = [0, 7]", "from 1 to 3650"),
        ("notice_days = [7, 3651]", "from 1 to 3650"),
        ("notice_days = [7, true]", "whole numbers"),
        ('notice_days = ["7"]', "whole numbers"),
        ("notice_days = 7", "is a list"),
        ("notice_days = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13]", "up to 12"),
        ("long_days = 0", "from 1 to 3650"),
        ("redo_days = -1", "from 0 to 3650"),
        ('last_checked = "2026-11-02"', "without quotes"),
        ("redo_day = 7", "do you mean redo_days?"),
    ],
)
def test_a_mistake_names_its_line(line: str, said: str) -> None:
    """Days that do not rise, or beyond measure, are refused with the line."""
    where = HEAD.count("\n") + 2

    with pytest.raises(SettingsError, match=rf"line {where}: .*{said}".replace("?", r"\?")):
        read_settings(f"{HEAD}[shelf]\n{line}\n{TAIL}")
