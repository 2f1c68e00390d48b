"""Plan every instance file in some folders as the day list is planned, one line of JSON each.

python -m tests.plan_queues FOLDER...
"""

import json
import sys
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parents[1]))  # started as a file, Python looks beside it only

from queueboard.planning.planner import DAY_LIST, plan_queue
from tests.planning.instances import Instance, files_in, queue_of
from tests.planning.tick_evaluator import outcome


def main(folders: list[str]) -> None:
    """Print id, late boxes, tardiness and set-up in ticks, and the milliseconds that planning took."""
    for path in files_in(Path(folder) for folder in folders):
        instance: Instance = json.loads(path.read_text(encoding="utf-8"))
        queue = queue_of(instance)
        started = perf_counter()
        plan = plan_queue(queue, restarts=DAY_LIST)
        milliseconds = (perf_counter() - started) * 1000
        seen = outcome(instance, [(run.process, run.knife_ids) for run in plan.runs])
        line = {"id": path.stem, "late": len(seen.late), "tardiness_ticks": seen.tardiness, "setup_ticks": seen.set_up}
        print(json.dumps({**line, "milliseconds": round(milliseconds, 1)}))


if __name__ == "__main__":
    main(sys.argv[1:])
