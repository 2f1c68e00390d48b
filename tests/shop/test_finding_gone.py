"""Finding among boxes that are gone, held against looking at every box with nothing kept, paged or asked for."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.clean import figures, folded
from queueboard.records.reading import customers_of
from queueboard.shop import finding
from queueboard.shop.correcting import correct_customer
from queueboard.shop.finding import find_gone, gone_box
from queueboard.shop.known_customers import Lines
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.undoing import steps, undo
from queueboard.values.customer import Customer
from tests.shop.place import MORNING, by, demo_shop
from tests.shop.undo_shelf import gone

pytestmark = pytest.mark.sqlite_file


@pytest.fixture(scope="module")
def demo() -> Iterator[Shop]:
    """The invented shop, with a few months of boxes behind it."""
    with TemporaryDirectory() as folder:
        shop = demo_shop(Path(folder) / "shop.qb", MORNING)
        yield shop
        close_shop(shop)


def slowly(shop: Shop, text: str) -> list[int]:
    """Ids of the closed boxes that fit, the newest gone first: every box, every word."""
    wanted = folded(text)
    whose = {one.id: one for one in customers_of(shop.database)}
    boxes = shop.database.rows("SELECT id, number, customer_id, closed_us FROM box WHERE closed_us IS NOT NULL")
    return [
        int(str(box_id))
        for box_id, number, customer_id, _ in sorted(boxes, key=lambda box: (box[3], box[0]), reverse=True)
        if wanted and fits(wanted, whose[int(str(customer_id))], str(number))
    ]


def fits(wanted: str, whose: Customer, number: str) -> bool:
    """As the screen says it: words in any order, each name, town, number, tag, or the last figures of the phone."""
    phone, known = figures(whose.phone), folded(f"{whose.name} {whose.town}")
    whole = not set(wanted) - set("0123456789 +-/().") and " " in wanted and len(figures(wanted)) > 3
    left = [
        word
        for word in wanted.split()
        if word not in known and not (len(word) >= 3 and word.isdigit() and phone.endswith(word))
    ]
    if whole and phone.endswith(figures(wanted)):
        left = []
    tags = (([*word.split("-", 1), "0"])[:2] for word in left)
    return all(box == number and (knife.isdigit() or not knife) for box, knife in tags)


@st.composite
def typed(draw: st.DrawFn) -> str:
    """Words of which most stand somewhere in the shop: parts of names, towns and phones, numbers, tags, anything."""
    parts = st.sampled_from(
        [
            "an",
            "MAR",
            "kitchen",
            "heron",
            "å",
            "Ö",
            "vik",
            "555",
            "0142",
            "01 42",
            "e",
            "100",
            "101-2",
            "101-",
            "1",
            "-",
        ]
    )
    numbers = st.integers(95, 180).map(str)
    return " ".join(draw(st.lists(parts | numbers | st.text(max_size=3), min_size=1, max_size=3)))


@pytest.mark.parametrize(("standing", "asked"), [(300, 100), (0, 100), (300, 0), (3, 2)])
@given(text=typed())
def test_what_is_found_is_what_every_box_would_say(demo: Shop, standing: int, asked: int, text: str) -> None:
    """Whether the boxes of few customers are asked for, or the newest boxes are looked through page by page."""
    with (
        patch.object(finding, "MOST_STANDING", standing),
        patch.object(finding, "MOST_ASKED", asked),
        patch.object(finding, "FIRST_PAGE", 2),
    ):
        found = find_gone(demo, text, limit=5)

    assert [one.box.id for one in found] == slowly(demo, text)[:5]
    assert list(found) == [gone_box(demo, one.box.id) for one in found]


def test_the_phones_and_names_of_the_shop_find_their_boxes(demo: Shop) -> None:
    """Each customer by all of the name, by the end of the phone, and by the phone with its blanks."""
    tried = 0
    for one in customers_of(demo.database):
        for text in (one.name, one.phone, figures(one.phone)[-4:], f"{one.town} {one.name.split()[0]}"):
            assert [gone.box.id for gone in find_gone(demo, text)] == slowly(demo, text)[:12]
            tried += bool(slowly(demo, text))
    assert tried >= 20


def test_a_name_that_is_corrected_is_found_as_it_is_now(shop: Shop) -> None:
    """What was kept from the last search is read on, also when the correction is taken back."""
    old = gone(shop)
    assert find_gone(shop, "tallis")
    correct_customer(shop, by(), old.customer, name="Åsa Öberg")
    assert [one.customer.name for one in find_gone(shop, "asa oberg")] == ["Åsa Öberg"]
    assert not find_gone(shop, "tallis")
    undo(shop, by(), steps(shop, by().initials)[0].group_id)
    assert find_gone(shop, "tallis")
    assert not find_gone(shop, "asa oberg")


@given(texts=st.lists(st.text("ab1", max_size=4), max_size=8), part=st.text("ab1", min_size=1, max_size=3))
def test_lines_are_searched_each_for_itself(texts: list[str], part: str) -> None:
    """Nothing is found across two of them, each is found once, and its end by the break behind it."""
    lines = Lines()
    lines.add(texts[:3])
    lines.add(texts[3:])
    assert list(lines.places(part)) == [place for place, text in enumerate(texts) if part in text]
    assert list(lines.places(f"{part}\n")) == [place for place, text in enumerate(texts) if text.endswith(part)]
