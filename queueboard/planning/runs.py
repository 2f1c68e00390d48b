"""An order of knives cut into runs, with the minutes and the clock of each."""

from collections.abc import Iterable, Mapping, Sequence

from queueboard.planning.clock import BenchClock
from queueboard.planning.ranks import Piece
from queueboard.values.plan import ProcessWork, Run


def runs_of(pieces: Iterable[Piece], processes: Mapping[str, ProcessWork], clock: BenchClock) -> tuple[Run, ...]:
    """Runs of neighbours: one process, due together, at most the process's run size.

    A set-up is paid when the process differs from that of the run before; the first run pays too. Set-ups are summed
    in seconds from now on and rounded once at the end of each run, half a minute up, so roundings never pile up.
    """
    runs: list[Run] = []
    minutes = set_up_seconds = 0
    for batch in _batches(pieces, processes):
        process = processes[batch[0].knife.process]
        start_minute = _rounded(minutes, set_up_seconds)
        paid = 0 if runs and runs[-1].process == process.name else process.set_up_seconds
        set_up_seconds += paid
        minutes += sum(piece.knife.minutes for piece in batch)
        runs.append(_run(batch, paid, start_minute, _rounded(minutes, set_up_seconds), clock))
    return tuple(runs)


def _rounded(minutes: int, seconds: int) -> int:
    return minutes + (seconds + 30) // 60


def _batches(pieces: Iterable[Piece], processes: Mapping[str, ProcessWork]) -> tuple[tuple[Piece, ...], ...]:
    batches: list[list[Piece]] = []
    for piece in pieces:
        last = batches[-1] if batches else None
        full = last is not None and len(last) >= processes[piece.knife.process].run_size
        if last is not None and not full and _together(last[0], piece):
            last.append(piece)
        else:
            batches.append([piece])
    return tuple(tuple(batch) for batch in batches)


def _together(one: Piece, other: Piece) -> bool:
    return one.knife.process == other.knife.process and one.group == other.group


def _run(batch: Sequence[Piece], paid: int, start_minute: int, end_minute: int, clock: BenchClock) -> Run:
    start = clock.start_at(start_minute)
    return Run(
        process=batch[0].knife.process,
        knife_ids=tuple(piece.knife.knife_id for piece in batch),
        why=batch[0].why,
        set_up_seconds=paid,
        minutes=sum(piece.knife.minutes for piece in batch),
        handling_minutes=sum(piece.knife.handling_minutes for piece in batch),
        start_minute=start_minute,
        end_minute=end_minute,
        start=start,
        # A run of no minutes ends when it starts, not at the closing time before it.
        end=start if end_minute == start_minute else clock.end_at(end_minute),
    )
