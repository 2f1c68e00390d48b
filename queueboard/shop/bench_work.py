"""The open work as the planner needs it: what each knife takes, by when each box is due, what binds its turn."""

from collections.abc import Sequence
from dataclasses import field
from datetime import datetime

from queueboard.calendar.days import ShopCalendar, bench_windows
from queueboard.parcels.carriers import carrier_of, with_carrier
from queueboard.parcels.cutoffs import leaves_at, leaving_moments, ship_by
from queueboard.parcels.labels import last_use_day
from queueboard.planning.clock import bench_clock
from queueboard.planning.learning import Factor, Learned, Yield, learn, learn_yield
from queueboard.planning.planned import Planned
from queueboard.records.reading import OpenWork
from queueboard.settings.rules import knife_minutes, knife_process
from queueboard.settings.shapes import Settings
from queueboard.slotted import dataclass
from queueboard.values.box import Box, ReturnLabel, put_off
from queueboard.values.knife import Knife
from queueboard.values.plan import (
    BoxForecast,
    BoxWork,
    KnifeWork,
    Plan,
    PlanRules,
    ProcessWork,
    RunUnderWay,
    UnseenWork,
)
from queueboard.words import Column, Condition, Edge, GoesBy, LabelState, Lateness, PlanOrder

HORIZON_DAYS = 90
"""Calendar days of bench time that the plan looks ahead; work beyond has no clock time."""

LEAVING_DAYS = 21
"""Calendar days whose moments of leaving the plan knows besides those that were promised."""

BENCH_COLUMNS = (Column.RECEIVED, Column.ON_BENCH)
"""Where a knife still needs the bench."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Minutes:
    """What the shop has learned of its own minutes."""

    learned: Learned
    """By process, in the order of the settings."""
    day_yield: Yield


def untaught(processes: int) -> Minutes:
    """What a shop with so many processes knows of its minutes before anything was measured."""
    learned = learn((), processes)
    return Minutes(learned=learned, day_yield=learn_yield((), learned.processes))


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchWork:
    """Everything that the plan is made from, but for the time and the order."""

    settings: Settings
    calendar: ShopCalendar
    work: OpenWork
    minutes: Minutes
    known: dict[tuple[str, Edge, Condition], tuple[str, int]] = field(default_factory=dict, init=False, repr=False)
    """Process and learned seconds by all that they hang on, as far as asked: many knives are alike."""
    due: dict[int, datetime | None] = field(default_factory=dict, init=False, repr=False)
    """What ship_by has said so far: the plan, the picture and what is late already ask the same."""

    def planned(self, now: datetime, fixed: Sequence[Sequence[int]], restarts: int = 0) -> Planned:
        """The plan at *now*, in the shop's zone; restarts as for the day list."""
        from queueboard.planning.order import plan_work  # the board shows its knives before it plans them

        planning, day_yield = self.settings.planning, self.minutes.day_yield
        rules = PlanRules(
            earliest_due_first=planning.order is PlanOrder.EARLIEST_DUE,
            saved_percent=planning.saved_percent,
            people=planning.people,
            bench_share=day_yield.mean,
            tight_permille=planning.tight_percent * 10,
            restarts=restarts,
        )
        return plan_work(
            tuple(self._box(box, now) for box in self.work.boxes if not box.announced),
            tuple(
                ProcessWork(name=p.name, set_up_seconds=p.set_up_seconds, run_size=p.run_size)
                for p in self.settings.processes
            ),
            bench_windows(self.calendar, now, HORIZON_DAYS),
            now,
            fixed,
            under_way=tuple(
                RunUnderWay(run_id=run.id, by=run.started_by, worked_seconds=run.worked_seconds(now))
                for run in self.work.runs
            ),
            unseen=tuple(filter(None, map(self.unseen, self.work.boxes))),
            leaves=leaving_moments(self.calendar, now.date(), LEAVING_DAYS),
            rules=rules,
            factors=self.minutes.learned.processes,
            yield_sd=day_yield.relative_sd,
        )

    def unplanned(self, now: datetime) -> Planned:
        """What holds at *now* before anything is planned: what the bench has left of today, and who is late already."""
        late = (box for box in self.work.boxes if not box.announced and self._is_late(box, now))
        planning, windows = self.settings.planning, bench_windows(self.calendar, now, 1)
        today = bench_clock(windows, now, self.minutes.day_yield.mean).seconds_on(now.date()) * planning.people
        return Planned(
            plan=Plan(
                runs=(),
                forecasts=tuple(
                    BoxForecast(box_id=box.id, finish=None, minutes_left=0, lateness=Lateness.LATE) for box in late
                ),
                bench_minutes_today=today // 60,
                work_minutes_today=0,
            ),
            ledger=None,
        )

    def _is_late(self, box: Box, now: datetime) -> bool:
        due = self.ship_by(box)
        return due is not None and now > due and not self._ready_to_fetch(box)

    def _ready_to_fetch(self, box: Box) -> bool:
        here = [knife for knife in self.work.knives.get(box.id, ()) if knife.on_hand]
        return bool(here) and box.goes_by is not GoesBy.PARCEL and all(knife.can_leave for knife in here)

    @property
    def needing(self) -> int:
        """How many knives need the bench."""
        here = (self.work.knives.get(box.id, ()) for box in self.work.boxes if not box.announced)
        return sum(_needs_bench(knife) for knives in here for knife in knives)

    def unseen(self, box: Box) -> UnseenWork | None:
        """A box that is announced and promised, or in the door and not opened; None for another, and while it waits."""
        due = self.ship_by(box)
        if box.opened or box.waiting_for is not None or (box.announced and due is None):
            return None
        return UnseenWork(
            box_id=box.id,
            ship_by=due,
            knives=box.expected_knives,
            knife_seconds=60 * self.settings.planning.announced_minutes,
            here=not box.announced,
        )

    def factor(self, process: str) -> Factor:
        """What the starter minutes of a process are to be multiplied with."""
        names = [known.name for known in self.settings.processes]
        return self.minutes.learned.processes[names.index(process)]

    def _box(self, box: Box, now: datetime) -> BoxWork:
        knives = self.work.knives.get(box.id, ())
        promises = self.work.promises.get(box.id, ())
        held = promises[-1] if promises else None
        handling, by_parcel = self.settings.handling, box.goes_by is GoesBy.PARCEL
        return BoxWork(
            box_id=box.id,
            number=box.number,
            ship_by=self.ship_by(box),
            label_by=self._label_by(self.work.labels.get(box.id)),
            promised_today=held is not None and held.day == now.date(),
            rush=box.rush,
            this_next=box.this_next,
            never_slip=box.never_slip,
            put_off=put_off(promises),
            waiting=box.waiting_for is not None,
            ready_to_fetch=self._ready_to_fetch(box),
            handling_minutes=handling.pack_per_parcel if by_parcel else handling.counter_per_box,
            knives=tuple(self._knife(knife) for knife in knives if _needs_bench(knife)),
        )

    def ship_by(self, box: Box) -> datetime | None:
        """The cut-off of a box, never earlier than its date was told.

        Where days were closed since, a box would be called late by more than it was ever owed.
        """
        if box.id not in self.due:
            promises = self.work.promises.get(box.id, ())
            held = promises[-1] if promises else None
            calendar = with_carrier(self.calendar, carrier_of(self.work.labels.get(box.id)))
            due = ship_by(calendar, held, box.goes_by, box.carrier_days)
            told = None if due is None or held is None else held.told_at.astimezone(due.tzinfo)
            self.due[box.id] = due if due is None or told is None else max(due, told)
        return self.due[box.id]

    def _label_by(self, label: ReturnLabel | None) -> datetime | None:
        if label is None or label.state is not LabelState.HERE or label.expires_on is None:
            return None
        calendar = with_carrier(self.calendar, label.carrier)
        return leaves_at(calendar, last_use_day(calendar, label.expires_on))

    def _knife(self, knife: Knife) -> KnifeWork:
        handling = self.settings.handling
        process, seconds = self._process_and_seconds(knife)
        run = next((run for run in self.work.runs if knife.id in run.knife_ids), None)
        return KnifeWork(
            knife_id=knife.id,
            tag=knife.tag,
            process=process if run is None else run.process,
            seconds=seconds,
            handling_minutes=handling.test_per_knife + handling.wrap_per_knife,
            rework=knife.rework > 0,
            begun=knife.column is Column.ON_BENCH,
            run_id=None if run is None else run.id,
        )

    def _process_and_seconds(self, knife: Knife) -> tuple[str, int]:
        alike = (knife.kind, knife.edge, knife.condition)
        if alike not in self.known:
            process = knife_process(self.settings, knife).name
            self.known[alike] = (process, self.factor(process).learned(60 * knife_minutes(self.settings, knife)))
        return self.known[alike]


def _needs_bench(knife: Knife) -> bool:
    return (
        knife.column in BENCH_COLUMNS and knife.declined is None and knife.waiting_for is None and not knife.looking_for
    )
