"""Belt trials and the knives drawn for them, read with fixed SQL."""

from datetime import datetime

from queueboard.edges.trial import LIKE, Draw, Half, TrialRule
from queueboard.records.cells import instant_or_none, whole
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.slotted import dataclass

STILL_LIKE = f"n.kind = t.kind AND n.condition IN ({', '.join(repr(str(one)) for one in LIKE)})"
"""Which knives (n) are like the others of a trial (t), also after their line was corrected."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """A belt trial with its rule."""

    id: int
    version: int
    kind: str
    process: str
    belt: str
    """The label of the belt step in question."""
    rule: TrialRule
    draw: Draw
    seed: int
    begun_at: datetime
    begun_by: str
    ended_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnKnife:
    """A knife of a trial, with the half it was put into."""

    trial_id: int
    knife_id: int
    place: int
    """In the trial, counted from 0."""
    process: str
    belt: str
    """The label of the belt step that the half without stops before."""
    half: Half


def trials(database: ShopDatabase) -> tuple[Trial, ...]:
    """Every trial, the newest first."""
    rows = database.rows(
        "SELECT id, row_version, kind, process, belt, fall_tenths, or_halves_not_ok, each, draw, seed, begun_us, "
        "begun_by, ended_us FROM trial ORDER BY id DESC"
    )
    return tuple(map(_trial, rows))


def open_trials(database: ShopDatabase) -> tuple[Trial, ...]:
    """The trials that go on, the newest first."""
    return tuple(trial for trial in trials(database) if trial.ended_at is None)


def drawn_knives(database: ShopDatabase, where: str = "TRUE", *values: Cell) -> tuple[DrawnKnife, ...]:
    """The drawn knives that meet a fixed condition on k (the drawn one), t (its trial) and n (the knife), by place."""
    rows = database.rows(
        "SELECT k.trial_id, k.knife_id, k.place, t.process, t.belt, k.half FROM trial_knife k "
        "JOIN trial t ON t.id = k.trial_id JOIN knife n ON n.id = k.knife_id "
        f"WHERE {where} ORDER BY k.trial_id, k.place, k.id",
        values,
    )
    return tuple(
        DrawnKnife(
            trial_id=whole(row[0]),
            knife_id=whole(row[1]),
            place=whole(row[2]),
            process=str(row[3]),
            belt=str(row[4]),
            half=Half(str(row[5])),
        )
        for row in rows
    )


def lost_to_trial(database: ShopDatabase, trial_id: int) -> frozenset[int]:
    """Ids of the drawn knives that will never be read for a trial: declined, or let go without a reading.

    So are those whose kind or condition was corrected to one that is not LIKE the others.
    """
    rows = database.rows(
        f"SELECT k.knife_id FROM trial_knife k JOIN trial t ON t.id = k.trial_id JOIN knife n ON n.id = k.knife_id "
        f"WHERE t.id = ? AND (NOT ({STILL_LIKE}) OR (n.declined IS NOT NULL OR n.place IN ('ready', 'gone')) "
        "AND NOT EXISTS (SELECT 1 FROM reading r JOIN spot s ON s.id = r.spot_id WHERE s.knife_id = n.id "
        "AND r.stage = 'after' AND r.deburred = 1 AND r.struck_us IS NULL))",
        (trial_id,),
    )
    return frozenset(whole(row[0]) for row in rows)


def place_before(database: ShopDatabase, trial_id: int, knife_id: int) -> int | None:
    """The place at which a knife was drawn for a trial before that was undone; None when it never was."""
    place = database.one(
        "SELECT CAST(json_extract(after, '$.place') AS INTEGER) FROM history "
        "WHERE entity = 'trial_knife' AND before IS NULL AND CAST(json_extract(after, '$.trial_id') AS INTEGER) = ? "
        "AND CAST(json_extract(after, '$.knife_id') AS INTEGER) = ? ORDER BY id LIMIT 1",
        (trial_id, knife_id),
    )
    return None if place is None else whole(place)


def drawn_rows(database: ShopDatabase, knife_id: int) -> tuple[int, ...]:
    """Ids of the rows that put a knife into a trial."""
    return tuple(whole(row[0]) for row in database.rows("SELECT id FROM trial_knife WHERE knife_id = ?", (knife_id,)))


def _trial(row: tuple[Cell, ...]) -> Trial:
    return Trial(
        id=whole(row[0]),
        version=whole(row[1]),
        kind=str(row[2]),
        process=str(row[3]),
        belt=str(row[4]),
        rule=TrialRule(fall_wobbles=whole(row[5]) / 10, or_halves_not_ok=bool(row[6]), each=whole(row[7])),
        draw=Draw(str(row[8])),
        seed=whole(row[9]),
        begun_at=from_us(whole(row[10])),
        begun_by=str(row[11]),
        ended_at=instant_or_none(row[12]),
    )
