"""The proof card of a box as text, as HTML and as plain data."""

from queueboard.clean import cell_text
from queueboard.papers.facts import Fact
from queueboard.papers.templates import filled
from queueboard.phrases.call_backs import back_lines
from queueboard.phrases.knives import found_words, knife_name
from queueboard.phrases.proof import CARE, WHAT_IT_IS, all_words, done_lines, spot_words
from queueboard.shop.proof import Card, CardKnife, CardSpot
from queueboard.words import Stage


def card_text(card: Card) -> str:
    """The card as text."""
    return filled("proof_card.txt.j2", _words(card))


def card_html(card: Card) -> str:
    """The card as a page of HTML."""
    return filled("proof_card.html.j2", _words(card))


def _words(card: Card) -> dict[str, object]:
    return {
        "shop": cell_text(card.settings.name),
        "number": card.box.number,
        "name": cell_text(card.customer.name),
        "knives": [
            {
                "name": cell_text(f"{one.knife.tag} {knife_name(one.knife, card.settings)}"),
                "spots": [tuple(map(cell_text, spot_words(spot))) for spot in one.spots] if _has_figure(one) else [],
                "done": [cell_text(line) for line in (*_came_in(one), *back_lines(one), *done_lines(one))],
            }
            for one in card.knives
        ],
        "together": "" if card.change is None else all_words(card.change),
        "what_it_is": WHAT_IT_IS if any(_has_figure(one) for one in card.knives) else (),
        "care": CARE,
    }


def _has_figure(one: CardKnife) -> bool:
    return any(spot.before_gf is not None or spot.after_gf is not None for spot in one.spots)


def _came_in(one: CardKnife) -> tuple[str, ...]:
    """What the inspection found, with the condition; nothing where it found nothing."""
    found = found_words(one.knife)
    return (f"came in {one.knife.condition.value}; {found}",) if found else ()


def readings_facts(card: Card) -> dict[str, Fact]:
    """All readings of a box, by knife and spot, and the tests of each knife."""
    return {
        "shop": card.settings.name,
        "number": card.box.number,
        "customer": card.customer.name,
        "knives": [_knife(one, card) for one in card.knives],
    }


def _knife(one: CardKnife, card: Card) -> dict[str, Fact]:
    knife, zone = one.knife, card.settings.zone
    return {
        "tag": knife.tag,
        "kind": knife.kind,
        "edge": knife.edge.value,
        "gauge": None if knife.gauge is None else knife.gauge.value,
        "spots": [_spot(one, spot, card) for spot in one.spots],
        "tests": [
            {
                "way": test.way.value,
                "ok": test.ok,
                "belt": test.belt,
                "at": test.tested_at.astimezone(zone).isoformat(),
                "by": test.tested_by,
            }
            for test in one.edge.tests
        ],
        "came_back": None
        if one.back is None
        else {
            "box": one.back.old_number,
            "tag": one.back.old_tag or None,
            "days": one.back.days,
            "free": one.back.free,
            "spots": [{"name": spot.spot.name, "after_gf": spot.after_gf} for spot in one.back.spots],
        },
        "second_looks": [
            {
                "choice": look.choice.value,
                "why": look.why,
                "at": look.chosen_at.astimezone(zone).isoformat(),
                "by": look.chosen_by,
            }
            for look in one.edge.looks
        ],
    }


def _spot(one: CardKnife, spot: CardSpot, card: Card) -> dict[str, Fact]:
    return {
        "name": spot.spot.name,
        "from_heel_mm": spot.spot.from_heel_mm,
        "tooth": spot.spot.tooth,
        "before_gf": spot.before_gf,
        "after_gf": spot.after_gf,
        "readings": [
            {
                "stage": reading.stage.value,
                "belt": reading.belt,
                "deburred": reading.deburred,
                "force_gf": reading.force_gf,
                "at": reading.read_at.astimezone(card.settings.zone).isoformat(),
                "by": reading.read_by,
            }
            for stage in Stage
            for reading in one.edge.at(spot.spot, stage)
        ],
        "struck": [
            {
                "stage": reading.stage.value,
                "force_gf": reading.force_gf,
                "at": reading.read_at.astimezone(card.settings.zone).isoformat(),
                "by": reading.read_by,
                "struck_at": reading.struck_at.astimezone(card.settings.zone).isoformat(),
                "why": reading.why,
            }
            for reading in one.struck
            if reading.spot_id == spot.spot.id
        ],
    }
