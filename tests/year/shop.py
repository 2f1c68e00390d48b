"""A shop that lives through invented days: it learns, plans, promises and works with the product's own functions."""

from dataclasses import dataclass, field
from math import ceil

from queueboard.planning.chance import Doubt
from queueboard.planning.evaluation import Batch
from queueboard.planning.learning import Learned, MeasuredRun, WorkedDay, Yield, learn, learn_yield
from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess
from tests.year.bench import Bench, DayDone, work_off
from tests.year.world import COUNTER, DAY, MAIL, PROCESSES, Box, World

RUN_SIZE = 12


@dataclass(slots=True)
class Shop:
    """What the shop knows: its open boxes and what its days have taught it. Nothing true is looked at."""

    world: World
    bench: Bench = field(init=False)
    learned: Learned = field(init=False)
    day_yield: Yield = field(init=False)
    open: list[Box] = field(default_factory=list)
    runs: list[MeasuredRun] = field(default_factory=list)
    days: list[WorkedDay] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Nothing is open and nothing learned."""
        self.bench = Bench(self.world.set_ups)
        self.learn()

    def learn(self) -> None:
        """Take what was measured into the minutes and the yield."""
        self.learned = learn(self.runs, len(PROCESSES))
        self.day_yield = learn_yield(self.days, self.learned.processes)

    @property
    def day_seconds(self) -> int:
        """What a day is planned with."""
        return round(DAY * self.day_yield.mean)

    @property
    def doubt(self) -> Doubt:
        """How sure the shop is of its figures."""
        return Doubt(factors=self.learned.processes, yield_sd=self.day_yield.relative_sd, days=(self.day_seconds,))

    def estimate(self, process: int, starter_seconds: int) -> int:
        """The seconds that the plan gives a knife."""
        return self.learned.processes[process].learned(starter_seconds)

    def queue_box(self, box: Box, due: int | None) -> QueueBox:
        """A box as the planner sees it; of a knife in hand what is left by the clock, and at least a tenth."""
        knives = []
        for knife in box.open_knives:
            whole = self.estimate(knife.process, knife.starter_seconds)
            left = max(whole - round(knife.worked_seconds), whole // 10)
            knives.append(QueueKnife(id=knife.id, process=knife.process, seconds=left))
        return QueueBox(id=box.id, due=due, knives=tuple(knives))

    def queue(self, day: int) -> Queue:
        """All open work this morning, with the cut-offs of enough days to hold it and what was promised."""
        starter = sum(knife.starter_seconds for box in self.open for knife in box.open_knives)
        last = max((int(box.told) - day for box in self.open), default=0)
        many = max(last + 1, ceil(1.6 * starter / DAY) + 4)
        cutoffs = tuple(round((ahead + slot) * self.day_seconds) for ahead in range(many) for slot in (MAIL, COUNTER))
        return Queue(
            boxes=tuple(self.queue_box(box, due_of(box, day)) for box in self.open),
            processes=tuple(QueueProcess(set_up_seconds=seconds, run_size=RUN_SIZE) for seconds in self.bench.set_ups),
            cutoffs=cutoffs,
            set_up_now=self.bench.mounted,
        )

    def work(self, day: int, batches: list[Batch], share: float) -> DayDone:
        """Work a day that yields this share, take note of what was finished, and of what it teaches."""
        knives = {knife.id: knife for box in self.open for knife in box.open_knives}
        morning = [0] * len(PROCESSES)
        for knife in knives.values():
            morning[knife.process] += knife.starter_seconds
        done = work_off(self.bench, batches, knives, share * DAY)
        box_of = {knife.id: box for box in self.open for knife in box.knives}
        for box in self.open:
            if not box.open_knives:
                last = max(done.finished_at[knife.id] for knife in box.knives if knife.id in done.finished_at)
                box.finished = day + last / (share * DAY)
        self._note(done, {knife_id: box.id for knife_id, box in box_of.items()}, tuple(morning))
        self.open = [box for box in self.open if box.finished < 0]
        return done

    def _note(self, done: DayDone, box_of: dict[int, int], morning: tuple[int, ...]) -> None:
        starter = [0] * len(PROCESSES)
        for run in done.runs:
            process, seconds = run[0].process, sum(knife.starter_seconds for knife in run)
            starter[process] += seconds
            self.runs.append(
                MeasuredRun(
                    process=process,
                    knives=len(run),
                    boxes=len({box_of[knife.id] for knife in run}),
                    starter_seconds=seconds,
                    estimated_seconds=self.estimate(process, seconds),
                    measured_seconds=round(sum(knife.true_seconds for knife in run)),
                )
            )
        knives = [knife.id for run in done.runs for knife in run]
        if knives:
            self.days.append(
                WorkedDay(
                    open_seconds=morning,
                    starter_seconds=tuple(starter),
                    knives=len(knives),
                    boxes=len({box_of[knife_id] for knife_id in knives}),
                    set_up_seconds=round(done.set_up_seconds),
                    bench_seconds=DAY,
                )
            )


def due_of(box: Box, day: int) -> int | None:
    """Its cut-off's index this morning; -1 when it has passed, None when nothing was promised."""
    if box.told < 0:
        return None
    ahead = int(box.told - box.leaves_at + 0.5) - day
    return -1 if ahead < 0 else 2 * ahead + (box.leaves_at == COUNTER)
