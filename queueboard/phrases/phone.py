"""The answer to "is my box ready?", to be read aloud; of an open box, and of one that is gone."""

from collections import Counter
from datetime import date, datetime

from queueboard.phrases.announced import NOT_HERE
from queueboard.phrases.boxes import ready_to_fetch, until_found_words
from queueboard.phrases.dates import time_words, will_words
from queueboard.phrases.knives import place_words
from queueboard.phrases.money import box_owed_words, owed_words
from queueboard.phrases.spoken import good_to, number_words, sentence, spoken_day, spoken_knives
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife
from queueboard.values.shelf import GoneSeen
from queueboard.words import ON_BOARD, Column, GoesBy, LabelState, Lateness, WaitingFor

_SAID = {
    WaitingFor.ESTIMATE: "your yes to the estimate",
    WaitingFor.COUNT: "your yes to the count",
    WaitingFor.MONEY: "the money asked for",
    WaitingFor.GLUE: "glue to dry",
}
"""What is waited for, as it is said to the customer."""
_ON_REWORK, _AS_IT_WAS = "on rework", "not sharpened"


def phone_sentence(box: BoxPicture, picture: Picture) -> str:
    """Box 417, Maren Tallis: Eleven of thirteen done, two on rework, ships Thursday, 86.00 EUR to pay."""
    return f"Box {box.box.number}, {box.customer.name}: {answer(box, picture)}"


def gone_sentence_of(gone: GoneSeen, now: datetime, settings: Settings) -> str:
    """Box 402, Maren Tallis: All five knives left Thursday 5 November with Quay Post, paid."""
    return f"Box {gone.box.number}, {gone.customer.name}: {gone_answer(gone, now, settings)}"


def answer(box: BoxPicture, picture: Picture) -> str:
    """Eleven of thirteen done, two on rework, ships Thursday, 86.00 EUR to pay, label good to the 20th.

    It names how many are done, what the others are at, the date, the money, and the last day of the label.
    """
    said = (_state(box, picture.now), *_rest(box), _due(box, picture.now))
    return sentence(*said, box_owed_words(box, picture.settings), _label(box, picture.now))


def gone_answer(gone: GoneSeen, now: datetime, settings: Settings) -> str:
    """All five left Thursday 5 November with Quay Post, paid; of one that left through no close-out what is known."""
    day = spoken_day(gone.left_at.date(), now.date())
    if not gone.left:
        return sentence(f"nothing of it is here, closed {day}")
    as_it_was = sum(knife.declined is not None for knife in gone.left)
    how = f"with {gone.carrier}" if gone.carrier else ""
    how = f"handed to {gone.handed_to}" if gone.handed_to else how
    with_whom = f" {how}" if how.startswith("with") else ""
    return sentence(
        f"{_all(len(gone.left))} left {day}{with_whom}",
        how if how.startswith("handed") else "",
        f"{number_words(as_it_was)} {_AS_IT_WAS}" if as_it_was else "",
        owed_words(gone.owed_cents, settings),
    )


def _state(box: BoxPicture, now: datetime) -> str:
    if box.box.announced:
        on = box.box.expected_on
        return NOT_HERE if on is None else f"{NOT_HERE}, expected {spoken_day(on, now.date())}"
    if not box.box.opened:
        arrived = box.box.received_at.astimezone(now.tzinfo).date()
        return f"here since {spoken_day(arrived, now.date())}, not opened yet"
    done = sum(_is_done(knife) for knife in box.on_hand)
    if not box.on_hand:
        return "no knife of it is here"
    return f"{_all(done)} done" if done == len(box.on_hand) else f"{_of(done, len(box.on_hand))} done"


def _of(done: int, here: int) -> str:
    """One of one is said as it is: the knife is not."""
    return f"{number_words(done)} of {number_words(here)}"


def _all(count: int) -> str:
    return ("the knife", "both knives")[count - 1] if count <= 2 else f"all {spoken_knives(count)}"


def _is_done(knife: Knife) -> bool:
    return knife.can_leave and knife.declined is None


def _rest(box: BoxPicture) -> list[str]:
    """What the others are at: two on rework, one waiting for belts, one being looked for, nine gone already."""
    if not box.box.opened:
        return []
    others = Counter(_at(knife) for knife in box.on_hand if not _is_done(knife))
    first = [_ON_REWORK, *map(place_words, ON_BOARD)]
    said = [f"{number_words(others[what])} {what}" for what in dict.fromkeys((*first, *others)) if others[what]]
    whole, gone = box.box.waiting_for, len(box.in_column(Column.GONE))
    said += [f"waiting for {_SAID.get(whole, whole.value)}"] if whole is not None else []
    return [*said, f"{number_words(gone)} gone already" if gone else ""]


def _at(knife: Knife) -> str:
    """What one knife that is not done is at; of several things the one that the customer must know."""
    if knife.looking_for:
        return "being looked for"
    if knife.declined is not None:
        return _AS_IT_WAS
    if knife.waiting_for is not None:
        return f"waiting for {_SAID.get(knife.waiting_for, knife.waiting_for.value)}"
    if knife.apart:
        return "held until your yes to the count"
    return _ON_REWORK if knife.rework else place_words(knife.column)


def _due(box: BoxPicture, now: datetime) -> str:
    """Ships Thursday; where that will not hold, what was told, and what can honestly be told instead."""
    if ready_to_fetch(box):
        return "it can be fetched"
    if box.ship_by is None:
        return "no date told"
    late = box.ship_by.timestamp() < now.timestamp()
    if late or box.forecast.lateness is Lateness.WILL_BE_LATE:
        told = "" if box.promise is None else f"promised to {_aloud(box, box.promise.day, now)}"
        return f"{told}{' and late' if late else ', which will not hold'}, {_instead(box, now)}"
    day = spoken_day(box.ship_by.date(), now.date())
    return f"ships {day}" if box.box.goes_by is GoesBy.PARCEL else f"to be fetched from {day} {time_words(box.ship_by)}"


def _instead(box: BoxPicture, now: datetime) -> str:
    """What can be told instead; of a box that is done but for what nobody finds, what has to be found first.

    Where the work ends too late on the very day that was told, telling that day again would mend nothing.
    """
    if box.only_lost_left:
        return f"no new day {until_found_words(box).removeprefix('not ')}"
    if box.honest_day is None:
        return "no new day known yet"
    if box.promise is not None and box.honest_day == box.promise.day:
        unsure = f"no sure {'time' if box.promise.kind.has_time else 'day'} can be told yet"
        return f"{_work_done(box.forecast.finish, now)}{unsure}"
    return f"it can {_aloud(box, box.honest_day, now)} instead"


def _work_done(finish: datetime | None, now: datetime) -> str:
    """Its work will be done by tomorrow 15:40, and; empty where the bench has nothing left to do."""
    if finish is None:
        return ""
    done = finish.astimezone(now.tzinfo)
    return f"its work will be done by {spoken_day(done.date(), now.date())} {time_words(done)}, and "


def _aloud(box: BoxPicture, day: date, now: datetime) -> str:
    """A day as it was, or can be, told of a box: be in hand by Friday, be ready by tomorrow 16:00."""
    promise = box.promise
    if promise is None:
        return f"be done by {spoken_day(day, now.date())}"
    clock = f" {time_words(promise.at)}" if promise.at is not None and promise.day == day else ""
    return f"{will_words(promise.kind, box.box.goes_by)} {spoken_day(day, now.date())}{clock}"


def _label(box: BoxPicture, now: datetime) -> str:
    """Label good to the 20th; that it is over, where it is; nothing of a label that is not here, or has no last day."""
    label = box.label
    if label is None or label.state is not LabelState.HERE or label.expires_on is None:
        return ""
    if label.expires_on < now.date():
        return f"the label was good to {spoken_day(label.expires_on, now.date())} only"
    return f"label good to {good_to(label.expires_on, now.date())}"
