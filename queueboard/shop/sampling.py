"""Which of the knives that come to the bench the gauge is asked for: fixed there, so that it never moves."""

from collections.abc import Sequence

from queueboard.edges.sampling import Candidate, SamplingRule, why_read
from queueboard.records.benched import benched
from queueboard.records.edge_tests import with_proof_card
from queueboard.records.reading import knives_of
from queueboard.records.tables import KnifeRow
from queueboard.records.trials import drawn_knives
from queueboard.records.writing import Writing
from queueboard.settings.rules import knife_process
from queueboard.settings.shapes import Gauge, Settings
from queueboard.shop import rows
from queueboard.shop.belt_counts import idle_processes
from queueboard.shop.settings_now import settings_in
from queueboard.values.knife import Knife
from queueboard.words import WhyRead


def ask_for_gauge(writing: Writing, knives: Sequence[Knife]) -> None:
    """Write down for which of these the gauge is asked, and why; they have just come to the bench.

    A knife that has been there before keeps the answer it has.
    """
    settings = settings_in(writing.database)
    there = benched(writing.database)
    before = {kind: there[kind] - _count(knives, kind) for kind in {knife.kind for knife in knives}}
    drawn = {one.knife_id for one in drawn_knives(writing.database, "t.ended_us IS NULL")}
    fresh = _first_on_fresh_belts(writing, knives, settings) if settings.gauge.fresh_belt else frozenset[int]()
    boxes = {box_id: rows.box_now(writing.database, box_id) for box_id in {knife.box_id for knife in knives}}
    cards = with_proof_card(writing.database, boxes)
    for place, knife in enumerate(knives):
        before_it = before[knife.kind] + _count(knives[:place], knife.kind)
        candidate = Candidate(
            kind=knife.kind,
            gauge=knife.kind not in settings.gauge.by_cutting,
            nth_of_kind=before_it % max(1, settings.gauge.every) + 1,
            first_on_belt=knife.id in fresh,
            proof_card=knife.box_id in cards,
            complaint=boxes[knife.box_id].complaint,
            in_trial=knife.id in drawn,
        )
        why = why_read(candidate, rule_of(settings.gauge))
        if why is not None and knife.gauge is None:
            writing.change(KnifeRow, knife.id, None, gauge=why.value)


def rule_of(gauge: Gauge) -> SamplingRule:
    """The shop's rule."""
    return SamplingRule(
        every=gauge.every,
        fresh_belt=gauge.fresh_belt,
        proof_card=gauge.proof_card,
        complaint=gauge.complaint,
        always=gauge.always,
    )


def _count(knives: Sequence[Knife], kind: str) -> int:
    return sum(knife.kind == kind for knife in knives)


def _first_on_fresh_belts(writing: Writing, knives: Sequence[Knife], settings: Settings) -> frozenset[int]:
    """For each process with a belt that has done nothing yet the first of these, unless one is at the bench for it."""
    fresh = idle_processes(writing.database, settings)
    if not fresh:
        return frozenset()
    ids = {knife.id for knife in knives}
    asked = knives_of(writing.database, "k.place = 'on bench' AND k.gauge = ?", WhyRead.FRESH_BELT.value)
    fresh -= {knife_process(settings, one).name for one in asked if one.id not in ids}
    first = {name: next((k.id for k in knives if knife_process(settings, k).name == name), None) for name in fresh}
    return frozenset(knife_id for knife_id in first.values() if knife_id is not None)
