"""The tester's wobble: a guided study, reading by reading, and the figure that everything else uses.

While a study that was begun because filament or tester had changed is not finished, the older figure is said to be one.
"""

from datetime import datetime

from queueboard.clean import clean
from queueboard.edges.summary import Interval
from queueboard.edges.wobble import Wobble, sd_interval, wobble_of
from queueboard.errors import RuleError, TypedError
from queueboard.records.database import ShopDatabase
from queueboard.records.edge_tables import StudyReadingRow, StudyRow
from queueboard.records.studies import studies
from queueboard.records.writing import Writing
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import settings_in
from queueboard.slotted import dataclass
from queueboard.values.study import TIMES, Study

FEWEST_KNIVES, USUAL_KNIVES, MOST_KNIVES = 5, 10, 30
LOWEST_GF, HIGHEST_GF = 1, 5000
"""What a tester for edges shows, in grams-force; 2000 is a table knife (from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WobbleNow:
    """The figure that everything uses, and its standing."""

    gf: float
    """Standard deviation of one reading at one spot, in grams-force."""
    studied_at: datetime | None
    """When its study was finished; None for a figure from memory."""
    interval: Interval | None
    """Where the true one lies, by the study."""
    changed: str
    """What was changed about the tester since and not studied yet; empty when nothing was."""


@dataclass(frozen=True, slots=True)
class NextReading:
    """Which reading a study wants now, both counted from 1."""

    knife: int
    number: int


def next_reading(study: Study) -> NextReading | None:
    """The reading that comes next; None when all are there."""
    full = sum(len(knife) >= TIMES for knife in study.readings_gf)
    if full >= study.knives:
        return None
    begun = study.readings_gf[full:]
    return NextReading(knife=full + 1, number=len(begun[0]) + 1 if begun else 1)


def study_now(shop: Shop) -> Study | None:
    """The study under way."""
    with shop.reading() as database:
        return _under_way(database)


def wobble_now(shop: Shop) -> WobbleNow:
    """What the newest finished study has shown, else the figure from memory."""
    with shop.reading() as database:
        return wobble_in(database)


def wobble_in(database: ShopDatabase) -> WobbleNow:
    """The same inside one view of the file."""
    every = studies(database)
    open_one = next((study for study in every if study.finished_at is None), None)
    changed = "" if open_one is None else open_one.changed
    for study in every:
        found = wobble_of(study.readings_gf) if study.finished_at is not None else None
        if found is not None:
            return _studied(found, study, changed)
    return WobbleNow(gf=float(settings_in(database).gauge.wobble_gf), studied_at=None, interval=None, changed=changed)


def _studied(found: Wobble, study: Study, changed: str) -> WobbleNow:
    return WobbleNow(gf=found.sd_gf, studied_at=study.finished_at, interval=sd_interval(found), changed=changed)


@operation()
def begin_study(writing: Writing, changed: str = "", knives: int = USUAL_KNIVES) -> int:
    """Begin a study; returns its id. changed: what was changed about the tester, empty when nothing was.

    knives: 5 to 30. From now on the older figure is said to be one, where something was changed.
    """
    if not FEWEST_KNIVES <= knives <= MOST_KNIVES:
        raise TypedError(f"A study of {knives} knives cannot be right. Type {FEWEST_KNIVES} to {MOST_KNIVES}.")
    if _under_way(writing.database) is not None:
        raise RuleError("A study is under way already: go on with it, or begin it over.")
    return writing.insert(
        StudyRow,
        changed=clean(changed, field="change"),
        knives=knives,
        begun_us=writing.now_us,
        begun_by=writing.actor.initials,
        finished_us=None,
    )


def checked_force(force_gf: int) -> int:
    """A force that a tester for edges shows, 1 to 5000 gf."""
    if not LOWEST_GF <= force_gf <= HIGHEST_GF:
        raise TypedError(f"{force_gf} gf is nothing a tester shows. Type a number from {LOWEST_GF} to {HIGHEST_GF}.")
    return force_gf


@operation()
def read_study(writing: Writing, study: Study, force_gf: int) -> None:
    """Write the next reading of a study down, 1 to 5000 gf."""
    checked_force(force_gf)
    stored = _same(writing, study)
    wanted = next_reading(stored)
    if wanted is None:
        raise RuleError("All readings of this study are there: finish it.")
    writing.tell(number=wanted.knife, was=str(wanted.number), to=str(force_gf))
    writing.insert(StudyReadingRow, study_id=study.id, knife=wanted.knife, number=wanted.number, force_gf=force_gf)


@operation()
def finish_study(writing: Writing, study: Study) -> None:
    """Finish a study: its figure is used from now on. Refused while readings are missing."""
    wanted = next_reading(_same(writing, study))
    if wanted is not None:
        raise RuleError(f"Reading {wanted.number} of knife {wanted.knife} is still missing; nothing was finished.")
    writing.change(StudyRow, study.id, study.version, finished_us=writing.now_us)


@operation()
def begin_study_over(writing: Writing, study: Study, changed: str = "") -> None:
    """Take all readings of the study under way out and begin it again.

    What was changed before it stays said, unless something else is typed.
    """
    stored = _same(writing, study)
    for row_id in stored.reading_ids:
        writing.remove(StudyReadingRow, row_id)
    writing.change(
        StudyRow,
        study.id,
        study.version,
        changed=clean(changed, field="change") or stored.changed,
        begun_us=writing.now_us,
        begun_by=writing.actor.initials,
    )


def _under_way(database: ShopDatabase) -> Study | None:
    return next((study for study in studies(database) if study.finished_at is None), None)


def _same(writing: Writing, study: Study) -> Study:
    """The study as it stands now; refused when another window has gone on: a reading must not land elsewhere."""
    stored = _under_way(writing.database)
    if stored is None or stored.id != study.id:
        raise RuleError("That study is finished already; nothing was stored. Look again.")
    if stored.readings_gf != study.readings_gf:
        raise RuleError("Somebody has just typed a reading of this study; nothing was stored. Look again.")
    return stored
