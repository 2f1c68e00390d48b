"""Swap sets: where each knife is, what is missing, what is charged. The kitchen is story 11's and invented."""

from collections import Counter
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.intake.lines import read_lines
from queueboard.intake.swap_sets import (
    counts_of,
    goes_on_statement,
    missing_of,
    nick_is_free,
    tell_the_chef,
    where_it_is,
)
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import read_settings

SET_B = {"chef": 4, "paring": 3, "bread": 2, "boning": 2, "slicer": 1}
KINDS = tuple(SET_B)
PLACES = ("with_kitchen", "dull_here", "clean_here", "missing")


def test_a_set_is_typed_in_one_line() -> None:
    """The twelve knives of a set are read from the shorthand of every other line, kinds named twice added up."""
    settings = read_settings(seed_text("settings.toml"))

    assert counts_of(read_lines("4 chef, 3 paring, 2 bread, 2 boning, slicer", settings)) == SET_B
    assert counts_of(read_lines("chef, 2 bread, 3 chef", settings)) == {"chef": 4, "bread": 2}


def test_eleven_come_back_and_one_boning_is_missing() -> None:
    """Set B counts eleven of twelve dull knives; the twelfth is named by its kind."""
    came = {**SET_B, "boning": 1}

    kinds = where_it_is(SET_B, with_kitchen={}, dull_here=came, clean_here={})

    assert sum(one.dull_here for one in kinds) == 11
    assert missing_of(kinds) == {"boning": 1}


@given(st.lists(st.tuples(st.sampled_from(KINDS), st.sampled_from(PLACES)), max_size=60))
def test_every_knife_is_in_exactly_one_place(knives: list[tuple[str, str]]) -> None:
    """However a set is spread, its places and what is missing add up to the set, kind by kind."""
    whole = Counter(kind for kind, _ in knives)
    spread = {place: Counter(kind for kind, where in knives if where == place) for place in PLACES}

    kinds = where_it_is(
        whole,
        with_kitchen=spread["with_kitchen"],
        dull_here=spread["dull_here"],
        clean_here=spread["clean_here"],
    )

    assert missing_of(kinds) == dict(spread["missing"])
    assert {one.kind: one.whole for one in kinds} == dict(whole)
    for one in kinds:
        assert one.whole == one.with_kitchen + one.dull_here + one.clean_here + one.missing


@pytest.mark.parametrize("over", [{"chef": 5}, {"cleaver": 1}])
def test_more_than_the_set_has_is_asked_back(over: dict[str, int]) -> None:
    """A knife too many, or of a kind that the set has none of, is never taken for one that was missing."""
    with pytest.raises(TypedError, match="is one of another set, or counted twice"):
        where_it_is(SET_B, with_kitchen={}, dull_here=over, clean_here={})


def test_a_knife_cannot_make_up_for_one_counted_below_none() -> None:
    """A count below none is refused, also where the sum of the places would fit."""
    with pytest.raises(TypedError, match="Fewer than no chef"):
        where_it_is(SET_B, with_kitchen={"chef": 5}, dull_here={"chef": -1}, clean_here={})


def test_what_is_missing_is_charged_when_the_wait_is_over() -> None:
    """After seven days of waiting the knife goes on the statement, not a day before; without a wait at once."""
    tuesday = date(2026, 11, 10)

    assert not goes_on_statement(tuesday, date(2026, 11, 16), 7)
    assert goes_on_statement(tuesday, date(2026, 11, 17), 7)
    assert goes_on_statement(tuesday, tuesday, 0)


def test_the_chef_is_told_in_the_second_week() -> None:
    """A kind missing once is waited for; missing in two rounds running it is told; one that came back is not."""
    assert tell_the_chef([{"boning": 1}]) == {}
    assert tell_the_chef([{"boning": 1}, {"boning": 1, "chef": 2}]) == {"boning": 1}
    assert tell_the_chef([{"boning": 1}, {}, {"boning": 1}]) == {}
    assert tell_the_chef([{"boning": 1}, {"boning": 1}, {}]) == {}


def test_a_small_nick_is_free_up_to_the_shop_s_depth() -> None:
    """A nick as deep as the shop's own figure is free, a deeper one is not."""
    assert nick_is_free(500, 500)
    assert not nick_is_free(501, 500)
