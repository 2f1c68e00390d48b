"""How likely each box is late: a normal formula at the box's own last run, with every part that may stray.

The work up to a run strays by its knives, by the condition of their boxes and by what is not yet known of the
processes' minutes; the bench strays by the yield of the days. Sums of many knives are near enough to normal
(measured: about 0.01 from a drawn-out simulation); without any one of the parts the chance is badly wrong.
"""

from itertools import accumulate
from math import erfc, sqrt
from operator import itemgetter

from queueboard.planning.learning import BOX_SD, KNIFE_CV, Factor
from queueboard.planning.queue import Queue, QueueBox, QueuePlan
from queueboard.slotted import dataclass

HEAVY = 0.50
"""Work past what a cut-off bears, in days, from which a percentage would mislead. Simulated here, no shop's data."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """How sure a queue's seconds are, and the days that its cut-offs are counted in."""

    factors: tuple[Factor, ...]
    """Of the queue's processes, in its order."""
    yield_sd: float
    """How far a day's planned seconds stray, as a share of them."""
    days: tuple[int, ...]
    """Planned bench seconds of the working days from now on, today's rest first, each above 0; the last one repeats."""

    def days_before(self, cutoff: int) -> list[float]:
        """The planned seconds before a cut-off, day by day."""
        parts: list[float] = []
        left = cutoff
        for day in self.days[:-1]:
            if left <= 0:
                return parts
            parts.append(min(day, left))
            left -= day
        whole, rest = divmod(max(0, left), self.days[-1])
        return [*parts, *[self.days[-1]] * whole, rest]

    def bench_variance(self, cutoff: int) -> float:
        """Of the seconds before a cut-off: every day strays by itself."""
        return sum((self.yield_sd * part) ** 2 for part in self.days_before(cutoff))


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """The work from now to the end of a run."""

    end: int
    noise: float
    """Variance by knives and by the condition of their boxes."""
    seconds: tuple[int, ...]
    """Hands-on, by process."""

    def variance(self, doubt: Doubt) -> float:
        """Of the work, set-ups being sure."""
        own = shared = 0.0
        for factor, learned in zip(doubt.factors, self.seconds, strict=True):
            starter = learned / factor.value
            own += factor.own_variance * starter**2
            shared += factor.shared_sd * starter
        return self.noise + own + shared**2

    def joined(self, other: "Stretch") -> "Stretch":
        """The work of both."""
        seconds = tuple(a + b for a, b in zip(self.seconds, other.seconds, strict=True))
        return Stretch(end=self.end + other.end, noise=self.noise + other.noise, seconds=seconds)


def stretches(queue: Queue, plan: QueuePlan) -> tuple[Stretch, ...]:
    """The work up to the end of each run, in the order of the runs."""
    knives = {knife.id: (knife, box) for box in queue.boxes for knife in box.knives}
    by_box: dict[int, int] = {}
    by_process = [0] * len(queue.processes)
    noise, found = 0.0, list[Stretch]()
    for run in plan.runs:
        for knife, box in map(knives.__getitem__, run.knife_ids):
            before = by_box.get(box.id)
            noise += box.unseen_variance if before is None else 0
            by_box[box.id] = (before or 0) + knife.seconds
            noise += (KNIFE_CV * knife.seconds) ** 2
            noise += BOX_SD**2 * (by_box[box.id] ** 2 - (before or 0) ** 2)
            by_process[knife.process] += knife.seconds
        found.append(Stretch(end=run.end, noise=noise, seconds=tuple(by_process)))
    return tuple(found)


def alone(box: QueueBox, processes: int) -> Stretch:
    """The work of one box, without set-ups."""
    seconds = [0] * processes
    for knife in box.knives:
        seconds[knife.process] += knife.seconds
    noise = sum((KNIFE_CV * knife.seconds) ** 2 for knife in box.knives)
    noise += (BOX_SD * sum(seconds)) ** 2 + box.unseen_variance
    return Stretch(end=sum(seconds), noise=noise, seconds=tuple(seconds))


def chance_late(spare_seconds: float, variance: float) -> float:
    """The chance that work with so much to spare is late, 0 to 1; without doubt it is or is not."""
    if variance <= 0:
        return float(spare_seconds < 0)
    return erfc(spare_seconds / sqrt(2 * variance)) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxChance:
    """A promised box by the plan, and how sure that is."""

    box_id: int
    spare_seconds: int
    """From its finish to its cut-off; below 0 when it will be late."""
    chance_late: float
    """0 to 1; above 0.5 exactly when nothing is to spare."""
    overloaded: bool
    """True when its cut-off is overloaded: say that, not the chance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Overload:
    """A cut-off that cannot bear what was promised by it."""

    cutoff: int
    """Index into the queue's cut-offs."""
    seconds: int
    """Work promised by it less the bench seconds before it."""


def overloads(queue: Queue, doubt: Doubt) -> tuple[Overload, ...]:
    """The cut-offs that are heavily overloaded: by HEAVY of a usual day or more, each process set up once."""
    if not queue.cutoffs:
        return ()
    load = [0] * len(queue.cutoffs)
    met: set[int] = set()
    promised = ((max(0, box.due), box.knives) for box in queue.boxes if box.due is not None)
    for due, knives in sorted(promised, key=itemgetter(0)):
        for knife in knives:
            load[due] += knife.seconds
            if knife.process not in met:
                met.add(knife.process)
                load[due] += queue.processes[knife.process].set_up_seconds
    return tuple(
        Overload(cutoff=place, seconds=done - cutoff)
        for place, (done, cutoff) in enumerate(zip(accumulate(load), queue.cutoffs, strict=True))
        if done - cutoff >= HEAVY * doubt.days[-1]
    )


def chances(queue: Queue, plan: QueuePlan, doubt: Doubt) -> tuple[BoxChance, ...]:
    """Each promised box that still has knives, in the queue's order."""
    up_to = {stretch.end: stretch for stretch in stretches(queue, plan)}
    overloaded = {overload.cutoff for overload in overloads(queue, doubt)}
    return tuple(
        _chance(
            box,
            queue.cutoffs[box.due] if box.due >= 0 else -1,
            up_to[plan.finish[box.id]],
            doubt,
            overloaded=box.due in overloaded,
        )
        for box in queue.boxes
        if box.due is not None and box.knives
    )


def _chance(box: QueueBox, cutoff: int, stretch: Stretch, doubt: Doubt, *, overloaded: bool) -> BoxChance:
    spare = cutoff - stretch.end
    chance = chance_late(spare, stretch.variance(doubt) + doubt.bench_variance(cutoff)) if cutoff >= 0 else 1.0
    return BoxChance(
        box_id=box.id,
        spare_seconds=spare,
        chance_late=chance,
        overloaded=overloaded,
    )
