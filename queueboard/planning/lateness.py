"""When the runs finish each box, and how that stands against its ship-by."""

from collections.abc import Iterable, Mapping
from datetime import UTC, datetime

from queueboard.planning.batches import Bench
from queueboard.planning.chance import BoxChance
from queueboard.planning.clock import BenchClock, minutes_late
from queueboard.values.plan import BoxForecast, BoxWork, Run
from queueboard.words import Lateness


def finishes_of(boxes: Iterable[BoxWork], runs: tuple[Run, ...]) -> dict[int, Run]:
    """For each box with knives in the runs, the run that ends last of those that hold one."""
    run_of = {knife_id: run for run in runs for knife_id in run.knife_ids}
    last: dict[int, Run] = {}
    for box in boxes:
        own = [run_of[knife.knife_id] for knife in box.knives if knife.knife_id in run_of]
        if own:
            last[box.box_id] = max(own, key=lambda run: run.end_second)
    return last


def forecasts_of(
    boxes: Iterable[BoxWork], runs: tuple[Run, ...], bench: Bench, chances: Mapping[int, BoxChance]
) -> tuple[BoxForecast, ...]:
    """One forecast for each box, by box id. A box finishes at the end of the last run that holds a knife of it."""
    boxes = sorted(boxes, key=lambda box: box.box_id)
    last = finishes_of(boxes, runs)
    return tuple(_forecast(box, last.get(box.box_id), bench, chances.get(box.box_id)) for box in boxes)


def _forecast(box: BoxWork, last: Run | None, bench: Bench, chance: BoxChance | None) -> BoxForecast:
    clock, seconds_left = bench.clock, sum(knife.seconds for knife in box.knives)
    # Not in the runs: said late only when it would be so even if the answer came now and it was done at once.
    soonest = clock.end_at(seconds_left) if box.waiting else last.end if last else None
    lateness, late_minutes = _stands(box, soonest, clock, bench.now)
    slack = permille = None
    if last is not None and box.ship_by is not None:
        slack = (clock.seconds_before(box.ship_by) - last.end_second) // 60
    if chance is not None and not chance.overloaded:
        permille = round(1000 * chance.chance_late)
        if lateness is Lateness.ON_TIME and permille >= bench.rules.tight_permille and not box.ready_to_fetch:
            lateness = Lateness.TIGHT
    return BoxForecast(
        box_id=box.box_id,
        finish=last.end if last else None,
        minutes_left=(seconds_left + 30) // 60,
        lateness=lateness,
        late_minutes=late_minutes,
        slack_minutes=slack,
        late_permille=permille,
    )


def _stands(box: BoxWork, finish: datetime | None, clock: BenchClock, now: datetime) -> tuple[Lateness, int]:
    """The word and the minutes. Past ship-by and still here is LATE, but for a box that only waits to be fetched."""
    if box.ship_by is None or box.ready_to_fetch:
        return Lateness.ON_TIME, 0
    ship_by = box.ship_by.astimezone(UTC)
    if now.astimezone(UTC) > ship_by:
        done = finish or (clock.horizon if box.knives else None) or now
        return Lateness.LATE, minutes_late(ship_by, done)
    if not box.knives:
        return Lateness.ON_TIME, 0
    if finish is None and (clock.horizon is None or ship_by <= clock.horizon.astimezone(UTC)):
        # Beyond all known bench time: at least this late.
        return Lateness.WILL_BE_LATE, minutes_late(ship_by, clock.horizon or ship_by)
    if finish is not None and finish.astimezone(UTC) > ship_by:
        return Lateness.WILL_BE_LATE, minutes_late(ship_by, finish)
    return Lateness.ON_TIME, 0
