"""Stub and tags: what stands on them, and that they fit the paper whatever people are called."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from queueboard.papers.large import ROWS, large
from queueboard.papers.slips import handle_tags, name_on_tag, stub
from queueboard.papers.text import NARROW, WIDE, cut_to, wrapped
from queueboard.phrases.counts import count_in_words
from queueboard.shop.picture import BoxPicture
from tests.pictures import HOSTILE_NAMES, box, box_picture, customer, knife, picture, thing


def counter_box(name: str = "Ms Verrin", *, wish: str = "") -> BoxPicture:
    """Box 214: four knives, one with a wish, and a sheath."""
    kinds = ("chef", "chef", "paring", "bread")
    return box_picture(
        box(214, counted=4),
        customer_=customer(name),
        knives_=tuple(
            knife(f"214-{place}", kind=kind, wish=wish if place == 3 else "") for place, kind in enumerate(kinds, 1)
        ),
        things=(thing(f"sheath of {name}"[:60], box_number=214),),
    )


@pytest.mark.parametrize("width", [NARROW, WIDE])
@pytest.mark.parametrize("name", HOSTILE_NAMES, ids=ascii)
def test_nothing_is_wider_than_the_paper(name: str, width: int) -> None:
    """On paper of 58 and of 80 mm no line runs over, with emoji, other scripts and 300 letters."""
    here = counter_box(name, wish=name[:200])
    seen = replace(picture(here), settings=replace(picture(here).settings, name=name))

    lines = f"{stub(here, seen, width)}{handle_tags(here, seen, width)}".splitlines()

    assert max(map(cell_len, lines)) == width


def test_the_stub_says_count_in_figures_and_words() -> None:
    """4, four knives; and it names nobody, for stubs get lost."""
    here = counter_box()

    said = stub(here, picture(here))

    assert "\n4, four knives\n" in said
    assert "1, one knife\n" in stub(replace(here, knives=here.knives[:1]), picture(here))
    assert "Verrin\n" not in said.replace("sheath of Ms Verrin", "")


def test_a_tag_alone_is_printed_again() -> None:
    """One number prints one tag, with its weekday written out and the wish in capitals."""
    here = counter_box(wish="leave the points")

    said = handle_tags(here, picture(here), only=3)

    assert "214-3" in said
    assert "214-1" not in said
    assert "WISH: LEAVE THE POINTS" in said
    assert "due FRIDAY, 27 Nov" in said
    assert here.customer.phone not in said


@pytest.mark.parametrize(
    ("name", "called"),
    [
        ("Maren Tallis", "Maren"),
        ("Ms Verrin", "Verrin"),
        ("R. Tallis", "Tallis"),
        ("Dr. O. Hane", "Hane"),
        ("Ms", "Ms"),
        ("שלום", "שלום"),
    ],
)
def test_who_is_called_on_a_tag(name: str, called: str) -> None:
    """A title or an initial alone calls nobody."""
    assert name_on_tag(name) == called


def test_every_figure_has_a_shape_of_its_own() -> None:
    """No two figures look alike, all have five rows, and a number too wide for the paper stands as it is."""
    shapes = sorted(large(sign, NARROW) for sign in "0123456789")

    assert {len(rows) for rows in shapes} == {ROWS}
    assert all(one != other for one, other in pairwise(shapes))
    assert large("999999-999", NARROW) == ("999999-999",)
    assert len(large("999999-999", WIDE)) == ROWS


@given(st.text(max_size=300), st.sampled_from([NARROW, WIDE]))
def test_wrapping_loses_no_sign(text: str, width: int) -> None:
    """Wrapped lines fit, and together they hold every sign of the text but white space."""
    lines = wrapped(text, width)

    assert all(cell_len(line) <= width for line in lines)
    assert cell_len(cut_to(text, width)) <= width
    assert "".join("".join(lines).split()) == "".join("".join(wrapped(text, 100_000)).split())


def test_counts_are_spelled_out() -> None:
    """Up to 999 every count has its words."""
    words = {count_in_words(count) for count in range(1000)}

    assert len(words) == 1000
    assert (count_in_words(4), count_in_words(21), count_in_words(417)) == (
        "four",
        "twenty-one",
        "four hundred seventeen",
    )
