"""Belts fitted, moved and taken off, and the knives they have done."""

import pytest

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.records.belts import fitted_belts
from queueboard.shop import undoing
from queueboard.shop.belt_counts import BeltPlace, belt_places
from queueboard.shop.fitting import count_spares, fit_belt, move_belt, remove_belt
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.shop.running import finish_run, start_run
from queueboard.shop.trialling import begin_trial
from queueboard.words import BeltEnd, Column
from tests.shop.place import box, by, parcel
from tests.shop.undo_edges import only_belt
from tests.shop.undo_running import only_run


def place(shop: Shop, step: str, process: str = "plain") -> BeltPlace:
    """One step of a process."""
    (found,) = (place for place in belt_places(shop) if (place.process, place.step) == (process, step))
    return found


def test_a_fitted_belt_comes_out_of_the_drawer(shop: Shop) -> None:
    """One spare less, and the re-order point of the settings is said when it is reached."""
    count_spares(shop, by(), "P400", 4)
    assert not place(shop, "P400").to_order

    fit_belt(shop, by(), "plain", "P400")

    assert (place(shop, "P400").spares, place(shop, "P400").to_order) == (3, True)
    assert place(shop, "P400").belt == only_belt(shop)


def test_a_belt_is_fitted_although_none_was_counted(shop: Shop) -> None:
    """The belt in hand is there whatever the count says; uncounted spares stay uncounted, none stay none."""
    fit_belt(shop, by(), "plain", "P400")
    count_spares(shop, by(), "P240", 0)
    fit_belt(shop, by(), "plain", "P240")

    assert place(shop, "P400").spares is None
    assert place(shop, "P240").spares == 0


def test_two_belts_do_not_lie_on_one_step(shop: Shop) -> None:
    """A second one is refused until it is said what becomes of the first."""
    fit_belt(shop, by(), "plain", "P400")

    with pytest.raises(RuleError, match="Say first what becomes of it"):
        fit_belt(shop, by(), "plain", "P400")


@pytest.mark.parametrize(("process", "step"), [("plain", "P36"), ("quick", "P400")])
def test_a_belt_that_no_process_has_is_refused(shop: Shop, process: str, step: str) -> None:
    """A step or process that the settings do not know gets a sentence."""
    with pytest.raises(TypedError):
        fit_belt(shop, by(), process, step)


def test_a_worn_belt_goes_to_finer_duty_and_counts_anew(shop: Shop) -> None:
    """A P240 that does the P400's step keeps its label; the step it left is free."""
    fit_belt(shop, by(), "plain", "P240")
    move_knives(shop, by(minutes=1), parcel(shop).knives, Column.TESTING)
    move_belt(shop, by(minutes=2), only_belt(shop), "plain", "P400")

    moved = place(shop, "P400")
    assert moved.belt is not None
    assert (moved.belt.label, moved.belt.demoted, moved.done) == ("P240", True, 0)
    assert place(shop, "P240").belt is None


def test_no_belt_goes_to_coarser_duty(shop: Shop) -> None:
    """A fine belt on a coarse step would only burn; the sizes are named."""
    fit_belt(shop, by(), "plain", "P400")

    with pytest.raises(RuleError, match="P240 of plain"):
        move_belt(shop, by(), only_belt(shop), "plain", "P240")


def test_a_belt_is_taken_off_once(shop: Shop) -> None:
    """A second window that still shows the belt is refused."""
    fit_belt(shop, by(), "plain", "P400")
    belt = only_belt(shop)
    remove_belt(shop, by(), belt, BeltEnd.JOINT, "felt it on the third knife")

    assert fitted_belts(shop.database) == ()
    with pytest.raises(ChangedError):
        remove_belt(shop, by(), belt, BeltEnd.WORN)


@pytest.mark.parametrize("spares", [-1, 20_000])
def test_a_count_that_cannot_be_is_refused(shop: Shop, spares: int) -> None:
    """Spares lie between none and 9999."""
    with pytest.raises(TypedError, match="spares"):
        count_spares(shop, by(), "P400", spares)


def test_knives_count_once_in_a_run_or_without_one(shop: Shop) -> None:
    """Two of a run and one moved by hand are three; what is undone counts for nothing, work done again counts again."""
    fit_belt(shop, by(), "plain", "P400")
    made = parcel(shop)
    start_run(shop, by(minutes=1), "plain", made.knives[:2], 90)
    finish_run(shop, by(minutes=20), only_run(shop))
    by_hand = by(minutes=21)
    move_knives(shop, by_hand, box(shop, made.box.number).knives[2:], Column.READY)
    assert place(shop, "P400").done == 3

    undoing.undo(shop, by(minutes=22), by_hand.group_id)
    assert place(shop, "P400").done == 2

    move_knives(shop, by(minutes=23), box(shop, made.box.number).knives[:1], Column.ON_BENCH)
    move_knives(shop, by(minutes=24), box(shop, made.box.number).knives[:1], Column.TESTING)
    assert place(shop, "P400").done == 3


def test_other_knives_and_the_half_without_wear_no_belt(shop: Shop) -> None:
    """A belt of another process counts nothing, and a knife that the trial keeps off the belt is none of its."""
    fit_belt(shop, by(), "plain", "16 um")
    fit_belt(shop, by(), "thin hard", "16 um")
    begin_trial(shop, by(), kind="chef", process="plain", belt="16 um")
    made = parcel(shop, knives=4)
    move_knives(shop, by(minutes=1), made.knives, Column.ON_BENCH)
    move_knives(shop, by(minutes=2), box(shop, made.box.number).knives, Column.TESTING)

    assert place(shop, "16 um").done == 2
    assert place(shop, "16 um", "thin hard").done == 0
