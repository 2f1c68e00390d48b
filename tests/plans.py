"""Hand-built plans for tests, and the morning on which they stand."""

from datetime import datetime, time, timedelta

from queueboard.values.plan import BoxForecast, OrderChange, Plan, Run
from queueboard.words import Lateness, RunReason
from tests.shop_settings import ZONE

NOW = datetime(2026, 11, 26, 9, 12, tzinfo=ZONE)
"""A Thursday morning."""
TODAY = NOW.date()


def at(hour: int, minute: int = 0, *, days: int = 0) -> datetime:
    """A wall-clock time some days from TODAY, in the shop's zone."""
    return datetime.combine(TODAY + timedelta(days=days), time(hour, minute), tzinfo=ZONE)


def forecast(
    number: int = 417,
    *,
    finish: datetime | None = None,
    minutes_left: int = 0,
    lateness: Lateness = Lateness.ON_TIME,
    late_minutes: int = 0,
    slack_minutes: int | None = None,
    late_permille: int | None = None,
) -> BoxForecast:
    """When the plan finishes a box."""
    return BoxForecast(
        box_id=number,
        finish=finish,
        minutes_left=minutes_left,
        lateness=lateness,
        late_minutes=late_minutes,
        slack_minutes=slack_minutes,
        late_permille=late_permille,
    )


def run(
    *knife_ids: int,
    process: str = "plain",
    why: RunReason = RunReason.SHIP_BY,
    set_up_seconds: int = 90,
    minutes: int = 10,
    handling_minutes: int = 6,
    start_second: int = 0,
    start: datetime | None = None,
    end: datetime | None = None,
) -> Run:
    """A run of the day list; its end follows from its start, the set-up and the minutes."""
    length = minutes + -(-set_up_seconds // 60)
    if start is not None and end is None:
        end = start + timedelta(minutes=length)
    return Run(
        process=process,
        knife_ids=knife_ids,
        why=why,
        set_up_seconds=set_up_seconds,
        seconds=minutes * 60,
        handling_minutes=handling_minutes,
        start_second=start_second,
        end_second=start_second + minutes * 60 + set_up_seconds,
        start=start,
        end=end,
    )


def plan(*runs: Run, bench_minutes_today: int = 198, changes: tuple[OrderChange, ...] = ()) -> Plan:
    """A plan of these runs; work today is the sum of the runs that start today."""
    today = [r for r in runs if r.start is not None and r.start.date() == TODAY]
    return Plan(
        runs=runs,
        forecasts=(),
        bench_minutes_today=bench_minutes_today,
        work_minutes_today=sum(r.end_second - r.start_second for r in today) // 60,
        changes=changes,
    )
