"""Knives that came back since they were not sharp, in words: the old box, its readings, the shop's own rule."""

from collections.abc import Iterator

from queueboard.phrases.dates import many
from queueboard.phrases.knives import knife_name
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture
from queueboard.shop.proof import CardKnife, CardSpot
from queueboard.values.shelf import CallBack

UNREAD = "not read with the gauge"


def ago_words(days: int) -> str:
    """9 days after it left; on the day it left."""
    return f"{many(days, 'day')} after it left" if days else "on the day it left"


def rule_words(days: int, settings: Settings) -> str:
    """Whether the shop's own rule does the work again for nothing, so many days after it left."""
    most = settings.shelf.redo_days
    within = f"{'within' if days <= most else 'more than'} the shop's {many(most, 'day')}"
    return f"{many(days, 'day')} since it left, {within}: {'free' if days <= most else 'say what it costs'}"


def read_words(spots: tuple[CardSpot, ...]) -> str:
    """What was read when it left: heel 165, middle 150, tip 180 gf; that nothing was, else."""
    read = [f"{one.spot.name} {one.after_gf}" for one in spots if one.after_gf is not None]
    return f"{', '.join(read)} gf" if read else UNREAD


def old_knife_words(one: CardKnife, settings: Settings) -> str:
    """A knife of the old box: 340-2 left at heel 165, middle 150, tip 180 gf; chef 20 cm, black handle."""
    read = read_words(one.spots)
    return f"{one.knife.tag} {read if read == UNREAD else f'left at {read}'}; {knife_name(one.knife, settings)}"


def back_lines(one: CardKnife) -> Iterator[str]:
    """On the proof card: which knife it was, when it came back, and what it was read at when it had left."""
    if one.back is None:
        return
    back, free = one.back, "worked again free of charge" if one.back.free else "worked again"
    if not back.old_tag:
        yield f"Call-back of box {back.old_number}, {ago_words(back.days)}; {free}."
        return
    yield f"Call-back of {back.old_tag}, {ago_words(back.days)}, when it was {_read_then(back.spots)}; {free}."


def _read_then(spots: tuple[CardSpot, ...]) -> str:
    said = read_words(spots)
    return said if said == UNREAD else f"read at {said}"


def call_back_lines(box: BoxPicture) -> tuple[str, ...]:
    """On the box's own screen and paper: the box it was, and which knife is which; none for a box that did not come."""
    if box.call_back is None:
        return ()
    return (_linked(box.call_back),)


def _linked(back: CallBack) -> str:
    known = f", {many(len(back.knives), 'knife')} known again" if back.knives else ""
    free = "free" if back.free else "charged"
    return f"call-back of box {back.old_number}, {ago_words(back.days)}, {free}{known}: {back.why}"
