"""What holds of belts and of the tester's studies when an action ends, undo included.

One belt is up for a step. One study is under way; its readings come one after the other, and a finished one has all of
them. What would break that is refused, so that the whole action leaves no trace.
"""

from collections import Counter

from queueboard.errors import RuleError
from queueboard.records.belts import fitted_belts
from queueboard.records.edge_tables import BeltRow, StudyReadingRow, StudyRow
from queueboard.records.studies import has_gaps, is_cut_short, under_way
from queueboard.records.writing import Writing


def keep_bench(writing: Writing) -> None:
    """Refuse what the action has left of belts and studies, where it cannot be."""
    if BeltRow in writing.tables:
        _one_belt_a_step(writing)
    if writing.tables & {StudyRow, StudyReadingRow}:
        _whole_studies(writing)


def _one_belt_a_step(writing: Writing) -> None:
    up = Counter((belt.process, belt.step) for belt in fitted_belts(writing.database))
    for (process, step), count in up.items():
        if count > 1:
            raise RuleError(f"Another belt is up for {step} of {process} by now; take that one off first.")


def _whole_studies(writing: Writing) -> None:
    if under_way(writing.database) > 1:
        raise RuleError("Another study of the tester is under way by now; take that one back first.")
    if has_gaps(writing.database):
        raise RuleError("Later readings of that study are there; take the newest of them back first.")
    if is_cut_short(writing.database):
        raise RuleError("That study is finished, and its figure rests on this reading; take its finish back first.")
