"""Knives and boxes that cannot go on until somebody answers."""

from collections.abc import Sequence

from queueboard.errors import RuleError, TypedError
from queueboard.records.tables import BoxRow, KnifeRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.words import WaitingFor


@operation()
def knives_wait(writing: Writing, knives: Sequence[Knife], waiting: WaitingFor | None) -> None:
    """Put knives on waiting, with the reason; None says that they go on."""
    if not knives:
        raise TypedError("Nothing is marked to wait.")
    writing.tell(tags=[knife.tag for knife in knives], to="" if waiting is None else waiting.value)
    for knife in knives:
        rows.fresh_knife(writing, knife)
        if waiting is not None and knife.declined is not None:
            raise RuleError(f"{knife.tag} was declined; it waits for nothing. Take it on first.")
        writing.change(
            KnifeRow,
            knife.id,
            knife.version,
            waiting_for=None if waiting is None else waiting.value,
            waiting_since_us=None if waiting is None else writing.now_us,
        )


@operation()
def box_waits(writing: Writing, box: Box, waiting: WaitingFor | None) -> None:
    """Put a whole box on waiting, with the reason; None says that it goes on."""
    writing.tell(number=box.number, to="" if waiting is None else waiting.value)
    writing.change(
        BoxRow,
        box.id,
        box.version,
        waiting_for=None if waiting is None else waiting.value,
        waiting_since_us=None if waiting is None else writing.now_us,
    )
