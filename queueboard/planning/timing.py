"""Batches of knives as runs with set-ups and the clock of each, over as many people as work at the bench."""

from collections.abc import Iterable, Mapping, Sequence

from queueboard.planning.clock import BenchClock
from queueboard.planning.evaluation import repeat_seconds
from queueboard.planning.ranks import Piece
from queueboard.slotted import dataclass
from queueboard.values.plan import PlanRules, ProcessWork, Run, RunUnderWay

Batch = tuple[Piece, ...]
"""Knives of one process worked together; never empty."""


@dataclass(slots=True)
class _Hands:
    """One of the people at the bench: when they are free, what their belts are set up for, whose run they work."""

    free: int = 0
    process: str | None = None
    by: str | None = None


def runs_of(
    batches: Iterable[Batch],
    processes: Mapping[str, ProcessWork],
    under_way: Mapping[int, RunUnderWay],
    clock: BenchClock,
    rules: PlanRules,
) -> tuple[Run, ...]:
    """The runs of these batches in this order; each goes to whoever is free first, one under way stays with its person.

    A set-up is paid when the process differs from that of the run before on the same belts; the first run pays too, and
    one under way has paid already.
    """
    people = [_Hands() for _ in range(rules.people)]
    return tuple(_run(batch, people, processes, under_way, clock, rules) for batch in batches)


def _run(
    batch: Batch,
    people: Sequence[_Hands],
    processes: Mapping[str, ProcessWork],
    under_way: Mapping[int, RunUnderWay],
    clock: BenchClock,
    rules: PlanRules,
) -> Run:
    first = batch[0].knife
    begun = None if first.run_id is None else under_way.get(first.run_id)
    hands = _whose(people, first.process, begun)
    seconds = sum(piece.knife.seconds for piece in batch)
    set_up = processes[first.process].set_up_seconds
    paid = repeat_seconds(set_up, rules.saved_percent) if hands.process == first.process else set_up
    if begun is not None:
        paid = 0
    start = hands.free
    hands.free, hands.process = start + paid + seconds, first.process
    starts = clock.start_at(start)
    return Run(
        process=first.process,
        knife_ids=tuple(piece.knife.knife_id for piece in batch),
        why=batch[0].why,
        set_up_seconds=paid,
        seconds=seconds,
        handling_minutes=sum(piece.knife.handling_minutes for piece in batch),
        under_way=begun,
        start_second=start,
        end_second=hands.free,
        start=starts,
        # A run of no seconds ends when it starts, not at the closing time before it.
        end=starts if hands.free == start else clock.end_at(hands.free),
    )


def _whose(people: Sequence[_Hands], process: str, begun: RunUnderWay | None) -> _Hands:
    """Who works it: its own person, else whoever is free first, the one with the right belts up where two are."""
    if begun is None:
        return min(people, key=lambda hands: (hands.free, hands.process != process))
    own = [hands for hands in people if hands.by == begun.by] or [hands for hands in people if hands.by is None]
    hands = min(own or people, key=lambda hands: hands.free)
    hands.by = begun.by
    return hands
