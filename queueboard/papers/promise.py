"""What can be told for knives that are not here yet, as text and as plain data."""

from dataclasses import replace

from queueboard.papers.facts import Fact
from queueboard.papers.text import page
from queueboard.phrases.carriers import parcel_told_words
from queueboard.phrases.promising import advice_lines, answer_words, wish_box_words
from queueboard.shop.picture import Picture
from queueboard.shop.quoting import Answer, Offer
from queueboard.shop.wishing import Advice


def promise_sheet(advice: Advice, picture: Picture) -> str:
    """What was asked about, the earliest day with its sum, the room that is left, then the answer to a day."""
    now = picture.now
    answer = () if advice.answer is None else (answer_words(advice, advice.answer, now.date()),)
    told = advice_lines(replace(advice, answer=None), now)
    return page((wish_box_words(advice.wish),), parcel_told_words(advice.wish, picture), told, answer)


def promise_facts(advice: Advice, picture: Picture) -> dict[str, Fact]:
    """The same for scripts; chances are null while overloads are told."""
    wish = advice.wish
    return {
        "shop": picture.settings.name,
        "now": picture.now.isoformat(),
        "knives": len(wish.knives),
        "goes_by": wish.goes_by.value,
        "carrier_days": wish.carrier_days,
        "earliest": None if advice.offer is None else _earliest(advice, advice.offer),
        "asked": None if advice.answer is None else _asked(advice, advice.answer),
        "room_today_minutes": advice.room_today,
        "room_tomorrow_minutes": advice.room_tomorrow,
        "overloads": [{"before": one.before.isoformat(), "minutes": one.minutes} for one in advice.overloads],
    }


def _earliest(advice: Advice, offer: Offer) -> dict[str, Fact]:
    return {
        "day": offer.day.isoformat(),
        "leaves": offer.leaves.isoformat(),
        "sure_permille": _permille(advice, offer.sure_permille),
        "open_minutes": offer.open_minutes,
        "own_minutes": offer.own_minutes,
        "spare_minutes": offer.spare_minutes,
        "kept_minutes": offer.kept_minutes,
        "day_minutes": offer.day_minutes,
        "safety_days": offer.safety_days,
        "closed": [day.isoformat() for day in offer.closed],
        "behind": offer.binds,
    }


def _asked(advice: Advice, answer: Answer) -> dict[str, Fact]:
    wish = advice.wish
    return {
        "day": None if wish.day is None else wish.day.isoformat(),
        "at": None if wish.at is None else wish.at.isoformat(timespec="minutes"),
        "yes": answer.yes,
        "sure_permille": _permille(advice, answer.sure_permille),
        "would_be_late": [
            {"number": late.number, "customer": late.customer, "minutes": late.minutes} for late in answer.costs
        ],
        "presses": answer.presses,
        "why": None if answer.why is None else answer.why.value,
        "shut": answer.shut or None,
        "opens": None if answer.opens is None else answer.opens.isoformat(),
    }


def _permille(advice: Advice, permille: int) -> int | None:
    return None if advice.overloads else permille
