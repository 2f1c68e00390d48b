"""Proof card and packing slip of a box as text and as HTML, and the readings as plain data."""

from queueboard.clean import cell_text
from queueboard.papers.facts import Fact
from queueboard.papers.pages.making import made_page
from queueboard.papers.templates import filled
from queueboard.phrases.cautions import FOR_CUSTOMERS, NO_ADVICE
from queueboard.phrases.packing_slip import KnifeWords, card_facts, declined_lines, head_words, in_box, staying_lines
from queueboard.shop.proof import Card, CardKnife, CardSpot
from queueboard.words import PaperSize, Stage


def card_text(card: Card) -> str:
    """The card as text."""
    return filled("proof_card.txt.j2", _facts(card))


def card_html(card: Card, paper: PaperSize = PaperSize.A4) -> str:
    """The card as a page to print."""
    return made_page("card", paper, {"title": f"Proof card, box {card.box.number}", **_facts(card)})


def slip_text(card: Card) -> str:
    """The packing slip as text, the proof card with it."""
    return filled("packing_slip.txt.j2", _slip_facts(card))


def slip_html(card: Card, paper: PaperSize = PaperSize.A4) -> str:
    """The packing slip as a page to print, the proof card with it."""
    return made_page("slip", paper, {"title": f"Packing slip, box {card.box.number}", **_slip_facts(card)})


def _facts(card: Card) -> dict[str, object]:
    return _in_cells(card_facts(card, card.knives))


def _slip_facts(card: Card) -> dict[str, object]:
    """What the slip has beside the card: the count, what was not sharpened, what stays, how to open it."""
    return {
        **_in_cells(card_facts(card, in_box(card))),
        "count": cell_text(head_words(card)),
        "declined": [cell_text(line) for line in declined_lines(card)],
        "staying": [cell_text(line) for line in staying_lines(card)],
        "please": FOR_CUSTOMERS,
        "no_advice": NO_ADVICE,
    }


def _in_cells(facts: dict[str, object]) -> dict[str, object]:
    """The same with people's words on one line each, and nothing in them that commands a terminal."""
    return {name: _cell(fact) for name, fact in facts.items()}


def _cell(fact: object) -> object:
    if isinstance(fact, str):
        return cell_text(fact)
    if isinstance(fact, KnifeWords):
        return {name: _cell(getattr(fact, name)) for name in ("name", "spots", "says")}
    return [_cell(one) for one in fact] if isinstance(fact, (list, tuple)) else fact


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
