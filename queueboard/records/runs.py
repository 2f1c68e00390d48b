"""Runs at the bench, read with fixed SQL into frozen values."""

from collections import defaultdict

from queueboard.records.cells import instant_or_none, whole
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.measured import BenchRun

RUN = """SELECT id, row_version, process, started_us, started_by, nominal_seconds, planned_seconds, set_up_seconds,
paused_us, paused_total_us, finished_us, timed FROM bench_run"""


def open_runs(database: ShopDatabase) -> tuple[BenchRun, ...]:
    """The runs under way, oldest first."""
    return _runs(database, "finished_us IS NULL")


def run_by_id(database: ShopDatabase, run_id: int) -> BenchRun | None:
    """One run, under way or finished."""
    return next(iter(_runs(database, "id = ?", run_id)), None)


def run_knife_rows(database: ShopDatabase, run_id: int) -> tuple[tuple[int, int], ...]:
    """The rows of a run's knives: each row's own id and the knife's."""
    rows = database.rows("SELECT id, knife_id FROM run_knife WHERE run_id = ? ORDER BY id", (run_id,))
    return tuple((whole(row[0]), whole(row[1])) for row in rows)


def runs_of_knife(database: ShopDatabase, knife_id: int) -> tuple[int, ...]:
    """Ids of the rows that put a knife into a run, open or finished."""
    return tuple(whole(row[0]) for row in database.rows("SELECT id FROM run_knife WHERE knife_id = ?", (knife_id,)))


def _runs(database: ShopDatabase, where: str, *values: Cell) -> tuple[BenchRun, ...]:
    knives: defaultdict[int, list[tuple[int, int]]] = defaultdict(list)
    for run_id, knife_id, seconds in database.rows(
        "SELECT run_id, knife_id, nominal_seconds FROM run_knife "
        f"WHERE run_id IN (SELECT id FROM bench_run WHERE {where}) ORDER BY id",
        values,
    ):
        knives[whole(run_id)].append((whole(knife_id), whole(seconds)))
    return tuple(
        BenchRun(
            id=whole(row[0]),
            version=whole(row[1]),
            process=str(row[2]),
            knife_ids=tuple(knife_id for knife_id, _ in knives[whole(row[0])]),
            started_at=from_us(whole(row[3])),
            started_by=str(row[4]),
            nominal_seconds=whole(row[5]),
            planned_seconds=whole(row[6]),
            set_up_seconds=whole(row[7]),
            starter_seconds=sum(seconds for _, seconds in knives[whole(row[0])]),
            paused_at=instant_or_none(row[8]),
            paused_seconds=whole(row[9]) // 1_000_000,
            finished_at=instant_or_none(row[10]),
            timed=bool(row[11]),
        )
        for row in database.rows(f"{RUN} WHERE {where} ORDER BY id", values)
    )
