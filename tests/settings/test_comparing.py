"""What changed between two texts of settings, in words that history may hold."""

import pytest

from queueboard.seedfiles import seed_text
from queueboard.settings.comparing import changed_words

SEED = seed_text("settings.toml")


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        ("", "", ""),
        ("[a]\nx = 1", "[a]\nx = 1 # why", ""),
        ("[a]\nx = 1", "[a]\nx = 2.50", "a.x 1 -> 2.50"),
        ("[a]\nx = true", "[a]", "a.x yes -> none"),
        ("[a]", "[a]\nday = 2026-12-24", "a.day none -> 2026-12-24"),
        ('[a]\nat = "16:00"', '[a]\nat = "15:30"', "a.at 16:00 -> 15:30"),
        ('[a]\nat = ["08:00-12:00"]', "[a]\nat = []", "a.at 08:00-12:00 -> none"),
        ('[a]\nname = "Maren"', '[a]\nname = "Ida"', "a.name changed"),
        ('[a]\nphone = "555 0142"', '[a]\nphone = "555 0143"', "a.phone changed"),
        ('[a]\n"Ida Quillon" = 1', '[a]\n"Ida Quillon" = 2', "a.… 1 -> 2"),
        ('[[kinds]]\nname = "chef"\nx = 1', '[[kinds]]\nname = "chef"\nx = 2', "kinds.chef.x 1 -> 2"),
        ('[[carriers]]\nname = "Ida"\nx = 1', '[[carriers]]\nname = "Ida"\nx = 2', "carriers.1.x 1 -> 2"),
        ("[[a]]\nx = 1", "[[a]]\nx = 1\n[[a]]\nx = 2", "rows of a 1 -> 2"),
        ("[[a]]\nx = 1", "", "rows of a 1 -> 0"),
        (
            "[a]\nb=1\nc=1\nd=1\ne=1\nf=1",
            "[a]\nb=2\nc=2\nd=2\ne=2\nf=2",
            "a.b 1 -> 2, a.c 1 -> 2, a.d 1 -> 2 and 2 more",
        ),
    ],
)
def test_what_changed_is_named(before: str, after: str, words: str) -> None:
    """Figures, days and clock times with their values, a person's words as changed, three and then how many."""
    assert changed_words(before, after) == words


def test_a_number_of_the_shop_is_named_by_section_and_key() -> None:
    """As it stands in the text."""
    assert changed_words(SEED, SEED.replace("= 730", "= 0")) == "keeping.erase_after_days 730 -> 0"
