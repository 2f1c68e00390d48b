"""What a trial shows, from the readings of its knives."""

from random import Random

from queueboard.edges.trial import Draw, Half, Outcome
from queueboard.phrases.edges import progress_lines, result_lines, trial_strips, verdict_words
from queueboard.records.trials import drawn_knives
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.running import finish_run, start_run
from queueboard.shop.trial_results import TrialSeen, trials_seen
from queueboard.shop.trialling import begin_trial
from queueboard.words import Column
from tests.shop.place import box, by, parcel
from tests.shop.readings import read
from tests.shop.undo_running import only_run


def trial_of(shop: Shop, knives: int, gain_gf: int, *, deburred: bool = True) -> TrialSeen:
    """A trial of the finest belt in which the half with it reads so much less."""
    begin_trial(shop, by(), kind="chef", process="plain", belt="16 um", draw=Draw.ALTERNATE)
    made = parcel(shop, knives=knives)
    move_knives(shop, by(minutes=1), made.knives, Column.ON_BENCH)
    halves = {one.knife_id: one.half for one in drawn_knives(shop.database)}
    lots = Random(7)  # noqa: S311 invented readings, no secret
    for place, knife in enumerate(made.knives):
        force = 190 + round(lots.gauss(0, 8)) - (gain_gf if halves.get(knife.id) is Half.WITH else 0)
        after = {"heel": force, "tip": force - 5}
        read(shop, by(minutes=2 + place), knife, after, ok=force < 210, deburred=deburred)
    (seen,) = trials_seen(shop)
    return seen


def test_nothing_is_said_before_the_number_of_the_rule(shop: Shop) -> None:
    """With nineteen in a half, however far apart they read, there is a count and no figure."""
    seen = trial_of(shop, 39, 60)

    assert sorted(seen.read.values()) == [19, 20]
    assert seen.result.outcome is Outcome.TOO_FEW
    assert list(result_lines(seen)) == []
    assert trial_strips(seen, 70) == ()
    assert "nothing is said" in verdict_words(seen)
    (nineteen,) = [line for line in progress_lines(seen) if " 19 read" in line]
    assert f"{'█' * 19}░  19 read, " in nineteen
    assert nineteen.endswith(" drawn, 20 asked for")


def test_no_difference_is_a_proud_answer(shop: Shop) -> None:
    """Halves that read alike say so, with the minutes that would be saved."""
    seen = trial_of(shop, 40, 0)

    assert seen.result.outcome is Outcome.NO_DIFFERENCE
    assert verdict_words(seen) == "No difference seen: save 1.5 min a knife."
    said = "\n".join(result_lines(seen))
    assert "Welch" in said
    assert "Hodges and Lehmann" in said
    assert "3.5 cents" in said
    _, with_belt, without, scale = trial_strips(seen, 70)
    assert with_belt.startswith("with the belt    │")
    assert without.startswith("without the belt │")
    assert f"│{min(map(min, seen.worst_gf.values()))} " in scale


def test_a_belt_that_earns_its_minutes_stays(shop: Shop) -> None:
    """A fall of 60 gf is more than twice a wobble of 15."""
    seen = trial_of(shop, 40, 60)

    assert seen.result.outcome is Outcome.STAYS
    assert seen.result.worst_gf is not None
    assert seen.result.worst_gf.interval.holds(-60)


def test_readings_that_saw_the_burr_count_for_nothing(shop: Shop) -> None:
    """Knives read before they were deburred are not of the trial's figures."""
    seen = trial_of(shop, 40, 60, deburred=False)

    assert seen.read == {Half.WITH: 0, Half.WITHOUT: 0}
    assert seen.result.outcome is Outcome.TOO_FEW


def test_what_comes_after_the_rule_s_number_changes_nothing(shop: Shop) -> None:
    """The first knives read in each half decide: nobody goes on until the answer pleases."""
    seen = trial_of(shop, 40, 0)
    worst = seen.result.worst_gf
    extra = parcel(shop, knives=4)
    move_knives(shop, by(minutes=90), extra.knives, Column.ON_BENCH)

    (again,) = trials_seen(shop)
    assert again.result.worst_gf == worst
    assert sum(again.drawn.values()) == 40


def test_a_run_of_both_halves_measures_no_minutes(shop: Shop) -> None:
    """Its time is shared evenly, so a difference would be nought by arithmetic: none is given."""
    begin_trial(shop, by(), kind="chef", process="plain", belt="16 um", draw=Draw.ALTERNATE)
    made = parcel(shop, knives=8)
    start_run(shop, by(minutes=1), "plain", made.knives, 90)
    finish_run(shop, by(minutes=50), only_run(shop))
    for place, knife in enumerate(made.knives):
        read(shop, by(minutes=200 + place), knife, {"tip": 180 + place})

    (seen,) = trials_seen(shop)
    assert seen.minutes is None


def test_runs_of_one_half_measure_its_minutes(shop: Shop) -> None:
    """Timed apart, the halves' minutes a knife are held against each other."""
    begin_trial(shop, by(), kind="chef", process="plain", belt="16 um", draw=Draw.ALTERNATE)
    made = parcel(shop, knives=8)
    move_knives(shop, by(minutes=1), made.knives, Column.ON_BENCH)
    halves = {one.knife_id: one.half for one in drawn_knives(shop.database)}
    at = 10.0
    for half, minutes in ((Half.WITH, 22.5), (Half.WITHOUT, 17.5)):
        for pair in range(2):
            own = [k for k in box(shop, made.box.number).knives if halves[k.id] is half][2 * pair : 2 * pair + 2]
            start_run(shop, by(minutes=at), "plain", own, 90)
            at += minutes / 2 + 2 * pair
            finish_run(shop, by(minutes=at), only_run(shop))
    for place, knife in enumerate(made.knives):
        read(shop, by(minutes=200 + place), knife, {"tip": 180 + place})
    (apart,) = trials_seen(shop)
    assert apart.minutes is not None
    assert 1 < apart.minutes.mean < 2
