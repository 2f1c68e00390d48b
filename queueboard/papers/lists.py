"""The lists: late boxes, return labels, all open boxes with each customer's totals, and boxes found."""

from collections.abc import Iterable

from queueboard.papers.day_sheet import EMPTY_BOARD, sheet_title
from queueboard.papers.text import columns, page
from queueboard.phrases.announced import coming_boxes, coming_words, not_come_boxes
from queueboard.phrases.boxes import BoxRow, box_row
from queueboard.phrases.dates import many
from queueboard.phrases.labels import label_due_words, label_wants, whose_label
from queueboard.phrases.late import heaviest_overload_words, late_boxes, late_parts
from queueboard.phrases.loose import candidate_place, candidate_words
from queueboard.phrases.money import money, owed_words
from queueboard.phrases.phone import phone_sentence
from queueboard.shop.loose import Candidate
from queueboard.shop.picture import BoxPicture, Picture

_NUMBERS_RIGHT = frozenset({0, 1, 2, 3, 4, 5})


def late_list(picture: Picture) -> str:
    """Boxes that are late, will be, or are tight, the worst first; then what has not come; on top what overloads."""
    rows = [(str(box.box.number), *late_parts(box, picture.now), box.customer.name) for box in late_boxes(picture)]
    overloads = heaviest_overload_words(picture)
    not_come = [coming_words(box, picture.now) for box in not_come_boxes(picture)]
    late = columns(rows) if rows else ("Nothing is late or tight, and nothing will be as the work stands now.",)
    return page((overloads,) if overloads and rows else (), late, not_come)


def labels_list(picture: Picture) -> str:
    """Return labels to buy or to use, the worst first."""
    today = picture.now.date()
    rows = [
        (
            str(box.box.number),
            label_due_words(due, today),
            label_wants(due, picture),
            "" if box.label is None else whose_label(box.label),
            box.customer.name,
        )
        for due in picture.labels_due
        for box in (picture.box_by_id(due.box_id),)
    ]
    return page(columns(rows)) if rows else "No return label is waiting to be bought or used.\n"


def boxes_list(picture: Picture) -> str:
    """All open boxes with their totals, then the customers with more than one box, then the sums."""
    if not picture.boxes:
        return page((EMPTY_BOARD,))
    rows = [_cells(box_row(box, picture.settings, picture.now)) for box in picture.boxes]
    return page(
        (sheet_title(picture), ""),
        columns([_HEAD, *rows], right=_NUMBERS_RIGHT),
        ("", *_customers(picture)),
        (_sum(picture),),
    )


_HEAD = ("box", "recd", "bench", "test", "ready", "min left", "due", "promise", "money", "label", "customer")


def _cells(row: BoxRow) -> tuple[str, ...]:
    return (
        row.number,
        *row.counts,
        row.minutes_left,
        row.ship_by,
        row.promise,
        row.owed,
        row.label,
        row.name,
    )


def _customers(picture: Picture) -> list[str]:
    groups: dict[int, list[BoxPicture]] = {}
    for box in picture.boxes:
        groups.setdefault(box.customer.id, []).append(box)
    return [f"{_totals(boxes, picture)}: {boxes[0].customer.name}" for boxes in groups.values() if len(boxes) > 1]


def _totals(boxes: Iterable[BoxPicture], picture: Picture) -> str:
    boxes = tuple(boxes)
    here = sum(len(box.on_hand) for box in boxes)
    ready = sum(box.ready_count for box in boxes)
    left = sum(box.forecast.minutes_left for box in boxes)
    owed = sum(box.owed_cents for box in boxes)
    return f"{many(len(boxes), 'box')}, {ready} of {here} ready, {left} min left, {owed_words(owed, picture.settings)}"


def _sum(picture: Picture) -> str:
    owed = sum(max(0, box.owed_cents) for box in picture.boxes)
    coming = len(coming_boxes(picture))
    here = sum(len(box.on_hand) for box in picture.boxes)
    left = sum(box.forecast.minutes_left for box in picture.boxes)
    return (
        f"{many(len(picture.boxes) - coming, 'box')}, {many(here, 'knife')} here, {left} min left, "
        f"{money(owed, picture.settings)} to be paid" + (f"; {many(coming, 'box')} expected by mail" if coming else "")
    )


def found_list(found: Iterable[BoxPicture], picture: Picture) -> str:
    """One sentence to read aloud for each box."""
    return page(phone_sentence(box, picture) for box in found)


def loose_list(candidates: Iterable[Candidate], picture: Picture) -> str:
    """Each knife that a loose one could be, with where it was last."""
    return page(
        line
        for one in candidates
        for line in (candidate_words(one, picture.settings), f"  {candidate_place(one, picture.now)}")
    )
