"""When the parts of the settings were last checked."""

from datetime import date

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings
from queueboard.settings.reading_checked import CHECKED_PARTS, insist_on_days_that_were
from queueboard.settings.shapes import Checked

STARTER = seed_text("settings.toml")
TODAY = date(2026, 11, 26)


def line(text: str, needle: str) -> int:
    """The line on which something stands, counted from 1."""
    return text[: text.index(needle)].count("\n") + 1


def test_each_part_may_have_its_day() -> None:
    """Days are read part by part; a text that says nothing has none, and a year counts as long ago."""
    text = STARTER.replace("after_days = 365", "after_days = 200")
    text += "".join(f"{part} = 2026-11-{place:02}\n" for place, part in enumerate(CHECKED_PARTS, 1))

    assert read_settings(text).checked == Checked(
        after_days=200, on={part: date(2026, 11, place) for place, part in enumerate(CHECKED_PARTS, 1)}
    )
    assert read_settings(STARTER[: STARTER.index("[last_checked]")]).checked == Checked()


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ("taxes = 2026-11-01", r"“taxes”; do you mean tax\?"),
        ('tax = "2026-11-01"', "tax is a date written without quotes"),
        ("tax = 2026-02-30", "cannot be read"),
    ],
)
def test_a_mistake_in_it_names_its_line(more: str, says: str) -> None:
    """As anywhere in the settings."""
    text = f"{STARTER}{more}\n"

    with pytest.raises(SettingsError, match=rf"^line {line(text, more)}: .*{says}"):
        read_settings(text)


@pytest.mark.parametrize(
    ("before", "more"),
    [
        ("# tax = 2026-11-02\n", "tax = 2026-11-27\n"),
        ('cut_off = "15:45"', 'last_checked = 2027-11-02\ncut_off = "15:45"'),
        ("# Minutes off", '[[carriers]]\nname = "Gull Post"\nlast_checked = 2026-12-01\n\n# Minutes off'),
    ],
)
def test_a_day_to_come_was_no_check(before: str, more: str) -> None:
    """Of a part, of parcels and of a carrier; today is a day that has been."""
    text = STARTER.replace(before, more)
    number = line(text, "\ntax = 2026-11-27" if "tax" in more else "\nlast_checked = 202") + 1

    with pytest.raises(SettingsError, match=rf"^line {number}: .* still to come, and today is 2026-11-26"):
        insist_on_days_that_were(read_settings(text), text, TODAY)
    insist_on_days_that_were(read_settings(text), text, date(2027, 11, 2))


def test_boxes_are_written_the_smallest_first() -> None:
    """A list of boxes that goes down is refused at its line, as bands of shipping are; two of a size are taken."""
    text = STARTER.replace("knives = 20                   # more", "knives = 5                    # more")

    with pytest.raises(
        SettingsError, match=rf"^line {line(text, 'knives = 5 ')}: .* behind one for 10; write the small"
    ):
        read_settings(text)
    assert len(read_settings(text.replace("knives = 5 ", "knives = 10")).parcels.boxes) == 3
