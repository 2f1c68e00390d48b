"""What runs come to, worked out in ticks from an instance alone: nothing here is shared with the planner.

A run costs its process's set-up, or what is not saved of it right after a run of the same process; the first one costs
all of it. A knife is finished when its run ends, a box with its last knife. Late is a box finished after its cut-off,
tardiness the first cut-off at or after its finish less its own (less 0 when its own has passed already).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from tests.planning.instances import Instance


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What is compared, in this order."""

    late_weight: int
    tardiness: int
    set_up: int
    completion: int
    late: tuple[int, ...]
    """Ids of the late boxes, ascending."""


class WrongPlanError(AssertionError):
    """The runs are no plan of the instance."""


def outcome(instance: Instance, runs: Sequence[tuple[int, Sequence[int]]]) -> Outcome:
    """The outcome of runs, each a process and the knives in it by their place among the groups' knives.

    Raises WrongPlanError when a knife is left out, worked twice or in a run of another process, or a run is too big.
    """
    knives = [group for group in instance["groups"] for _ in range(group["n"])]
    if sorted(place for _, places in runs for place in places) != list(range(len(knives))):
        raise WrongPlanError("not every knife is worked once")
    clock, mounted, set_up = 0, -1, 0
    finish: dict[int, int] = {}
    for process, places in runs:
        if not 0 < len(places) <= instance["K"] or any(knives[place]["proc"] != process for place in places):
            raise WrongPlanError(f"a run of {len(places)} knives is too big, empty or mixed")
        whole = instance["procs"][process]["setup"]
        cost = round(whole * (1 - instance["rho"])) if process == mounted else whole
        clock += cost + sum(knives[place]["t"] for place in places)
        set_up, mounted = set_up + cost, process
        for place in places:
            finish[knives[place]["box"]] = clock
    late, late_weight, tardiness = [], 0, 0
    for box in instance["boxes"]:
        if box["id"] not in finish:
            continue
        end = finish[box["id"]]
        if box["due"] < 0 or end > instance["cutoffs"][box["due"]]:
            late.append(box["id"])
            late_weight += box["weight"]
            leaves = next((cutoff for cutoff in instance["cutoffs"] if cutoff >= end), end)
            tardiness += leaves - (instance["cutoffs"][box["due"]] if box["due"] >= 0 else 0)
    return Outcome(
        late_weight=late_weight,
        tardiness=tardiness,
        set_up=set_up,
        completion=sum(finish.values()),
        late=tuple(sorted(late)),
    )
