"""Return labels in words: what they demand, and until when."""

from datetime import date

from queueboard.phrases.dates import date_words, day_words
from queueboard.phrases.knives import place_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.label import LabelDue
from queueboard.words import Column, GoesBy, LabelOwner, LabelState, LabelWord


def label_words(box: BoxPicture, today: date) -> str:
    """The label of a box in one line: customer's label here, DIES TOMORROW; shop's label to buy; pick-up; no label."""
    if box.label is None:
        return "pick-up" if box.box.goes_by is GoesBy.PICK_UP else "no label"
    whose = f"{box.label.owner.value} label {box.label.state.value}"
    if box.label_due is not None and box.label_due.word is not LabelWord.GOOD:
        return f"{whose}, {label_due_words(box.label_due, today)}"
    return f"{whose}, good to {date_words(box.label.expires_on, today)}" if box.label.expires_on is not None else whose


def label_due_words(due: LabelDue, today: date) -> str:
    """CANNOT BE USED IN TIME; DIES TODAY; BUY by Friday; good, use by Thu 3 Dec."""
    if due.last_day is None or due.word in {LabelWord.DIES_TODAY, LabelWord.DIES_TOMORROW, LabelWord.BUY_TODAY}:
        return due.word.value
    if due.word is LabelWord.TOO_LATE:
        return f"{due.word.value}, last day {day_words(due.last_day, today)}"
    doing = "use by" if due.word is LabelWord.GOOD else "by"
    comma = ", " if due.word is LabelWord.GOOD else " "
    return f"{due.word.value}{comma}{doing} {day_words(due.last_day, today)}"


def label_wants(due: LabelDue, picture: Picture) -> str:
    """What to do about one label: buy it, use it, or call; with where the box stands."""
    box = picture.box_by_id(due.box_id)
    if due.word is LabelWord.TOO_LATE:
        whose = "ask the customer for a new one" if _customers(box) else "buy a new one"
        return f"it cannot be used in time: {whose}"
    if box.label is not None and box.label.state is LabelState.TO_BUY:
        return "buy it" if not _customers(box) else "ask the customer for it"
    rest = [knife for knife in box.on_hand if not knife.can_leave]
    if not rest:
        return "all ready: pack and hand over"
    slowest = next((c for c in Column if any(k.column is c for k in rest)), Column.RECEIVED)
    return f"{len(rest)} of {len(box.on_hand)} not ready, the slowest {place_words(slowest)}"


def _customers(box: BoxPicture) -> bool:
    return box.label is not None and box.label.owner is LabelOwner.CUSTOMER
