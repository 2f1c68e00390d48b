"""Belts, the tester's wobble, trials and changes in words. Figures say how sure they are; grams-force are gf."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from queueboard.edges.halves import Difference
from queueboard.edges.summary import Interval
from queueboard.edges.trial import Half, Outcome
from queueboard.phrases.bars import measure
from queueboard.phrases.dates import date_words, many
from queueboard.phrases.strips import STRIP_WORDS, strip_lines
from queueboard.shop.belt_counts import BeltPlace
from queueboard.shop.edges_seen import ChangeRow, ChartSeen
from queueboard.shop.lasting import LastedRow
from queueboard.shop.trial_results import TrialSeen
from queueboard.shop.wobbling import WobbleNow

BELT_CELLS = 8
"""Cells for the knives that a belt lasts."""
BELT_WORDS = "knives done, of about how many a belt does"
"""What the bars and figures of belt_cells are."""
TRIAL_CELLS = 20
"""Cells for the knives that a half of a trial asks for."""


def belt_cells(place: BeltPlace, now: datetime) -> tuple[str, str, str, str]:
    """P400, ██████░░, 118 of 150, since Mon 2 Nov · spares 2 ORDER; BELT_WORDS say what of what."""
    if place.belt is None or place.kind is None:
        return place.step, "", _done_words(place), _up_words(place, now)
    life = place.kind.life_knives
    done = f"{place.done:>3} of {life:<3}{_worn_words(place)}"
    return place.step, measure(place.done, life, BELT_CELLS), done, _up_words(place, now)


def belt_place_words(place: BeltPlace, now: datetime) -> str:
    """P400 118 of about 150 knives · since Mon 2 Nov · spares 2 ORDER; or none is up."""
    return f"{place.step} {_done_words(place)} · {_up_words(place, now)}"


def _done_words(place: BeltPlace) -> str:
    if place.belt is None:
        return "no belt is up"
    about = f" of about {place.kind.life_knives}" if place.kind is not None else ""
    return f"{place.done}{about} knives{_worn_words(place)}"


def _worn_words(place: BeltPlace) -> str:
    return " WORN?" if place.kind is not None and place.done >= place.kind.life_knives else ""


def _up_words(place: BeltPlace, now: datetime) -> str:
    """The belt that is up, since when, and its spares."""
    if place.belt is None:
        return _spares_words(place)
    worn = f"worn {place.belt.label} · " if place.belt.demoted else ""
    since = date_words(place.belt.fitted_at.astimezone(now.tzinfo).date(), now.date())
    gone = "" if place.grit_um else " · NO SUCH STEP ANY MORE: take it off"
    return f"{worn}since {since} · {_spares_words(place)}{gone}"


def _spares_words(place: BeltPlace) -> str:
    spares = "spares not counted" if place.spares is None else f"spares {place.spares}"
    return f"{spares} ORDER" if place.to_order else spares


def wobble_words(wobble: WobbleNow, now: datetime) -> str:
    """The tester's wobble: 14 gf, surely between 11 and 21, studied on Mon 2 Nov."""
    if wobble.studied_at is None:
        said = f"The tester's wobble: {wobble.gf:.0f} gf, from memory: nobody has studied this tester yet."
    else:
        day = date_words(wobble.studied_at.astimezone(now.tzinfo).date(), now.date())
        said = f"The tester's wobble: {wobble.gf:.0f} gf{_between(wobble.interval)}, studied on {day}."
    if wobble.changed:
        said += f" SINCE CHANGED ({wobble.changed}): finish the new study before you trust a figure."
    return said


def _between(interval: Interval | None) -> str:
    return "" if interval is None else f" (95 %: {interval.low:.0f} to {interval.high:.0f})"


def rule_words(seen: TrialSeen) -> str:
    """The rule as it was written down."""
    trial = seen.trial
    halves = ", or not OK at least halves" if trial.rule.or_halves_not_ok else ""
    return (
        f"The rule: {trial.belt} stays on {trial.kind} if the worst spot falls by more than "
        f"{trial.rule.fall_wobbles:g} times the wobble{halves}. {trial.rule.each} each, {trial.draw.value}."
    )


def progress_lines(seen: TrialSeen) -> tuple[str, ...]:
    """A line for each half, as a bar and in figures: with the belt ██████░░░░ 12 read, 14 drawn, 20 asked for."""
    each, widest = seen.result.each, max(len(half.value) for half in Half)
    return tuple(
        f"{half.value:<{widest}} {measure(seen.read[half], each, TRIAL_CELLS)} "
        f"{seen.read[half]:>3} read, {seen.drawn[half]} drawn, {each} asked for"
        for half in Half
    )


def verdict_words(seen: TrialSeen) -> str:
    """One plain sentence by the rule; nothing is claimed before both halves are there."""
    belt = seen.trial.belt
    match seen.result.outcome:
        case Outcome.TOO_FEW:
            return f"Too few yet: nothing is said of {belt} before {seen.result.each} of each half are read."
        case Outcome.STAYS:
            return f"By the rule {belt} stays."
        case Outcome.HARMS:
            return f"The edge is better without {belt}: leave it out."
        case Outcome.NOT_ENOUGH:
            return f"{belt} helps, by less than the rule asks for{_saves(seen)}."
        case Outcome.NO_DIFFERENCE:
            return f"No difference seen{_saves(seen)}."


def _saves(seen: TrialSeen) -> str:
    minutes = seen.minutes.mean if seen.minutes is not None else seen.minutes_by_settings
    return "" if minutes is None or minutes <= 0 else f": save {minutes:.1f} min a knife"


def result_lines(seen: TrialSeen) -> Iterator[str]:
    """The figures behind the sentence, with minus less; none before both halves are there."""
    if not seen.enough:
        return
    result = seen.result
    yield from _difference("worst spot", result.worst_gf, "gf")
    yield from _difference("mean of the spots", result.mean_gf, "gf")
    bad = (f"{result.not_ok[half]} of {result.done[half]}" for half in Half)
    share = result.not_ok_share
    if share is not None:
        yield f"not OK: {' with, '.join(bad)} without; 95 %: {100 * share.low:+.0f} to {100 * share.high:+.0f} points"
    if seen.minutes is not None:
        yield from _difference("minutes a knife", seen.minutes, "min")
    elif seen.minutes_by_settings is not None:
        yield (
            f"minutes a knife: about {seen.minutes_by_settings:.1f} more with it, by the settings; not measured: "
            "time runs of one half alone"
        )
    if seen.belt_cents is not None:
        yield f"belt cost: {seen.belt_cents:.1f} cents a knife more with it, by the settings"


def _difference(name: str, difference: Difference | None, unit: str) -> Iterator[str]:
    if difference is None:
        return
    ends, ranks = difference.interval, difference.ranks
    yield f"{name}: {difference.mean:+.1f} {unit} with the belt; 95 %: {ends.low:+.1f} to {ends.high:+.1f} (Welch)"
    if ranks.interval is not None:
        between = f"95 %: {ranks.interval.low:+.1f} to {ranks.interval.high:+.1f}"
        yield f"    by ranks: {ranks.shift:+.1f} {unit}; {between} (Hodges and Lehmann)"


def since_words(seen: ChartSeen, now: datetime) -> str:
    """Since when a chart goes: since 16 um was fitted, Mon 9 Nov; or a year, and that no such belt is up."""
    if seen.since is not None:
        return f" since {seen.belt} was fitted, {date_words(seen.since.astimezone(now.tzinfo).date(), now.date())}"
    none_up = f"; NO {seen.finest} BELT IS UP: readings of every belt together" if seen.finest else ""
    return f" in the last year{none_up}"


def change_words(row: ChangeRow) -> str:
    """Heel, 24 pairs: 812 gf less (71 %), 95 %: 760 to 864; median 805."""
    head = f"{row.name}, {row.pairs} {'pair' if row.pairs == 1 else 'pairs'}"
    if row.change is None:
        return f"{head}: too few, nothing is said before 6"
    seen = row.change
    by_ranks = seen.ranks.interval
    ranks = "" if by_ranks is None else f"; by ranks {by_ranks.low:.0f} to {by_ranks.high:.0f}"
    return (
        f"{head}: {seen.mean_gf:.0f} gf less ({seen.percent:.0f} %), 95 %: {seen.interval.low:.0f} to "
        f"{seen.interval.high:.0f}{ranks}; median {seen.median_gf:.0f}"
    )


def change_strips(row: ChangeRow, width: int) -> tuple[str, ...]:
    """The same knives before and after, drawn over one scale; nothing before anything is said of them."""
    if row.change is None:
        return ()
    before, after = zip(*row.pairs_gf, strict=True)
    return strip_lines([("before", before), ("after", after)], width=width)


def trial_strips(seen: TrialSeen, width: int) -> tuple[str, ...]:
    """The worst spots of both halves over one scale; nothing before both halves are there."""
    if not seen.enough:
        return ()
    return (
        f"worst spot of each knife: {STRIP_WORDS}",
        *strip_lines([(half.value, seen.worst_gf[half]) for half in Half], width=width),
    )


def least_words(rows: Sequence[ChangeRow], what: str) -> str:
    """Which spot or kind gains least, where the intervals say more than chance; empty while fewer than two are told."""
    seen = sorted(((row.change.mean_gf, row.name, row.change) for row in rows if row.change), key=lambda one: one[:2])
    if len(seen) < 2:
        return ""
    (_, name, least), others = seen[0], [change for _, _, change in seen[1:]]
    if least.interval.high < min(change.interval.low for change in others):
        return f"{name} gains least."
    return f"No {what} gains less than all others by more than chance would have it."


def lasted_words(row: LastedRow) -> str:
    """With 16 um, 12 knives back after about 7 days: 143 gf more push than when they left, 95 %: 120 to 166."""
    head = f"{row.name}, {many(row.knives, 'knife')} back"
    if row.change is None:
        return f"{head}: too few, nothing is said before 6"
    seen = row.change
    return (
        f"{head} after about {row.days:.0f} days: {seen.mean_gf:.0f} gf more push than when they left, "
        f"95 %: {seen.interval.low:.0f} to {seen.interval.high:.0f}; median {seen.median_gf:.0f}"
    )


def lasted_apart_words(apart: Difference | None) -> str:
    """How the halves lasted against each other, with less without; empty while nothing can be said."""
    if apart is None:
        return ""
    low, high = apart.interval.low, apart.interval.high
    seen = "no difference seen" if low <= 0 <= high else "more than chance"
    return f"with less without: {apart.mean:+.0f} gf, 95 %: {low:+.0f} to {high:+.0f} (Welch): {seen}"
