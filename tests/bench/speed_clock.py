"""The clock of the figures of speed: the wall's, less the time for which other programs had the processors."""

import time
from pathlib import Path


def unhindered(process: int | str = "self") -> float:
    """Seconds by the wall, less those for which a process's threads were ready and had no processor (Linux says)."""
    return time.perf_counter() - scheduled(process, 1)


def scheduled(process: int | str, which: int) -> float:
    """Seconds that all threads of a process have run (0), or stood in the queue for a processor (1)."""
    tasks = Path(f"/proc/{process}/task").glob("*/schedstat")
    return sum(int(task.read_text(encoding="ascii").split()[which]) for task in tasks) / 1_000_000_000
