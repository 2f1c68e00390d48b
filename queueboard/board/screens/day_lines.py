"""The lines of the day list: today's runs, where today ends, what leaves, labels, who and what is waited for, later."""

from collections.abc import Iterator

from rich.cells import cell_len
from textual.content import Content

from queueboard.board.headed import HEAD
from queueboard.board.screens.box_list import Line
from queueboard.clean import cell_text
from queueboard.phrases.announced import coming_words, expected_today, not_come_boxes
from queueboard.phrases.bench import run_head_words
from queueboard.phrases.cautions import BENCH_SHORT
from queueboard.phrases.day import (
    belts_words,
    day_line_words,
    fits_words,
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
from queueboard.phrases.late import heaviest_overload_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.plan import Run
from queueboard.words import LabelWord, OrderWord

ASIDE = 56
"""Cells of a knife's words beside which the customers of a run stand under each other; longer ones push theirs on."""


def day_lines(picture: Picture) -> tuple[Line, ...]:
    """All lines of the day list, in order."""
    return (
        *_changes(picture),
        *_runs(runs_today(picture), picture),
        _today_ends(picture),
        *_section("leaves today", "Leaves today", tuple(_leaves(picture))),
        *_section("labels", "Return labels due", tuple(_labels(picture))),
        *_section("waiting", "Waiting for an answer", tuple(_waiting(picture))),
        *_section("expected", "Expected by mail", tuple(_expected(picture))),
        *_section("later", "The days after", tuple(_runs(runs_later(picture), picture))),
    )


def run_id(run: Run) -> str:
    """What a run is known by while its knives stay together."""
    return f"run {run.knife_ids[0]} {run.process}"


def _changes(picture: Picture) -> Iterator[Line]:
    said = []
    for word in OrderWord:
        tags = [change.tag for change in picture.plan.changes if change.what is word]
        if tags:
            said.append(f"    {word.value}: {', '.join(tags)}\n")
    if said:
        yield Line(id="changes", text=Content("Changed since this order was fixed (o sorts again):\n" + "".join(said)))


def _runs(runs: tuple[Run, ...], picture: Picture) -> Iterator[Line]:
    for run in runs:
        owners = {knife.id: (knife, box) for box in picture.boxes for knife in box.knives if knife.id in run.knife_ids}
        knives = [owners[knife_id] for knife_id in run.knife_ids if knife_id in owners]
        said = [run_knife_words(knife, picture) for knife, _ in knives]
        room = min(ASIDE, max(map(cell_len, said), default=0))
        lines = [
            f"\n    {words}{' ' * (room - cell_len(words))} · {cell_text(box.customer.name)}"
            for words, (_, box) in zip(said, knives, strict=True)
        ]
        yield Line(
            id=run_id(run),
            stops=True,
            mentions=frozenset(box.box.number for _, box in knives),
            text=Content.assemble(
                (run_head_words(run, picture), "bold"),
                f"\n    {belts_words(run.process, picture.settings)} · {run_minutes_words(run)}",
                *lines,
                "\n",
            ),
        )


def _today_ends(picture: Picture) -> Line:
    line = picture.day_line
    spare = line.bench_minutes_left - line.work_minutes_today
    if not picture.plan.runs:
        said = "Nothing waits for the bench. . goes back, r receives a box."
    else:
        said = f"today ends here · {line.work_minutes_today} of {line.bench_minutes_left} bench minutes, {spare} free"
    return Line(id="today ends", text=Content(f"──── {said} ────\n"))


def _section(id: str, title: str, lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """A heading with its lines; nothing at all when there are none."""
    return (Line(id=id, text=Content.assemble((title, HEAD))), *lines) if lines else ()


def _box_line(kind: str, box: BoxPicture, said: str) -> Line:
    return Line(id=f"{kind} {box.box.id}", number=box.box.number, text=Content(f"  {cell_text(said)}"))


def _leaves(picture: Picture) -> Iterator[Line]:
    for box in leaves_today(picture):
        yield _box_line("leaves", box, leave_words(box))


def _labels(picture: Picture) -> Iterator[Line]:
    for due in picture.labels_due:
        if due.word is not LabelWord.GOOD:
            box = picture.box_by_id(due.box_id)
            said = f"{label_due_words(due, picture.now.date())} · {label_wants(due, picture)}"
            yield _box_line("label", box, f"{box.box.number} {said}: {box.customer.name}")


def _waiting(picture: Picture) -> Iterator[Line]:
    for box in waiting_boxes(picture):
        yield _box_line("waits", box, f"WAIT {waiting_words(box, picture.now)}")


def _expected(picture: Picture) -> Iterator[Line]:
    for box in (*not_come_boxes(picture), *expected_today(picture)):
        yield _box_line("expected", box, coming_words(box, picture.now))


def handling_minutes(picture: Picture) -> int:
    """Minutes off the bench for the knives of today's runs."""
    return sum(run.handling_minutes for run in runs_today(picture))


def day_heading(picture: Picture) -> Content:
    """What the day holds, handling minutes apart, what overloads the bench, and the bench's cautions."""
    bench, _, *rest = day_line_words(picture.day_line)
    work = " · ".join((bench, fits_words(picture), f"handling {handling_minutes(picture)} min"))
    overloads = heaviest_overload_words(picture)
    return Content.assemble(
        f"Day list · {work}\n{' · '.join(rest)}\n", (f"{overloads}\n" if overloads else "", "bold"), BENCH_SHORT
    )
