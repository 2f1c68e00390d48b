"""People's text at the boundary."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.clean import NAME_LIMIT, TEXT_LIMIT, cell_text, clean, clean_name, folded, shown
from queueboard.errors import TypedError
from tests.pictures import HOSTILE_NAMES

TYPED = st.text(alphabet=st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=TEXT_LIMIT // 4)
"""What may come in from a keyboard, a paste or a file; short, because NFC can lengthen a text threefold."""


@pytest.mark.parametrize("name", HOSTILE_NAMES, ids=ascii)
def test_a_name_that_looks_like_a_command_stays_as_typed(name: str) -> None:
    """Brackets, templates, emoji, right-to-left letters and 300 characters come out exactly as they went in."""
    assert clean_name(name) == name


@pytest.mark.parametrize(
    ("typed", "stored"),
    [
        ("\x1b[31mred\x1b[0m", "red"),
        ("\x1b]0;title\x07Ola", "Ola"),
        ("\x1b]52;c;Y2xpcA==\x1b\\Ola", "Ola"),
        ("\x9b31mOla", "Ola"),
        ("\x9d0;title\x9cOla", "Ola"),
        ("\x90q#0\x9cOla", "Ola"),
        ("\x1b(BOla", "Ola"),
        ("\x1bOla", "Ola"),
        ("\x1b]0;never ended", "]0;never ended"),
        ("bell\x07 back\x08space\x7f", "bell backspace"),
        ("ab\u202ecd\u2066e\u200f", "abcde"),
        ("  two\t\nlines \u00a0\u3000 ", "two lines"),
        ("Mu\u0308ller", "M\u00fcller"),
        ("", ""),
    ],
    ids=ascii,
)
def test_what_commands_a_terminal_is_taken_out(typed: str, stored: str) -> None:
    """Sequences go whole, lone controls and direction marks go, white space becomes one space, accents are composed."""
    assert clean(typed) == stored


@given(TYPED)
def test_nothing_cleaned_can_command_a_terminal(text: str) -> None:
    """Whatever comes in, no control and no direction mark comes out, and the form is NFC."""
    cleaned = clean(text)

    assert not [sign for sign in cleaned if unicodedata.category(sign) in {"Cc", "Cs"}]
    assert not set(cleaned) & set("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
    assert unicodedata.is_normalized("NFC", cleaned)


@given(TYPED)
def test_cleaning_twice_changes_nothing_more(text: str) -> None:
    """What was stored once may be typed back in and stays the same."""
    assert clean(clean(text)) == clean(text)


@given(TYPED)
def test_finding_ignores_how_a_text_was_composed(text: str) -> None:
    """Folding is steady, and a text and its decomposed twin fold alike."""
    assert folded(folded(text)) == folded(text)
    assert folded(unicodedata.normalize("NFD", text)) == folded(text)


@given(st.text(st.characters(max_codepoint=127)))
def test_plain_letters_fold_the_same_by_the_short_way(text: str) -> None:
    """A text of plain letters alone is spared the long way, which an invisible sign behind it makes it go."""
    assert folded(text) == folded(f"{text}\u200b")


@pytest.mark.parametrize(
    ("stored", "typed"),
    [
        ("Müller", "muller"),
        ("MÜLLER", "müller"),
        ("Søren Łukasz", "soren lukasz"),
        ("Straße", "STRASSE"),
        ("Ｏｌａ", "ola"),
        ("O\u200bla", "ola"),
        ("two  words", "Two Words"),
    ],
)
def test_a_plain_keyboard_finds_accented_names(stored: str, typed: str) -> None:
    """Case, accents, wide letters and invisible signs do not hide a customer."""
    assert folded(stored) == folded(typed)


def test_a_list_cell_keeps_only_signs_of_steady_width() -> None:
    """Hearts lose their variation selector and hands their skin tone, the rest stays."""
    assert cell_text("❤\ufe0f 👍🏽 1\ufe0f\u20e3 שלום") == "❤ 👍 1 שלום"


@pytest.mark.parametrize(
    ("typed", "says"),
    [("a\0b", "NUL"), ("a\ud800b", "half of a character"), ("x" * 201, "201 characters; at most 200 fit")],
)
def test_what_cannot_be_stored_is_refused_with_a_sentence(typed: str, says: str) -> None:
    """NUL, half characters and over-long text are refused, and the sentence names the field and the trouble."""
    with pytest.raises(TypedError, match=says) as caught:
        clean(typed, field="mark")

    assert "The mark" in str(caught.value)


NOTHING_TO_SEE = [
    *("", "   ", "\t", "\u200b", "\u0301", "\x1b[31m", "\u202e"),
    # fillers and blanks that Unicode counts as letters and symbols
    *("\u3164", "\u2800", "\u115f\u1160", "\uffa0", "\U0001d159"),
    *("\u200d\u200d", "\ufe0f", "\ufe0e\u200c", "\u3164 \u2800\u200d\ufe0f", "\u2060\ufeff", "\U000e0041"),
]


@pytest.mark.parametrize("typed", NOTHING_TO_SEE, ids=ascii)
def test_an_empty_name_is_refused(typed: str) -> None:
    """A name of which nothing can be seen is no name."""
    with pytest.raises(TypedError, match="name is empty"):
        clean_name(typed)


@pytest.mark.parametrize("typed", NOTHING_TO_SEE, ids=ascii)
def test_a_text_of_which_nothing_shows_is_empty(typed: str) -> None:
    """A reason or initials made of fillers alone count as nothing typed."""
    assert clean(typed) == ""


@pytest.mark.parametrize("typed", ["a\u3164", "\u2800x", "👍🏽", "❤\ufe0f", "\ue000", "नि", "?"], ids=ascii)
def test_a_text_that_shows_something_keeps_all_of_it(typed: str) -> None:
    """Fillers beside letters, and the parts of one emoji, stay as they were typed."""
    assert clean(typed) == typed


@pytest.mark.parametrize(
    ("field", "says"),
    [
        ("initials", "The initials have 9 characters; at most 8 fit. Shorten them."),
        ("notes", "The notes have 9 characters; at most 8 fit. Shorten them."),
        ("address", "The address has 9 characters; at most 8 fit. Shorten it."),
        ("name", "The name has 9 characters; at most 8 fit. Shorten it."),
    ],
)
def test_one_or_many_are_told_apart(field: str, says: str) -> None:
    """A field whose name is a plural is spoken of as one."""
    with pytest.raises(TypedError) as caught:
        clean("x" * 9, limit=8, field=field)

    assert str(caught.value) == says


def test_the_words_for_many_hold_for_what_no_keyboard_types() -> None:
    """NUL and half characters in a plural field read as well as in a single one."""
    with pytest.raises(TypedError, match=r"^The initials hold a NUL character, .* Type them again by hand\.$"):
        clean("a\0", field="initials")
    with pytest.raises(TypedError, match=r"^The initials hold half of a character .* Type them again by hand\.$"):
        clean("a\ud800", field="initials")


def test_a_name_may_have_three_hundred_characters_and_no_more() -> None:
    """The limit itself fits, one more is refused."""
    assert len(clean_name("x" * NAME_LIMIT)) == NAME_LIMIT
    with pytest.raises(TypedError, match="301 characters; at most 300 fit"):
        clean_name("x" * (NAME_LIMIT + 1))


@pytest.mark.parametrize("mark", "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
def test_no_cell_turns_what_stands_beside_it(mark: str) -> None:
    """A direction mark that was pasted and is not stored yet is left out of a list's cell and of a quoted text."""
    assert cell_text(f"a{mark}b\nc") == "ab\nc"
    assert shown(f"a{mark}b") == "ab"
