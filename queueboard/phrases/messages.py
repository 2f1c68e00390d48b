"""Messages to a customer as text to send by one's own mail or phone; the program sends nothing.

A message begins with the shop's name and speaks of one box: no price but its own, nobody's phone or address.
"""

from collections.abc import Sequence
from datetime import date, datetime

from queueboard.errors import RuleError
from queueboard.phrases.boxes import until_found_words
from queueboard.phrases.dates import many, time_words, will_words
from queueboard.phrases.knives import knife_name
from queueboard.phrases.money import money
from queueboard.phrases.spoken import full_day, number_words, sentence, spoken_knives
from queueboard.settings.shapes import Settings
from queueboard.shelf_words import MessageSort
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.shelving import ready_since
from queueboard.values.box import Promise
from queueboard.values.knife import Knife
from queueboard.values.shelf import GoneSeen
from queueboard.words import Column, GoesBy, Lateness

CHECK_LAW = "check local law first"
NOTHING_SENT = "Nothing is sent from here: copy it, or write it to a file, and send it by your own mail or phone."


def message(sort: MessageSort, box: BoxPicture, picture: Picture) -> str:
    """A message of this sort about an open box; RuleError says why it would not be true."""
    match sort:
        case MessageSort.READY:
            return _ready(box, picture)
        case MessageSort.DELAYED:
            return _delayed(box, picture)
        case MessageSort.UNCLAIMED:
            return _unclaimed(box, picture)
        case MessageSort.SHIPPED:
            return _part_shipped(box, picture)


def gone_message(sort: MessageSort, gone: GoneSeen, now: datetime, settings: Settings) -> str:
    """The message that a box has left; RuleError for another sort, or for one that nothing has left of."""
    if sort is not MessageSort.SHIPPED or not gone.left:
        raise RuleError(f"Box {gone.box.number} is gone; only that it has left can be said of it.")
    how = f" with {gone.carrier}" if gone.carrier else ""
    how = f" and {_was(len(gone.left))} handed to {gone.handed_to}" if gone.handed_to else how
    left = f"left on {full_day(gone.left_at.date(), now.date())}{how}"
    said = _statement(_of_box(len(gone.left), gone.box.number), left)
    return _joined(f"{settings.name}:", said, _as_they_were(gone.left), _to_pay(gone.owed_cents, settings))


def sorts_of(box: BoxPicture, picture: Picture) -> tuple[MessageSort, ...]:
    """The messages that would be true of an open box now, the most likely first."""
    return tuple(sort for sort in _LIKELY if _holds(sort, box, picture))


_LIKELY = (MessageSort.DELAYED, MessageSort.READY, MessageSort.UNCLAIMED, MessageSort.SHIPPED)


def _holds(sort: MessageSort, box: BoxPicture, picture: Picture) -> bool:
    try:
        message(sort, box, picture)
    except RuleError:
        return False
    return True


def law_words(settings: Settings, today: date) -> str:
    """For the shop alone: check local law first, last looked up Monday 2 November."""
    looked = settings.shelf.last_checked
    last = "nobody has noted when it was last read" if looked is None else f"last read {full_day(looked, today)}"
    law = f"{CHECK_LAW[0].upper()}{CHECK_LAW[1:]}"
    return f"{law}: what a notice must say, how it is sent, how long knives are kept; {last}."


def _joined(*sentences: str) -> str:
    return " ".join(filter(None, sentences))


def _statement(subject: str, rest: str) -> str:
    return f"{subject[0].upper()}{subject[1:]} {rest}."


def _of_box(count: int, number: int) -> str:
    return f"your {spoken_knives(count)} (box {number})" if count != 1 else f"your knife (box {number})"


def _are(count: int) -> str:
    return "is" if count == 1 else "are"


def _was(count: int) -> str:
    return "was" if count == 1 else "were"


def _ready(box: BoxPicture, picture: Picture) -> str:
    number, count, today = box.box.number, len(box.on_hand), picture.now.date()
    if ready_since(box) is None:
        raise RuleError(f"Box {number} is not ready: {box.ready_count} of {count} can leave.")
    if box.box.goes_by is GoesBy.PICK_UP:
        what = f"{_are(count)} ready to be fetched"
    elif box.ship_by is None or box.ship_by.timestamp() < picture.now.timestamp():
        what = f"{_are(count)} ready"
    else:
        leaving = "leaves" if count == 1 else "leave"
        what = f"{_are(count)} ready and {leaving} by {full_day(box.ship_by.date(), today)}"
    said = _statement(_of_box(count, number), what)
    owed = _to_pay(box.owed_cents, picture.settings)
    return _joined(f"{picture.settings.name}:", said, _as_they_were(box.on_hand), owed)


def _as_they_were(knives: Sequence[Knife]) -> str:
    """What goes back as it came is said, or the customer would only find it."""
    count = sum(knife.declined is not None for knife in knives)
    whom = "It" if len(knives) == 1 else f"{sentence(number_words(count))[:-1]} of them"
    return f"{whom} could not be sharpened." if count else ""


def _to_pay(cents: int, settings: Settings) -> str:
    return f"{money(cents, settings)} to pay." if cents > 0 else ""


def _part_shipped(box: BoxPicture, picture: Picture) -> str:
    left, here, today = box.in_column(Column.GONE), len(box.on_hand), picture.now.date()
    if not left:
        raise RuleError(f"Nothing of box {box.box.number} has left yet; it is closed out first.")
    day = full_day(max(k.moved_at for k in left).astimezone(picture.now.tzinfo).date(), today)
    of_all = f"{number_words(len(left))} of your {spoken_knives(len(left) + here)} (box {box.box.number})"
    rest = _statement(f"{number_words(here)} more", f"{_are(here)} still here") if here else ""
    return _joined(f"{picture.settings.name}:", _statement(of_all, f"left on {day}"), rest)


def _delayed(box: BoxPicture, picture: Picture) -> str:
    old, new = _days(box, picture)
    knives = "knife" if len(box.on_hand) == 1 else "knives"
    told = f"We told you that your {knives} (box {box.box.number}) would {old}, and that will not hold."
    they = "it" if len(box.on_hand) == 1 else "they"
    return _joined(f"{picture.settings.name}:", told, f"Now {they} will {new}. We are sorry.")


def _days(box: BoxPicture, picture: Picture) -> tuple[str, str]:
    """What was told, and what can honestly be told now."""
    number, now = box.box.number, picture.now
    if box.promise is None:
        raise RuleError(f"No date was told for box {number}, so none is put off.")
    if box.forecast.lateness in (Lateness.LATE, Lateness.WILL_BE_LATE):
        if box.only_lost_left:
            raise RuleError(f"No new day is known for box {number}, and {until_found_words(box)}.")
        if box.honest_day is None:
            raise RuleError(f"Nobody knows yet when box {number} is done; tell a new day first.")
        if box.honest_day == box.promise.day:
            raise RuleError(f"Box {number} is late within the day told for it, and no other is known; tell one first.")
        new = f"{will_words(box.promise.kind, box.box.goes_by)} {full_day(box.honest_day, now.date())}"
        return _told(box, box.promise, now), new
    if len(box.promises) < 2 or box.promises[-2].day >= box.promise.day:
        raise RuleError(f"The day told for box {number} still holds; there is no delay to tell.")
    return _told(box, box.promises[-2], now), _told(box, box.promise, now)


def _told(box: BoxPicture, promise: Promise, now: datetime) -> str:
    clock = f" {time_words(promise.at)}" if promise.at is not None else ""
    return f"{will_words(promise.kind, box.box.goes_by)} {full_day(promise.day, now.date())}{clock}"


def _unclaimed(box: BoxPicture, picture: Picture) -> str:
    since, settings = ready_since(box), picture.settings
    if since is None or box.box.goes_by is not GoesBy.PICK_UP:
        raise RuleError(f"Box {box.box.number} does not wait to be fetched.")
    ready, today, count = since.astimezone(picture.now.tzinfo).date(), picture.now.date(), len(box.on_hand)
    ago = f", for {many(days, 'day')}" if (days := (today - ready).days) else ""
    waits = f"{_are(count)} ready to be fetched since {full_day(ready, today)}{ago}"
    return "\n".join(
        (
            f"{settings.name}, {full_day(today, today)} {today.year}",
            _statement(_of_box(count, box.box.number), waits),
            *(f"- {knife.tag} {knife_name(knife, settings)}" for knife in box.on_hand),
            *filter(None, (_as_they_were(box.on_hand), _to_pay(box.owed_cents, settings))),
            f"Please fetch {'it' if count == 1 else 'them'}, or tell us when you can.",
        )
    )
