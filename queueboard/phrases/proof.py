"""The proof card in plain words: what a reading is, what was done, how to keep the edge; no knife is ranked."""

from collections.abc import Iterator

from queueboard.edges.change import Change
from queueboard.phrases.knives import found_words
from queueboard.phrases.testing import spot_place
from queueboard.shop.proof import CardKnife, CardSpot
from queueboard.words import Column, EdgeTestWay, SecondLook

WHAT_IT_IS = (
    "The figures are the push that the edge needs to cut a thread, in grams-force (gf): less is sharper.",
    "They are read at the same marked spots before and after our work.",
    "They show what changed on this knife and do not rank it against another.",
    "They are our own bench readings, not the laboratory test of ISO 8442-5.",
)
CARE = (
    "Wash by hand and dry at once; the dishwasher dulls an edge.",
    "Cut on wood or soft plastic, never on glass, stone or a plate.",
    "Keep it in a block, a sheath or a roll, not loose in a drawer.",
    "With moderate use it wants sharpening again in about four to six months.",
)
"""Common practice, no source."""


def spot_words(one: CardSpot) -> tuple[str, str, str]:
    """A spot with its place, before and after; what was not read is a dash."""
    place = spot_place(one.spot)
    name = f"{one.spot.name} ({place})" if place else one.spot.name
    before, after = ("-" if force is None else f"{force} gf" for force in (one.before_gf, one.after_gf))
    return name, before, after


def came_in_words(one: CardKnife) -> tuple[str, ...]:
    """What the inspection found, with the condition; nothing where it found nothing."""
    found = found_words(one.knife)
    return (f"came in {one.knife.condition.value}; {found}",) if found else ()


def done_lines(one: CardKnife) -> Iterator[str]:
    """What was done to a knife and how it was tested, in sentences."""
    if one.knife.declined is not None:
        yield f"Not sharpened: {one.knife.declined.value}."
    elif one.knife.column not in (Column.READY, Column.GONE):
        yield "Not finished yet."
        return
    elif one.belts:
        yield f"Ground on {', then '.join(one.belts)}; the burr taken off."
    if one.knife.rework and one.knife.declined is None:
        yield "Worked again where it was not yet good enough for us."
    looked = one.edge.looks[-1] if one.edge.looks else None
    if looked is not None and looked.choice is not SecondLook.ONE_MORE:
        yield f"A second look, {looked.choice.value}: {looked.why}"
    if one.edge.tests and one.edge.tests[-1].ok:
        yield _tested(one)


def _tested(one: CardKnife) -> str:
    every = all(spot.after_gf is not None for spot in one.spots)
    return {
        EdgeTestWay.FEEL: "Tested by cutting, by hand.",
        EdgeTestWay.GAUGE: f"Read at {'every marked spot' if every else 'some of its spots'} after the work.",
        EdgeTestWay.EYE: "Judged by eye.",
        EdgeTestWay.MATERIAL: "Tested by cutting what it is made for, to the very tip.",
    }[one.edge.tests[-1].way]


def all_words(change: Change) -> str:
    """What changed on all knives of the box that were read both times."""
    low, high = change.interval.low, change.interval.high
    return (
        f"{change.pairs} knives read both times: {change.mean_gf:.0f} gf less on average ({change.percent:.0f} %); "
        f"95 times in 100 the true figure lies between {low:.0f} and {high:.0f}."
    )
