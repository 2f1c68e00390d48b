"""What the belt trials show: how far they are, and once both halves are there what the rule says of the belt."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from queueboard.edges.halves import Difference, difference
from queueboard.edges.trial import Half, Result, TrialKnife, result_of
from queueboard.records.edge_reads import DRAWN, ReadKnife, read_knives, trial_minutes
from queueboard.records.trials import STILL_LIKE, DrawnKnife, Trial, drawn_knives, trials
from queueboard.settings.shapes import Settings
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in
from queueboard.shop.wobbling import WobbleNow, wobble_in
from queueboard.slotted import dataclass
from queueboard.words import Condition


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialSeen:
    """A trial and what it shows so far."""

    trial: Trial
    drawn: Mapping[Half, int]
    read: Mapping[Half, int]
    """Knives of each half that are tested and read, deburred."""
    result: Result
    minutes: Difference | None
    """With the belt less without it, minutes a knife; only from timed runs that held one half alone."""
    minutes_by_settings: float | None
    """A belt's share of a dull knife's hands-on minutes, where no such runs were timed."""
    belt_cents: float | None
    """What the belt costs a knife, by the settings."""
    wobble: WobbleNow
    worst_gf: Mapping[Half, tuple[int, ...]]
    """The worst spot of each knife that counts."""

    @property
    def enough(self) -> bool:
        """True when both halves are as many as the rule asks for."""
        return min(self.result.done.values()) >= self.result.each


def trials_seen(shop: Shop) -> tuple[TrialSeen, ...]:
    """Every trial, the newest first."""
    with shop.reading() as database:
        settings = settings_in(database)
        every = trials(database)
        if not every:
            return ()
        drawn = drawn_knives(database, STILL_LIKE)
        read = {one.knife.id: one for one in read_knives(database, DRAWN)}
        timed = trial_minutes(database)
        wobble = wobble_in(database)
    return tuple(
        _seen(trial, [one for one in drawn if one.trial_id == trial.id], read, timed, settings, wobble)
        for trial in every
    )


def _seen(
    trial: Trial,
    drawn: Sequence[DrawnKnife],
    read: Mapping[int, ReadKnife],
    timed: Mapping[int, tuple[int, float]],
    settings: Settings,
    wobble: WobbleNow,
) -> TrialSeen:
    done = [one for one in drawn if one.knife_id in read and _is_done(read[one.knife_id])]
    done.sort(key=lambda one: (read[one.knife_id].read_us, one.place))
    counted = [one for half in Half for one in [one for one in done if one.half is half][: trial.rule.each]]
    knives = [
        TrialKnife(
            half=one.half,
            spots_gf=tuple(read[one.knife_id].first_after.values()),
            ok=bool(read[one.knife_id].first_ok),
            minutes=0.0,
            belt_cents=0.0,
        )
        for one in counted
    ]
    known = settings.belt_kind(trial.belt)
    minutes = _minutes(counted, timed)
    return TrialSeen(
        trial=trial,
        drawn={half: sum(one.half is half for one in drawn) for half in Half},
        read={half: sum(one.half is half for one in done) for half in Half},
        result=result_of(knives, trial.rule, wobble.gf),
        minutes=difference(minutes[Half.WITH], minutes[Half.WITHOUT]),
        minutes_by_settings=_by_settings(trial, settings),
        belt_cents=None if known is None else known.knife_cents,
        wobble=wobble,
        worst_gf={half: tuple(knife.worst_gf for knife in knives if knife.half is half) for half in Half},
    )


def _is_done(knife: ReadKnife) -> bool:
    return knife.first_whole and knife.first_ok is not None


def _minutes(knives: Sequence[DrawnKnife], timed: Mapping[int, tuple[int, float]]) -> dict[Half, list[float]]:
    """Minutes by half. A run that held both halves shares its time evenly and says nothing: it is left out."""
    halves: defaultdict[int, set[Half]] = defaultdict(set)
    for one in knives:
        if one.knife_id in timed:
            halves[timed[one.knife_id][0]].add(one.half)
    found: dict[Half, list[float]] = {half: [] for half in Half}
    for one in knives:
        if one.knife_id in timed and len(halves[timed[one.knife_id][0]]) == 1:
            found[one.half].append(timed[one.knife_id][1])
    return found


def _by_settings(trial: Trial, settings: Settings) -> float | None:
    """The steps of a process, its finish among them, share the minutes of a dull knife evenly (an estimate)."""
    kind = settings.kind(trial.kind)
    process = next((one for one in settings.processes if one.name == trial.process), None)
    if kind is None or process is None or Condition.DULL not in kind.minutes:
        return None
    return kind.minutes[Condition.DULL] / (len(process.belts) + 1)
