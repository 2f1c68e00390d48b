"""What the shop's own measured runs and days say about its minutes, held against the starter minutes.

Two levels, each an average weighted by how sure it is (normal data with known spreads, as in Efron and Morris, 1977):
what all processes have in common is the shop's factor; what is left is the process's own. With few knives the starter
minutes count most, with hundreds the measured ones.
"""

from collections.abc import Iterable, Sequence
from math import sqrt

from queueboard.slotted import dataclass
from queueboard.words import StaysOut

SHOP_SD = 0.15
"""How far a shop as a whole works from the starter minutes, as a share. Simulated here, no shop's data."""
PROCESS_SD = 0.25
"""How far one process strays from its shop, as a share. Simulated here, no shop's data."""
KNIFE_CV = 0.40
"""How far one knife strays from its estimate, as a share. Simulated here, no shop's data."""
BOX_SD = 0.20
"""How far a box's condition moves all of its knives together, as a share. Simulated here, no shop's data."""
YIELD_MEAN = 0.90
"""Share of a day's bench seconds that turn into planned work, before any day was counted. Simulated, no shop's data."""
YIELD_SD = 0.14
"""How far that share moves from day to day. Simulated here, no shop's data."""
YIELD_PRIOR_DAYS = 5
"""Full days that the two figures above are worth. A choice, no source."""
MOST_HELD = YIELD_MEAN + 2 * YIELD_SD
"""Share of its bench seconds that a day holds at the very most: two spreads above the mean. A choice, no source."""
BELIEVABLE = (YIELD_MEAN / 2, YIELD_MEAN * 1.5)
"""Between which shares a full day is taken for a day's work. A choice, no source: below, somebody was hardly there or
did not move what was done; above, the knives of several days were moved at once."""
TOO_LONG = 2
"""A run of more than so many times its estimate was surely interrupted. A choice, no source."""
TOO_SHORT = 5
"""A run of less than its estimate by so many was surely begun late, or begun and finished by a slip. A choice, no
source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredRun:
    """A run that was timed at the bench."""

    process: int
    """Index into the shop's processes."""
    knives: int
    """At least 1."""
    boxes: int
    """Boxes that the knives belong to, at least 1; knives of one box are alike in condition."""
    starter_seconds: int
    """What its knives take by the starter minutes, above 0."""
    estimated_seconds: int
    """What the plan gave its knives when the run began, above 0."""
    measured_seconds: int
    """Hands-on seconds; set-up and pauses are taken off."""
    thrown_away: bool = False
    """True when the person said that this time does not count."""


def stays_out(run: MeasuredRun) -> StaysOut | None:
    """Why a run is not counted; None when it is.

    It is held against what the plan gave it, not against the starter minutes, so that a truly slow process is learned.
    """
    if run.thrown_away:
        return StaysOut.THROWN_AWAY
    return beyond_belief(run.measured_seconds, run.estimated_seconds)


def beyond_belief(measured_seconds: int, estimated_seconds: int) -> StaysOut | None:
    """Whether so many hands-on seconds are too short, or too long, to be the work that was estimated so."""
    if TOO_SHORT * measured_seconds < estimated_seconds:
        return StaysOut.TOO_SHORT
    return StaysOut.TOO_LONG if measured_seconds > TOO_LONG * estimated_seconds else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Factor:
    """What the starter seconds are to be multiplied with, and how sure that is."""

    value: float
    """Above 0; 1 when nothing was measured."""
    knives: int
    """Measured knives it rests on."""
    own_variance: float
    """Of the value, as far as it is wrong by itself."""
    shared_sd: float = 0.0
    """Of the value, as far as it leans on the shop's factor and is wrong together with the other processes."""

    def learned(self, starter_seconds: int) -> int:
        """Whole seconds; half a second counts whole."""
        return int(starter_seconds * self.value + 0.5)

    @property
    def variance(self) -> float:
        """Of the value, from the estimating."""
        return self.own_variance + self.shared_sd**2


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """The factors of a shop."""

    shop: Factor
    processes: tuple[Factor, ...]
    """In the order of the shop's processes."""


def learn(runs: Iterable[MeasuredRun], processes: int) -> Learned:
    """The factors that so many processes and their shop have by these runs; runs that stay out are skipped."""
    counted: list[list[MeasuredRun]] = [[] for _ in range(processes)]
    for run in runs:
        if stays_out(run) is None:
            counted[run.process].append(run)
    seen = [_seen(some) if some else None for some in counted]
    shop, shop_variance = common_mean(
        [(ratio, PROCESS_SD**2 + noise) for ratio, noise in filter(None, seen)], (1.0, SHOP_SD**2)
    )
    every = sum(run.knives for some in counted for run in some)
    return Learned(
        shop=Factor(value=shop, knives=every, own_variance=shop_variance),
        processes=tuple(
            _factor(of, sum(run.knives for run in some), shop, shop_variance)
            for of, some in zip(seen, counted, strict=True)
        ),
    )


def _seen(runs: Sequence[MeasuredRun]) -> tuple[float, float]:
    """Measured over starter seconds of a process, and its sampling variance when its knives are alike in size."""
    starter = sum(run.starter_seconds for run in runs)
    ratio = sum(run.measured_seconds for run in runs) / starter
    noise = sum(
        (run.starter_seconds / starter) ** 2 * (KNIFE_CV**2 / run.knives + BOX_SD**2 / run.boxes) for run in runs
    )
    return ratio, noise


def _factor(seen: tuple[float, float] | None, knives: int, shop: float, shop_variance: float) -> Factor:
    if seen is None:
        return Factor(value=shop, knives=0, own_variance=PROCESS_SD**2, shared_sd=sqrt(shop_variance))
    ratio, noise = seen
    weight = weight_of(PROCESS_SD**2, noise)
    return Factor(
        value=shop + weight * (ratio - shop),
        knives=knives,
        own_variance=weight * noise,
        shared_sd=(1 - weight) * sqrt(shop_variance),
    )


def weight_of(prior_variance: float, sampling_variance: float) -> float:
    """How much of its distance from the common value a measured one keeps, 0 to 1."""
    return prior_variance / (prior_variance + sampling_variance)


def common_mean(seen: Iterable[tuple[float, float]], prior: tuple[float, float]) -> tuple[float, float]:
    """Mean and variance of what these values and a prior one, each with its variance, say together."""
    parts = [prior, *seen]
    sureness = sum(1 / variance for _, variance in parts)
    return sum(value / variance for value, variance in parts) / sureness, 1 / sureness


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedDay:
    """A day on which something was done at the bench."""

    open_seconds: tuple[int, ...]
    """Starter seconds of the knives that could be worked when the day began, by process."""
    starter_seconds: tuple[int, ...]
    """Of the knives finished that day, by process."""
    knives: int
    """Finished that day, at least 1."""
    boxes: int
    """That those knives belong to, at least 1."""
    set_up_seconds: int
    """Of the runs worked that day."""
    bench_seconds: int
    """What the calendar gave the bench, above 0."""

    def began_full(self, factors: Sequence[Factor]) -> bool:
        """True when there was so much work in the morning that it could not run out.

        Told in the morning: days on which the work turned out to last are more often those that yielded little.
        """
        return _planned(factors, self.open_seconds) >= MOST_HELD * self.bench_seconds

    def share(self, factors: Sequence[Factor]) -> float:
        """Planned seconds done over bench seconds, by what is known of the processes today.

        Not by what the plan of that day knew: else a slow shop would be counted once in its minutes and again here.
        """
        return (_planned(factors, self.starter_seconds) + self.set_up_seconds) / self.bench_seconds

    @property
    def noise(self) -> float:
        """Variance of the share by knives and boxes, as a share of it squared; the work's own, not the bench's."""
        return KNIFE_CV**2 / self.knives + BOX_SD**2 / self.boxes


def _planned(factors: Sequence[Factor], starter_seconds: Sequence[int]) -> float:
    return sum(factor.value * seconds for factor, seconds in zip(factors, starter_seconds, strict=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class Yield:
    """The share of a day's bench seconds that turns into planned work."""

    mean: float
    sd: float
    """From day to day."""
    days: int
    """Full days it rests on."""
    left_out: int
    """Full days that are no day's work, see BELIEVABLE."""

    @property
    def relative_sd(self) -> float:
        """The spread from day to day as a share of the mean."""
        return self.sd / self.mean


def learn_yield(days: Iterable[WorkedDay], factors: Sequence[Factor]) -> Yield:
    """The yield of the shop by its full days, with the prior counted as YIELD_PRIOR_DAYS more of them.

    What knives and boxes stray by is counted with the work; it is taken out of the spread of the days here.
    """
    full = [(day.share(factors), day.noise) for day in days if day.began_full(factors)]
    least, most = BELIEVABLE
    shares = [(share, noise) for share, noise in full if least <= share <= most]
    weight = YIELD_PRIOR_DAYS + len(shares)
    mean = (YIELD_PRIOR_DAYS * YIELD_MEAN + sum(share for share, _ in shares)) / weight
    strayed = sum((share - mean) ** 2 - noise * share**2 for share, noise in shares)
    prior = YIELD_PRIOR_DAYS * (YIELD_SD**2 + (YIELD_MEAN - mean) ** 2)
    sd = sqrt((prior + max(0.0, strayed)) / weight)
    return Yield(mean=mean, sd=sd, days=len(shares), left_out=len(full) - len(shares))
