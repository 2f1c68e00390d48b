"""A month in words: knives, boxes, dates kept, rework, minutes, money."""

from datetime import date

from queueboard.clean import cell_text
from queueboard.figures.month import Debt, Kept, KindFigures, Month, MonthFigures
from queueboard.phrases.bars import bar
from queueboard.phrases.dates import many
from queueboard.phrases.money import amount, money
from queueboard.phrases.typed import MONTHS, WEEKDAYS
from queueboard.settings.shapes import Settings

BAR_CELLS = 40
"""Cells for the day with most knives."""
NOTHING = "Nothing was done in this month, or nothing of it was written down."
WHAT_COUNTS = (
    "A knife counts on the day on which it was ready first, a box when the last",
    "of it was handed over. On time is judged for dates whose cut-off lies in",
    "the month and is over: a parcel gone by the day of its cut-off, a pick-up",
    "ready by it. A date told later takes the place of one before; both are",
    "judged here. Minutes of a run are shared out over its knives as the shop's",
    "list has them.",
)


def month_words(month: Month, now: date) -> str:
    """November 2026; November 2026, so far."""
    so_far = ", so far" if month.first <= now < month.end else ""
    return f"{MONTHS[month.first.month - 1]} {month.first.year}{so_far}"


def percent_words(part: int, whole: int) -> str:
    """41 of 46 (89 %); whole: at least 1."""
    return f"{part} of {whole} ({_percent(part, whole)} %)"


def _percent(part: int, whole: int) -> str:
    """Whole percent; all is said only of all, and nothing only of nothing."""
    rounded = (200 * part + whole) // (2 * whole)
    if part < whole and rounded == 100:
        return "above 99"
    return "below 1" if part and not rounded else str(rounded)


def kept_words(kept: Kept) -> str:
    """41 of 46 (89 %); no date was due."""
    return percent_words(kept.kept, kept.told) if kept.told else "no date was due"


def average_words(whole: int, count: int) -> str:
    """A quotient with one digit behind the point, halves up: 7.3; - for nothing."""
    if not count:
        return "-"
    tenths = (20 * whole + count) // (2 * count)
    return f"{tenths // 10}.{tenths % 10}"


def figure_rows(figures: MonthFigures, settings: Settings) -> tuple[tuple[str, str], ...]:
    """The figures with their names, in the order of the sheet."""
    return (
        ("knives ready", str(figures.knives)),
        ("boxes handed over", boxes_words(figures, settings)),
        ("on time, first date told", kept_words(figures.first_told)),
        ("on time, last date told", kept_words(figures.last_told)),
        ("rework", rework_words(figures)),
        ("call-backs", many(figures.call_backs, "box")),
        ("declined", many(figures.declined, "knife")),
        *belt_rows(figures),
    )


BELTS_NAMED = 3
"""As many processes as a line has room for; the others are counted together."""


def belt_rows(figures: MonthFigures) -> tuple[tuple[str, str], ...]:
    """7, 2.1 per 100 knives; below it what they were put up for: plain 4, serrated 2, others 1."""
    belts = figures.belts_fitted
    per_hundred = f", {average_words(100 * belts, figures.knives)} per 100 knives" if figures.knives else ""
    most = sorted(figures.belts, key=lambda pair: -pair[1])
    others = ("others", sum(count for _, count in most[BELTS_NAMED:]))
    named = ", ".join(f"{process} {count}" for process, count in (*most[:BELTS_NAMED], others) if count)
    return (("new belts", f"{belts}{per_hundred}"), *((("  put up for", named),) if named else ()))


def boxes_words(figures: MonthFigures, settings: Settings) -> str:
    """12, on average 7.3 knives and 61.80 EUR; none."""
    boxes = figures.boxes
    if not boxes:
        return "none"
    each = money((2 * figures.box_cents + boxes) // (2 * boxes), settings)
    return f"{boxes}, on average {average_words(figures.box_knives, boxes)} knives and {each}"


def rework_words(figures: MonthFigures) -> str:
    """9 of 309 (3 %) knives tested had a test not OK; no knife was tested."""
    if not figures.tested:
        return "no knife was tested"
    return f"{percent_words(figures.not_ok, figures.tested)} knives tested had a test not OK"


def money_rows(figures: MonthFigures, now: date) -> tuple[tuple[str, str, str], ...]:
    """The money of the month, way by way, and what is owed at its end: a name, an amount, and what belongs to it."""
    when = "now" if now < figures.month.end else "at its end"
    return (
        *((way.way.value, amount(way.in_cents - way.back_cents), _back(way.back_cents)) for way in figures.ways),
        ("came in", amount(figures.in_cents), ""),
        (f"owed {when}", amount(figures.owed_cents), ""),
        ("paid most", *account_cells(figures.best)),
        ("owes most", *account_cells(figures.worst)),
    )


def _back(back_cents: int) -> str:
    return f"{amount(back_cents)} given back is taken off" if back_cents else ""


def account_cells(debt: Debt | None) -> tuple[str, str]:
    """An amount and whose it is; nobody."""
    return ("-", "nobody") if debt is None else (amount(debt.cents), cell_text(debt.customer.name))


KIND_HEAD = ("kind", "knives", "timed", "min each", "list says", "")


def kind_cells(kind: KindFigures) -> tuple[str, ...]:
    """One kind: its knives, those in timed runs, minutes each by the clock, minutes each by the shop's list."""
    measured, listed = minutes_each(kind.measured_seconds, kind.timed), minutes_each(kind.listed_seconds, kind.timed)
    return cell_text(kind.kind), str(kind.knives), str(kind.timed), measured, listed, ""


def minutes_each(seconds: float, knives: int) -> str:
    """Minutes a knife with one digit behind the point; - where none was timed."""
    return f"{seconds / 60 / knives:.1f}" if knives else "-"


def day_bars(figures: MonthFigures, today: date) -> tuple[str, ...]:
    """For each day until today its name, its knives, and a bar: Mon  9    12 ████; any knife has at least one cell."""
    most = max((count for _, count in figures.a_day), default=0)
    return tuple(
        f"{WEEKDAYS[day.weekday()][:3]} {day.day:>2}  {count:>4} {bar(count, most, BAR_CELLS)}".rstrip()
        for day, count in figures.a_day
        if day <= today
    )
