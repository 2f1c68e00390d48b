"""The same lists as plain data for scripts; keys are documented by tests/schemas and do not change meaning.

Dates and instants are ISO 8601, money is in whole cents, lengths are in mm; words are those of the screen.
"""

from collections.abc import Iterable
from datetime import date, datetime
from typing import TypeAlias

from queueboard.phrases.announced import expected_today, not_come_boxes
from queueboard.phrases.bench import bench_run
from queueboard.phrases.boxes import found_in
from queueboard.phrases.day import leaves_today, waiting_boxes
from queueboard.phrases.late import late_boxes
from queueboard.phrases.phone import phone_sentence
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.quoting import week
from queueboard.values.box import Charge, Promise
from queueboard.values.knife import Knife
from queueboard.values.label import LabelDue
from queueboard.values.plan import Run
from queueboard.values.totals import Totals
from queueboard.words import Column, Lateness

Fact: TypeAlias = bool | int | float | str | list["Fact"] | dict[str, "Fact"] | None


def _iso(moment: date | datetime | None) -> str | None:
    return None if moment is None else moment.isoformat()


def _numbers(boxes: Iterable[BoxPicture]) -> list[Fact]:
    return [box.box.number for box in boxes]


def day_facts(picture: Picture) -> dict[str, Fact]:
    """The day list: runs in order, box numbers of what leaves, is late, waits or comes, labels due, the days' load."""
    tags = {knife.id: knife.tag for box in picture.boxes for knife in box.knives}
    late = late_boxes(picture)
    return {
        **_head(picture),
        "bench_minutes_left": picture.day_line.bench_minutes_left,
        "work_minutes_today": picture.day_line.work_minutes_today,
        "leaves_today": _numbers(leaves_today(picture)),
        "late": _numbers(box for box in late if box.forecast.lateness is not Lateness.TIGHT),
        "tight": _numbers(box for box in late if box.forecast.lateness is Lateness.TIGHT),
        "waiting": _numbers(waiting_boxes(picture)),
        "expected_today": _numbers(expected_today(picture)),
        "not_come": _numbers(not_come_boxes(picture)),
        "labels_due": [_due(due, picture) for due in picture.labels_due],
        "overloads": _overloads(picture),
        "load": _load(picture),
        "runs": [_run(run, tags, picture) for run in picture.plan.runs],
        "changes": [{"tag": change.tag, "what": change.what.value} for change in picture.plan.changes],
    }


def late_facts(picture: Picture) -> dict[str, Fact]:
    """Boxes that are late, will be, or are tight, the worst first; what has not come; what overloads the bench."""
    return {
        **_head(picture),
        "overloads": _overloads(picture),
        "boxes": [box_facts(box, picture) for box in late_boxes(picture)],
        "not_come": [box_facts(box, picture) for box in not_come_boxes(picture)],
    }


def labels_facts(picture: Picture) -> dict[str, Fact]:
    """Return labels to buy or to use, the worst first."""
    return {**_head(picture), "labels": [_due(due, picture) for due in picture.labels_due]}


def boxes_facts(boxes: Iterable[BoxPicture], picture: Picture) -> dict[str, Fact]:
    """Boxes with their knives, in the order given."""
    return {**_head(picture), "boxes": [box_facts(box, picture) for box in boxes]}


def open_boxes_facts(picture: Picture) -> dict[str, Fact]:
    """All open boxes with their knives."""
    return boxes_facts(picture.boxes, picture)


def one_box_facts(box: BoxPicture, picture: Picture) -> dict[str, Fact]:
    """One box."""
    return {**_head(picture), "box": box_facts(box, picture)}


def _head(picture: Picture) -> dict[str, Fact]:
    return {"shop": picture.settings.name, "now": _iso(picture.now), "currency": picture.settings.currency}


def box_facts(box: BoxPicture, picture: Picture) -> dict[str, Fact]:
    """One box as plain data, with its knives."""
    forecast = box.forecast
    return {
        "number": box.box.number,
        "customer": {"name": box.customer.name, "phone": box.customer.phone, "town": box.customer.town},
        "came_by": box.box.came_by.value,
        "goes_by": box.box.goes_by.value,
        "received_at": _iso(box.box.received_at.astimezone(picture.now.tzinfo)),
        "counted": box.box.counted,
        "note_says": box.box.note_says,
        "opened": box.box.opened,
        "announced": box.box.announced,
        "expected_on": _iso(box.box.expected_on),
        "expected_knives": box.box.expected_knives,
        "packing": None if box.box.packing is None else box.box.packing.value,
        "rush": box.box.rush,
        "this_next": box.box.this_next,
        "never_slip": box.box.never_slip,
        "complaint": box.box.complaint,
        "call_back_of": None if box.call_back is None else box.call_back.old_number,
        "place": box.box.place,
        "waiting_for": None if box.box.waiting_for is None else box.box.waiting_for.value,
        "ship_by": _iso(box.ship_by),
        "lateness": forecast.lateness.value,
        "late_minutes": forecast.late_minutes,
        "slack_minutes": forecast.slack_minutes,
        "late_permille": None if picture.plan.overloads else forecast.late_permille,
        "honest_day": _iso(box.honest_day),
        "done_by": _iso(None if forecast.finish is None else forecast.finish.astimezone(picture.now.tzinfo)),
        "minutes_left": forecast.minutes_left,
        "counts": {column.value.replace(" ", "_"): found_in(box, column) for column in Column},
        "on_hand": len(box.on_hand),
        "can_leave": box.ready_count,
        **_bill(box),
        "promises": [_promise(promise, picture) for promise in box.promises],
        "label": _label(box),
        **_parcel(box),
        "comes_with": [{"name": thing.name, "state": thing.state.value} for thing in box.things],
        "knives": [_knife(knife) for knife in box.knives],
        "note": box.box.note,
        "said": phone_sentence(box, picture),
    }


def _bill(box: BoxPicture) -> dict[str, Fact]:
    return {
        "price_cents": box.price_cents,
        "paid_cents": box.paid_cents,
        "owed_cents": box.owed_cents,
        "totals": _totals(box.totals),
        "not_above_cents": box.box.not_above_cents,
        "charges": [_charge(charge, box) for charge in box.charges],
    }


def _totals(totals: Totals) -> dict[str, Fact]:
    return {
        "knives_cents": totals.knives_cents,
        "add_ons_cents": totals.add_ons_cents,
        "rush_cents": totals.rush_cents,
        "minimum_cents": totals.minimum_cents,
        "discount_cents": totals.discount_cents,
        "work_cents": totals.work_cents,
        "shipping_cents": totals.shipping_cents,
        "tax_cents": totals.tax_cents,
        "rounding_cents": totals.rounding_cents,
        "total_cents": totals.total_cents,
    }


def _charge(charge: Charge, box: BoxPicture) -> dict[str, Fact]:
    tags = {knife.id: knife.tag for knife in box.knives}
    return {
        "tag": None if charge.knife_id is None else tags[charge.knife_id],
        "sort": charge.sort.value,
        "cents": charge.cents,
        "ppm": charge.ppm,
        "tax_ppm": charge.tax_ppm,
        "text": charge.text,
    }


def _promise(promise: Promise, picture: Picture) -> dict[str, Fact]:
    return {
        "kind": promise.kind.value,
        "day": _iso(promise.day),
        "at": None if promise.at is None else promise.at.isoformat(timespec="minutes"),
        "told_to": promise.told_to,
        "told_by": promise.told_by,
        "told_on": _iso(promise.told_at.astimezone(picture.now.tzinfo).date()),
        "reason": promise.reason,
        "reckoned": promise.reckoned,
    }


def _parcel(box: BoxPicture) -> dict[str, Fact]:
    return {"packed_g": box.box.packed_g, "parcel_mm": list(box.box.parcel_mm)}


def _label(box: BoxPicture) -> dict[str, Fact] | None:
    if box.label is None:
        return None
    return {
        "owner": box.label.owner.value,
        "state": box.label.state.value,
        "carrier": box.label.carrier,
        "expires_on": _iso(box.label.expires_on),
        "name_on": box.label.name_on,
        "address_on": box.label.address_on,
        "limit_g": box.label.limit_g,
        "value_cents": box.label.value_cents,
        "price_cents": box.label.price_cents,
        "word": None if box.label_due is None else box.label_due.word.value,
        "last_day": None if box.label_due is None else _iso(box.label_due.last_day),
    }


def _due(due: LabelDue, picture: Picture) -> dict[str, Fact]:
    box = picture.box_by_id(due.box_id)
    return {
        "number": box.box.number,
        "customer": box.customer.name,
        "word": due.word.value,
        "last_day": _iso(due.last_day),
        "owner": None if box.label is None else box.label.owner.value,
        "state": None if box.label is None else box.label.state.value,
        "expires_on": None if box.label is None else _iso(box.label.expires_on),
    }


def _overloads(picture: Picture) -> list[Fact]:
    zone = picture.now.tzinfo
    return [{"before": _iso(one.before.astimezone(zone)), "minutes": one.minutes} for one in picture.plan.overloads]


def _load(picture: Picture) -> list[Fact]:
    return [
        {
            "day": _iso(load.day),
            "there_minutes": load.there_minutes,
            "planned_minutes": load.planned_minutes,
            "due_minutes": load.due_minutes,
            "closed": load.closed,
        }
        for load in week(picture)
    ]


def _under_way(run: Run, picture: Picture) -> dict[str, Fact] | None:
    bench = bench_run(run, picture)
    if bench is None:
        return None
    return {
        "by": bench.started_by,
        "since": _iso(bench.started_at.astimezone(picture.now.tzinfo)),
        "paused": bench.paused_at is not None,
        "timed": bench.timed,
        "worked_seconds": bench.worked_seconds(picture.now),
        "planned_seconds": bench.planned_seconds,
    }


def _run(run: Run, tags: dict[int, str], picture: Picture) -> dict[str, Fact]:
    return {
        "process": run.process,
        "why": run.why.value,
        "tags": [tags[knife_id] for knife_id in run.knife_ids if knife_id in tags],
        "minutes": run.minutes,
        "set_up_seconds": run.set_up_seconds,
        "handling_minutes": run.handling_minutes,
        "start": _iso(run.start),
        "end": _iso(run.end),
        "under_way": _under_way(run, picture),
    }


def _knife(knife: Knife) -> dict[str, Fact]:
    return {
        "tag": knife.tag,
        "kind": knife.kind,
        "edge": knife.edge.value,
        "length_mm": knife.length_mm,
        "condition": knife.condition.value,
        "column": knife.column.value,
        "mark": knife.mark,
        "wish": knife.wish,
        "note": knife.note,
        "rework": knife.rework,
        "gauge": None if knife.gauge is None else knife.gauge.value,
        "declined": None if knife.declined is None else knife.declined.value,
        "waiting_for": None if knife.waiting_for is None else knife.waiting_for.value,
        "looking_for": knife.looking_for,
        "price_cents": 0 if knife.declined is not None else knife.price_cents,
        "chips": knife.chips,
        "chip_um": knife.chip_um,
        "tip_um": knife.tip_um,
        "findings": [finding.value for finding in knife.findings],
        "apart": knife.apart,
        "added_at": None if knife.added_at is None else _iso(knife.added_at),
    }
