"""What the wall shows of a box: its number large, when it is due and how much of it is ready; never whose it is."""

from datetime import UTC, datetime

from queueboard.phrases.boxes import box_due_word, n_of_m, ready_to_fetch, standing_words
from queueboard.phrases.dates import time_words
from queueboard.phrases.typed import WEEKDAYS
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.words import Lateness

MOST_BOXES = 12
NO_DATE = datetime.max.replace(tzinfo=UTC)


def wall_boxes(picture: Picture) -> tuple[BoxPicture, ...]:
    """The boxes that are here, the soonest due first, last those that only wait to be fetched.

    At most twelve, so that they can be read from afar.
    """
    here = [box for box in picture.boxes if not box.box.announced]
    here.sort(key=lambda box: (ready_to_fetch(box), box.ship_by or NO_DATE, box.box.number))
    return tuple(here[:MOST_BOXES])


def wall_words(box: BoxPicture, now: datetime) -> tuple[str, str]:
    """When and how far: TODAY 15:45, 9 of 13 ready; WILL BE LATE Sat; a box that nobody opened says so.

    Each part is short enough for a fourth of 80 columns.
    """
    due, threat = box_due_word(box, now), box.forecast.lateness
    if threat in (Lateness.WILL_BE_LATE, Lateness.TIGHT) and box.ship_by is not None:
        due = f"{threat.value} {WEEKDAYS[box.ship_by.weekday()][:3]}"
    elif due == "TODAY" and box.ship_by is not None:
        due = f"{due} {time_words(box.ship_by)}"
    return due, f"{n_of_m(box)} ready" if box.box.opened else standing_words(box)
