"""Instance files as their folder's page describes them, turned into queues of whole bench seconds."""

from collections.abc import Iterable
from pathlib import Path
from typing import NotRequired, TypedDict

from queueboard.planning.queue import Queue, QueueBox, QueueKnife, QueueProcess

TICK = 6
"""Seconds of a tick, a tenth of a bench minute."""


class Process(TypedDict):
    """A process; its set-up in ticks."""

    name: str
    belts: int
    setup: int


class Cutting(TypedDict):
    """A box; due is an index into the cut-offs, -1 when that has passed."""

    id: int
    kind: str
    arrived: float
    due: int
    weight: int
    when: NotRequired[float]


class Group(TypedDict):
    """Knives of a box that are alike, ticks each."""

    box: int
    proc: int
    n: int
    t: int


class Instance(TypedDict):
    """A whole queue."""

    K: int
    rho: float
    procs: list[Process]
    cutoffs: list[int]
    boxes: list[Cutting]
    groups: list[Group]


def repeat_ticks(instance: Instance, process: int) -> int:
    """Set-up of a run after another one of the same process, as the page rounds it."""
    return round(instance["procs"][process]["setup"] * (1 - instance["rho"]))


def queue_of(instance: Instance) -> Queue:
    """The queue of an instance. A knife's id is its place when the groups are laid out knife by knife."""
    knives: dict[int, list[QueueKnife]] = {box["id"]: [] for box in instance["boxes"]}
    count = 0
    for group in instance["groups"]:
        for _ in range(group["n"]):
            knives[group["box"]].append(QueueKnife(id=count, process=group["proc"], seconds=group["t"] * TICK))
            count += 1
    return Queue(
        boxes=tuple(
            QueueBox(id=box["id"], due=box["due"], weight=box["weight"], knives=tuple(knives[box["id"]]))
            for box in instance["boxes"]
        ),
        processes=tuple(
            QueueProcess(
                set_up_seconds=process["setup"] * TICK,
                repeat_set_up_seconds=repeat_ticks(instance, place) * TICK,
                run_size=instance["K"],
            )
            for place, process in enumerate(instance["procs"])
        ),
        cutoffs=tuple(cutoff * TICK for cutoff in instance["cutoffs"]),
        saved_percent=round(100 * instance["rho"]),
    )


def files_in(folders: Iterable[Path]) -> list[Path]:
    """The instance files of these folders, by name."""
    return sorted(
        (path for folder in folders for path in folder.glob("*.json") if path.name != "reference.json"),
        key=lambda path: path.name,
    )
