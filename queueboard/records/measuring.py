"""What the shop file holds of the bench's own pace: finished runs, and how the work left for the bench changed.

History is read by what stands in its lines, without taking them apart; no person's text is in it that could be taken
for a field.
"""

from collections.abc import Collection, Mapping

from queueboard.records.cells import whole
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.reading import OPEN_BOXES
from queueboard.records.telling import undone_groups
from queueboard.slotted import dataclass
from queueboard.words import Condition, Edge


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedRun:
    """A finished run with the knives that were worked in it, at least one."""

    knives: int
    boxes: int
    """Boxes that the knives belong to."""
    starter_seconds: int
    """Of those knives."""
    nominal_seconds: int
    """Of all knives that it was begun with, and the set-up."""
    planned_seconds: int
    set_up_seconds: int
    worked_seconds: int
    timed: bool


def finished_runs(database: ShopDatabase, process: str, most: int) -> tuple[FinishedRun, ...]:
    """The newest finished runs of a process, at most so many."""
    rows = database.rows(
        "SELECT count(*), count(DISTINCT knife.box_id), sum(k.nominal_seconds), max(r.nominal_seconds), "
        "max(r.planned_seconds), max(r.set_up_seconds), "
        "max((r.finished_us - r.started_us - r.paused_total_us) / 1000000), max(r.timed) "
        "FROM (SELECT * FROM bench_run WHERE process = ? AND finished_us IS NOT NULL "
        "ORDER BY finished_us DESC LIMIT ?) r "
        "JOIN run_knife k ON k.run_id = r.id JOIN knife ON knife.id = k.knife_id GROUP BY r.id ORDER BY r.id",
        (process, most),
    )
    return tuple(
        FinishedRun(
            knives=whole(row[0]),
            boxes=whole(row[1]),
            starter_seconds=whole(row[2]),
            nominal_seconds=whole(row[3]),
            planned_seconds=whole(row[4]),
            set_up_seconds=whole(row[5]),
            worked_seconds=whole(row[6]),
            timed=bool(row[7]),
        )
        for row in rows
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkChange:
    """One change of the work left for the bench: of a knife, or of a whole box that began or ceased to wait."""

    at_us: int
    box_id: int
    knife_id: int | None
    """None for the whole box."""
    more: bool
    """True when there was more work after it: the knife came to need the bench, or the box waits no longer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MetKnife:
    """Of a knife that was met in history all that its minutes hang on: thousands are read for the shop's pace."""

    id: int
    box_id: int
    kind: str
    edge: Edge
    condition: Condition


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkLeft:
    """The work left for the bench, and how it came to that."""

    knives: Mapping[int, MetKnife]
    """By id, those that need the bench now and those of which something was written since."""
    needing: frozenset[int]
    """The knives that need the bench now."""
    waiting: frozenset[int]
    """The boxes that wait as a whole now."""
    changes: tuple[WorkChange, ...]
    """Newest first."""


def _met(database: ShopDatabase, where: str, *values: Cell) -> dict[int, MetKnife]:
    """The knives that meet a fixed condition on k, by id."""
    edges, conditions = {edge.value: edge for edge in Edge}, {condition.value: condition for condition in Condition}
    rows = database.rows(f"SELECT k.id, k.box_id, k.kind, k.edge, k.condition FROM knife k WHERE {where}", values)
    return {
        whole(row[0]): MetKnife(
            id=whole(row[0]),
            box_id=whole(row[1]),
            kind=str(row[2]),
            edge=edges[str(row[3])],
            condition=conditions[str(row[4])],
        )
        for row in rows
    }


_LINES = "history h INDEXED BY history_work"
"""The lines of boxes and knives by their instant; without its name the index of single rows would be read through."""


def _at(side: str, *places: str) -> str:
    """A condition: the knife, as it stands on one side of a line of history, stands in one of these places."""
    return "(" + " OR ".join(f'instr({side}, \'"place":"{place}"\') > 0' for place in places) + ")"


def _needs(side: str) -> str:
    """A condition: the knife, as it stands on one side of a line of history, needs the bench."""
    free = ('"declined":null', '"waiting_for":null', '"looking_for":0')
    parts = [_at(side, "received", "on bench"), *(f"instr({side}, '{part}') > 0" for part in free)]
    return f"CASE WHEN {' AND '.join(parts)} THEN 1 ELSE 0 END"


def _waits(side: str) -> str:
    """A condition: the box, as it stands on one side of a line of history, waits."""
    return f"CASE WHEN instr({side}, '\"waiting_for\":null') = 0 THEN 1 ELSE 0 END"


_NEEDS_NOW = (
    f"k.box_id IN ({OPEN_BOXES}) AND k.place IN ('received', 'on bench') "
    "AND k.declined IS NULL AND k.waiting_for IS NULL AND k.looking_for = 0"
)
"""A condition: the knife needs the bench as it stands now."""

_KNIFE_LINES = "h.entity IN ('box', 'knife') AND h.entity = 'knife' AND h.at_us >= ?"
_BOX_LINES = "h.entity IN ('box', 'knife') AND h.entity = 'box' AND h.at_us >= ?"


def work_left(database: ShopDatabase, since_us: int) -> WorkLeft:
    """What needs the bench now, and every change of it since an instant; knives that were struck never were."""
    met = _met(database, f"k.id IN (SELECT h.entity_id FROM {_LINES} WHERE {_KNIFE_LINES})", since_us)
    needing = _met(database, _NEEDS_NOW)
    changes = database.rows(
        "SELECT at_us, box_id, knife_id, more FROM ("
        f"SELECT h.id, h.at_us, k.box_id, k.id AS knife_id, {_needs('h.after')} - {_needs('h.before')} AS more "
        f"FROM {_LINES} JOIN knife k ON k.id = h.entity_id WHERE {_KNIFE_LINES} "
        "UNION ALL "
        f"SELECT h.id, h.at_us, h.entity_id, NULL, {_waits('h.before')} - {_waits('h.after')} FROM {_LINES} "
        f"WHERE {_BOX_LINES}) AS changed WHERE more <> 0 ORDER BY at_us DESC, id DESC",
        (since_us, since_us),
    )
    return WorkLeft(
        knives={**met, **needing},
        needing=frozenset(needing),
        waiting=frozenset(whole(row[0]) for row in database.rows("SELECT id FROM box WHERE waiting_for IS NOT NULL")),
        changes=tuple(
            WorkChange(
                at_us=whole(row[0]),
                box_id=whole(row[1]),
                knife_id=None if row[2] is None else whole(row[2]),
                more=whole(row[3]) > 0,
            )
            for row in changes
        ),
    )


_FORWARD = (
    "entity IN ('box', 'knife') AND entity = 'knife' AND at_us >= ? AND operation <> 'undo' "
    f"AND {_at('before', 'received', 'on bench')} AND {_at('after', 'testing', 'ready')} "
    "AND instr(after, '\"declined\":null') > 0"
)
"""A line of history in which the bench was done with a knife."""


def gone_forward(database: ShopDatabase, since_us: int) -> tuple[tuple[int, str, int], ...]:
    """What was done at the bench since an instant: when, in which action, and the knife; undone actions left out."""
    return tuple((at_us, group, knife_id) for at_us, group, knife_id, _ in _forward(database, since_us))


def _forward(database: ShopDatabase, since_us: int) -> list[tuple[int, str, int, int]]:
    """As gone_forward, with the line of history that says so."""
    undone = undone_groups(database)
    done = database.rows(
        f"SELECT at_us, group_id, entity_id, id FROM {_LINES} WHERE {_FORWARD} ORDER BY id", (since_us,)
    )
    return [(whole(row[0]), str(row[1]), whole(row[2]), whole(row[3])) for row in done if str(row[1]) not in undone]


_OTHER_KNIFE = (f"instr(h.before, '\"{column}\":') > 0" for column in ("box_id", "kind", "edge", "condition"))

_REACHES_BACK = f"""h.entity IN ('box', 'knife') AND h.at_us < ?
OR h.entity = 'knife' AND (h.before IS NULL AND h.operation = 'undo' OR {" OR ".join(_OTHER_KNIFE)})
OR h.undoes IS NOT NULL AND EXISTS (SELECT 1 FROM history u
WHERE u.group_id = h.undoes AND u.line = 0 AND (u.at_us < ? OR u.undoes IS NOT NULL))"""
"""A line of history after which what was done before an instant counts otherwise: it was written for then, a knife is
another than it was thought to be or is taken out or put back, or something of then is undone or done again."""


def reaches_back(database: ShopDatabase, line: int, before_us: int) -> bool:
    """True when what was written after a line of history may change what counts as done before an instant."""
    found = database.rows(
        f"SELECT 1 FROM history h WHERE h.id > ? AND ({_REACHES_BACK}) LIMIT 1", (line, before_us, before_us)
    )
    return bool(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """The bench was done with a knife once: it went on to testing or ready."""

    at_us: int
    knife: MetKnife
    """As it stands now."""
    line: int
    """The line of history that says so."""
    group_id: str


def worked_since(database: ShopDatabase, since_us: int) -> tuple[Worked, ...]:
    """Each time that the bench was done with a knife since an instant, oldest first; struck knives left out."""
    met = _met(database, f"k.id IN (SELECT h.entity_id FROM {_LINES} WHERE {_KNIFE_LINES})", since_us)
    return tuple(
        Worked(at_us=at_us, knife=met[knife_id], line=line, group_id=group)
        for at_us, group, knife_id, line in _forward(database, since_us)
        if knife_id in met
    )


def still_so(database: ShopDatabase, worked: Collection[Worked]) -> frozenset[Worked]:
    """Those of which history says the same as when they were read; one that any undo or belt trial names is left out.

    So is one whose line came to nothing with its transaction, and one whose knife was corrected or struck since.
    """
    rows = database.rows(
        "SELECT h.id, h.group_id, k.id, k.kind, k.edge, k.condition FROM history h JOIN knife k ON k.id = h.entity_id "
        f"WHERE h.id IN ({', '.join('?' * len(worked)) or 'NULL'}) "
        "AND NOT EXISTS (SELECT 1 FROM history u WHERE u.undoes = h.group_id) "
        "AND NOT EXISTS (SELECT 1 FROM trial_knife t WHERE t.knife_id = k.id)",
        tuple(one.line for one in worked),
    )
    now = {tuple(row) for row in rows}
    return frozenset(
        one
        for one in worked
        if (one.line, one.group_id, one.knife.id, one.knife.kind, one.knife.edge.value, one.knife.condition.value)
        in now
    )
