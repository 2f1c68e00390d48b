"""The shorthand of receiving: what a line means, and what is asked back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.intake.lines import read_line
from queueboard.settings.shapes import Kind
from queueboard.words import Condition, Edge
from tests.shop_settings import KINDS, settings

SHOP = settings()


def asked(text: str, *, length_unit: str = "cm") -> str:
    """The sentence with which a line is asked back."""
    with pytest.raises(TypedError) as caught:
        read_line(text, settings(length_unit=length_unit))
    return str(caught.value)


def test_a_whole_line_is_read() -> None:
    """Count, kind, length, condition, mark and wish come out of one line."""
    line = read_line("4 chef 20 dull, black handle, nick ! keep the patina", SHOP)

    assert (line.count, line.knife.kind, line.knife.length_mm) == (4, "chef", 200)
    assert (line.knife.edge, line.knife.condition) == (Edge.PLAIN, Condition.DULL)
    assert (line.knife.mark, line.knife.wish) == ("black handle, nick", "keep the patina")
    assert (line.minutes, line.price_cents) == (5, 900)


def test_blunt_is_dull_and_an_unknown_word_is_told_what_may_be_typed() -> None:
    """The trade says blunt and dull alike; a word nobody knows is answered with the conditions and edges."""
    assert read_line("paring 3 blunt", settings(length_unit="in")).knife.condition is Condition.DULL

    said = asked("paring 9 zzz")
    assert "Condition: tired, dull, small chips, big chips." in said
    assert "Edge: plain, serrated, scalloped, single left, single right." in said


@pytest.mark.parametrize(
    ("typed", "count", "kind", "length_mm"),
    [
        ("chef", 1, "chef", None),
        ("2x c 20cm", 2, "chef", 200),
        ("3 P 9", 3, "paring", 90),
        ("chef 20,5", 1, "chef", 205),
        ("chef 8in", 1, "chef", 203),
        ('chef 8"', 1, "chef", 203),
        ("chef 8 in", 1, "chef", 203),
        ("chef 200 mm", 1, "chef", 200),
    ],
)
def test_short_forms_and_lengths(typed: str, count: int, kind: str, length_mm: int | None) -> None:
    """Short forms, counts with x, decimal commas and units that are typed are understood."""
    line = read_line(typed, SHOP)

    assert (line.count, line.knife.kind, line.knife.length_mm) == (count, kind, length_mm)


def test_an_inch_is_25_4_mm() -> None:
    """A bare number is in inches where the shop measures in inches (1 in = 25.4 mm: NIST SP 811, from memory)."""
    assert read_line("chef 8", settings(length_unit="in")).knife.length_mm == round(8 * 25.4)


@pytest.mark.parametrize(
    ("typed", "edge"),
    [
        ("bread", Edge.SERRATED),
        ("bread plain", Edge.PLAIN),
        ("chef scalloped", Edge.SCALLOPED),
        ("slim single left", Edge.SINGLE_LEFT),
        ("slim single bevel left", Edge.SINGLE_LEFT),
    ],
)
def test_edges(typed: str, edge: Edge) -> None:
    """An edge that is typed overrules the usual edge of the kind."""
    assert read_line(typed, SHOP).knife.edge is edge


@pytest.mark.parametrize(
    ("typed", "condition"),
    [
        ("chef tired", Condition.TIRED),
        ("chef small chips", Condition.SMALL_CHIPS),
        ("chef big chips 20", Condition.BIG_CHIPS),
        ("chef chip 2mm", Condition.BIG_CHIPS),
        ("chef chips 1 mm", Condition.SMALL_CHIPS),
        ("chef chips 2-3 mm", Condition.BIG_CHIPS),
        ("chef chips to 1 mm", Condition.SMALL_CHIPS),
    ],
)
def test_conditions(typed: str, condition: Condition) -> None:
    """A condition is typed by its word or by the depth of its chips."""
    assert read_line(typed, SHOP).knife.condition is condition


@pytest.mark.parametrize(
    ("typed", "part"),
    [
        ("", "kind of knife is missing"),
        ("4", "kind of knife is missing"),
        ("4 sword 20", "no kind “sword”"),
        ("4 chfe 20", "mean “chef”"),
        ("4 chef 20 chip 2", "2 chips, or 2 mm deep?"),
        ("4 chef 20 chips", "how deep are the chips?"),
        ("slim single", "left or right?"),
        ("chef left", "single left"),
        ("chef chip 1.5mm", "1.5 mm"),
        ("chef chip 5mm", "5 mm"),
        ("chef 8", "8 cm or 8 in?"),
        ("chef 20 24", "Two lengths"),
        ("chef dull tired", "Two conditions"),
        ("bread plain serrated", "Two edges"),
        ("chef 20 dul", "mean “dull”"),
        ("chef 0.5cm", "0.5 cm"),
        ("chef 99", "99 cm"),
        ("0 chef", "0 knives"),
        ("10000 chef", "10000 knives"),
        ("-3 chef", "“-3” knives in one line? Type a whole number of 1 or more"),
        ("1.5 chef", "“1.5” knives in one line? Type a whole number of 1 or more"),
        ("1,5 chef", "“1,5” knives in one line? Type a whole number of 1 or more"),
        ("½ chef", "“½” knives in one line? Type a whole number of 1 or more"),
        ("٣ chef", "“٣” knives in one line? Type a whole number of 1 or more, in figures: 3 chef."),
        ("３ chef", "“３” knives in one line? Type a whole number of 1 or more"),
        ("chef ٢٠", "“٢٠” is not understood"),
        ("chef chip ٢mm", "how deep is the chip?"),
        ("x" * 201, "The line of knives has 201 characters; at most 200 fit. Shorten it."),
        ("chef 20 [red]x[/]", "“[red]x[/]” is not understood"),
        ("chef \0", "NUL"),
    ],
)
def test_doubt_is_asked_back(typed: str, part: str) -> None:
    """What is missing, unknown, out of range or means two things is asked back with the word in doubt."""
    assert part in asked(typed)


def test_knives_behind_a_comma_are_asked_back() -> None:
    """`4 chef, 1 bread` is no four knives with an odd mark; a mark may well begin with a number otherwise."""
    assert (
        asked("4 chef, 1 bread") == "“1 bread” behind the comma reads as more knives. Type them in a line of their own."
    )
    assert asked("chef, 2 paring 9").startswith("“2 paring 9” behind the comma")
    assert read_line("chef 20, 2 nicks", SHOP).knife.mark == "2 nicks"
    assert read_line("chef 20, bread knife handle", SHOP).knife.mark == "bread knife handle"


def test_inch_shop_asks_about_centimetres() -> None:
    """In a shop of inches `chef 20` may be centimetres, and is asked back."""
    assert "20 in or 20 cm?" in asked("chef 20", length_unit="in")


WORDS = st.sampled_from(
    ["4", "0", "chef", "c", "bread", "20", "8in", "chip", "2", "mm", "single", "left", "dull", "x", ",", "!", '"']
)


@given(st.lists(WORDS).map(" ".join) | st.text())
def test_any_text_is_read_or_asked_back(typed: str) -> None:
    """Whatever is typed, the answer is a line within its ranges or one sentence."""
    try:
        line = read_line(typed, SHOP)
    except TypedError as question:
        sentence = str(question)
    else:
        assert 1 <= line.count <= 999
        assert line.knife.length_mm is None or 20 <= line.knife.length_mm <= 900
        return

    assert sentence.endswith((".", "?"))


ANY_ORDER = st.tuples(
    st.integers(20, 900).map("{}mm".format),
    st.sampled_from(["plain", "serrated", "scalloped", "single left", "single right"]),
    st.sampled_from(["tired", "dull", "small chips", "big chips"]),
).flatmap(lambda words: st.tuples(st.just(words), st.permutations(words)))


@given(kind=st.sampled_from(KINDS), orders=ANY_ORDER)
def test_order_of_the_words_does_not_matter(kind: Kind, orders: tuple[tuple[str, ...], list[str]]) -> None:
    """Length, edge and condition may stand in any order behind the kind."""
    straight, turned = (read_line(f"3 {kind.name} {' '.join(words)}", SHOP).knife for words in orders)

    assert turned == straight
