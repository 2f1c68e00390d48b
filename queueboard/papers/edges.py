"""Comparisons and charts of readings as text and as plain data; forces are in grams-force, intervals 95 %."""

from collections.abc import Mapping
from textwrap import wrap

from queueboard.edges.change import Change
from queueboard.edges.halves import Difference
from queueboard.edges.summary import Interval
from queueboard.edges.trial import Half
from queueboard.papers.facts import Fact
from queueboard.papers.text import page, section
from queueboard.phrases.chart import RANGE_WORDS, chart_lines, chart_words, range_lines
from queueboard.phrases.dates import many
from queueboard.phrases.edges import (
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
from queueboard.shop.comparing import Charted, Compared
from queueboard.shop.edges_seen import ChangeRow, ChartSeen
from queueboard.shop.lasting import LastedRow
from queueboard.shop.trial_results import TrialSeen
from queueboard.shop.wobbling import WobbleNow

CHART_WIDTH, CHART_HEIGHT = 72, 13
NO_VERDICT = "Dull knives always gain: before and after says nothing of one belt; a trial does."


def compare_sheet(seen: Compared) -> str:
    """Before and after, how the edges lasted, and the belt trials."""
    changes, lasted = seen.worked.changes, seen.worked.lasted
    least = (least_words(changes.kinds, "kind"), least_words(changes.spots, "spot"))
    rows = (
        line
        for row in (changes.whole, *changes.kinds, *changes.spots)
        for line in (change_words(row), *(f"  {drawn}" for drawn in change_strips(row, CHART_WIDTH)))
    )
    halves = (
        words
        for first, second, apart in lasted.halves
        for words in (lasted_words(first), lasted_words(second), lasted_apart_words(apart))
        if words
    )
    trials = (section(f"TRIAL OF {one.trial.belt}, {one.trial.kind}", _trial_lines(one)) for one in seen.trials)
    return page(
        (wobble_words(changes.wobble, seen.now),),
        section(
            "BEFORE AND AFTER, THE SAME SPOTS", (NO_VERDICT, f"Drawn: {STRIP_WORDS}.", *rows, *filter(None, least))
        ),
        section("HOW THE EDGE LASTED", (lasted_words(lasted.whole), *halves)),
        *trials,
    )


def _trial_lines(seen: TrialSeen) -> tuple[str, ...]:
    return (
        verdict_words(seen),
        rule_words(seen),
        *progress_lines(seen),
        *result_lines(seen),
        *trial_strips(seen, CHART_WIDTH),
    )


def compare_facts(seen: Compared) -> dict[str, Fact]:
    """The same for scripts."""
    return {
        "shop": seen.settings.name,
        "now": seen.now.isoformat(),
        "wobble": _wobble(seen.worked.changes.wobble),
        "before_and_after": {
            "all": _change_row(seen.worked.changes.whole),
            "kinds": [_change_row(row) for row in seen.worked.changes.kinds],
            "spots": [_change_row(row) for row in seen.worked.changes.spots],
        },
        "lasted": {
            "all": _lasted_row(seen.worked.lasted.whole),
            "trials": [
                {"with": _lasted_row(first), "without": _lasted_row(second), "with_less_without": _difference(apart)}
                for first, second, apart in seen.worked.lasted.halves
            ],
        },
        "trials": [_trial(one) for one in seen.trials],
    }


def chart_sheet(seen: Charted) -> str:
    """One chart a process."""
    parts = []
    for one in seen.charts:
        shape = {"width": CHART_WIDTH, "height": CHART_HEIGHT}
        drawn = chart_lines(one.readings_gf, one.limits, one.marks, **shape) if one.tags else ()
        steps = range_lines(one.readings_gf, one.limits, width=CHART_WIDTH) if one.tags else ()
        drawn = (*drawn, RANGE_WORDS, *steps) if steps else drawn
        words = chart_words(len(one.readings_gf), one.limits, one.marks, one.stable_knives, width=CHART_WIDTH)
        parts.append(
            section(
                f"{one.process}: {many(len(one.tags), 'knife')} read{since_words(one, seen.now)}",
                (*drawn, *wrap(words, CHART_WIDTH)),
            )
        )
    nothing = "No knife was read after the work yet, so there is nothing to draw."
    return page((wobble_words(seen.wobble, seen.now),), *(parts or [(nothing,)]))


def chart_facts(seen: Charted) -> dict[str, Fact]:
    """The charts for scripts: a figure a knife, limits, and the knives that show a signal."""
    return {
        "shop": seen.settings.name,
        "now": seen.now.isoformat(),
        "wobble": _wobble(seen.wobble),
        "charts": [_chart(one, seen) for one in seen.charts],
    }


def _chart(one: ChartSeen, seen: Charted) -> dict[str, Fact]:
    zone, limits = seen.now.tzinfo, one.limits
    return {
        "process": one.process,
        "belt": one.belt,
        "since": None if one.since is None else one.since.astimezone(zone).isoformat(),
        "stable_knives": one.stable_knives,
        "limits": None
        if limits is None
        else {
            "low_gf": _tenth(limits.low),
            "middle_gf": _tenth(limits.middle),
            "high_gf": _tenth(limits.high),
            "most_range_gf": _tenth(limits.most_range),
        },
        "readings": [
            {
                "tag": tag,
                "mean_gf": _tenth(gf),
                "at": at.astimezone(zone).isoformat(),
                "signals": [mark.signal.value for mark in one.marks if mark.place == place],
            }
            for place, (tag, gf, at) in enumerate(zip(one.tags, one.readings_gf, one.read_at, strict=True))
        ],
    }


def _wobble(wobble: WobbleNow) -> dict[str, Fact]:
    return {
        "gf": _tenth(wobble.gf),
        "interval_gf": _ends(wobble.interval),
        "studied": wobble.studied_at is not None,
        "changed_since": wobble.changed,
    }


def _change(seen: Change | None) -> dict[str, Fact] | None:
    if seen is None:
        return None
    return {
        "mean_gf": _tenth(seen.mean_gf),
        "median_gf": _tenth(seen.median_gf),
        "percent": _tenth(seen.percent),
        "interval_gf": _ends(seen.interval),
        "by_ranks_gf": _tenth(seen.ranks.shift),
        "by_ranks_interval_gf": _ends(seen.ranks.interval),
        "by_ranks_chance": _thousandth(seen.ranks.chance),
    }


def _change_row(row: ChangeRow) -> dict[str, Fact]:
    return {"name": row.name, "pairs": row.pairs, "less": _change(row.change)}


def _lasted_row(row: LastedRow) -> dict[str, Fact]:
    return {"name": row.name, "knives": row.knives, "days": _tenth(row.days), "more": _change(row.change)}


def _difference(seen: Difference | None) -> dict[str, Fact] | None:
    if seen is None:
        return None
    return {
        "mean": _tenth(seen.mean),
        "interval": _ends(seen.interval),
        "chance": _thousandth(seen.chance),
        "by_ranks": _tenth(seen.ranks.shift),
        "by_ranks_interval": _ends(seen.ranks.interval),
        "by_ranks_chance": _thousandth(seen.ranks.chance),
    }


def _trial(one: TrialSeen) -> dict[str, Fact]:
    result, rule, enough = one.result, one.trial.rule, one.enough
    return {
        "kind": one.trial.kind,
        "process": one.trial.process,
        "belt": one.trial.belt,
        "ended": one.trial.ended_at is not None,
        "rule": {
            "fall_wobbles": _tenth(rule.fall_wobbles),
            "or_halves_not_ok": rule.or_halves_not_ok,
            "each": rule.each,
            "draw": one.trial.draw.value,
        },
        "says": verdict_words(one),
        "outcome": result.outcome.value,
        "drawn": _halves(one.drawn),
        "read": _halves(one.read),
        "not_ok": _halves(result.not_ok) if enough else None,
        "worst_gf": _difference(result.worst_gf) if enough else None,
        "mean_gf": _difference(result.mean_gf) if enough else None,
        "minutes": _difference(one.minutes) if enough else None,
    }


def _halves(counts: Mapping[Half, int]) -> dict[str, Fact]:
    return {half.name.lower(): count for half, count in counts.items()}


def _ends(interval: Interval | None) -> list[Fact] | None:
    return None if interval is None else [_tenth(interval.low), _tenth(interval.high)]


def _tenth(value: float) -> float:
    return round(value, 1)


def _thousandth(value: float) -> float:
    return round(value, 3)
