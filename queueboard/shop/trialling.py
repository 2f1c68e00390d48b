"""Belt trials: the rule is written down first, then each knife of the kind gets its half when it comes to the bench."""

from collections.abc import Iterable, Sequence

from queueboard.edges.trial import FEWEST, LIKE, Draw, Half, half_of
from queueboard.errors import RuleError, TypedError
from queueboard.records.edge_tables import TrialKnifeRow, TrialRow
from queueboard.records.trials import Trial, drawn_knives, lost_to_trial, open_trials, place_before
from queueboard.records.writing import Writing
from queueboard.settings.rules import knife_process, process_of
from queueboard.settings.shapes import Kind, Settings
from queueboard.shop.fitting import step_of
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import settings_in
from queueboard.values.knife import Knife

MOST_EACH = 500
MOST_FALL = 10.0
"""Wobbles."""


@operation()
def begin_trial(
    writing: Writing,
    *,
    kind: str,
    process: str,
    belt: str,
    fall_wobbles: float = 2.0,
    or_halves_not_ok: bool = True,
    each: int = FEWEST,
    draw: Draw = Draw.LOT,
) -> int:
    """Write the rule of a trial down and begin it; returns its id.

    The belt stays when the worst spot falls by more than fall_wobbles (0 to 10, in tenths) of the tester's wobbles,
    or, with or_halves_not_ok, when it halves the share not OK. each: knives of each half, 20 to 500. One trial a kind.
    """
    settings = settings_in(writing.database)
    known = settings.kind(kind)
    if known is None:
        raise TypedError(f"The shop has no kind called {kind!r}.")
    step_of(writing, process, belt)
    _can_be_tried(known, process, settings)
    if not FEWEST <= each <= MOST_EACH:
        raise TypedError(f"{each} knives each are too few or too many. Type {FEWEST} to {MOST_EACH}.")
    if not 0 <= fall_wobbles <= MOST_FALL:
        raise TypedError(f"A fall of {fall_wobbles:g} wobbles is outside 0 to {MOST_FALL:g}.")
    if any(trial.kind == known.name for trial in open_trials(writing.database)):
        raise RuleError(f"A trial with {known.name} goes on already; end it first.")
    writing.tell(to=belt, was=known.name)
    return writing.insert(
        TrialRow,
        kind=known.name,
        process=process,
        belt=belt,
        fall_tenths=round(10 * fall_wobbles),
        or_halves_not_ok=int(or_halves_not_ok),
        each=each,
        draw=draw.value,
        seed=writing.now_us // 1_000_000 % 1_000_000,
        begun_us=writing.now_us,
        begun_by=writing.actor.initials,
        ended_us=None,
    )


def _can_be_tried(kind: Kind, process: str, settings: Settings) -> None:
    if kind.name in settings.gauge.by_cutting:
        raise TypedError(f"{kind.name} is tested by cutting and never read; a trial of it could say nothing.")
    if process_of(settings, kind, kind.edge).name != process:
        raise TypedError(f"{kind.name} is not worked by {process}; no knife would ever come into that trial.")


@operation()
def end_trial(writing: Writing, trial: Trial) -> None:
    """End a trial: no more knives are drawn for it; what it has shown stays."""
    if trial.ended_at is not None:
        raise RuleError("That trial is over already.")
    writing.tell(to=trial.belt, was=trial.kind)
    writing.change(TrialRow, trial.id, trial.version, ended_us=writing.now_us)


def draw_for(writing: Writing, knives: Sequence[Knife]) -> None:
    """Put knives that come to the bench into halves, where a trial of their kind goes on.

    Only like ones: tired or dull, worked for the first time. A knife keeps the half it has, also when its move to the
    bench is undone and done again. Once both halves have as many as the rule asks for no more are drawn; those that
    left without a reading do not count.
    """
    going_on = open_trials(writing.database)
    if going_on:
        settings = settings_in(writing.database)
        for trial in going_on:
            _draw(writing, trial, [knife for knife in knives if _like(knife, trial, settings)])


def _draw(writing: Writing, trial: Trial, knives: Iterable[Knife]) -> None:
    drawn = drawn_knives(writing.database, "t.id = ?", trial.id)
    known, lost = {one.knife_id for one in drawn}, lost_to_trial(writing.database, trial.id)
    halves = [one.half for one in drawn if one.knife_id not in lost]
    place = max((one.place for one in drawn), default=-1) + 1
    for knife in knives:
        if knife.id in known or all(halves.count(half) >= trial.rule.each for half in Half):
            continue
        before = place_before(writing.database, trial.id, knife.id)
        own = place if before is None else before
        half = half_of(own, trial.draw, trial.seed)
        writing.insert(TrialKnifeRow, trial_id=trial.id, knife_id=knife.id, place=own, half=half.value)
        halves.append(half)
        place = max(place, own + 1)


def _like(knife: Knife, trial: Trial, settings: Settings) -> bool:
    return (
        knife.kind == trial.kind
        and knife.condition in LIKE
        and knife.rework == 0
        and knife_process(settings, knife).name == trial.process
    )
