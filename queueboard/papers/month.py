"""The figures of a month as text and as plain data."""

from queueboard.figures.month import Debt, Kept, KindFigures, MonthFigures
from queueboard.papers.facts import Fact
from queueboard.papers.text import columns, page, section
from queueboard.phrases.month import (
    KIND_HEAD,
    NOTHING,
    WHAT_COUNTS,
    day_bars,
    figure_rows,
    kind_cells,
    money_rows,
    month_words,
)
from queueboard.shop.picture import Picture

_RIGHT = frozenset({1, 2, 3, 4})


def month_sheet(figures: MonthFigures, picture: Picture) -> str:
    """The whole month, at most 80 cells wide but for names."""
    settings, today = picture.settings, picture.now.date()
    return page(
        (f"{settings.name}, {month_words(figures.month, today)}",),
        section("FIGURES", columns(figure_rows(figures, settings))),
        section(f"MONEY, {settings.currency}", columns(money_rows(figures, today), right=frozenset({1}))),
        section("KNIVES BY KIND, AND MINUTES", _kinds(figures), nothing=NOTHING),
        section("KNIVES A DAY", day_bars(figures, today)),
        ("", *WHAT_COUNTS),
    )


def _kinds(figures: MonthFigures) -> tuple[str, ...]:
    rows = [kind_cells(kind) for kind in figures.kinds]
    return columns([KIND_HEAD, *rows], right=_RIGHT) if rows else ()


def month_facts(figures: MonthFigures, picture: Picture) -> dict[str, Fact]:
    """The same for scripts."""
    return {
        "shop": picture.settings.name,
        "now": picture.now.isoformat(),
        "currency": picture.settings.currency,
        "month": f"{figures.month.first:%Y-%m}",
        "knives": figures.knives,
        "kinds": [_kind(kind) for kind in figures.kinds],
        "days": [{"day": day.isoformat(), "knives": count} for day, count in figures.a_day],
        "boxes": figures.boxes,
        "box_knives": figures.box_knives,
        "box_cents": figures.box_cents,
        "on_time": {"first_told": _kept(figures.first_told), "last_told": _kept(figures.last_told)},
        "tested": figures.tested,
        "not_ok": figures.not_ok,
        "call_backs": figures.call_backs,
        "declined": figures.declined,
        "belts_fitted": figures.belts_fitted,
        "money": [
            {"way": way.way.value, "in_cents": way.in_cents, "back_cents": way.back_cents} for way in figures.ways
        ],
        "in_cents": figures.in_cents,
        "owed_cents": figures.owed_cents,
        "best": _debt(figures.best),
        "worst": _debt(figures.worst),
    }


def _kind(kind: KindFigures) -> dict[str, Fact]:
    timed = kind.timed
    return {
        "kind": kind.kind,
        "knives": kind.knives,
        "timed": timed,
        "seconds_each": round(kind.measured_seconds / timed, 1) if timed else None,
        "listed_seconds_each": round(kind.listed_seconds / timed, 1) if timed else None,
    }


def _kept(kept: Kept) -> dict[str, Fact]:
    return {"told": kept.told, "kept": kept.kept}


def _debt(debt: Debt | None) -> dict[str, Fact] | None:
    return None if debt is None else {"customer": debt.customer.name, "cents": debt.cents}
