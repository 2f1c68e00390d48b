"""A shop day by day: promise, plan, work; and what is kept of it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from statistics import fmean

from queueboard.planning.chance import BoxChance, chances
from queueboard.planning.evaluation import Batch
from queueboard.planning.planner import plan_queue
from queueboard.planning.queue import Queue
from tests.year.rules import Rule
from tests.year.shop import Shop
from tests.year.world import WARM_UP, Box, Season, World, arrivals

LEARNS_DAILY = 60
"""Days after which the shop learns once a week only, for its figures hardly move any more."""

Builder = Callable[[Shop, Queue], list[Batch]]
"""Makes the runs of a day."""


@dataclass(slots=True)
class Said:
    """What was said of a box one morning."""

    box: Box
    told: float
    """The promise it was said about."""
    days_ahead: int
    chance: BoxChance

    @property
    def late(self) -> bool:
        """True when it was not kept."""
        return self.box.finished < 0 or self.box.finished > self.told


@dataclass(slots=True)
class Life:
    """What is kept of a shop's days after the warm-up."""

    days: int
    """In all."""
    boxes: list[Box] = field(default_factory=list)
    said: list[Said] = field(default_factory=list)
    set_up_seconds: float = 0.0
    knife_seconds: float = 0.0
    most_open_seconds: int = 0
    """Starter seconds of the fullest morning."""

    @property
    def on_time(self) -> float:
        """Share of the boxes that were finished by their first promise."""
        return fmean(not box.is_late for box in self.boxes)

    @property
    def knives_on_time(self) -> float:
        """Share of the knives in those boxes."""
        knives = [not box.is_late for box in self.boxes for _ in box.knives]
        return fmean(knives)

    @property
    def late_days(self) -> float:
        """How late the late boxes are on average; one that is still open counts to the last day. 0 when none is."""
        ends = [box.finished if box.finished >= 0 else self.days for box in self.boxes if box.is_late]
        promised = [box.promised for box in self.boxes if box.is_late]
        return fmean(end - told for end, told in zip(ends, promised, strict=True)) if ends else 0.0

    @property
    def quoted_days(self) -> float:
        """Working days promised, on average; today is 0."""
        return fmean(int(box.promised - box.leaves_at + 0.5) - box.day for box in self.boxes)

    @property
    def worst_month(self) -> float:
        """The share on time of the worst 20 working days, by promise."""
        months: dict[int, list[bool]] = {}
        for box in self.boxes:
            months.setdefault(int(box.promised) // 20, []).append(not box.is_late)
        return min(fmean(month) for month in months.values() if len(month) >= 50)

    @property
    def set_up_share(self) -> float:
        """Set-ups over all worked seconds."""
        return self.set_up_seconds / (self.set_up_seconds + self.knife_seconds)


def live(
    world: World,
    season: Season,
    rule: Rule,
    *,
    warm_up: int = WARM_UP,
    builder: Builder | None = None,
    say: bool = False,
) -> Life:
    """The life of one shop; builder None: the product's plan. say: keep what is said each morning."""
    shop, life = Shop(world), Life(season.days)
    coming = [(boxes, world.day_yield()) for boxes in arrivals(world, season)]
    for day, (boxes, share) in enumerate(coming):
        if day < LEARNS_DAILY or day % 5 == 0:
            shop.learn()
        rule(shop, day, boxes)
        queue = shop.queue(day)
        if builder is None:
            plan = plan_queue(queue)
            batches = [(run.process, run.knife_ids) for run in plan.runs]
            if say and day >= warm_up:
                life.said.extend(_said(shop, day, chances(queue, plan, shop.doubt)))
            tell_again(shop.open, day, queue, plan.honest)
        else:
            batches = builder(shop, queue)
        _keep(life, shop, boxes, counted=day >= warm_up)
        done = shop.work(day, batches, share)
        if day >= warm_up:
            life.set_up_seconds += done.set_up_seconds
            life.knife_seconds += done.knife_seconds
    life.boxes = [box for box in life.boxes if box.promised < season.days]
    return life


def _said(shop: Shop, day: int, said: Iterable[BoxChance]) -> list[Said]:
    boxes = {box.id: box for box in shop.open}
    told = ((boxes[one.box_id], one) for one in said)
    return [Said(box, box.told, int(box.told - box.leaves_at + 0.5) - day, one) for box, one in told]


def _keep(life: Life, shop: Shop, boxes: list[Box], *, counted: bool) -> None:
    if counted:
        life.boxes.extend(boxes)
        starter = sum(knife.starter_seconds for box in shop.open for knife in box.open_knives)
        life.most_open_seconds = max(life.most_open_seconds, starter)


def tell_again(boxes: Iterable[Box], day: int, queue: Queue, honest: dict[int, int]) -> None:
    """Who is past the promise is told the honest cut-off, and that counts from now on."""
    for box in boxes:
        if box.told < day and honest.get(box.id, len(queue.cutoffs)) < len(queue.cutoffs):
            box.told = day + honest[box.id] // 2 + box.leaves_at
