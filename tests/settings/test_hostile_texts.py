"""Settings that no shop has: absurd sizes, numbers and depths are refused in a sentence with its line, at once."""

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import LONGEST_LINE, MOST_CHARACTERS, MOST_MARKETS, read_settings

STARTER = seed_text("settings.toml")
NAME = 'name = "Fernlea Edge"'
MARKET = "\n[[markets]]\nname = 'm'\nstart = 2026-01-01\nrule = 'FREQ=WEEKLY;BYDAY=SA'\n"


def refused(text: str) -> str:
    """The sentence with which a text is refused."""
    with pytest.raises(SettingsError) as caught:
        read_settings(text)
    return str(caught.value)


@pytest.mark.parametrize(
    ("was", "wrong", "says"),
    [
        ("price = 9.00", "price = 0x" + "f" * 900, "price is an amount from 0 to 99999.99 like 9.50, not a number"),
        ("length_mm = 254", "length_mm = 0x" + "f" * 900, "from 20 to 900, not a number of"),
        ("length_mm = 254", "length_mm = " + "9" * 900, "from 20 to 900, not a number of"),
        ("price = 9.00", "price = 1e99999999999999999999", "price is an amount from 0 to 99999.99"),
        ("price = 9.00", "price = 1e-99999999", "parts of a cent"),
        ("price = 9.00", "price = 0.0" + "0" * 60 + "1", "parts of a cent"),
        ("grit_um = 58.5", "grit_um = 1e-400", "above 0"),
        ("grit_um = 58.5", "grit_um = -inf", "above 0"),
        (NAME, 'name = "\u3164"', "name is empty"),
        (NAME, f'name = "{"x" * LONGEST_LINE}"', f"at most {LONGEST_LINE} fit"),
        (NAME, ".".join("a" * (LONGEST_LINE // 2)) + ".a = 1", f"at most {LONGEST_LINE} fit"),
        (NAME, f"{NAME}\nx = {{a = " + "{a = " * 100, "this cannot be read"),
    ],
    ids=lambda value: f"{value}"[:30],
)
def test_an_absurd_value_names_its_line(was: str, wrong: str, says: str) -> None:
    """Numbers beyond all measure, signs that show nothing and endless lines are said at their line."""
    sentence = refused(STARTER.replace(was, wrong, 1))

    line = STARTER[: STARTER.index(was)].count("\n") + 1
    assert sentence.startswith((f"line {line}: ", f"line {line + 1}: "))
    assert says in sentence
    assert len(sentence) < 400


@pytest.mark.parametrize("filler", ["# " + "x" * 97 + "\n", "x = [\n", "k" * 50 + " = 1\n", "[[kinds]]\n", "\n"])
def test_a_text_beyond_what_the_file_holds_is_refused_as_such(filler: str) -> None:
    """One sentence tells how long it may be; nothing in it is read."""
    text = STARTER + filler * (MOST_CHARACTERS // len(filler))

    assert f"has more than {MOST_CHARACTERS} characters" in refused(text)


def test_a_text_as_long_as_the_file_holds_is_read() -> None:
    """The limit itself fits."""
    rest = MOST_CHARACTERS - len(STARTER)
    text = STARTER + "# as long as may be\n" * (rest // 20) + "#" * (rest % 20)

    assert len(text) == MOST_CHARACTERS
    assert read_settings(text).name == "Fernlea Edge"


def test_markets_are_counted() -> None:
    """Each market is worked out for every look at the plan, so there is a most; it is said at the first too many."""
    assert len(read_settings(STARTER + MARKET * MOST_MARKETS).markets) == MOST_MARKETS
    sentence = refused(STARTER + MARKET * (MOST_MARKETS + 1))

    line = STARTER.count("\n") + 2 + MOST_MARKETS * MARKET.count("\n")
    assert sentence.startswith(f"line {line}: ")
    assert f"at most {MOST_MARKETS}" in sentence


def test_a_sentence_quotes_no_control_of_the_terminal() -> None:
    """A key or a value that could command a terminal or turn the line round is quoted without those signs."""
    for added in ('"\\u001b[31m\\u202e" = 1\n', '[shop2]\n"a\\u0007" = "\\u009b2J"\n'):
        sentence = refused(STARTER.replace("[shop]", added + "[shop]", 1))

        assert not [sign for sign in sentence if not sign.isprintable()]


@pytest.mark.parametrize("text", ["# \ud800", 'name = "\udfff"'])
def test_half_of_a_character_is_named_by_its_line(text: str) -> None:
    """Half of a character, which no file can hold, is a mistake in its line, also where only a comment has it."""
    with pytest.raises(SettingsError, match="line 2: this line holds half of a character"):
        read_settings(f"\n{text}\n")


CLOSED = "\n[[closures]]\nfirst = 2026-12-24\nreason = 'winter break'\n"
TEXTS = [
    *(NAME, 'currency = "USD"', 'zone = "America/New_York"', 'country = "US"', 'region = ""', 'length_unit = "in"'),
    *('["Columbus Day"', 'order = "fewest late"', '{ label = "P240"', 'finish = "felt wheel', 'name = "thin hard"'),
    *('plain = "plain"', 'name = "slicer"', '["c"', 'process = "plain"', 'edge = "plain"', "reason = 'winter break'"),
    *("name = 'm'", "rule = 'FREQ=WEEKLY;BYDAY=SA'", 'cut_off = "15:45"', 'sat = ["08:00-13:00"]'),
    'collection = ["mon"',
]
"""A piece of the text for each place that takes a text: a name, a list, a word, a time."""


@pytest.mark.parametrize("piece", TEXTS)
@pytest.mark.parametrize("control", [r"\u001b[31m", r"\u0000", r"\u0007", r"\b", r"\u009b2J", r"\u007f"])
def test_a_control_in_any_text_names_its_line(piece: str, control: str) -> None:
    """What could command a terminal is taken in nowhere: each text with a control in it is refused at its line."""
    text = STARTER + MARKET + CLOSED
    quoted = piece.replace("'", '"')
    opening = quoted.index('"') + 1
    sentence = refused(text.replace(piece, quoted[:opening] + control + quoted[opening:], 1))

    assert sentence.startswith(f"line {text[: text.index(piece)].count(chr(10)) + 1}: ")
    assert "holds a control character" in sentence
    assert not [sign for sign in sentence if not sign.isprintable()]
