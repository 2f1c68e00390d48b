"""One box in words: n of m, where it stands, its totals, and the sentence read aloud on the phone."""

from collections.abc import Sequence
from datetime import datetime

from queueboard.phrases.announced import NOT_HERE, expected_minutes_words, expected_word, expected_words
from queueboard.phrases.bill import limit_words, parts_words
from queueboard.phrases.counts import note_words
from queueboard.phrases.dates import (
    age_words,
    done_by_words,
    lateness_words,
    many,
    promise_words,
    ship_by_word,
    when_words,
)
from queueboard.phrases.knives import WAIT
from queueboard.phrases.labels import label_short_words, label_words
from queueboard.phrases.money import box_money_words, box_owed_words
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.values.knife import Knife
from queueboard.words import ON_BOARD, Column, GoesBy, Lateness, PromiseKind

TO_FETCH = "TO FETCH"
WORKING_OUT = "working out"
"""Stands where the plan's part of a picture will stand in a moment."""

TWINS_NAMED = 5
"""So many knives that look alike are named; the tag on the handle decides anyway."""

LOST_NAMED = 3
"""Up to so many knives that are looked for are named."""


def n_of_m(box: BoxPicture) -> str:
    """Ready knives of those still here: 11 of 13."""
    return f"{box.ready_count} of {len(box.on_hand)}"


def ready_words(box: BoxPicture) -> str:
    """11 of 13 ready; 2 of 4 ready, 1 looked for, 9 gone; not opened; not here yet."""
    if not box.box.opened:
        return unopened_words(box)
    counted = ((looked_for(box), "looked for"), (len(box.in_column(Column.GONE)), Column.GONE.value))
    return ", ".join((f"{n_of_m(box)} ready", *(f"{count} {what}" for count, what in counted if count)))


def unopened_words(box: BoxPicture) -> str:
    """What is to be said of a box that nobody has opened: not opened; not here yet, while it is only announced."""
    return NOT_HERE if box.box.announced else "not opened"


def looked_for(box: BoxPicture) -> int:
    """How many knives still to be given back nobody can find just now."""
    return len(box.lost)


def lost_words(box: BoxPicture) -> str:
    """Which knives nobody can find just now: 407-3 paring; 417-1 chef, 417-2 chef and 4 more; empty for none."""
    named = [f"{knife.tag} {knife.kind}" for knife in box.lost]
    if len(named) > LOST_NAMED:
        named[LOST_NAMED - 1 :] = [f"{len(named) - LOST_NAMED + 1} more"]
    return " and ".join(filter(None, (", ".join(named[:-1]), *named[-1:])))


def until_found_words(box: BoxPicture) -> str:
    """Why no day can be told: not before 407-3 paring is found; empty unless only what is looked for is left."""
    if not box.only_lost_left:
        return ""
    return f"not before {lost_words(box)} {'is' if len(box.lost) == 1 else 'are'} found"


def found_in(box: BoxPicture, column: Column) -> int:
    """How many knives really stand in a column; one that is looked for stands nowhere."""
    return sum(not (knife.looking_for and knife.on_hand) for knife in box.in_column(column))


def standing_words(box: BoxPicture) -> str:
    """Where the whole box stands: not opened; the column of its slowest knife; once all is ready, how it is packed."""
    if not box.box.opened:
        return unopened_words(box)
    slowest = next((column for column in ON_BOARD if box.in_column(column)), Column.GONE)
    if slowest is Column.READY and looked_for(box):
        return "looked for"
    if slowest is Column.READY and box.box.packing is not None:
        return box.box.packing.value
    return slowest.value


def box_title(box: BoxPicture) -> str:
    """417 Maren Tallis; the name is a person's text, for a literal place only."""
    return f"{box.box.number} {box.customer.name}"


def no_knife_words(tag: str, box: BoxPicture) -> str:
    """What to say of a tag whose box is there, but no such knife in it."""
    last = max((knife.number for knife in box.knives), default=0)
    return f"There is no knife {tag}; box {box.box.number} has {last or 'none yet'}."


def box_due_word(box: BoxPicture, now: datetime) -> str:
    """The box's ship-by word: LATE, TODAY, Sat, Thu 3 Dec, no date; TO FETCH once it only waits for that.

    Of a box that is only announced the word says when it should come.
    """
    if box.box.announced:
        return expected_word(box, now)
    if ready_to_fetch(box):
        return TO_FETCH
    return ship_by_word(box.ship_by, now)


def ready_to_fetch(box: BoxPicture) -> bool:
    """True for a pick-up of which every knife is ready: the shop's part is done."""
    return box.box.goes_by is GoesBy.PICK_UP and bool(box.on_hand) and box.ready_count == len(box.on_hand)


def box_signs(box: BoxPicture, now: datetime) -> tuple[str, ...]:
    """The words that mark a box, its ship-by word first; then WILL BE LATE or TIGHT, WAIT, RUSH and what binds it."""
    signs = (
        (box_due_word(box, now), True),
        (box.forecast.lateness.value, box.forecast.lateness in (Lateness.WILL_BE_LATE, Lateness.TIGHT)),
        (WAIT, box.box.waiting_for is not None or bool(box.waiting)),
        ("ABOVE LIMIT", box.above_limit),
        ("RUSH", box.box.rush),
        ("THIS NEXT", box.box.this_next),
        ("NEVER SLIP", box.box.never_slip),
        ("CALL-BACK", box.call_back is not None),
        ("COMPLAINT", box.box.complaint and box.call_back is None),
    )
    return tuple(sign for sign, holds in signs if holds)


def counts_words(box: BoxPicture, places: Sequence[Column] = ON_BOARD) -> str:
    """Knives in each place where there are any: 2 received, 3 on bench, 1 testing, 7 ready, 1 looked for, 1 gone."""
    counted = (
        *((found_in(box, column), column.value) for column in places),
        (looked_for(box), "looked for"),
        (found_in(box, Column.GONE), Column.GONE.value),
    )
    return ", ".join(f"{count} {place}" for count, place in counted if count) or "no knives"


def waits_words(box: BoxPicture, now: datetime) -> str:
    """What holds the box up: all of it and for how long, then single knives; empty when nothing does."""
    whole = ""
    if box.box.waiting_for is not None:
        since = f", {age_words(box.box.waiting_since, now)}" if box.box.waiting_since is not None else ""
        whole = f"{box.box.waiting_for.value}{since}"
    singles = (
        f"{knife.tag}: {knife.waiting_for.value}"
        + (f", {age_words(knife.waiting_since, now)}" if knife.waiting_since is not None else "")
        for knife in box.waiting
        if knife.waiting_for is not None
    )
    return "; ".join(filter(None, (whole, *singles)))


def batch_totals(box: BoxPicture, settings: Settings, now: datetime, *, working_out: bool = False) -> tuple[str, ...]:
    """The selected box's totals, a line each: counts, minutes and finish, promise, money, label, waiting.

    working_out: the plan is still that of a moment ago, and says nothing of minutes and finish.
    """
    late = lateness_words(box.forecast)
    left = f"{box.forecast.minutes_left} min left, {box_done_words(box, now)}" + (f", {late}" if late else "")
    left = f"when it is done: {WORKING_OUT}" if working_out else left
    lines = (
        _counts(box) if box.box.opened else _unopened(box, now),
        expected_minutes_words(box, settings) if box.box.announced else left,
        date_words_of(box, now),
        parts_words(box.totals),
        box_money_words(box, settings),
        limit_words(box, settings),
        note_words(box, settings),
        label_words(box, now.date()),
        f"waits for {waits_words(box, now)}" if waits_words(box, now) else "",
        f"comes with {', '.join(thing.name for thing in box.things)}" if box.things else "",
    )
    return tuple(line for line in lines if line)


def date_words_of(box: BoxPicture, now: datetime) -> str:
    """What was told, and the cut-off where that says more than the clock time: ready by tomorrow 16:00."""
    due = due_words(box, now)
    if box.promise is None or box.ship_by is None:
        return "no date told"
    in_hand = box.promise.kind is PromiseKind.DAY and box.box.goes_by is GoesBy.PARCEL
    if box.promise.day == box.ship_by.date() and not in_hand:
        return due
    return f"{promise_words(box.promise, now.date(), box.box.goes_by)}; {due}"


def _counts(box: BoxPicture) -> str:
    """Ready of those here, then where each is, unless that says the same once more."""
    if not box.on_hand or box.ready_count == len(box.on_hand):
        return ready_words(box)
    return f"{n_of_m(box)} ready: {counts_words(box, [place for place in ON_BOARD if place is not Column.READY])}"


def _unopened(box: BoxPicture, now: datetime) -> str:
    if box.box.announced:
        return expected_words(box, now.date())
    said = box.box.note_says
    return "not opened" if said is None else f"not opened, the note says {many(said, 'knife')}"


def box_done_words(box: BoxPicture, now: datetime) -> str:
    """Done by tomorrow 09:40; nothing left for the bench; when the waiting ends, for a box that waits as a whole."""
    if box.box.waiting_for is not None and box.forecast.minutes_left:
        return "when the waiting ends"
    return done_by_words(box.forecast, now)


def in_the_way(box: BoxPicture, now: datetime) -> str:
    """What stands between a box and its going: not opened yet; 1 looked for; 2 wait for the test; 30 min left."""
    waits = waits_words(box, now)
    testing, missing = found_in(box, Column.TESTING), looked_for(box)
    minutes = box.forecast.minutes_left
    said = (
        "" if box.box.opened else NOT_HERE if box.box.announced else "not opened yet",
        f"{missing} looked for: {lost_words(box)}" if missing else "",
        f"waits for {waits}" if waits else "",
        f"{testing} {'waits' if testing == 1 else 'wait'} for the test" if testing else "",
        f"{minutes} min left at the bench, {box_done_words(box, now)}" if minutes else "",
    )
    parts = [part for part in said if part]
    if not parts:
        return "all ready: hand it over" if box.box.packing is not None else "all ready: wrap it and hand it over"
    return "; ".join(parts)


def due_words(box: BoxPicture, now: datetime) -> str:
    """Ship-by today 15:45 for a parcel, ready by tomorrow 16:00 at the counter, no date."""
    if box.ship_by is None:
        return "no date"
    doing = "ship by" if box.box.goes_by is GoesBy.PARCEL else "ready by"
    return f"{doing} {when_words(box.ship_by, now)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxRow:
    """One line of the table of all open boxes, as texts."""

    number: str
    name: str
    counts: tuple[str, str, str, str]
    """Knives received, on bench, testing, ready; empty for none."""
    minutes_left: str
    owed: str
    promise: str
    ship_by: str
    label: str


def box_row(box: BoxPicture, settings: Settings, now: datetime) -> BoxRow:
    """The texts of one box for the table of all open boxes."""
    received, on_bench, testing, ready = (str(found_in(box, column) or "") for column in ON_BOARD)
    return BoxRow(
        number=str(box.box.number),
        name=box.customer.name,
        counts=(received, on_bench, testing, ready),
        minutes_left=str(box.forecast.minutes_left or ""),
        owed=box_owed_words(box, settings),
        promise=promise_words(box.promise, now.date(), box.box.goes_by),
        ship_by=" ".join(box_signs(box, now)),
        label=label_short_words(box, now.date()),
    )


def twin_words(knife: Knife, picture: Picture) -> str:
    """Which knives of other boxes it could be taken for: ≈ looks like 423-1, 431-2; of many the first few."""
    twins = [
        other.tag
        for box in picture.boxes
        for other in box.on_hand
        if other.id in box.look_alikes
        and other.box_id != knife.box_id
        and (other.kind, other.length_mm) == (knife.kind, knife.length_mm)
    ]
    more = f" and {len(twins) - TWINS_NAMED} more" if len(twins) > TWINS_NAMED else ""
    return f"≈ looks like {', '.join(twins[:TWINS_NAMED])}{more}: see its tag" if twins else ""
