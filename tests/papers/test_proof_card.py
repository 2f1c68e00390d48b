"""The proof card: what it says, what it never says, and people's words on it."""

import json
from html.parser import HTMLParser

import pytest

from queueboard.papers.proof_card import card_html, card_text, readings_facts
from queueboard.shop.gauging import correct_reading, edge, read_spot
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import note_knife
from queueboard.shop.opening import Shop
from queueboard.shop.proof import Card, card_of
from queueboard.shop.testing import judge_edge, look_twice
from queueboard.words import Column, SecondLook, Stage
from tests.kept import assert_kept
from tests.shop.place import box, by, counter
from tests.shop.undo_edges import at_the_test, knives_now

EVIL = "<script>alert(1)</script> & \"q\" 'q' {{ 7*7 }} {% raw %}"


def card(shop: Shop, number: int) -> Card:
    """The card of a box."""
    found = card_of(shop, number)
    assert found is not None
    return found


def worked(shop: Shop) -> int:
    """A box with a knife read before and after, with a failed test between and a second look behind it."""
    knife = at_the_test(shop, before_gf=1180)
    judge_edge(shop, by(minutes=1), knife, ok=False)
    move_knives(shop, by(minutes=2), knives_now(shop, knife.box_number), Column.TESTING)
    for spot, force in (("heel", 255), ("middle", 260), ("tip", 262)):
        read_spot(shop, by(minutes=3), knives_now(shop, knife.box_number)[0], spot, force)
    (again,) = knives_now(shop, knife.box_number)
    look_twice(shop, by(minutes=4), again, SecondLook.LOWER, "the steel is soft; it will not take more")
    return knife.box_number


def test_the_card_reads_as_kept(shop: Shop) -> None:
    """Before and after at each spot, what was done, the second look with its reason, plain words, care."""
    assert_kept("paper-card", card_text(card(shop, worked(shop))))


def test_it_ranks_nobody_and_claims_no_laboratory(shop: Shop) -> None:
    """ISO 8442-5 is named once, to say that these readings are not it; nothing is called sharper than anything else."""
    text = " ".join(card_text(card(shop, worked(shop))).split())

    assert text.count("ISO 8442-5") == 1
    assert "not the laboratory test of ISO 8442-5" in text
    assert not {word for word in ("sharpest", "best", "razor", "guarantee", "safe to use") if word in text.casefold()}


def test_what_is_not_finished_says_so_and_no_more(shop: Shop) -> None:
    """Of a knife still at work no belt and no test is told, and without a figure nothing explains figures."""
    made = counter(shop)
    move_knives(shop, by(), made.knives, Column.TESTING)
    text, page = card_text(card(shop, made.box.number)), card_html(card(shop, made.box.number))

    assert text.count("Not finished yet.") == len(made.knives)
    for said in (text, page):
        assert "burr" not in said
        assert "figures are" not in said.casefold()


def test_scripts_are_told_of_struck_readings_and_second_looks_with_their_reasons(shop: Shop) -> None:
    """Nothing that was read or decided vanishes: the wrong figure, why it was struck, why a claim was lowered."""
    number = worked(shop)
    (knife,) = knives_now(shop, number)
    wrong = edge(shop, knife).readings[0]
    correct_reading(shop, by("K", minutes=9), knife, wrong, None, "misread the display")
    (facts,) = json.loads(json.dumps(readings_facts(card(shop, number))))["knives"]

    (struck,) = [one for spot in facts["spots"] for one in spot["struck"]]
    assert (struck["force_gf"], struck["why"]) == (wrong.force_gf, "misread the display")
    assert [look["why"] for look in facts["second_looks"]] == ["the steel is soft; it will not take more"]


class _Tags(HTMLParser):
    """Collects the tags and the text of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags, self.text = set[str](), ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.add(tag)

    def handle_data(self, data: str) -> None:
        self.text += data


def test_people_s_words_are_escaped_in_html(shop: Shop) -> None:
    """A name like a script is a name: no tag comes of it, and nothing in it is filled in; text shows it as it is."""
    made = counter(shop, name=EVIL)
    page, text = card_html(card(shop, made.box.number)), card_text(card(shop, made.box.number))
    seen = _Tags(page)

    assert "script" not in seen.tags
    assert EVIL in seen.text
    assert EVIL in text


@pytest.mark.parametrize("to", [Column.RECEIVED, Column.ON_BENCH])
def test_what_is_not_finished_says_so(shop: Shop, to: Column) -> None:
    """Before the test no belt is named as done."""
    made = counter(shop, knives=1)
    note_knife(shop, by(), made.knives[0], "private")
    if to is not Column.RECEIVED:
        move_knives(shop, by(), box(shop, made.box.number).knives, to)
    text = card_text(card(shop, made.box.number))

    assert "Not finished yet." in text
    assert "Ground on" not in text
    assert "private" not in text


def test_what_a_spot_comes_to_counts_only_what_was_read_since(shop: Shop) -> None:
    """Readings from before a failed test are kept, and do not stand on the card as what it came to."""
    (knife,) = card(shop, worked(shop)).knives
    heel = knife.spots[0]
    forces = [one.force_gf for stage in Stage for one in knife.edge.at(heel.spot, stage)]

    assert forces == [1180, 180, 255]
    assert (heel.before_gf, heel.after_gf) == (1180, 255)
