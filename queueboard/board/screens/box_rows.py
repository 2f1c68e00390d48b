"""The rows of the table of all open boxes: sorted by value, each customer's boxes together, with their totals."""

from collections.abc import Callable, Mapping

from queueboard.clean import cell_text
from queueboard.phrases.boxes import box_row, found_in
from queueboard.phrases.dates import many
from queueboard.phrases.money import amount
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.words import ON_BOARD, Column

HEADS = (" box", "customer", "recv", "bench", "test", "ready", "min", "to pay", "ship-by", "promise", "label")
FIGURES = frozenset({"recv", "bench", "test", "ready", "min", "to pay"})
"""The columns that stand to the right."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """One row as texts."""

    key: str
    cells: tuple[str, ...]
    number: int | None
    """The box to go to; None for a total."""
    total: bool = False


Value = tuple[float, ...]

NEVER = (float("inf"),)
"""Sorts behind every date."""


def _ship_by(boxes: tuple[BoxPicture, ...]) -> Value:
    return min((((b.ship_by.timestamp(),) if b.ship_by is not None else NEVER) for b in boxes), default=NEVER)


def _label(boxes: tuple[BoxPicture, ...]) -> Value:
    days = [b.label_due.last_day for b in boxes if b.label_due is not None]
    return min(((float(day.toordinal()),) for day in days if day is not None), default=NEVER)


def _knives(column: Column) -> Callable[[tuple[BoxPicture, ...]], Value]:
    return lambda boxes: (-float(sum(found_in(b, column) for b in boxes)),)


SORTS: Mapping[str, Callable[[tuple[BoxPicture, ...]], Value]] = {
    "ship-by": _ship_by,
    "box": lambda boxes: (float(min(b.box.number for b in boxes)),),
    "late by": lambda boxes: (-float(max(b.forecast.late_minutes for b in boxes)),),
    "minutes left": lambda boxes: (-float(sum(b.forecast.minutes_left for b in boxes)),),
    "to pay": lambda boxes: (-float(sum(b.owed_cents for b in boxes)),),
    "label": _label,
    **{column.value: _knives(column) for column in ON_BOARD},
}
"""How boxes are put in order: by the value, never by the text of it; the most or the soonest first."""


def table_rows(picture: Picture, sort: str, *, down: bool = False) -> tuple[TableRow, ...]:
    """Every open box once. A customer with several has them together, and their totals below."""
    value = SORTS[sort]
    by_customer: dict[int, tuple[BoxPicture, ...]] = {}
    for box in picture.boxes:
        by_customer[box.customer.id] = (*by_customer.get(box.customer.id, ()), box)
    groups = sorted(by_customer.values(), key=lambda boxes: (value(boxes), boxes[0].box.number), reverse=down)
    rows: list[TableRow] = []
    for boxes in groups:
        rows += [_row(b, picture) for b in sorted(boxes, key=lambda b: (value((b,)), b.box.number), reverse=down)]
        if len(boxes) > 1:
            rows.append(_total(boxes))
    return tuple(rows)


def _row(box: BoxPicture, picture: Picture) -> TableRow:
    texts = box_row(box, picture.settings, picture.now)
    return TableRow(
        key=f"box {box.box.id}",
        number=box.box.number,
        cells=(
            texts.number,
            cell_text(texts.name),
            *texts.counts,
            texts.minutes_left,
            amount(box.owed_cents),
            texts.ship_by,
            texts.promise,
            texts.label,
        ),
    )


def _total(boxes: tuple[BoxPicture, ...]) -> TableRow:
    counts = (sum(found_in(b, column) for b in boxes) for column in ON_BOARD)
    return TableRow(
        key=f"customer {boxes[0].customer.id}",
        number=None,
        total=True,
        cells=(
            many(len(boxes), "box"),
            cell_text(boxes[0].customer.name),
            *(str(count or "") for count in counts),
            str(sum(b.forecast.minutes_left for b in boxes) or ""),
            amount(sum(b.owed_cents for b in boxes)),
            "",
            "",
            "",
        ),
    )
