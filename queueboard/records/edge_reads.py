"""Readings of knives, gathered by knife with fixed SQL. Struck ones, and those that saw the burr, are left out."""

from collections import defaultdict
from collections.abc import Mapping

from queueboard.records.cells import whole
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.reading import knives_of
from queueboard.slotted import dataclass
from queueboard.values.knife import Knife


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadKnife:
    """A knife with its readings by the name of the spot, in grams-force."""

    knife: Knife
    spots: frozenset[str]
    """Names of all its marked spots."""
    before: Mapping[str, int]
    """The newest before the work."""
    first_after: Mapping[str, int]
    """After the work and up to the first test; the higher where a spot was read twice."""
    last_after: Mapping[str, int]
    """The same since it was worked last."""
    read_us: int
    """When it was first read after the work; 0 when it never was."""
    first_ok: bool | None
    """What the first test said; None while it was not tested."""

    @property
    def first_whole(self) -> bool:
        """True when every marked spot was read up to the first test; half a knife is not compared with whole ones."""
        return bool(self.spots) and self.spots <= self.first_after.keys()

    @property
    def pair_whole(self) -> bool:
        """True when every marked spot was read before the work, and after it since it was worked last."""
        return bool(self.spots) and self.spots <= self.before.keys() & self.last_after.keys()


_READ = """SELECT s.knife_id, s.name, r.stage, r.force_gf, r.read_us FROM reading r JOIN spot s ON s.id = r.spot_id
WHERE r.struck_us IS NULL AND (r.stage = 'before' OR (r.stage = 'after' AND r.deburred = 1))"""


_TESTS = """SELECT t.knife_id, t.ok, t.tested_us, EXISTS (SELECT 1 FROM second_look l WHERE l.knife_id = t.knife_id
AND l.chosen_us = t.tested_us AND l.choice <> 'one more try') FROM edge_test t"""

EVERY = "SELECT knife_id FROM spot"
DRAWN = f"{EVERY} WHERE knife_id IN (SELECT knife_id FROM trial_knife)"
SINCE = "SELECT s.knife_id FROM reading r JOIN spot s ON s.id = r.spot_id WHERE r.read_us >= ?"
"""Fixed SQL for the ids of knives with marked spots: all, those of belt trials, those that were read since."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Test:
    """A test of a knife."""

    ok: bool
    at_us: int
    worked: bool
    """True when it was not OK and went back to be worked; a second look may have let it go as it was."""


def read_knives(database: ShopDatabase, which: str = EVERY, *values: Cell) -> tuple[ReadKnife, ...]:
    """Knives that were read, in the order of their first reading after the work; which: EVERY, DRAWN or SINCE."""
    before: defaultdict[int, dict[str, int]] = defaultdict(dict)
    after: defaultdict[int, list[tuple[str, int, int]]] = defaultdict(list)
    for knife_id, spot, stage, force, read_us in database.rows(
        f"{_READ} AND s.knife_id IN ({which}) ORDER BY r.read_us, r.id", values
    ):
        if stage == "before":
            before[whole(knife_id)][str(spot)] = whole(force)
        else:
            after[whole(knife_id)].append((str(spot), whole(force), whole(read_us)))
    tests: defaultdict[int, list[_Test]] = defaultdict(list)
    for knife_id, ok, tested_us, stays in database.rows(
        f"{_TESTS} WHERE t.knife_id IN ({which}) ORDER BY t.id", values
    ):
        tests[whole(knife_id)].append(_Test(ok=bool(ok), at_us=whole(tested_us), worked=not ok and not stays))
    spots: defaultdict[int, set[str]] = defaultdict(set)
    for knife_id, name in database.rows(f"SELECT knife_id, name FROM spot WHERE knife_id IN ({which})", values):
        spots[whole(knife_id)].add(str(name))
    knives = knives_of(database, f"k.id IN ({which})", *values)
    met = (
        _read(knife, frozenset(spots[knife.id]), before[knife.id], after[knife.id], tests[knife.id]) for knife in knives
    )
    return tuple(sorted(met, key=lambda one: (one.read_us, one.knife.id)))


def _read(
    knife: Knife,
    spots: frozenset[str],
    before: Mapping[str, int],
    after: list[tuple[str, int, int]],
    tests: list[_Test],
) -> ReadKnife:
    up_to = [one for one in after if not tests or one[2] <= tests[0].at_us]
    worked_us = max((test.at_us for test in tests if test.worked), default=-1)
    return ReadKnife(
        knife=knife,
        spots=spots,
        before=before,
        first_after=_highest(up_to or after),
        last_after=_highest([one for one in after if one[2] > worked_us]),
        read_us=min((at_us for _, _, at_us in after), default=0),
        first_ok=tests[0].ok if tests else None,
    )


def _highest(readings: list[tuple[str, int, int]]) -> dict[str, int]:
    found: dict[str, int] = {}
    for spot, force, _ in readings:
        found[spot] = max(force, found.get(spot, 0))
    return found


def trial_minutes(database: ShopDatabase) -> dict[int, tuple[int, float]]:
    """For each knife of a timed, finished run: the run's id, and its share of the run's minutes without the set-up.

    Shared by the knives' hands-on seconds as planned; of several runs the first counts.
    """
    rows = database.rows(
        "SELECT k.knife_id, r.id, k.nominal_seconds * 1.0 / (SELECT sum(o.nominal_seconds) FROM run_knife o "
        "WHERE o.run_id = r.id) * max(0, (r.finished_us - r.started_us - r.paused_total_us) / 1000000.0 "
        "- r.set_up_seconds) / 60.0 FROM run_knife k JOIN bench_run r ON r.id = k.run_id "
        "WHERE r.finished_us IS NOT NULL AND r.timed = 1 ORDER BY r.id DESC"
    )
    return {whole(row[0]): (whole(row[1]), float(str(row[2]))) for row in rows}


def received(database: ShopDatabase) -> dict[int, tuple[int, int]]:
    """For each box, open or gone, its customer and when it was received."""
    rows = database.rows("SELECT id, customer_id, received_us FROM box")
    return {whole(row[0]): (whole(row[1]), whole(row[2])) for row in rows}
