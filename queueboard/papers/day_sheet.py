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
from queueboard.slotted import dataclass
from queueboard.words import LabelWord

WORK, LEAVES = "WORK IN THIS ORDER", "LEAVES TODAY"
NO_WORK = "Nothing is left for the bench today."
WEEK_AHEAD, AT_THE_BENCH = "THE WEEK AHEAD", "AT THE BENCH"
EMPTY_BOARD = "No box is open. Receive one on the board: `queueboard`, then r."


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One heading of the sheet with its lines."""

    heading: str
    lines: tuple[str, ...]
    nothing: str = ""
    """What stands there when there are no lines; without it the heading is left out too."""
    tick: bool = False
    """True for lines with a place for a tick."""


def day_sheet(picture: Picture) -> str:
    """The whole day on paper; a few lines when no box is open."""
    if not picture.boxes:
        return page(day_head(picture), ("", EMPTY_BOARD))
    work = Part(heading=WORK, lines=tuple(_runs(picture)), nothing=NO_WORK)
    changed, *rest = day_parts(picture)
    return page(
        day_head(picture),
        *(_section(part) for part in (changed, work, *rest)),
        ("", NO_ADVICE, "", *(["." * RULE_WIDTH] * 3)),
    )


def day_head(picture: Picture) -> tuple[str, ...]:
    """The lines on top: shop and day, how much work fits, what overloads the bench."""
    bench, _, *rest = day_line_words(picture.day_line)
    overloads = heaviest_overload_words(picture)
    return (
        sheet_title(picture),
        "   ".join((bench, fits_words(picture), *rest)),
        *((overloads,) if overloads else ()),
    )


def day_parts(picture: Picture) -> tuple[Part, ...]:
    """Everything below the head but for the work itself, which comes behind the first part."""
    late = tuple(late_words(box, picture.now) for box in late_boxes(picture))
    waited = tuple(waiting_words(box, picture.now) for box in waiting_boxes(picture))
    leaves = tuple(map(leave_words, leaves_today(picture)))
    return (
        Part(heading="CHANGED SINCE THE ORDER WAS FIXED", lines=tuple(map(change_words, picture.plan.changes))),
        Part(heading="LATER", lines=_later(picture)),
        Part(heading=LEAVES, lines=leaves, nothing="Nothing.", tick=True),
        Part(heading="LATE, WILL BE, OR TIGHT", lines=late),
        Part(heading="RETURN LABELS", lines=tuple(_labels(picture)), tick=True),
        Part(heading="WAITED FOR", lines=waited, tick=True),
        Part(heading="EXPECTED BY MAIL", lines=tuple(_expected(picture)), tick=True),
        Part(heading=WEEK_AHEAD, lines=_week(picture)),
        Part(heading=AT_THE_BENCH, lines=BENCH),
        Part(heading="AT THE END OF THE DAY", lines=END_OF_DAY, tick=True),
    )


def _section(part: Part) -> tuple[str, ...]:
    return section(part.heading, boxes_to_tick(part.lines) if part.tick else part.lines, nothing=part.nothing)


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
