"""What an inspection finds, in shorthand: chips, tips, words of the list; whose it is, and the unit of a box."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.intake.lines import box_unit_of, read_line, read_lines
from queueboard.intake.words_typed import FINDING_WORDS, read_findings
from queueboard.priced_words import Finding
from queueboard.words import Condition
from tests.shop_settings import settings

SHOP = settings()


def asked(text: str, *, box_unit: str | None = None) -> str:
    """The sentence with which a line is asked back."""
    with pytest.raises(TypedError) as caught:
        read_line(text, SHOP, box_unit=box_unit)
    return str(caught.value)


@pytest.mark.parametrize(
    ("typed", "chips", "chip_um", "condition"),
    [
        ("chef 20 chip 2mm", 1, 2000, Condition.BIG_CHIPS),
        ("chef 20 chip 2 mm", 1, 2000, Condition.BIG_CHIPS),
        ("chef 20 chip 0.5mm", 1, 500, Condition.SMALL_CHIPS),
        ("chef 20 chip 0,5 mm", 1, 500, Condition.SMALL_CHIPS),
        ("chef 20 3 chips 1mm", 3, 1000, Condition.SMALL_CHIPS),
        ("chef 3 chips 1mm", 3, 1000, Condition.SMALL_CHIPS),
        ("chef 20 chips 3mm", None, 3000, Condition.BIG_CHIPS),
        ("4 chef 20 2 chips 2mm each", 2, 2000, Condition.BIG_CHIPS),
        ("chef 20 big chips", None, None, Condition.BIG_CHIPS),
    ],
)
def test_chips_have_a_number_and_a_depth(
    typed: str, chips: int | None, chip_um: int | None, condition: Condition
) -> None:
    """The depth of the deepest decides the condition; how many there are is kept where it was said."""
    knife = read_line(typed, SHOP).knife

    assert (knife.chips, knife.chip_um, knife.condition) == (chips, chip_um, condition)


@pytest.mark.parametrize("typed", ["chef 20 tip 3mm", "chef 20 tip broken 3 mm", "chef 20 broken tip 3mm"])
def test_a_broken_tip_says_what_is_missing(typed: str) -> None:
    """What is missing of a tip is kept in micrometres, with the word of the list; it takes as long as big chips."""
    knife = read_line(typed, SHOP).knife

    assert (knife.tip_um, knife.findings, knife.condition) == (3000, (Finding.TIP_BROKEN,), Condition.BIG_CHIPS)


@pytest.mark.parametrize(("word", "finding"), sorted(FINDING_WORDS.items()))
def test_every_word_of_the_list_may_be_typed(word: str, finding: Finding) -> None:
    """Each finding is read from its own words and from its short forms, wherever it stands in the line."""
    assert read_line(f"2 bread 25 {word} dull", SHOP).knife.findings == (finding,)
    assert read_line(f"2 bread {word} 25, red ! gently", SHOP).knife.findings == (finding,)


def test_every_finding_has_a_short_form_or_is_typed_with_its_size() -> None:
    """No word of the fixed list is out of reach of the shorthand."""
    assert {*FINDING_WORDS.values(), Finding.TIP_BROKEN} == set(Finding)


def test_several_findings_stand_in_the_order_of_the_list() -> None:
    """Whatever the order in which they are typed, and each once."""
    knife = read_line("chef 20 freckles very dull chip 1mm bent freckles", SHOP).knife

    assert knife.findings == (Finding.VERY_DULL, Finding.BENT, Finding.FRECKLES)
    assert (knife.condition, knife.chips) == (Condition.SMALL_CHIPS, 1)


@pytest.mark.parametrize(
    ("typed", "part"),
    [
        ("4 chef 20 chip 2", "2 chips, or 2 mm deep? And have all 4 knives it, or one?"),
        ("4 chef 20 chip 2mm", "Have all 4 chef the chip, or one?"),
        ("2 chef 20 tip 3mm", "Have all 2 chef the broken tip, or one?"),
        ("2 chef 20 each", "none is typed"),
        ("chef 20 3 chips", "how deep is the deepest?"),
        ("paring 9 chips 1mm", "9 of them, or 9 long with chips?"),
        ("chef 20 3 chips 1", "“3 chips 1”: 1 mm deep?"),
        ("chef 20 0 chips 1mm", "Type 1 to 99"),
        ("chef 20 chip 0mm", "Chips of 0 mm"),
        ("chef 20 chip 2mm chip 1mm", "Two conditions"),
        ("chef 20 tip", "what of it?"),
        ("chef 20 tip broken", "how much of it is missing?"),
        ("chef 20 tip 3", "are 3 mm missing?"),
        ("chef 20 tip 0mm", "cannot be right"),
        ("chef 20 tip 900mm", "cannot be right"),
        ("chef 20 tip 3mm tip 4mm", "Two broken tips"),
        ("chef 20 rust", "freckles, or pits at the edge?"),
        ("chef 20 cracked", "a cracked blade is declined"),
        ("chef 20 tired very dull", "Tired or very dull?"),
        ("chef 20 wrped", "mean “warped”"),
    ],
)
def test_what_is_in_doubt_is_asked_back(typed: str, part: str) -> None:
    """How many or how deep, all of them or one, which rust: never guessed."""
    assert part in asked(typed)


def test_cm_or_inch_is_asked_once_a_box() -> None:
    """Once a line has said inches, a bare 8 of the same box is inches; what only fits centimetres still is."""
    assert "8 cm or 8 in?" in asked("chef 8")
    first = read_line("chef 8in", SHOP)
    unit = box_unit_of([first])

    assert read_line("2 chef 10", SHOP, box_unit=unit).knife.length_mm == 254
    assert read_line("paring 9", SHOP, box_unit=unit).knife.length_mm == 90
    assert read_line("chef 20", SHOP, box_unit=unit).knife.length_mm == 200
    assert [line.knife.length_mm for line in read_lines("chef 8in, chef 8", SHOP)] == [203, 203]


def test_an_answer_of_centimetres_does_not_make_inches() -> None:
    """A box answered in the shop's own unit still asks about a number that fits only the other."""
    unit = box_unit_of([read_line("chef 20cm", SHOP), read_line("bread 230 mm", SHOP)])

    assert unit == "cm"
    assert "8 cm or 8 in?" in asked("chef 8", box_unit=unit)


def test_a_knife_apart_is_said_so() -> None:
    """The word apart marks the knife that stands beyond the customer's note."""
    assert read_line("chef 15 apart", SHOP).knife.apart
    assert not read_line("chef 15", SHOP).knife.apart


def test_findings_in_a_field_of_their_own() -> None:
    """With commas between, in the order of the list; an unknown word is answered with the list."""
    assert read_findings("freckles, very dull, tip broken") == (
        Finding.VERY_DULL,
        Finding.TIP_BROKEN,
        Finding.FRECKLES,
    )
    assert read_findings(" , ") == ()
    with pytest.raises(TypedError, match=r"“shiny” is not in the list: very dull, "):
        read_findings("shiny")


WORDS = st.sampled_from(
    ["4", "chef", "20", "chip", "chips", "2", "2mm", "mm", "tip", "broken", "3mm", "each", "apart", "rust", "very dull"]
)


@given(st.lists(WORDS, max_size=9).map(" ".join))
def test_any_inspection_is_read_within_its_ranges_or_asked_back(typed: str) -> None:
    """A line that is taken holds what the file can hold; any other is answered with one sentence."""
    try:
        knife = read_line(f"chef {typed}", SHOP).knife
    except TypedError as question:
        sentence = str(question)
    else:
        assert knife.chips is None or 1 <= knife.chips <= 99
        assert knife.chip_um is None or 1 <= knife.chip_um <= 3000
        assert knife.tip_um is None or 1 <= knife.tip_um <= 200_000
        assert (knife.tip_um is not None) == (Finding.TIP_BROKEN in knife.findings)
        return

    assert sentence.endswith((".", "?"))
