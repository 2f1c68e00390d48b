"""One look at an invented queue: what is said of each box, and what then happens to it once."""

from dataclasses import dataclass
from itertools import count
from random import Random

from queueboard.planning.chance import chance_late, chances
from queueboard.planning.evaluation import Batch
from queueboard.planning.learning import KNIFE_CV
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue, QueuePlan
from tests.year.shop import Shop
from tests.year.world import DAY, YIELD_MEAN, World


@dataclass(frozen=True, slots=True)
class Seen:
    """A box of a snapshot: what each formula said, and whether it was late."""

    said: float
    knives_only: float
    """Said when nothing but the knives is taken to stray."""
    at_cutoff: float
    """Said when it is looked at where the last box of its cut-off is finished, not where it is itself."""
    overloaded: bool
    late: bool


def snapshots(shops: int, history: int) -> list[Seen]:
    """What was said and seen of all boxes in so many shops, each of which has measured so many knives before."""
    return [seen for seed in range(shops) for seen in _snapshot(seed, history)]


def _snapshot(seed: int, history: int) -> list[Seen]:
    shop = Shop(World(seed))
    teach(shop, history)
    fill(shop, Random(f"snapshot {seed}"))  # noqa: S311 invented work, no secret
    boxes, queue = shop.open, shop.queue(0)
    plan = plan_queue(queue)
    only = knife_variances(queue, plan)
    said = {one.box_id: one for one in chances(queue, plan, shop.doubt)}
    latest: dict[int | None, float] = {}
    for box in queue.boxes:
        latest[box.due] = max(latest.get(box.due, 0), said[box.id].chance_late)
    follow(shop, plan)
    return [
        Seen(
            said=said[box.id].chance_late,
            knives_only=chance_late(said[box.id].spare_seconds, only[plan.finish[box.id]]),
            at_cutoff=latest[planned.due],
            overloaded=said[box.id].overloaded,
            late=box.is_late,
        )
        for box, planned in zip(boxes, queue.boxes, strict=True)
    ]


def teach(shop: Shop, history: int) -> None:
    """Let the shop measure so many knives, day by day; its bench is cleared behind it."""
    while sum(run.knives for run in shop.runs) < history:
        shop.learn()
        while sum(knife.starter_seconds for box in shop.open for knife in box.open_knives) < 2 * DAY:
            shop.open.append(shop.world.box())
        plan = plan_queue(shop.queue(0))
        shop.work(0, [(run.process, run.knife_ids) for run in plan.runs], shop.world.day_yield())
    while sum(run.knives for run in shop.runs[:-1]) >= history and shop.runs:
        shop.runs.pop()
    shop.open = []
    shop.learn()


def fill(shop: Shop, dice: Random) -> None:
    """Boxes for two to four days, between loose and overloaded as far as the shop knows, each promised for one."""
    days = dice.choice((2, 3, 4))
    room = dice.uniform(0.7, 1.15) * days * DAY * YIELD_MEAN
    while room > 0:
        box = shop.world.box()
        room -= sum(shop.estimate(knife.process, knife.starter_seconds) for knife in box.knives)
        box.promised = box.told = dice.randrange(days) + box.leaves_at
        shop.open.append(box)


def knife_variances(queue: Queue, plan: QueuePlan) -> dict[int, float]:
    """By the end of each run, how much the work up to it strays when only single knives do."""
    seconds = {knife.id: knife.seconds for box in queue.boxes for knife in box.knives}
    variances, so_far = {}, 0.0
    for run in plan.runs:
        so_far += sum((KNIFE_CV * seconds[knife_id]) ** 2 for knife_id in run.knife_ids)
        variances[run.end] = so_far
    return variances


def follow(shop: Shop, plan: QueuePlan) -> None:
    """Work the plan as it stands, day after day, until all is done."""
    for day in count():
        if not shop.open:
            return
        still = {knife.id for box in shop.open for knife in box.open_knives}
        left: list[Batch] = [(run.process, tuple(one for one in run.knife_ids if one in still)) for run in plan.runs]
        shop.work(day, [batch for batch in left if batch[1]], shop.world.day_yield())
