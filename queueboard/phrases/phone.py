"""The answer to "is my box ready?", to be read aloud."""

from datetime import datetime

from queueboard.phrases.announced import NOT_HERE
from queueboard.phrases.boxes import looked_for, ready_to_fetch
from queueboard.phrases.dates import date_words, day_words, many, time_words
from queueboard.phrases.knives import place_words
from queueboard.phrases.money import box_owed_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.words import ON_BOARD, GoesBy, WaitingFor

_SAID = {
    WaitingFor.ESTIMATE: "your yes to the estimate",
    WaitingFor.COUNT: "your yes to the count",
    WaitingFor.MONEY: "the money asked for",
    WaitingFor.GLUE: "glue to dry",
}
"""What is waited for, as it is said to the customer."""


def phone_sentence(box: BoxPicture, picture: Picture) -> str:
    """Box 417, Maren Tallis: 11 of 13 ready, 2 on the bench, ships Thursday, 86.00 EUR to pay."""
    today = picture.now.date()
    parts = [_state(box, picture.now), _rest(box), _due(box, picture.now), box_owed_words(box, picture.settings)]
    if box.label is not None and box.label.expires_on is not None:
        parts.append(f"the label is good to {date_words(box.label.expires_on, today)}")
    return f"Box {box.box.number}, {box.customer.name}: {', '.join(filter(None, parts))}."


def _state(box: BoxPicture, now: datetime) -> str:
    if box.box.announced:
        on = box.box.expected_on
        return NOT_HERE if on is None else f"{NOT_HERE}, expected {day_words(on, now.date())}"
    if not box.box.opened:
        arrived = box.box.received_at.astimezone(now.tzinfo).date()
        return f"here since {day_words(arrived, now.date())}, not opened yet"
    if box.ready_count == len(box.on_hand):
        return ("ready", "both knives ready")[len(box.on_hand) - 1] if len(box.on_hand) <= 2 else _all(box)
    return f"{box.ready_count or 'none'} of {len(box.on_hand)} ready"


def _all(box: BoxPicture) -> str:
    return f"all {many(len(box.on_hand), 'knife')} ready"


def _rest(box: BoxPicture) -> str:
    """What the others are at: 2 on the bench, 1 waiting for belts, 1 being looked for."""
    if not box.box.opened:
        return ""
    free = [knife for knife in box.on_hand if knife.waiting_for is None and not knife.looking_for]
    said = [
        f"{count} {place_words(column)}"
        for column in ON_BOARD[:-1]
        if (count := sum(knife.column is column for knife in free))
    ]
    reasons = [knife.waiting_for for knife in box.waiting if knife.waiting_for is not None]
    said += [f"{reasons.count(each)} waiting for {_SAID.get(each, each.value)}" for each in dict.fromkeys(reasons)]
    whole = box.box.waiting_for
    missed = looked_for(box)
    said += [f"{missed} being looked for"] if missed else []
    said += [f"waiting for {_SAID.get(whole, whole.value)}"] if whole is not None else []
    return ", ".join(said)


def _due(box: BoxPicture, now: datetime) -> str:
    if ready_to_fetch(box):
        return "it can be fetched"
    if box.ship_by is None:
        return "no date told"
    day = day_words(box.ship_by.date(), now.date())
    if box.ship_by.timestamp() < now.timestamp():
        return f"it was due {day} and is late"
    return f"ships {day}" if box.box.goes_by is GoesBy.PARCEL else f"to be fetched from {day} {time_words(box.ship_by)}"
