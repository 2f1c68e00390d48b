"""How the shop's data are kept, as its settings say."""

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.shapes import Keeping


def test_the_table_may_be_left_out() -> None:
    """Without a word about it there is no second folder, and two years pass before anybody is erased."""
    starter = seed_text("settings.toml")
    without = starter.partition("[keeping]")[0] + "[planning]" + starter.partition("[planning]")[2]

    assert read_settings(without).keeping == read_settings(starter).keeping == Keeping()
    assert Keeping() == Keeping(second_folder="", erase_after_days=730)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('second_folder = "stick/shop"', "is no full path"),
        ("erase_after_days = -1", "erase_after_days"),
        ("erase_after_days = 4001", "erase_after_days"),
        ("erase_after = 1", "do you mean erase_after_days?"),
    ],
)
def test_a_mistake_names_its_line(line: str, said: str) -> None:
    """A folder that depends on where the program is started, and days beyond measure, are refused."""
    head, _, tail = seed_text("settings.toml").partition("[keeping]")
    tail = "[planning]" + tail.partition("[planning]")[2]

    with pytest.raises(SettingsError, match=rf"line {head.count(chr(10)) + 2}: .*{said}".replace("?", r"\?")):
        read_settings(f"{head}[keeping]\n{line}\n{tail}")


def test_what_is_written_holds() -> None:
    """Folder and days are taken as they stand."""
    text = seed_text("settings.toml").replace('second_folder = ""', 'second_folder = "/media/stick"')

    assert read_settings(text.replace("= 730", "= 0")).keeping == Keeping(
        second_folder="/media/stick", erase_after_days=0
    )
