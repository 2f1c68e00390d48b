"""Which knives are read with the gauge."""

from dataclasses import replace

import pytest

from queueboard.edges.sampling import Candidate, SamplingRule, why_read
from queueboard.words import WhyRead

RULE = SamplingRule(every=10, always=frozenset({"slicer"}))
CHEF = Candidate(kind="chef", gauge=True, nth_of_kind=3)


@pytest.mark.parametrize(
    ("knife", "why"),
    [
        (CHEF, None),
        (replace(CHEF, nth_of_kind=9), None),
        (replace(CHEF, nth_of_kind=10), WhyRead.NTH),
        (replace(CHEF, nth_of_kind=14), WhyRead.NTH),
        (replace(CHEF, first_on_belt=True), WhyRead.FRESH_BELT),
        (replace(CHEF, proof_card=True, first_on_belt=True), WhyRead.PROOF_CARD),
        (replace(CHEF, in_trial=True, proof_card=True), WhyRead.TRIAL),
        (replace(CHEF, complaint=True, in_trial=True), WhyRead.COMPLAINT),
        (replace(CHEF, kind="slicer", complaint=True), WhyRead.ALWAYS),
        (replace(CHEF, kind="scissors", gauge=False, complaint=True, nth_of_kind=99), None),
    ],
)
def test_the_first_reason_counts(knife: Candidate, why: WhyRead | None) -> None:
    """Most knives go by feel; what can not be read with the gauge always does."""
    assert why_read(knife, RULE) is why


def test_every_part_of_the_rule_may_be_off() -> None:
    """A shop that reads nothing is asked for nothing."""
    rule = SamplingRule(fresh_belt=False, proof_card=False, complaint=False)
    knife = Candidate(kind="chef", gauge=True, nth_of_kind=999, first_on_belt=True, proof_card=True, complaint=True)

    assert why_read(knife, rule) is None
