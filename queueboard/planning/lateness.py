"""When the runs finish each box, and how that stands against its ship-by."""

from collections.abc import Iterable
from datetime import UTC, datetime

from queueboard.planning.clock import BenchClock, minutes_late
from queueboard.values.plan import BoxForecast, BoxWork, Run
from queueboard.words import Lateness


def forecasts_of(
    boxes: Iterable[BoxWork], runs: tuple[Run, ...], clock: BenchClock, now: datetime
) -> tuple[BoxForecast, ...]:
    """One forecast for each box, by box id. A box finishes at the end of the last run that holds a knife of it."""
    last_run = {knife_id: run for run in runs for knife_id in run.knife_ids}
    return tuple(_forecast(box, last_run, clock, now) for box in sorted(boxes, key=lambda b: b.box_id))


def _forecast(box: BoxWork, run_of: dict[int, Run], clock: BenchClock, now: datetime) -> BoxForecast:
    minutes_left = sum(knife.minutes for knife in box.knives)
    if box.waiting:
        # Not in the runs. Said late only when it would be so even if the answer came now and it was done at once.
        finish = None
        soonest = clock.end_at(minutes_left)
    else:
        last = max((run_of[k.knife_id] for k in box.knives), key=lambda run: run.end_minute, default=None)
        finish = soonest = last.end if last else None
    lateness, late_minutes = _stands(box, soonest, clock, now)
    return BoxForecast(
        box_id=box.box_id, finish=finish, minutes_left=minutes_left, lateness=lateness, late_minutes=late_minutes
    )


def _stands(box: BoxWork, finish: datetime | None, clock: BenchClock, now: datetime) -> tuple[Lateness, int]:
    """The word and the minutes. Past ship-by and still here is LATE, but for a box that only waits to be fetched."""
    if box.ship_by is None or box.ready_to_fetch:
        return Lateness.ON_TIME, 0
    ship_by = box.ship_by.astimezone(UTC)
    if now.astimezone(UTC) > ship_by:
        return Lateness.LATE, minutes_late(ship_by, finish or now)
    if not box.knives:
        return Lateness.ON_TIME, 0
    if finish is None and (clock.horizon is None or ship_by <= clock.horizon.astimezone(UTC)):
        # Beyond all known bench time: at least this late.
        return Lateness.WILL_BE_LATE, minutes_late(ship_by, clock.horizon or ship_by)
    if finish is not None and finish.astimezone(UTC) > ship_by:
        return Lateness.WILL_BE_LATE, minutes_late(ship_by, finish)
    return Lateness.ON_TIME, 0
