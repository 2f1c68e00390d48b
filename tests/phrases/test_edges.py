"""Comparisons of readings in words: nothing is said of what chance could do."""

from datetime import UTC, datetime

import pytest

from queueboard.edges.change import change
from queueboard.phrases.edges import belt_cells, belt_place_words, least_words
from queueboard.settings.shapes import BeltKind
from queueboard.shop.belt_counts import BeltPlace
from queueboard.shop.edges_seen import ChangeRow
from queueboard.values.fitted import FittedBelt

NOW = datetime(2026, 11, 9, 9, tzinfo=UTC)
P400 = BeltKind(label="P400", life_knives=150, cost_cents=700, reorder_at=2)


def row(name: str, fall: int, pairs: int = 8) -> ChangeRow:
    """Readings that fall by so much, give or take a few."""
    both = [(900.0 + place, 900.0 - fall + 3 * (place % 3)) for place in range(pairs)]
    return ChangeRow(name=name, pairs_gf=tuple(both), change=change(both, 5))


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ([row("heel", 700), row("tip", 400)], "tip gains least."),
        ([row("heel", 700), row("tip", 699)], "No spot gains less than all others by more than chance would have it."),
        ([row("heel", 700), row("tip", 400, pairs=5)], ""),
        ([], ""),
    ],
)
def test_the_spot_that_gains_least_is_named_where_chance_would_not_do_it(rows: list[ChangeRow], says: str) -> None:
    """Two spots or more with six pairs each are needed, and intervals that do not overlap."""
    assert least_words(rows, "spot") == says


def belt(done: int, kind: BeltKind | None = P400, *, up: bool = True) -> BeltPlace:
    """A step whose belt has done so many knives."""
    fitted = FittedBelt(id=1, version=1, process="plain", label="P400", step="P400", fitted_at=NOW, fitted_by="J")
    return BeltPlace(
        process="plain",
        step="P400",
        grit_um=35.0,
        belt=fitted if up else None,
        done=done,
        kind=kind,
        spares=2,
        to_order=True,
    )


@pytest.mark.parametrize(
    ("place", "cells"),
    [
        (belt(0), ("░░░░░░░░", "  0 of 150")),
        (belt(1), ("█░░░░░░░", "  1 of 150")),
        (belt(75), ("████░░░░", " 75 of 150")),
        (belt(149), ("███████░", "149 of 150")),
        (belt(150), ("████████", "150 of 150 WORN?")),
        (belt(4000), ("████████", "4000 of 150 WORN?")),
        (belt(7, None), ("", "7 knives")),
        (belt(0, up=False), ("", "no belt is up")),
    ],
)
def test_a_belt_s_knives_are_drawn_beside_their_figures(place: BeltPlace, cells: tuple[str, str]) -> None:
    """New, begun, half, nearly, worn and far beyond; without a known life or a belt there is no bar."""
    step, *drawn, rest = belt_cells(place, NOW)

    assert (step, tuple(drawn)) == ("P400", cells)
    assert rest == ("since Mon 9 Nov · spares 2 ORDER" if place.belt is not None else "spares 2 ORDER")


def test_a_belt_in_one_line_says_the_same_without_a_bar() -> None:
    """As the end of the day has it."""
    said = belt_place_words(belt(150), NOW)

    assert said == "P400 150 of about 150 knives WORN? · since Mon 9 Nov · spares 2 ORDER"
