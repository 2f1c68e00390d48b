"""The clock of the figures of speed: the wall's, less the time for which other programs had the processors."""

import os
import time
from pathlib import Path


def unhindered(process: int | None = None) -> float:
    """Seconds by the wall, less those for which a process (None: this one) was ready and had no processor.

    Its first thread alone: where several stand in the queue at once, their sum would be more than has gone by.
    """
    pid = os.getpid() if process is None else process
    return time.perf_counter() - _scheduled(Path(f"/proc/{pid}/task/{pid}"), 1)


def worked(process: int) -> float:
    """Seconds that all threads of a process have run."""
    return sum(_scheduled(task, 0) for task in Path(f"/proc/{process}/task").iterdir())


def _scheduled(task: Path, which: int) -> float:
    """Seconds that a thread has run (0), or stood in the queue for a processor (1); Linux says it."""
    return int((task / "schedstat").read_text(encoding="ascii").split()[which]) / 1_000_000_000
