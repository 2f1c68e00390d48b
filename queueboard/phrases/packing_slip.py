"""The packing slip in plain words: what lies in the box, what was not sharpened and why, what stays."""

from collections.abc import Iterator

from queueboard.phrases.call_backs import back_lines
from queueboard.phrases.counts import count_in_words
from queueboard.phrases.dates import many
from queueboard.phrases.knives import knife_name
from queueboard.phrases.proof import CARE, WHAT_IT_IS, all_words, came_in_words, done_lines, spot_words
from queueboard.shop.proof import Card, CardKnife
from queueboard.slotted import dataclass
from queueboard.words import Column, ThingState

BEFORE_AFTER = ("spot", "before", "after")
"""What stands over the readings of a knife."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KnifeWords:
    """One knife on card and slip."""

    name: str
    """Its tag, what it is, and its mark."""
    spots: tuple[tuple[str, str, str], ...]
    """Spot, before, after; empty when nothing was read."""
    says: tuple[str, ...]
    """How it came in, what was done, how it was tested, what was wished."""


def knife_words(one: CardKnife, card: Card) -> KnifeWords:
    """The words of one knife; the note on it is the shop's own and not among them."""
    wished = f"You wished: {one.knife.wish}" if one.knife.wish else ""
    return KnifeWords(
        name=f"{one.knife.tag} {knife_name(one.knife, card.settings)}",
        spots=tuple(map(spot_words, one.spots)) if has_figure(one) else (),
        says=tuple(filter(None, (*came_in_words(one), *back_lines(one), *done_lines(one), wished))),
    )


def has_figure(one: CardKnife) -> bool:
    """True for a knife of which a spot was read before or after the work."""
    return any(spot.before_gf is not None or spot.after_gf is not None for spot in one.spots)


def in_box(card: Card) -> tuple[CardKnife, ...]:
    """The knives that lie in the box: all that left it, once it is gone; before that all that could leave now."""
    if card.box.closed_at is not None:
        return tuple(one for one in card.knives if one.knife.column is Column.GONE)
    return tuple(one for one in card.knives if one.knife.can_leave)


def staying(card: Card) -> tuple[CardKnife, ...]:
    """The knives that are not ready, and stay."""
    return tuple(one for one in card.knives if one.knife.on_hand and not one.knife.can_leave)


def head_words(card: Card) -> str:
    """How many lie in it, in figures and words, and what they came with: 13 knives (thirteen), a roll."""
    count = len(in_box(card))
    things = [thing.name for thing in card.things if thing.state is not ThingState.LOOKING]
    return ", ".join((f"{many(count, 'knife')} ({count_in_words(count)})", *things))


def declined_lines(card: Card) -> Iterator[str]:
    """The knives that go back unsharpened, with the reason: 380-3 slicer: cracked. No charge."""
    for one in in_box(card):
        if one.knife.declined is not None:
            yield f"{one.knife.tag} {knife_name(one.knife, card.settings)}: {one.knife.declined.value}. No charge."


def staying_lines(card: Card) -> Iterator[str]:
    """What of an open box is not in it: not ready yet, looked for, or gone before."""
    for one in staying(card):
        why = "we are looking for it" if one.knife.looking_for else "not ready yet"
        yield f"{one.knife.tag} {knife_name(one.knife, card.settings)}: {why}"
    before = [one.knife.tag for one in card.knives if one.knife.column is Column.GONE]
    if before and card.box.closed_at is None:
        yield f"gone before: {', '.join(before)}"


def card_facts(card: Card, knives: tuple[CardKnife, ...]) -> dict[str, object]:
    """What proof card and slip have in common: shop, box, name, these knives, what the figures are, care."""
    return {
        "shop": card.settings.name,
        "number": card.box.number,
        "name": card.customer.name,
        "knives": [knife_words(one, card) for one in knives],
        "heads": BEFORE_AFTER,
        "together": "" if card.change is None else all_words(card.change),
        "what_it_is": WHAT_IT_IS if any(map(has_figure, knives)) else (),
        "care": CARE,
    }
