"""The planner's own shapes: open work in whole bench seconds, and the plan of it. No clock time, no names, no words.

A bench second is a second in which somebody works at the bench; only the calendar turns it into clock time.
"""

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class QueueKnife:
    """A knife that still needs the bench."""

    id: int
    process: int
    """Index into the queue's processes."""
    seconds: int
    """Hands-on bench seconds, at least 0."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QueueBox:
    """A box with its unfinished knives; a box is finished when the run with its last knife ends."""

    id: int
    due: int | None
    """Index into the queue's cut-offs; -1 when its cut-off has already passed; None when nothing was promised."""
    knives: tuple[QueueKnife, ...]
    weight: int = 1
    """What it costs to be late with it, at least 1."""
    unseen_variance: float = 0.0
    """Seconds squared by which it may differ because it is only announced, on top of what any box may."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QueueProcess:
    """A process by its runs: each pays the set-up whole, or what is not saved after a run of the same process."""

    set_up_seconds: int
    run_size: int
    """Most knives in one run, at least 1."""
    repeat_set_up_seconds: int | None = None
    """What is not saved after a run of the same process; None when the queue's saved percent says it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Queue:
    """All open work of one bench."""

    boxes: tuple[QueueBox, ...]
    processes: tuple[QueueProcess, ...]
    cutoffs: tuple[int, ...]
    """Bench seconds from now to each moment when finished boxes can leave, strictly ascending, may begin below 0."""
    saved_percent: int = 100
    """Share of the set-up that a run saves when the run before it was of the same process, 0 to 100."""
    set_up_now: int | None = None
    """The process that the bench is set up for; None when none is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QueueRun:
    """Knives of one process worked together."""

    process: int
    knife_ids: tuple[int, ...]
    set_up_seconds: int
    start: int
    """Bench seconds from now to the start of its set-up."""
    end: int


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Score:
    """What is compared, in this order; smaller is better."""

    late_weight: int
    """Sum of the weights of the late boxes."""
    tardiness: int
    """Seconds from each late box's cut-off (0 for a passed one) to the first cut-off at or after its finish, summed.

    A box that is finished after the last cut-off is measured to its finish."""
    set_up: int
    completion: int
    """Sum of the boxes' finishes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QueuePlan:
    """Runs in order, and what follows from them."""

    runs: tuple[QueueRun, ...]
    finish: dict[int, int]
    """Bench seconds from now to the finish of each box with knives, by box id."""
    late: tuple[int, ...]
    """Ids of the late boxes, ascending."""
    honest: dict[int, int]
    """For each late box the index of the first cut-off at or after its finish; len(cutoffs) when beyond them all."""
    score: Score
