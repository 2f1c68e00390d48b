"""Which knives are read with the gauge: a sample, by the shop's own rule. The daily test is by feel."""

from queueboard.slotted import dataclass
from queueboard.words import WhyRead


@dataclass(frozen=True, slots=True, kw_only=True)
class SamplingRule:
    """The shop's rule; every part may be off."""

    every: int = 0
    """Every so many knives of a kind one is read; 0 none."""
    fresh_belt: bool = True
    proof_card: bool = True
    complaint: bool = True
    always: frozenset[str] = frozenset()
    """Names of kinds that are always read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A knife that comes to be tested."""

    kind: str
    gauge: bool
    """False for what is tested by cutting the real material, such as scissors: it is never read."""
    nth_of_kind: int
    """Which knife of its kind it is since the last one that was read, from 1."""
    first_on_belt: bool = False
    proof_card: bool = False
    complaint: bool = False
    in_trial: bool = False


def why_read(knife: Candidate, rule: SamplingRule) -> WhyRead | None:
    """The first reason for which this knife is read with the gauge; None for the test by feel alone."""
    reasons = (
        (knife.kind in rule.always, WhyRead.ALWAYS),
        (rule.complaint and knife.complaint, WhyRead.COMPLAINT),
        (knife.in_trial, WhyRead.TRIAL),
        (rule.proof_card and knife.proof_card, WhyRead.PROOF_CARD),
        (rule.fresh_belt and knife.first_on_belt, WhyRead.FRESH_BELT),
        (rule.every > 0 and knife.nth_of_kind >= rule.every, WhyRead.NTH),
    )
    return next((why for holds, why in reasons if holds and knife.gauge), None)
