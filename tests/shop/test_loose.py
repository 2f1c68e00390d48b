"""A loose knife: what is typed of it is read in any order, and the knives that fit come likeliest first."""

import pytest

from queueboard.errors import TypedError
from queueboard.phrases.loose import candidate_place, candidate_words, candidates_words, seen_words
from queueboard.shop.found_knives import note_found
from queueboard.shop.loose import Seen, fitting, read_seen
from queueboard.shop.opening import Shop
from queueboard.values.knife import Knife
from queueboard.words import Column
from tests.pictures import box_picture, customer, knife, picture, settings
from tests.shop.place import by, counter
from tests.shop.place import picture as shop_picture


@pytest.mark.parametrize(
    ("typed", "seen"),
    [
        ("chef 20 black nick", Seen(kind="chef", lengths_mm=(200, 508), words=("black", "nick"))),
        ("nick, Black 20cm chef", Seen(kind="chef", lengths_mm=(200,), words=("nick", "black"))),
        ("chef 8 in", Seen(kind="chef", lengths_mm=(203,))),
        ("schwärz", Seen(words=("schwarz",))),
        ("419-7", Seen(tag="419-7")),
    ],
)
def test_free_words_are_read_in_any_order(typed: str, seen: Seen) -> None:
    """A kind of the shop, a length, the rest is its mark; a tag alone is a tag."""
    assert read_seen(typed, settings()) == seen


def test_nothing_typed_is_asked_back() -> None:
    """Without a word there is nothing to look for."""
    with pytest.raises(TypedError, match="chef 20 black nick"):
        read_seen(" , ", settings())


def tags(typed: str, *knives: Knife) -> list[str]:
    """The tags that fit, in order."""
    seen = picture(box_picture(417, customer_=customer("Maren Tallis"), knives_=knives))
    found = fitting(seen, read_seen(typed, seen.settings))
    return [one.knife.tag for one in found if isinstance(one.knife, Knife)]


def test_the_likeliest_comes_first() -> None:
    """By kind, then words, then length; another kind only with the whole mark, nothing far too long."""
    here = (
        knife("417-1", mark="white"),
        knife("417-2", mark="black handle, nick"),
        knife("417-3", mark="black handle, nick", length_mm=210),
        knife("417-4", mark="black", length_mm=None),
        knife("417-5", kind="bread", mark="black, nick"),
        knife("417-6", mark="black handle, nick", length_mm=300),
        knife("417-7", mark="black handle, nick", column=Column.GONE),
        knife("417-8", kind="bread", mark="white"),
    )

    assert tags("chef 20 black nick", *here) == ["417-2", "417-3", "417-4", "417-1", "417-5"]
    assert tags("417-6", *here) == ["417-6"]


def test_of_equals_the_one_looked_for_comes_first() -> None:
    """A knife that somebody misses is what one hopes it is."""
    assert tags("chef 20", knife("417-1"), knife("417-2", looking_for=True)) == ["417-2", "417-1"]


def test_it_says_last_place_time_and_initials() -> None:
    """With tag, customer, and how it differs from what was typed."""
    here = knife("417-3", column=Column.TESTING, mark="black", length_mm=210, moved_by="K")
    seen = picture(box_picture(417, customer_=customer("Maren Tallis"), knives_=(here,)))
    (one,) = fitting(seen, read_seen("chef 20 black nick", seen.settings))

    assert candidate_words(one, seen.settings) == "417-3 chef 21 cm, black: Maren Tallis"
    said = candidate_place(one, seen.now)
    assert said.startswith("last: in testing, ")
    assert ", K · 10 mm off · no “nick” in its mark" in said


def test_found_knives_are_among_them(shop: Shop) -> None:
    """A knife that lies on the shelf of found knives may be the one."""
    counter(shop, knives=1)
    note_found(shop, by(), kind="chef", length_mm=200, mark="red dot", place="wash sink")
    seen = shop_picture(shop)
    first, *_ = fitting(seen, read_seen("chef 20cm red", seen.settings))

    assert candidate_words(first, seen.settings) == "FOUND chef 7.9 in, red dot"
    assert "lies: wash sink" in candidate_place(first, seen.now)


def test_what_was_understood_is_read_back() -> None:
    """Lengths in both units where none was typed; and what to do where nothing fits."""
    assert seen_words(read_seen("chef 20 black", settings())) == "chef, 200 or 508 mm, marked black"
    assert seen_words(read_seen("black", settings())) == "any kind, marked black"
    assert "Type less" in candidates_words(0)
