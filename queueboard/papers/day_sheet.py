"""The day sheet: the day list on paper, in the order of the screen, to work from when the computer does not."""

from queueboard.papers.text import RULE_WIDTH, boxes_to_tick, columns, page, section
from queueboard.phrases.announced import coming_words, expected_today, not_come_boxes
from queueboard.phrases.bench import run_head_words
from queueboard.phrases.cautions import BENCH, END_OF_DAY, NO_ADVICE
from queueboard.phrases.dates import date_words, many, time_words
from queueboard.phrases.day import (
    belts_words,
    change_words,
    day_line_words,
    fits_words,
    knife_by_id,
    leave_words,
    leaves_today,
    run_knife_words,
    run_minutes_words,
    runs_later,
    runs_today,
    waiting_boxes,
    waiting_words,
)
from queueboard.phrases.labels import label_due_words, label_wants
from queueboard.phrases.late import heaviest_overload_words, late_boxes, late_words
from queueboard.phrases.week import WHY_ROOM, day_head_words, due_words, later_words, load_words, rush_words
from queueboard.shop.picture import Picture
from queueboard.shop.quoting import week
from queueboard.words import LabelWord

EMPTY_BOARD = "No box is open. Receive one on the board: `queueboard`, then r."


def day_sheet(picture: Picture) -> str:
    """The whole day on paper; a few lines when no box is open."""
    bench, _, *rest = day_line_words(picture.day_line)
    overloads = heaviest_overload_words(picture)
    head = (
        sheet_title(picture),
        "   ".join((bench, fits_words(picture), *rest)),
        *((overloads,) if overloads else ()),
    )
    if not picture.boxes:
        return page(head, ("", EMPTY_BOARD))
    return page(
        head,
        section("CHANGED SINCE THE ORDER WAS FIXED", map(change_words, picture.plan.changes)),
        section("WORK IN THIS ORDER", _runs(picture), nothing="Nothing is left for the bench today."),
        section("LATER", _later(picture)),
        section("LEAVES TODAY", boxes_to_tick(map(leave_words, leaves_today(picture))), nothing="Nothing."),
        section("LATE, WILL BE, OR TIGHT", (late_words(box, picture.now) for box in late_boxes(picture))),
        section("RETURN LABELS", boxes_to_tick(_labels(picture))),
        section("WAITED FOR", boxes_to_tick(waiting_words(box, picture.now) for box in waiting_boxes(picture))),
        section("EXPECTED BY MAIL", boxes_to_tick(_expected(picture))),
        section("THE WEEK AHEAD", _week(picture)),
        section("AT THE BENCH", BENCH),
        section("AT THE END OF THE DAY", boxes_to_tick(END_OF_DAY)),
        ("", NO_ADVICE, "", *(["." * RULE_WIDTH] * 3)),
    )


def sheet_title(picture: Picture) -> str:
    """The shop, the day with its year, and when the sheet was made."""
    today = picture.now.date()
    return f"{picture.settings.name}, {date_words(today, today)} {today.year}, {time_words(picture.now)}"


def _runs(picture: Picture) -> list[str]:
    knives = knife_by_id(picture)
    lines = []
    for place, run in enumerate(runs_today(picture), start=1):
        lines.append(f"{place}. {run_head_words(run, picture)}")
        belts = belts_words(run.process, picture.settings)
        lines.append(f"   {belts}; {run_minutes_words(run)}" if belts else f"   {run_minutes_words(run)}")
        worked = (knives[knife_id] for knife_id in run.knife_ids if knife_id in knives)
        lines += [f"   [ ] {run_knife_words(knife, picture)}" for knife in worked]
    return lines


def _later(picture: Picture) -> tuple[str, ...]:
    later = runs_later(picture)
    knives = sum(len(run.knife_ids) for run in later)
    minutes = sum(run.minutes for run in later)
    return (f"{many(len(later), 'run')}, {many(knives, 'knife')}, {minutes} min",) if later else ()


def _labels(picture: Picture) -> list[str]:
    today = picture.now.date()
    return [
        f"{box.box.number} {label_due_words(due, today)}; {label_wants(due, picture)}: {box.customer.name}"
        for due in picture.labels_due
        if due.word is not LabelWord.GOOD
        for box in (picture.box_by_id(due.box_id),)
    ]


def _expected(picture: Picture) -> list[str]:
    return [coming_words(box, picture.now) for box in (*not_come_boxes(picture), *expected_today(picture))]


def _week(picture: Picture) -> tuple[str, ...]:
    loads = week(picture)
    said = ("; ".join(filter(None, (load_words(load), due_words(load)))) for load in loads)
    heads = (day_head_words(load, picture.now.date()) for load in loads)
    return (*columns([*zip(heads, said, strict=True)]), later_words(picture, loads), rush_words(picture), *WHY_ROOM)
