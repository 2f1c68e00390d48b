"""What a move says of an edge, written down with it: to ready it was OK, from testing back to the bench it was not."""

from collections.abc import Sequence

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.records.edge_tables import EdgeTestRow
from queueboard.records.edge_tests import not_ok_of
from queueboard.records.writing import Writing
from queueboard.settings.rules import knife_process
from queueboard.settings.shapes import Settings
from queueboard.shop.settings_now import settings_in
from queueboard.values.knife import Knife
from queueboard.words import Column, EdgeTestWay

ENOUGH = (EdgeTestWay.GAUGE, EdgeTestWay.EYE)
"""How a knife goes to ready for which the gauge was asked."""


def prove(
    writing: Writing, knives: Sequence[Knife], to: Column, way: EdgeTestWay | None = None, belt: str = ""
) -> None:
    """Write down the tests that a move to a column stands for; call it before the knives are moved.

    way: None for the daily test, by feel or by cutting as the shop tests the kind. belt: to which what is not OK goes
    back; empty for the last one. Refused for a knife for which the gauge was asked and not used, and for one that is
    not OK the second time: that needs a second look.
    """
    settings = settings_in(writing.database)
    for knife in knives:
        if to is Column.READY and knife.at_work:
            how = way or daily_way(knife, settings)
            _may_be_ready(knife, how)
            write_test(writing, knife, how, ok=True)
        elif to is Column.ON_BENCH and knife.column is Column.TESTING:
            _may_go_back(writing, knife)
            write_test(writing, knife, way or daily_way(knife, settings), ok=False, belt=belt)


def write_test(writing: Writing, knife: Knife, way: EdgeTestWay, *, ok: bool, belt: str = "") -> None:
    """Write one test down; what was not OK goes back to a belt of its process, the last one when none is named."""
    belts = [step.label for step in knife_process(settings_in(writing.database), knife).belts]
    if belt and belt not in belts:
        raise TypedError(f"There is no belt {clean(belt)} for {knife.tag}. Its belts: {', '.join(belts)}.")
    writing.insert(
        EdgeTestRow,
        knife_id=knife.id,
        way=way.value,
        ok=int(ok),
        belt="" if ok or not belts else belt or belts[-1],
        tested_us=writing.now_us,
        tested_by=writing.actor.initials,
    )


def daily_way(knife: Knife, settings: Settings) -> EdgeTestWay:
    """By feel, but by cutting the real material for scissors and tools."""
    return EdgeTestWay.MATERIAL if knife.kind in settings.gauge.by_cutting else EdgeTestWay.FEEL


def _may_be_ready(knife: Knife, way: EdgeTestWay) -> None:
    if knife.gauge is not None and way not in ENOUGH:
        raise RuleError(
            f"The gauge is asked for {knife.tag} ({knife.gauge.value}): E reads the edge, or lets it go by eye. "
            "Nothing moved."
        )


def _may_go_back(writing: Writing, knife: Knife) -> None:
    if not_ok_of(writing.database, knife.id):
        raise RuleError(
            f"{knife.tag} was not OK before, so a second look is due: E asks what becomes of it. Nothing moved."
        )
