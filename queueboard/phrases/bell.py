"""The bell in words: what is asked before a walk-in is taken in, and what the bell did to the clock of a run."""

from collections.abc import Sequence
from datetime import datetime

from queueboard.intake.lines import KnifeLine
from queueboard.money.estimate import estimate
from queueboard.phrases.dates import day_words, many, minutes_words, promise_words, time_words
from queueboard.phrases.intake import line_words, lines_sum
from queueboard.phrases.money import money
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture
from queueboard.values.measured import BenchRun
from queueboard.values.new import NewPromise
from queueboard.words import CameBy, GoesBy

KEPT = "What was typed at the bell is kept; the bell goes on with it."


def knives_lines(lines: Sequence[KnifeLine], counted: int | None, settings: Settings) -> tuple[str, ...]:
    """Each line as it was understood, people's words last; then 4 of 4 typed · 31 min · 35.00 EUR."""
    return (*(line_words(line, settings) for line in lines), lines_sum(lines, counted, settings))


def asked_words(lines: Sequence[KnifeLine], told: NewPromise | None, settings: Settings, now: datetime) -> str:
    """The price and what would be told, as a question (41.00 EUR, today 16:00?), or that no date is."""
    knives = [line.knife for line in lines for _ in range(line.count)]
    sums = estimate(settings, knives, came_by=CameBy.COUNTER)
    return f"{money(sums.total_cents, settings)}, {told_day_words(told, now)}?"


def told_day_words(told: NewPromise | None, now: datetime) -> str:
    """Today 16:00; Thursday; no date."""
    if told is None:
        return "no date"
    day = day_words(told.day, now.date())
    return day if told.at is None else f"{day} {time_words(told.at)}"


def taken_in_words(box: BoxPicture, now: datetime) -> str:
    """What is said back at the place that was left: 217 is in, 4 knives, ready by today 16:00: Ms Verrin."""
    told = promise_words(box.promise, now.date(), GoesBy.PICK_UP)
    return f"{box.box.number} is in, {many(len(box.knives), 'knife')}, {told}: {box.customer.name}"


def paused_words(run: BenchRun) -> str:
    """What is said when the bell stops the clock of the person's own run."""
    return f"The clock of your run of {run.process} stands still until you are back."


def goes_on_words(run: BenchRun, now: datetime) -> str:
    """Your run of plain goes on; its clock stood still for 4 min. run: as it was paused."""
    stood = 0 if run.paused_at is None else max(0, int((now - run.paused_at).total_seconds())) // 60
    return f"Your run of {run.process} goes on; its clock stood still for {minutes_words(stood)}."


def ended_meanwhile_words(run: BenchRun) -> str:
    """What is said when the run was changed or finished by somebody else while the bell was answered."""
    return f"Your run of {run.process} was changed meanwhile: look at it on the day list."
