"""The lines of the test: the knife, its spots with what they needed, the tests it has behind it."""

from collections.abc import Iterator
from datetime import datetime

from queueboard.clean import cell_text
from queueboard.phrases.day import half_words
from queueboard.phrases.knives import knife_name, wish_in_capitals
from queueboard.phrases.testing import line_words, readings_words, spot_place, test_words
from queueboard.shop.edge_now import EdgeNow
from queueboard.shop.picture import Picture
from queueboard.values.edge import Spot
from queueboard.words import Column, Stage

TESTS_SHOWN = 4


def edge_title(seen: EdgeNow, picture: Picture) -> str:
    """The knife, whose it is, where it stands; why the gauge is asked; the line."""
    knife = seen.knife
    name = next((cell_text(box.customer.name) for box in picture.boxes if box.box.id == knife.box_id), "")
    why = "" if knife.gauge is None else f"GAUGE, {knife.gauge.value} · "
    wish = f"\n{cell_text(wish_in_capitals(knife))}" if knife.wish else ""
    first = f"{knife.tag} {knife.column.value} · {cell_text(knife_name(knife, picture.settings))} · {name}"
    half = half_words(knife, picture)
    trial = f"TRIAL: {half} · " if half else ""
    return f"{first}\n{trial}{why}{line_words(seen)}{wish}"


def edge_lines(seen: EdgeNow, place: int, now: datetime) -> Iterator[str]:
    """A line a spot, the cursor on one of them; then the tests, the newest last."""
    if seen.line is None:
        yield "Cut cloth or wet paper to the very tip; + it cuts, - it does not."
    else:
        yield f"  {'spot':<22}{'before':>8}  {'after':<16}{'between belts'}"
    for here, spot in enumerate(seen.spots):
        if seen.line is not None:
            name = f"{cell_text(spot.name)} {spot_place(spot)}"
            before, after, between = (readings_words(seen, spot, stage) for stage in Stage)
            cursor = "▸" if here == place else " "
            yield f"{cursor} {name:<22}{before:>8}  {after:<16}{between}".rstrip()
    for test in seen.edge.tests[-TESTS_SHOWN:]:
        yield f"  {test_words(test, now)}"


def first_stage(seen: EdgeNow) -> Stage:
    """Before the work while a knife is not begun; after that what follows from its work."""
    return Stage.BEFORE if seen.knife.column is Column.RECEIVED else Stage.AFTER


def next_place(seen: EdgeNow, stage: Stage, place: int) -> int:
    """The spot to read next: the first one after this that has nothing at the stage, else the worst one once more."""
    count = len(seen.spots)
    order = [(place + step) % count for step in range(1, count + 1)]
    unread = [here for here in order if not _read(seen, seen.spots[here], stage)]
    if unread:
        return unread[0]
    worst = "" if seen.judged is None or stage is not Stage.AFTER else seen.judged.worst
    return next((here for here in order if seen.spots[here].name == worst), order[0])


def _read(seen: EdgeNow, spot: Spot, stage: Stage) -> bool:
    """True when a spot has a reading that counts at this stage now; one from before a test not OK does not."""
    if stage is Stage.AFTER:
        return bool(seen.edge.finished_gf().get(spot.name))
    return bool(seen.edge.at(spot, stage))
