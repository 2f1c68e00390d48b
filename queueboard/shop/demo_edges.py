"""The demo's belts, its tester and a belt trial: begun some weeks ago, by the operations a person would use."""

from collections.abc import Callable
from datetime import datetime, timedelta
from itertools import count
from random import Random

from queueboard.shop.demo_script import Event
from queueboard.shop.demo_steps import Hand
from queueboard.shop.fitting import count_spares, fit_belt
from queueboard.shop.opening import Shop
from queueboard.shop.stable import set_stable
from queueboard.shop.trialling import begin_trial
from queueboard.shop.wobbling import USUAL_KNIVES, begin_study, finish_study, read_study, study_now
from queueboard.values.actor import Actor
from queueboard.values.study import TIMES

DAYS_AGO = 17
"""When the belts were fitted, the tester was studied and the trial began."""
BELTS = (("plain", "P240"), ("plain", "P400"), ("plain", "16 um"), ("thin hard", "16 um"), ("serrated", "9 um"))
SPARES = {"P240": 6, "P400": 4, "16 um": 4, "9 um": 5, "30 um": 3}
WOBBLE_GF = 12.0


GOOD_UNTIL = 5
"""Days ago: up to then the work was good; a day later the finest belt began to tire."""


def bench_events(by: str, now: datetime) -> tuple[Event, Event]:
    """The day on which all of it began, and the evening on which the stable period was set; now is aware."""
    began, good = (now - timedelta(days=days) for days in (DAYS_AGO, GOOD_UNTIL))

    def stable(hand: Hand) -> None:
        set_stable(hand.shop, hand.actor(), "plain", began, good)

    return Event(planned=began, at=began, by=by, act=_prepare), Event(planned=good, at=good, by=by, act=stable)


def _prepare(hand: Hand) -> None:
    """Fit the belts, count the spares and study the tester, each a minute after the one before."""
    shop, minutes = hand.shop, count()

    def actor() -> Actor:
        return Actor(initials=hand.by, now=hand.at + timedelta(minutes=next(minutes)))

    for label, spares in SPARES.items():
        count_spares(shop, actor(), label, spares)
    for process, step in BELTS:
        fit_belt(shop, actor(), process, step)
    _study(shop, actor)
    begin_trial(shop, actor(), kind="chef", process="plain", belt="16 um")


def _study(shop: Shop, actor: Callable[[], Actor]) -> None:
    """Ten finished knives, three readings each, of a tester that wobbles by about 12 gf."""
    lots = Random(12)  # noqa: S311 invented readings, no secret
    begin_study(shop, actor(), "new filament")
    for knife in range(USUAL_KNIVES):
        for _ in range(TIMES):
            study = study_now(shop)
            if study is not None:
                read_study(shop, actor(), study, round(165 + 4 * knife + lots.gauss(0, WOBBLE_GF)))
    study = study_now(shop)
    if study is not None:
        finish_study(shop, actor(), study)
