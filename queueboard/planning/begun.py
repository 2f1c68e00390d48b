"""Runs under way: of what their knives take, so much is done already."""

from collections.abc import Iterable
from dataclasses import replace

from queueboard.values.plan import BoxWork, KnifeWork, RunUnderWay

AT_LEAST = 60
"""Seconds that a run under way is taken to last yet, however long it has taken already (invented)."""


def with_what_is_left(boxes: Iterable[BoxWork], under_way: Iterable[RunUnderWay]) -> tuple[BoxWork, ...]:
    """The same work, but knives in a run under way take only their share of what is left of it."""
    boxes = tuple(boxes)
    runs = {run.run_id: run for run in under_way}
    whole: dict[int, int] = {}
    for knife in (knife for box in boxes for knife in box.knives):
        if knife.run_id in runs and knife.run_id is not None:
            whole[knife.run_id] = whole.get(knife.run_id, 0) + knife.seconds
    left = {run_id: max(AT_LEAST, seconds - runs[run_id].worked_seconds) for run_id, seconds in whole.items()}

    def shared(knife: KnifeWork) -> KnifeWork:
        if knife.run_id is None or knife.run_id not in left:
            return knife
        return replace(knife, seconds=-(-knife.seconds * left[knife.run_id] // max(1, whole[knife.run_id])))

    return tuple(replace(box, knives=tuple(map(shared, box.knives))) for box in boxes) if left else boxes
