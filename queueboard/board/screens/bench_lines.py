"""The lines of the bench screen, section by section."""

import textwrap
from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime

from textual.content import Content

from queueboard.board.headed import HEAD
from queueboard.board.screens.box_list import Line
from queueboard.papers.text import columns
from queueboard.phrases.bars import FULL
from queueboard.phrases.chart import RANGE_WORDS, chart_lines, chart_words, range_lines
from queueboard.phrases.dates import date_words, many
from queueboard.phrases.edges import (
    BELT_WORDS,
    belt_cells,
    change_strips,
    change_words,
    lasted_apart_words,
    lasted_words,
    least_words,
    progress_lines,
    result_lines,
    rule_words,
    since_words,
    trial_strips,
    verdict_words,
    wobble_words,
)
from queueboard.phrases.strips import STRIP_WORDS
from queueboard.shop.belt_counts import BeltPlace
from queueboard.shop.comparing import Worked
from queueboard.shop.edges_seen import ChangeRow, ChartSeen
from queueboard.shop.trial_results import TrialSeen
from queueboard.shop.wobbling import WobbleNow
from queueboard.values.study import TIMES, Study

_BEHIND_CURSOR = "\n     "
"""What stands before each further row of a drawing: the first one stands behind the cell of the cursor."""


def belt_lines(places: Sequence[BeltPlace], now: datetime) -> Iterator[Line]:
    """Each belt step under the name of its process."""
    yield Line(id="said", text=Content(f"{FULL} {BELT_WORDS}"))
    process = ""
    rows = columns([belt_cells(place, now) for place in places]) if places else ()
    for place, row in zip(places, rows, strict=True):
        if place.process != process:
            process = place.process
            yield Line(id=f"process {process}", text=Content.styled(process, HEAD))
        yield Line(id=f"{process}/{place.step}", text=Content(f"  {row}"), stops=True)


def tester_lines(wobble: WobbleNow, study: Study | None, now: datetime, width: int) -> Iterator[Line]:
    """The figure with its standing, the study under way, and what it is for."""
    yield _line("wobble", wobble_words(wobble, now), width, stops=True)
    if study is not None:
        read = sum(map(len, study.readings_gf))
        whole = study.knives * TIMES
        yield _line("study", f"A study is under way: {read} of {whole} readings. + goes on, - begins it over.", width)
    else:
        yield _line("study", "+ begins a study: ten finished knives, one marked spot, three readings each.", width)
    said = (
        "The wobble is how far readings of one spot lie apart though nothing about the edge has changed. "
        "What is nearer together than two wobbles may be the same. Study it again when filament or tester changes."
    )
    yield _line("said", f"\n{said}", width)


def trial_lines(trials: Iterable[TrialSeen], now: datetime, width: int) -> Iterator[Line]:
    """Each trial: its sentence, its rule, how far it is, and the figures once both halves are there."""
    none = True
    for seen in trials:
        none = False
        trial = seen.trial
        begun = date_words(trial.begun_at.astimezone(now.tzinfo).date(), now.date())
        head = f"{trial.kind}: with and without {trial.belt} of {trial.process}, since {begun}"
        head += "" if trial.ended_at is None else " · ended"
        rows = [_wrap(verdict_words(seen), width, "  "), _wrap(rule_words(seen), width, "  ")]
        rows += [
            *(f"  {line}" for line in progress_lines(seen)),
            *(_wrap(row, width, "  ") for row in result_lines(seen)),
        ]
        rows += [f"  {line}" for line in trial_strips(seen, width - 4)]
        text = Content.assemble((f"{head}\n", "bold"), "\n".join(rows), "\n")
        yield Line(id=f"trial {trial.id}", text=text, stops=True)
    if none:
        yield _line("none", "No belt trial yet. + writes a rule down and begins one.", width, stops=True)


def change_lines(worked: Worked, width: int) -> Iterator[Line]:
    """All knives, then by kind and by spot; then how the edges lasted that came back."""
    seen, lasted = worked.changes, worked.lasted
    said = (
        "What the work did to the same spots of the same knives. Dull knives always gain: this says nothing of one "
        f"belt; a trial does. Drawn: {STRIP_WORDS}."
    )
    yield _line("said", said, width, stops=True)
    groups: tuple[tuple[str, str, tuple[ChangeRow, ...]], ...] = (
        ("", "", (seen.whole,)),
        ("by kind, one pair a knife", "kind", seen.kinds),
        ("by spot", "spot", seen.spots),
    )
    for name, what, rows in groups:
        if name and rows:
            yield Line(id=name, text=Content.styled(name, HEAD))
        for row in rows:
            yield _line(f"{name}/{row.name}", change_words(row), width, indent="  ")
            if drawn := change_strips(row, width - 6):
                yield Line(id=f"{name}/{row.name}/drawn", text=Content(f"    {_BEHIND_CURSOR.join(drawn)}"))
        if least := least_words(rows, what):
            yield _line(f"{name}/least", least, width, indent="  ")
    yield Line(id="lasted", text=Content.styled("how the edge lasted: read when it left, and when it came back", HEAD))
    yield _line("lasted/all", lasted_words(lasted.whole), width, indent="  ", stops=True)
    for place, (first, second, apart) in enumerate(lasted.halves):
        for line, words in enumerate((lasted_words(first), lasted_words(second), lasted_apart_words(apart))):
            if words:
                yield _line(f"lasted/{place}/{line}", words, width, indent="  ")


def chart_section(charts: Iterable[ChartSeen], now: datetime, width: int, height: int) -> Iterator[Line]:
    """One chart a process."""
    none = True
    for seen in charts:
        none = False
        knives = many(len(seen.readings_gf), "knife")
        head = _wrap(f"{seen.process}: {knives} read{since_words(seen, now)}; gf, mean of the spots", width)
        drawn = chart_lines(seen.readings_gf, seen.limits, seen.marks, width=width, height=height) if seen.tags else ()
        words = chart_words(len(seen.readings_gf), seen.limits, seen.marks, seen.stable_knives, width=width)
        steps = range_lines(seen.readings_gf, seen.limits, width=width) if seen.tags else ()
        below = (RANGE_WORDS, *steps) if steps else ()
        text = Content.assemble((f"{head}\n", "bold"), "\n".join((*drawn, *below, _wrap(words, width))), "\n")
        yield Line(id=f"chart {seen.process}", text=text, stops=True)
    if none:
        yield _line("none", "No knife was read after the work yet, so there is nothing to draw.", width, stops=True)


def _line(name: str, text: str, width: int, *, stops: bool = False, indent: str = "") -> Line:
    return Line(id=name, text=Content(_wrap(text, width, indent)), stops=stops)


def _wrap(text: str, width: int, indent: str = "") -> str:
    gap = "\n" if text.startswith("\n") else ""
    return gap + "\n".join(
        textwrap.wrap(text.strip(), width - 2, initial_indent=indent, subsequent_indent=f"{indent}  ")
    )
