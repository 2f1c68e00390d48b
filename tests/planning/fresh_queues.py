"""Invented bench queues as instance files hold them: boxes with a ship-by among few cut-offs, drawn from a seed.

Times are ticks of a tenth of a bench minute. Loads, sizes and minutes are guesses; no shop's data was seen.
"""

from random import Random

from tests.planning.instances import Cutting, Group, Instance, Process

PROCESSES = (
    ("plain kitchen", 3, 28, 0.50),
    ("serrated", 2, 43, 0.16),
    ("scissors", 2, 48, 0.17),
    ("heavy repair", 4, 85, 0.08),
    ("single-bevel", 4, 75, 0.09),
    ("outdoor/pocket", 3, 40, 0.06),
)
"""Name, belts, typical ticks a knife, share of the knives."""

LOADS = {"tight": (1.06, 1.45), "medium": (0.90, 0.99), "loose": (0.60, 0.78)}
"""Work over the minutes there are, at the cut-off where it is worst."""


def fresh_queue(seed: int, load: str, boxes: int) -> Instance:
    """The instance of this seed: the same seed gives the same one."""
    dice = Random(f"{seed} {load} {boxes}")  # noqa: S311 invented work, no secret
    kinds = dice.sample(range(3, len(PROCESSES)), dice.randint(0, 3))
    chosen = [PROCESSES[place] for place in (0, 1, 2, *sorted(kinds))]
    hourly = dice.random() < 0.3
    days = 3 + boxes // 8
    slots = {"mail": [0.85], "counter": [0.3, 0.6, 1.0] if hourly else [1.0]}
    rows: list[Cutting] = []
    groups: list[Group] = []
    for box in range(boxes):
        kind = "mail" if dice.random() < 0.6 else "counter"
        day = min(days, int(dice.expovariate(1 / (1 + days / 3.0))))
        rows.append({"id": box, "kind": kind, "arrived": 0.0, "due": -1, "weight": 1})
        rows[-1]["arrived"] = -round(10 * dice.random(), 2)
        rows[-1]["when"] = day + dice.choice(slots[kind])
        groups.extend(_groups_of(box, dice, chosen))
    whens = sorted({day + share for day in range(3 * days + 60) for kind in slots for share in slots[kind]})
    procs: list[Process] = [{"name": name, "belts": belts, "setup": 15 * belts} for name, belts, _, _ in chosen]
    low, high = LOADS[load]
    day_ticks = _day_ticks(rows, groups, procs, low + (high - low) * dice.random())
    cutoffs = [int(when * day_ticks) for when in whens]
    work = sum(g["n"] * g["t"] for g in groups) + len(groups) * 60
    keep = next(place for place, cutoff in enumerate(cutoffs) if cutoff > work and place >= 5)
    last = max(whens.index(row["when"]) for row in rows)
    for row in rows:
        row["due"] = whens.index(row.pop("when"))
        if dice.random() < 0.01:
            row["due"] = -1
    return {
        "K": dice.choice((8, 10, 12)),
        "rho": dice.choice((1.0, 0.5, 0.0)),
        "procs": procs,
        "cutoffs": cutoffs[: max(keep, last) + 2],
        "boxes": rows,
        "groups": groups,
    }


def _groups_of(box: int, dice: Random, chosen: list[tuple[str, int, int, float]]) -> list[Group]:
    sizes: dict[tuple[int, int], int] = {}
    mixed = dice.sample(range(len(chosen)), min(len(chosen), dice.choice((1, 1, 2, 2, 3, 4))))
    for _ in range(min(36, 1 + int(dice.lognormvariate(1.1, 0.8)))):
        process = dice.choices(mixed, [chosen[place][3] for place in mixed])[0]
        ticks = max(8, int(chosen[process][2] * dice.choice((0.8, 0.8, 1.0, 1.0, 1.0, 1.3, 1.5)) + dice.gauss(0, 2)))
        sizes[process, ticks] = sizes.get((process, ticks), 0) + 1
    return [{"box": box, "proc": process, "n": n, "t": ticks} for (process, ticks), n in sorted(sizes.items())]


def _day_ticks(rows: list[Cutting], groups: list[Group], procs: list[Process], load: float) -> int:
    """Ticks of a day such that the worst cut-off is loaded so far: all work due by it, each process set up once."""
    worst = 0.0
    for when in {row["when"] for row in rows}:
        due = {row["id"] for row in rows if row["when"] <= when}
        work = sum(g["n"] * g["t"] for g in groups if g["box"] in due)
        work += sum(procs[place]["setup"] for place in {g["proc"] for g in groups if g["box"] in due})
        worst = max(worst, work / when)
    return int(worst / load)
