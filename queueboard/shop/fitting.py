"""Belts fitted, moved to finer duty and taken off, and the spares in the drawer."""

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.records.belts import fitted_belts, spares_rows
from queueboard.records.edge_tables import BeltRow, BeltSparesRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Belt
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import settings_in
from queueboard.values.fitted import FittedBelt
from queueboard.words import BeltEnd

MOVED = "moved"
"""Why a belt left its step for finer duty."""

MOST_SPARES = 9999


@operation()
def fit_belt(writing: Writing, process: str, step: str) -> int:
    """Put a new belt up for a step of a process; it is taken from the spares of its label, where they were counted.

    Returns the belt's id. Refused while another belt is up there. Spares that were counted as none stay at none.
    """
    belt = step_of(writing, process, step)
    _free(writing, process, step)
    writing.tell(to=belt.label, was=process)
    row_id, spares = spares_rows(writing.database).get(belt.label, (0, 0))
    if spares:
        writing.change(BeltSparesRow, row_id, None, spares=spares - 1)
    return _put_up(writing, process=process, label=belt.label, step=belt.label, was_belt_id=None)


@operation()
def move_belt(writing: Writing, belt: FittedBelt, process: str, step: str) -> int:
    """Move a worn belt to finer duty: another step, of this process or another; returns its id there.

    Refused where the step is coarser than the one that it does now, or has a belt.
    """
    target = step_of(writing, process, step)
    now = step_of(writing, belt.process, belt.step)
    if target.grit_um > now.grit_um or (process, step) == (belt.process, belt.step):
        raise RuleError(
            f"A worn belt goes to finer duty: {target.label} of {process} ({target.grit_um:g} um) is no finer than "
            f"{now.label} of {belt.process} ({now.grit_um:g} um)."
        )
    _free(writing, process, step)
    writing.tell(to=f"{step} of {process}", was=belt.label)
    _take_off(writing, belt, MOVED, "")
    return _put_up(writing, process=process, label=belt.label, step=step, was_belt_id=belt.id)


@operation()
def remove_belt(writing: Writing, belt: FittedBelt, reason: BeltEnd, words: str = "") -> None:
    """Take a belt off for good, with the reason and, if wanted, one's own words about it."""
    writing.tell(to=reason.value, was=belt.label)
    _take_off(writing, belt, reason.value, clean(words, field="words"))


@operation()
def count_spares(writing: Writing, label: str, spares: int) -> None:
    """Say how many new belts of a label lie in the drawer, 0 to 9999."""
    if not 0 <= spares <= MOST_SPARES:
        raise TypedError(f"{spares} spares cannot be right. Type a number from 0 to {MOST_SPARES}.")
    known = {belt.label for process in settings_in(writing.database).processes for belt in process.belts}
    if label not in known:
        raise TypedError(f"No process of the shop has a belt called {clean(label, field='label')!r}.")
    writing.tell(to=label, number=spares)
    found = spares_rows(writing.database).get(label)
    if found is None:
        writing.insert(BeltSparesRow, label=label, spares=spares)
    else:
        writing.change(BeltSparesRow, found[0], None, spares=spares)


def step_of(writing: Writing, process: str, step: str) -> Belt:
    """The belt step of a process as the settings have it; TypedError when they have none of that name."""
    for known in settings_in(writing.database).processes:
        if known.name == process:
            for belt in known.belts:
                if belt.label == step:
                    return belt
            raise TypedError(f"The process {process} has no belt called {clean(step, field='label')!r}.")
    raise TypedError(f"The shop has no process called {clean(process, field='process')!r}.")


def _free(writing: Writing, process: str, step: str) -> None:
    for belt in fitted_belts(writing.database):
        if (belt.process, belt.step) == (process, step):
            raise RuleError(f"{belt.label} is up for {step} of {process}. Say first what becomes of it.")


def _put_up(writing: Writing, *, process: str, label: str, step: str, was_belt_id: int | None) -> int:
    return writing.insert(
        BeltRow,
        process=process,
        label=label,
        step=step,
        was_belt_id=was_belt_id,
        fitted_us=writing.now_us,
        fitted_by=writing.actor.initials,
        removed_us=None,
        removed_for=None,
        removed_why="",
    )


def _take_off(writing: Writing, belt: FittedBelt, reason: str, words: str) -> None:
    writing.change(BeltRow, belt.id, belt.version, removed_us=writing.now_us, removed_for=reason, removed_why=words)
