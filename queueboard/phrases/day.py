"""The day in words: the line on top, the runs in order, what leaves, who is waited for, what changed."""

from datetime import datetime

from queueboard.edges.trial import Half
from queueboard.phrases.boxes import WORKING_OUT, ready_words, standing_words, waits_words
from queueboard.phrases.dates import many, time_words, when_words
from queueboard.phrases.knives import found_words, knife_line, wish_in_capitals
from queueboard.settings.rules import knife_minutes, knife_process, minutes_of
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, DayLine, Picture
from queueboard.values.knife import Knife
from queueboard.values.plan import OrderChange, Run


def day_line_words(line: DayLine, found: int = 0, *, working_out: bool = False) -> tuple[str, ...]:
    """The parts of the line on top of the board; what counts zero is left out, but for the bench and today.

    found: knives that are here and in no box. working_out: the plan is still that of a moment ago.
    """
    counted = (
        (line.labels_due, f"labels {line.labels_due}"),
        (line.late, f"LATE {line.late}"),
        (line.will_be_late, f"WILL BE LATE {line.will_be_late}"),
        (line.tight, f"TIGHT {line.tight}"),
        (line.waiting, f"WAIT {line.waiting}"),
        (found, f"FOUND {found}"),
    )
    return (
        f"bench {line.bench_minutes_left} min",
        f"work {WORKING_OUT}" if working_out else f"work {line.work_minutes_today} min",
        f"leaves today {line.leaves_today}",
        *(words for count, words in counted if count),
    )


def fits_words(picture: Picture) -> str:
    """How far the bench reaches today: all 120 min of work fit today; 250 of 663 min of work fit today.

    What boxes in the door that are not opened should take is counted, and named: 42 min of it not opened.
    """
    unopened, fits = (picture.plan.unopened_seconds + 30) // 60, picture.day_line.work_minutes_today
    whole = max(fits, (sum(run.end_second - run.start_second for run in picture.plan.runs) + 30) // 60 + unopened)
    if not whole:
        return "no work for the bench"
    said = f"all {whole} min of work fit today" if fits == whole else f"{fits} of {whole} min of work fit today"
    return f"{said}, {unopened} min of it not opened" if unopened else said


def knife_by_id(picture: Picture) -> dict[int, Knife]:
    """Every knife of the picture by its id, for the runs of the plan."""
    return {knife.id: knife for box in picture.boxes for knife in box.knives}


def runs_today(picture: Picture) -> tuple[Run, ...]:
    """The runs under way and those that start today, in order."""
    return tuple(run for run in picture.plan.runs if _is_today(run, picture))


def runs_later(picture: Picture) -> tuple[Run, ...]:
    """The runs that start on a later day, or beyond the days planned ahead."""
    return tuple(run for run in picture.plan.runs if not _is_today(run, picture))


def _is_today(run: Run, picture: Picture) -> bool:
    if run.under_way is not None:
        return True
    return run.start is not None and run.start.astimezone(picture.now.tzinfo).date() == picture.now.date()


def clock_words(run: Run, now: datetime, bench_share: float = 1.0) -> str:
    """08:00-08:25; with its day when it is not today; a run over a break says so: 10:11-12:32 (with the break).

    bench_share: how much of the bench time turns into planned work, above 0; a slow day is no break.
    """
    if run.start is None or run.end is None:
        return "not within the days planned ahead"
    start, end = run.start.astimezone(now.tzinfo), run.end.astimezone(now.tzinfo)
    begins = time_words(start) if start.date() == now.date() else when_words(start, now)
    ends = time_words(end) if end.date() == start.date() else when_words(end, now)
    bench_seconds = run.minutes * 60 + run.set_up_seconds
    broken = start.date() == end.date() and end.timestamp() - start.timestamp() > bench_seconds / bench_share + 60
    return f"{begins}-{ends}" + (" (with the break)" if broken else "")


def belts_words(process: str, settings: Settings) -> str:
    """The belts of a process in the order of use, then its finish: P240 > P400 > 16 um, felt wheel."""
    known = next((p for p in settings.processes if p.name == process), None)
    if known is None:
        return ""
    return ", ".join(filter(None, (" > ".join(belt.label for belt in known.belts), known.finish)))


def run_words(run: Run, picture: Picture) -> str:
    """08:00-08:25 plain, 5 knives: due by today."""
    clock = clock_words(run, picture.now, picture.minutes.day_yield.mean)
    return f"{clock} {run.process}, {many(len(run.knife_ids), 'knife')}: {run.why.value}"


def run_minutes_words(run: Run) -> str:
    """22 min hands-on, set-up 90 s, handling 10 min; without the set-up where the belts are up already."""
    set_up = f"set-up {run.set_up_seconds} s, " if run.set_up_seconds else ""
    return f"{run.minutes} min hands-on, {set_up}handling {run.handling_minutes} min"


def run_knife_words(knife: Knife, picture: Picture) -> str:
    """One knife of a run: 417-3 REDO chef 20 cm, black handle (5 min, dull; rust freckles) WISH: KEEP THE PATINA."""
    minutes = learned_minutes(knife, picture)
    came_in = "; ".join(filter(None, (knife.condition.value, found_words(knife))))
    known = f"{minutes} min, {came_in}" if minutes is not None else came_in
    half = half_words(knife, picture)
    trial = f" TRIAL: {half}" if half else ""
    return f"{knife_line(knife, picture.settings)} ({known}){trial} {wish_in_capitals(knife)}".rstrip()


def half_words(knife: Knife, picture: Picture) -> str:
    """Which half of a belt trial a knife is in, as it is done at the bench: without P400; empty when it is in none."""
    drawn = picture.half_of(knife)
    if drawn is None:
        return ""
    return f"{'with' if drawn.half is Half.WITH else 'without'} {drawn.belt}"


def learned_minutes(knife: Knife, picture: Picture) -> int | None:
    """Hands-on minutes of a knife as the shop has learned them, half a minute up; None where the shop declines it."""
    settings = picture.settings
    if minutes_of(settings, knife.kind, knife.edge, knife.condition) is None:
        return None
    factor = picture.minutes.learned.processes[settings.processes.index(knife_process(settings, knife))]
    return (factor.learned(60 * knife_minutes(settings, knife)) + 30) // 60


def leaves_today(picture: Picture) -> tuple[BoxPicture, ...]:
    """Boxes whose ship-by is today and that are still here, the earliest cut-off first."""
    here = (box for box in picture.boxes if not box.box.announced)
    return tuple(box for box in here if box.ship_by is not None and box.ship_by.date() == picture.now.date())


def leave_words(box: BoxPicture) -> str:
    """One box that leaves today: 417 by 15:45, 11 of 13 ready, wrapped, parcel: Maren Tallis."""
    by = f" by {time_words(box.ship_by)}" if box.ship_by is not None else ""
    parts = dict.fromkeys((ready_words(box), standing_words(box), box.box.goes_by.value))
    return f"{box.box.number}{by}, {', '.join(parts)}: {box.customer.name}"


def waiting_boxes(picture: Picture) -> tuple[BoxPicture, ...]:
    """Boxes that wait, or hold a knife that waits; in the picture's order."""
    return tuple(box for box in picture.boxes if box.box.waiting_for is not None or box.waiting)


def waiting_words(box: BoxPicture, now: datetime) -> str:
    """One box that waits: 417 yes to the estimate, 3 days: 0555 014 417, Maren Tallis."""
    phone = f"{box.customer.phone}, " if box.customer.phone else ""
    return f"{box.box.number} {waits_words(box, now)}: {phone}{box.customer.name}"


def change_words(change: OrderChange) -> str:
    """What changed since the day list was fixed: 417-3: new, at the end."""
    return f"{change.tag}: {change.what.value}"
