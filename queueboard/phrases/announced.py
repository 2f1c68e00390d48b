"""A box that is only announced, in words: when it should come, what it should hold, and that it has not come."""

from collections.abc import Iterable
from datetime import date, datetime

from queueboard.phrases.dates import date_words, day_word, day_words, many, promise_date_words
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture

NOT_HERE = "not here yet"
NOT_COME = "NOT COME"


def coming_boxes(picture: Picture) -> tuple[BoxPicture, ...]:
    """All announced boxes, the soonest first; those without a day last."""
    coming = (box for box in picture.boxes if box.box.announced)
    return tuple(sorted(coming, key=lambda box: (box.box.expected_on or date.max, box.box.number)))


def not_come_boxes(picture: Picture) -> tuple[BoxPicture, ...]:
    """The announced boxes whose day is over, the oldest first."""
    return tuple(box for box in coming_boxes(picture) if _is_over(box, picture.now.date()))


def expected_today(picture: Picture) -> tuple[BoxPicture, ...]:
    """The announced boxes that should come today."""
    return tuple(box for box in coming_boxes(picture) if box.box.expected_on == picture.now.date())


def here_already_words(theirs: Iterable[BoxPicture]) -> str:
    """What else of a customer there is: On the board already: 417, 420. Expected: 435. Empty for nothing."""
    numbers: dict[bool, list[str]] = {False: [], True: []}
    for box in theirs:
        numbers[box.box.announced].append(str(box.box.number))
    said = (
        f"On the board already: {', '.join(numbers[False])}." if numbers[False] else "",
        f"Expected, + on it when it is here: {', '.join(numbers[True])}." if numbers[True] else "",
    )
    return " ".join(filter(None, said))


def expected_word(box: BoxPicture, now: datetime) -> str:
    """EXPECTED TODAY, EXPECTED Thu, EXPECTED Thu 3 Dec; EXPECTED without a day; NOT COME when its day is over."""
    on, today = box.box.expected_on, now.date()
    if on is None:
        return "EXPECTED"
    return NOT_COME if on < today else f"EXPECTED {day_word(on, today)}"


def expected_words(box: BoxPicture, today: date) -> str:
    """Expected Thursday, 6 knives; expected Mon 9 Nov and not come, 6 knives; expected, nobody said when."""
    said = box.box.expected_knives
    knives = "nobody said how many knives" if said is None else many(said, "knife")
    return f"{_when_words(box, today)}, {knives}"


def _when_words(box: BoxPicture, today: date) -> str:
    on = box.box.expected_on
    if on is None:
        return "expected, nobody said when"
    return f"expected {date_words(on, today)} and not come" if on < today else f"expected {day_words(on, today)}"


def expected_minutes_words(box: BoxPicture, settings: Settings) -> str:
    """About 42 bench min when it comes; about 7 bench min a knife, where nobody said how many."""
    said, each = box.box.expected_knives, settings.planning.announced_minutes
    return f"about {each} bench min a knife" if said is None else f"about {said * each} bench min when it comes"


def coming_words(box: BoxPicture, now: datetime) -> str:
    """One announced box: 435 expected Mon 9 Nov and not come, 6 knives; in hand by Tue 17 Nov: phone, name."""
    today, phone = now.date(), f"{box.customer.phone}, " if box.customer.phone else ""
    return f"{box.box.number} {expected_words(box, today)}; {told_date_words(box, today)}: {phone}{box.customer.name}"


def told_date_words(box: BoxPicture, today: date) -> str:
    """The date that holds, by its day: in hand by Tue 17 Nov; no date told."""
    if box.promise is None:
        return "no date told"
    return promise_date_words(box.promise, today, box.box.goes_by)


def _is_over(box: BoxPicture, today: date) -> bool:
    return box.box.expected_on is not None and box.box.expected_on < today
