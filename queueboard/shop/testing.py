"""The test of an edge beyond the daily one: by the gauge, by eye where the gauge was asked, and the second look."""

from collections.abc import Sequence
from typing import NoReturn

from queueboard.clean import clean
from queueboard.edges.verdict import Judged, Verdict
from queueboard.errors import ReasonNeededError, RuleError
from queueboard.records.edge_tables import SecondLookRow
from queueboard.records.edge_tests import edge_of, not_ok_of
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.edge_now import EdgeNow, edge_in
from queueboard.shop.moving import place_knives
from queueboard.shop.noting import decline
from queueboard.shop.operation import operation
from queueboard.shop.proving import daily_way, prove, write_test
from queueboard.shop.settings_now import settings_in
from queueboard.values.knife import Knife
from queueboard.words import Column, DeclineReason, EdgeTestWay, SecondLook


@operation()
def prove_tray(writing: Writing, knives: Sequence[Knife], not_ok: Sequence[Knife]) -> None:
    """Test a whole tray by feel: all of it is OK and ready, but for those that are not and go back to the bench.

    Those for which the gauge is asked stay in testing; refused when there are no others.
    """
    back = {knife.id for knife in not_ok}
    ok = [knife for knife in knives if knife.id not in back and knife.gauge is None]
    if not ok and not back:
        raise RuleError(
            f"The gauge is asked for {', '.join(knife.tag for knife in knives)}: E reads it. Nothing moved."
        )
    writing.tell(tags=[knife.tag for knife in (*ok, *not_ok)], was=Column.TESTING.value)
    for those, to in ((ok, Column.READY), (not_ok, Column.ON_BENCH)):
        prove(writing, those, to)
        place_knives(writing, those, to)


@operation()
def judge_edge(writing: Writing, knife: Knife, *, ok: bool, belt: str = "") -> None:
    """Say what the test of a knife comes to: OK and it is ready, not OK and it goes back to the bench, to a belt.

    By the gauge where a marked spot was read after the work, deburred, and since the last test that was not OK; else
    by feel. OK is refused where the gauge is asked and a spot not read, and where a spot is surely over the line.
    """
    _in_hand(writing, knife)
    to = Column.READY if ok else Column.ON_BENCH
    seen = edge_in(writing.database, knife)
    way = daily_way(knife, settings_in(writing.database))
    if seen.whole and seen.line is not None:
        way = EdgeTestWay.GAUGE
        if ok and seen.judged is not None and seen.judged.verdict is Verdict.NOT_OK:
            _over(seen, seen.judged)
    elif seen.judged is not None and (not ok or knife.gauge is None):
        way = EdgeTestWay.GAUGE
    elif ok and knife.gauge is not None:
        found = seen.edge.finished_gf()
        what = ", ".join(spot.name for spot in seen.spots if not found.get(spot.name))
        raise RuleError(f"{knife.tag} is not read yet after the work ({what}): read it first, or let it go by eye.")
    if not ok and knife.column is Column.ON_BENCH:
        raise RuleError(f"{knife.tag} lies on the bench already; work it again, or put it to testing first.")
    writing.tell(tags=[knife.tag], was=way.value, to=to.value)
    prove(writing, [knife], to, way, belt)
    place_knives(writing, [knife], to)


@operation()
def let_go_by_eye(writing: Writing, knife: Knife) -> None:
    """Let a knife go to ready though it was not read, or is over its line; who did so stands beside it."""
    _in_hand(writing, knife)
    if knife.gauge is None and not edge_of(writing.database, knife.id).readings:
        raise RuleError(f"The gauge is not asked for {knife.tag}; + by feel makes it ready.")
    writing.tell(tags=[knife.tag], was=EdgeTestWay.EYE.value, to=Column.READY.value)
    prove(writing, [knife], Column.READY, EdgeTestWay.EYE)
    place_knives(writing, [knife], Column.READY)


@operation()
def look_twice(writing: Writing, knife: Knife, choice: SecondLook, why: str) -> None:
    """Decide about a knife that is not OK the second time, with the reason.

    One more try puts it on the bench, a lower claim makes it ready, and a decline gives it back free of charge.
    """
    _in_hand(writing, knife)
    if not not_ok_of(writing.database, knife.id):
        raise RuleError(f"{knife.tag} was not found not OK before; - puts it back on the bench.")
    reason = clean(why, limit=500, field="reason")
    if not reason:
        raise ReasonNeededError(f"Say why: what was seen at {knife.tag}, and what the customer is told.")
    writing.tell(tags=[knife.tag], to=choice.value)
    seen = edge_in(writing.database, knife)
    way = EdgeTestWay.GAUGE if seen.judged is not None else daily_way(knife, settings_in(writing.database))
    write_test(writing, knife, way, ok=False)
    writing.insert(
        SecondLookRow,
        knife_id=knife.id,
        choice=choice.value,
        why=reason,
        chosen_us=writing.now_us,
        chosen_by=writing.actor.initials,
    )
    if choice is SecondLook.DECLINE:
        decline(writing, knife, DeclineReason.NO_EDGE, reason)
    else:
        place_knives(writing, [knife], Column.READY if choice is SecondLook.LOWER else Column.ON_BENCH)


def _over(seen: EdgeNow, judged: Judged) -> NoReturn:
    most = "" if seen.line is None else f"; its line is {seen.line.most_gf}"
    raise RuleError(
        f"{seen.knife.tag} needs {judged.worst_gf} gf at the {judged.worst}{most}: not OK, or let it go by eye."
    )


def _in_hand(writing: Writing, knife: Knife) -> None:
    rows.fresh_knife(writing, knife)
    if not knife.at_work or knife.declined is not None or knife.looking_for:
        raise RuleError(f"{knife.tag} is not at the test: it is {knife.column.value}.")
