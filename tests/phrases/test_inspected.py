"""What an inspection found, in words."""

import pytest

from queueboard.intake.lines import read_line
from queueboard.phrases.intake import line_words
from queueboard.phrases.knives import found_words
from tests.shop_settings import settings


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("chef 20", ""),
        ("chef 20 chip 2mm", "1 chip, 2 mm"),
        ("chef 20 3 chips 0,5mm", "3 chips, deepest 0.5 mm"),
        ("chef 20 chips 3mm", "chips, deepest 3 mm"),
        ("chef 20 tip 10mm freckles", "tip broken, 10 mm missing; rust freckles"),
        ("chef 20 chip 1mm very dull", "1 chip, 1 mm; very dull"),
    ],
)
def test_findings_in_words(typed: str, words: str) -> None:
    """Chips with number and depth first, then the words of the list; nothing where nothing was found."""
    assert found_words(read_line(typed, settings()).knife) == words


def test_the_echo_names_what_was_found() -> None:
    """The reading of a line is told in plain words with its price, and that a knife is priced apart."""
    line = read_line("chef 20 chip 2mm apart, nick ! gently", settings())

    assert line_words(line, settings()) == (
        "1 chef · 20 cm · plain · chips 2-3 mm · 1 chip, 2 mm · PRICED APART · 16 min · 9.00 EUR · nick · GENTLY"
    )
