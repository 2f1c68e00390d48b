"""Ways to promise a box, on the same arrivals and days."""

from collections.abc import Callable
from dataclasses import replace

from queueboard.planning.evaluation import evaluate
from queueboard.planning.placing import SPREADS, Margins, promised
from queueboard.planning.planner import plan_queue
from queueboard.planning.quoting import quote
from tests.year.shop import Shop, due_of
from tests.year.world import COUNTER, DAY, Box

Rule = Callable[[Shop, int, list[Box]], None]
"""Promises the boxes that came in this morning and puts them among the open ones."""


def take_in(shop: Shop, box: Box, day: int) -> None:
    """The box is told this day, and is open."""
    box.promised = box.told = day + box.leaves_at
    shop.open.append(box)


def constant(days: int) -> Rule:
    """The same number of days for everybody."""

    def promise(shop: Shop, day: int, boxes: list[Box]) -> None:
        for box in boxes:
            take_in(shop, box, day + days)

    return promise


def napkin(shop: Shop, day: int, boxes: list[Box]) -> None:
    """Open starter minutes over the minutes of a day, rounded up: no set-ups, no yield, nothing learned, no safety."""
    ahead = sum(knife.starter_seconds for box in shop.open for knife in box.open_knives)
    for box in boxes:
        ahead += sum(knife.starter_seconds for knife in box.knives)
        take_in(shop, box, day + next(d for d in range(10**4) if d + box.leaves_at >= ahead / DAY))


def ours(spreads: float = SPREADS, constant_seconds: int = 0) -> Rule:
    """The product's promise, each box put into the plan as it is promised."""
    margins = Margins(spreads=spreads, constant_seconds=constant_seconds)

    def promise(shop: Shop, day: int, boxes: list[Box]) -> None:
        queue = shop.queue(day)
        plan = plan_queue(queue)
        for box in boxes:
            new = shop.queue_box(box, None)
            slot = int(box.leaves_at == COUNTER)
            found = quote(promised(queue, plan, shop.doubt), new, margins, range(slot, len(queue.cutoffs), 2))
            if found is None:
                raise AssertionError(f"No cut-off bears box {box.id} on day {day}.")
            take_in(shop, box, day + found.cutoff // 2)
            batches = [(run.process, run.knife_ids) for run in plan.runs]
            batches[found.place.run : found.place.run] = found.place.block.batches
            queue = replace(queue, boxes=(*queue.boxes, replace(new, due=due_of(box, day))))
            plan = evaluate(queue, batches)

    return promise
