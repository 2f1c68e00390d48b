"""Belt trials and the knives drawn for them, read with fixed SQL."""

from dataclasses import dataclass
from datetime import datetime

from queueboard.edges.trial import Draw, Half, TrialRule
from queueboard.records.cells import instant_or_none, whole
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us


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


def drawn_knives(database: ShopDatabase, where: str = "1", *values: Cell) -> tuple[DrawnKnife, ...]:
    """The drawn knives that meet a fixed condition (k is the drawn knife, t its trial), by trial and place."""
    rows = database.rows(
        "SELECT k.trial_id, k.knife_id, k.place, t.process, t.belt, k.half FROM trial_knife k "
        f"JOIN trial t ON t.id = k.trial_id WHERE {where} ORDER BY k.trial_id, k.place, k.id",
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
