"""Invented shops: what really happens, which no shop knows. All figures are guesses, all is drawn from a seed."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random

PROCESSES = (
    ("plain kitchen", 3, 168, 0.50),
    ("serrated", 2, 258, 0.16),
    ("scissors", 2, 288, 0.17),
    ("heavy repair", 4, 510, 0.08),
    ("single-bevel", 4, 450, 0.09),
)
"""Name, belts, starter seconds of a usual knife, share of the knives."""

PROCESS_SD, SHOP_SD, BOX_SD, KNIFE_CV, YIELD_MEAN, YIELD_SD = 0.25, 0.15, 0.20, 0.40, 0.90, 0.14
"""The world's own spreads; that the product assumes the same ones is what calibration is about."""
DAY = 7 * 3600
"""Bench seconds that the calendar gives a day."""
MAIL, COUNTER = 0.85, 1.0
"""Share of the day before the parcels, and before the counter's last customer."""
MAIL_SHARE = 0.6
WARM_UP = 40
"""Days that are not counted."""
SET_UP_SHARE = 0.022
"""Of the bench, at belts of 30 seconds; loads are set for work that is grouped by process."""


@dataclass(slots=True)
class Knife:
    """A knife and how long it really takes."""

    id: int
    process: int
    starter_seconds: int
    true_seconds: float
    worked_seconds: float = 0.0

    @property
    def left_seconds(self) -> float:
        """What is really left of it."""
        return self.true_seconds - self.worked_seconds


@dataclass(slots=True)
class Box:
    """A box, what it was promised and what became of it; times are days since the start, the day's share behind."""

    id: int
    day: int
    leaves_at: float
    """The share of a day at which it can leave."""
    knives: list[Knife]
    promised: float = -1.0
    told: float = -1.0
    """The promise that counts now: another one once it was late and said so."""
    finished: float = -1.0

    @property
    def open_knives(self) -> list[Knife]:
        """The knives that still need the bench."""
        return [knife for knife in self.knives if knife.left_seconds > 0]

    @property
    def is_late(self) -> bool:
        """True when it was finished after its first promise, or is not finished."""
        return self.finished < 0 or self.finished > self.promised


@dataclass(frozen=True, slots=True)
class Season:
    """How much comes in."""

    name: str
    load: float
    """Work over what the bench can do, on average over all days."""
    days: int = 260
    week: tuple[float, ...] = (1.0,)
    """By working day, 1 on average."""
    rush: float = 1.0
    """Times as much in the rush."""
    rush_days: range = field(default_factory=lambda: range(0))

    def at(self, day: int) -> float:
        """The load of a day."""
        usual = self.load * self.days / (self.days + len(self.rush_days) * (self.rush - 1))
        return usual * self.week[day % len(self.week)] * (self.rush if day in self.rush_days else 1.0)


BURSTS = (1.5, 1.1, 0.8, 0.8, 0.8)
CALM = Season("calm", 0.80)
BUSY = Season("busy", 0.95)
SEASONAL = Season("seasonal", 0.90, week=BURSTS, rush=1.35, rush_days=range(170, 200))
DECEMBER = Season("december", 0.93, days=130, week=BURSTS, rush=1.75, rush_days=range(60, 80))
"""Four weeks of so much more work leave a backlog of about two weeks."""


@dataclass(slots=True)
class World:
    """One shop as it really is."""

    seed: int
    belt_seconds: int = 30
    dice: Random = field(init=False)
    factors: list[float] = field(init=False)
    """True over starter seconds, by process."""
    _knives: int = 0
    _boxes: int = 0

    def __post_init__(self) -> None:
        """Draw the shop."""
        self.dice = Random(f"shop {self.seed}")  # noqa: S311 invented work, no secret
        shop = max(0.5, self.dice.gauss(1, SHOP_SD))
        self.factors = [max(0.3, shop + self.dice.gauss(0, PROCESS_SD)) for _ in PROCESSES]

    @property
    def set_ups(self) -> list[int]:
        """Seconds by process."""
        return [belts * self.belt_seconds for _, belts, _, _ in PROCESSES]

    def box(self, day: int = 0) -> Box:
        """A new box with what is in it."""
        dice = self.dice
        condition = max(0.4, dice.gauss(1, BOX_SD))
        mixed = dice.sample(range(len(PROCESSES)), dice.choice((1, 1, 2, 2, 3)))
        weights = [PROCESSES[process][3] for process in mixed]
        count = min(36, 1 + int(dice.lognormvariate(1.1, 0.8)))
        knives = [self._knife(process, condition) for process in dice.choices(mixed, weights, k=count)]
        self._boxes += 1
        leaves_at = MAIL if dice.random() < MAIL_SHARE else COUNTER
        return Box(id=self._boxes, day=day, leaves_at=leaves_at, knives=knives)

    def _knife(self, process: int, condition: float) -> Knife:
        size = self.dice.choice((0.8, 0.8, 1.0, 1.0, 1.0, 1.3, 1.5))
        starter = int(PROCESSES[process][2] * size)
        noise = self.dice.gammavariate(KNIFE_CV**-2, KNIFE_CV**2)
        self._knives += 1
        return Knife(self._knives, process, starter, starter * self.factors[process] * condition * noise)

    def day_yield(self) -> float:
        """The share of a day that turns into work."""
        return min(1.3, max(0.3, self.dice.gauss(YIELD_MEAN, YIELD_SD)))


def arrivals(world: World, season: Season) -> Iterator[list[Box]]:
    """What comes in each morning, as many boxes as make up the load on average."""
    knives = [knife for _ in range(800) for knife in world.box().knives]
    a_box = sum(knife.true_seconds for knife in knives) / 800
    room = DAY * YIELD_MEAN * (1 - SET_UP_SHARE * world.belt_seconds / 30)
    for day in range(season.days):
        due = season.at(day) * room / a_box
        yield [world.box(day) for _ in range(poisson(world.dice, due))]


def poisson(dice: Random, mean: float) -> int:
    """A count of things that come by themselves, counted by the gaps between them."""
    count, clock = 0, dice.expovariate(1)
    while clock < mean:
        count += 1
        clock += dice.expovariate(1)
    return count
