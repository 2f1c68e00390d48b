"""Return labels in words: what they demand, and until when."""

from datetime import date

from queueboard.phrases.announced import NOT_HERE
from queueboard.phrases.dates import date_words, day_words
from queueboard.phrases.knives import place_words
from queueboard.phrases.parcels import over_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.weight_seen import parcel_weight
from queueboard.values.box import ReturnLabel
from queueboard.values.label import LabelDue
from queueboard.words import Column, GoesBy, LabelOwner, LabelState, LabelWord


def label_words(box: BoxPicture, today: date) -> str:
    """The label of a box in one line: DIES TOMORROW, customer's label here; pick-up; no label."""
    if box.label is None:
        return "pick-up" if box.box.goes_by is GoesBy.PICK_UP else "no label"
    whose = whose_label(box.label)
    if box.label_due is not None and box.label_due.word is not LabelWord.GOOD:
        return f"{label_due_words(box.label_due, today)}, {whose}"
    return f"{whose}, good to {date_words(box.label.expires_on, today)}" if box.label.expires_on is not None else whose


def whose_label(label: ReturnLabel) -> str:
    """Whose label it is and where it stands: customer's label here, shop's label to buy."""
    return f"{label.owner.value} label {label.state.value}"


def label_short_words(box: BoxPicture, today: date) -> str:
    """The label for a narrow place: DIES TOMORROW; NOT IN TIME; BUY Friday; good Thu 3 Dec; used; pick-up; no label."""
    due = box.label_due
    if box.label is None or box.label.state is LabelState.USED:
        return label_words(box, today) if box.label is None else box.label.state.value
    if due is not None and due.word is LabelWord.TOO_LATE:
        return "NOT IN TIME"
    if due is not None and due.word is LabelWord.BUY and due.last_day is not None:
        return f"{due.word.value} {day_words(due.last_day, today)}"
    if due is not None and due.word is not LabelWord.GOOD:
        return due.word.value
    expires_on = box.label.expires_on
    return box.label.state.value if expires_on is None else f"good {date_words(expires_on, today)}"


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
    """What to do about one label: buy it, use it, or call; with where the box stands, and when it is too heavy."""
    box = picture.box_by_id(due.box_id)
    over = label_over_words(box, picture)
    return "; ".join(filter(None, (_wants(due, box), over)))


def label_over_words(box: BoxPicture, picture: Picture) -> str:
    """ABOVE THE LABEL'S LIMIT and by how much; empty where it is not."""
    weight = parcel_weight(box, picture.settings)
    return "" if weight is None else over_words(weight, picture.settings)


def _wants(due: LabelDue, box: BoxPicture) -> str:
    if due.word is LabelWord.TOO_LATE:
        whose = "ask the customer for a new one" if _customers(box) else "buy a new one"
        return f"it cannot be used in time: {whose}"
    if box.label is not None and box.label.state is LabelState.TO_BUY:
        return "buy it" if not _customers(box) else "ask the customer for it"
    if not box.box.opened:
        return NOT_HERE if box.box.announced else "not opened yet"
    rest = [knife for knife in box.on_hand if not knife.can_leave]
    if not rest:
        return "all ready: pack and hand over"
    if all(knife.looking_for for knife in rest):
        return f"{len(rest)} of {len(box.on_hand)} looked for"
    slowest = next((c for c in Column if any(k.column is c and not k.looking_for for k in rest)), Column.RECEIVED)
    return f"{len(rest)} of {len(box.on_hand)} not ready, the slowest {place_words(slowest)}"


def _customers(box: BoxPicture) -> bool:
    return box.label is not None and box.label.owner is LabelOwner.CUSTOMER
