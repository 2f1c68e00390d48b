"""The figures of a month, as text that a person can read and as facts by their schema."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from queueboard.figures.evening import Placed
from queueboard.figures.month import Debt, Kept, Month, MonthFigures, TimedRun, month_figures
from queueboard.money.bill import Bill
from queueboard.papers.month import month_facts, month_sheet
from queueboard.phrases.month import average_words, day_bars, percent_words
from queueboard.priced_words import MoneySort
from queueboard.words import Column, PayWay
from tests.cli.schema import valid_facts
from tests.figures.test_evening import paid
from tests.figures.test_month import EMPTY, NOVEMBER, at
from tests.kept import assert_kept
from tests.pictures import HOSTILE_NAMES, customer, knife, picture


def busy_month(name: str = "[red]Old Quay Inn[/]") -> MonthFigures:
    """A month with a figure in every place."""
    inn = customer(name)
    kinds = ("chef",) * 9 + ("bread",) * 3 + ("a kind with a long name",)
    ready = tuple(Placed(at=at(2 + n % 5), knife=knife(f"417-{n}", kind=kind)) for n, kind in enumerate(kinds * 3, 1))
    gone = tuple(knife(f"417-{n}", column=Column.GONE, price_cents=950) for n in range(1, 8))
    seen = replace(
        EMPTY,
        ready=ready,
        closed=(Bill(knives=gone), Bill(knives=gone[:3])),
        tested=tuple((n, n > 2) for n in range(40)),
        call_backs=1,
        declined=2,
        runs=(TimedRun(hands_on_seconds=1900, knives=(("chef", 360), ("chef", 360), ("bread", 180))),),
        payments=((paid(9800), inn), (paid(2500, PayWay.CARD), inn), (paid(800, sort=MoneySort.REFUND), inn)),
        debts=(Debt(customer=inn, cents=97_600),),
        belts=(("cleaver", 1), ("plain", 3), ("scalloped", 1), ("serrated", 1), ("steak", 2)),
    )
    return replace(month_figures(seen), first_told=Kept(told=46, kept=41), last_told=Kept(told=46, kept=46))


def test_the_month_reads_as_kept() -> None:
    """Figures, money, kinds with their minutes, and a bar a day."""
    now = picture()

    assert_kept("paper-month", month_sheet(busy_month(), now))


def test_no_line_is_wider_than_a_small_screen() -> None:
    """All lines fit 80 columns, of which the edges of the screen and what it scrolls by take four."""
    sheet = month_sheet(busy_month(), picture())

    assert max(len(line) for line in sheet.splitlines()) <= 76


@pytest.mark.parametrize("name", HOSTILE_NAMES, ids=ascii)
def test_the_best_and_worst_account_stand_literally(name: str) -> None:
    """A name is shown as typed, on one line; JSON has it as it is."""
    now = picture()
    facts = month_facts(busy_month(name), now)
    valid_facts("month", facts)

    assert facts["best"] == {"customer": name, "cents": 11_500}
    assert len(month_sheet(busy_month(name), now).splitlines()) == len(month_sheet(busy_month(), now).splitlines())


def test_an_empty_month_says_so_without_a_division() -> None:
    """Nothing done: no averages, no percentages, no bars, and facts as documented."""
    now = picture()
    sheet = month_sheet(month_figures(EMPTY), now)

    assert "Nothing was done in this month" in sheet
    assert "no knife was tested" in sheet
    assert "█" not in sheet
    valid_facts("month", month_facts(month_figures(EMPTY), now))


@pytest.mark.parametrize(
    ("part", "whole", "said"),
    [(0, 3, "0 of 3 (0 %)"), (1, 1000, "1 of 1000 (below 1 %)"), (999, 1000, "999 of 1000 (above 99 %)")],
)
def test_only_nothing_is_nothing_and_only_all_is_all(part: int, whole: int, said: str) -> None:
    """One broken date in a thousand is not rounded away."""
    assert percent_words(part, whole) == said
    assert percent_words(whole, whole).endswith("(100 %)")


@pytest.mark.parametrize(("whole", "count", "said"), [(22, 3, "7.3"), (1, 4, "0.3"), (0, 5, "0.0"), (5, 0, "-")])
def test_an_average_has_one_digit_halves_up(whole: int, count: int, said: str) -> None:
    """22 in 3 is 7.3; a quarter is 0.3; of nothing there is none."""
    assert average_words(whole, count) == said


def test_bars_end_today_and_any_knife_has_a_cell() -> None:
    """The fullest day takes the whole bar, one knife of a hundred a cell, a day to come no line."""
    few, most = date(2026, 11, 3), date(2026, 11, 4)
    figures = replace(
        month_figures(EMPTY), a_day=tuple((day, {few: 1, most: 100}.get(day, 0)) for day in NOVEMBER.days)
    )

    bars = day_bars(figures, most + timedelta(days=1))

    assert [bar.count("█") for bar in bars] == [0, 0, 1, 40, 0]
    assert len(day_bars(figures, Month(date(2026, 12, 1)).first)) == 30
