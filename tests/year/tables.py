"""The tables that the simulator prints."""

from collections.abc import Iterable, Iterator
from statistics import fmean

from queueboard.planning.placing import SPREADS
from tests.year import world
from tests.year.builders import box_by_box, day_batches
from tests.year.calibration import Step, brier, calibration_error, steps_of
from tests.year.life import Builder, Life, Said, live
from tests.year.rules import Rule, constant, napkin, ours
from tests.year.snapshot import snapshots
from tests.year.world import BUSY, CALM, DAY, DECEMBER, SEASONAL, YIELD_MEAN, Season, World

RULES: tuple[tuple[str, Rule], ...] = (
    ("constant 2 days", constant(2)),
    ("constant 5 days", constant(5)),
    ("napkin", napkin),
    ("ours, spreads 1.28", ours(1.28)),
    (f"ours, spreads {SPREADS}", ours()),
)
WIDE = (0.0, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1.01)
AHEAD = (("due today", 0, 0), ("1-2 days ahead", 1, 2), ("3-9 days ahead", 3, 9))
BUILDERS: tuple[tuple[str, Builder | None], ...] = (
    ("box by box", box_by_box),
    ("day batches", day_batches),
    ("the plan", None),
)


def parameters() -> Iterator[str]:
    """What the invented shops are like."""
    yield "Invented shops; every figure below is a guess, no shop's data was seen."
    yield f"true minutes: process sd {world.PROCESS_SD:.0%}, shop sd {world.SHOP_SD:.0%}, box sd {world.BOX_SD:.0%},"
    yield f"  knife gamma cv {world.KNIFE_CV:.0%}; a day of {DAY // 3600} h yields {YIELD_MEAN} +- {world.YIELD_SD}"
    yield f"warm-up {world.WARM_UP} days; parcels at {world.MAIL} of the day, counter at its end; a belt change 30 s"
    for season in (CALM, BUSY, SEASONAL, DECEMBER):
        rush = f", rush x{season.rush} for {len(season.rush_days)} days" if season.rush_days else ""
        week = f", week {season.week}" if len(season.week) > 1 else ""
        yield f"  {season.name}: load {season.load:.0%}, {season.days} days{week}{rush}"


def snapshot_table(shops: int) -> Iterator[str]:
    """One look at many shops: calibration error and Brier score by what they have measured."""
    yield f"Chance of being late, one look at {shops} shops (error: mean distance of said and seen)"
    yield "history      boxes   all parts: error Brier   knives only   at the cut-off"
    for history in (0, 100, 400):
        seen = snapshots(shops, history)
        late = [one.late for one in seen]
        cells = []
        for said in ([s.said for s in seen], [s.knives_only for s in seen], [s.at_cutoff for s in seen]):
            pairs = list(zip(said, late, strict=True))
            cells.append(f"{calibration_error(steps_of(pairs)):.3f} {brier(pairs):.3f}")
        yield f"{history:4} knives {len(seen):7}   {cells[0]:>22}   {cells[1]}   {cells[2]}"
        if history:
            yield "   " + steps_line(steps_of([(one.said, one.late) for one in seen], WIDE))


def steps_line(steps: Iterable[Step]) -> str:
    """Said -> seen, with the number of boxes."""
    return "  ".join(f"{step.said:.2f}->{step.seen:.2f} ({step.boxes})" for step in steps)


def rolling_table(name: str, said: list[Said]) -> Iterator[str]:
    """Said and seen, planned anew each morning, by how far ahead; overloaded cut-offs apart."""
    yield f"Said -> seen, planned anew each morning: {name}"
    for label, first, last in AHEAD:
        for overloaded in (False, True):
            pairs = [
                (one.chance.chance_late, one.late)
                for one in said
                if first <= one.days_ahead <= last and one.chance.overloaded is overloaded
            ]
            if len(pairs) >= 50:
                what = f"{label}{', overloaded' if overloaded else ''}"
                error = calibration_error(steps_of(pairs))
                yield f"  {what}: error {error:.3f}   {steps_line(steps_of(pairs, WIDE))}"


def promise_tables(shops: int) -> Iterator[str]:
    """The rules on the same arrivals and days, and what was said under ours in the seasonal year."""
    said: list[Said] = []
    for season in (CALM, BUSY, SEASONAL, DECEMBER):
        yield f"Promises, {season.name}, {shops} shops, the same arrivals and days for each rule"
        yield "rule                 boxes  on time  by knives  worst month  late by, days  working days quoted"
        for name, rule in RULES:
            lives = [live(World(seed), season, rule, say=season is SEASONAL) for seed in range(shops)]
            yield promise_line(name, lives)
            said += [one for life in lives for one in life.said] if name == RULES[-1][0] else []
        most = fmean(life.most_open_seconds for life in lives) / DAY / YIELD_MEAN
        yield f"fullest morning: {most:.1f} days of work by the starter minutes"
        yield ""
    yield from rolling_table("seasonal, our promises", said)
    late = [one for seed in range(shops) for one in live(World(seed), BUSY, constant(2), say=True).said]
    yield from rolling_table("busy, constant 2 days", late)


def promise_line(name: str, lives: list[Life]) -> str:
    """A rule over its shops."""
    boxes = sum(len(life.boxes) for life in lives)
    shares = fmean(life.on_time for life in lives), fmean(life.knives_on_time for life in lives)
    worst = min(life.worst_month for life in lives)
    late, quoted = fmean(life.late_days for life in lives), fmean(life.quoted_days for life in lives)
    return f"{name:20} {boxes:5}  {shares[0]:7.1%}  {shares[1]:9.1%}  {worst:11.1%}  {late:13.1f}  {quoted:19.2f}"


def set_up_table(shops: int, season: Season = BUSY) -> Iterator[str]:
    """How the runs are put together, for dear and cheap belt changes; everybody is promised eight days."""
    yield f"Set-ups over bench time, {season.name}, 8 days promised, {shops} shops"
    yield "belt change   " + "".join(f"{name:>22}" for name, _ in BUILDERS)
    for belt_seconds in (20, 30, 90):
        cells = []
        for _, builder in BUILDERS:
            worlds = (World(seed, belt_seconds) for seed in range(shops))
            lives = [live(one, season, constant(8), builder=builder) for one in worlds]
            share, on_time = fmean(life.set_up_share for life in lives), fmean(life.on_time for life in lives)
            cells.append(f"{f'{share:.1%} ({on_time:.0%} on time)':>22}")
        yield f"{belt_seconds:8} s    {''.join(cells)}"
