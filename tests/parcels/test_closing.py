"""Where a close-out stands, step by step, from what is stored."""

from dataclasses import replace
from datetime import timedelta

import pytest

from queueboard.parcels.closing import check
from queueboard.values.box import CloseCheck, CloseOut, ReturnLabel
from queueboard.values.knife import Knife, Thing
from queueboard.words import CloseStep, Column, DeclineReason, GoesBy, LabelState, Settling, ThingState
from tests.parcels.bills import owing
from tests.pictures import knife, knives, label, thing
from tests.plans import NOW, TODAY

BEGUN = CloseOut(id=1, version=1, box_id=360, started_at=NOW)
READY = knives(360, Column.READY, Column.READY, Column.READY)
IDS = tuple(k.id for k in READY)
ROLL = thing("roll", box_number=360, id=1)
SHEATH = thing("sheath", box_number=360, id=2)


def stands(
    close_out: CloseOut = BEGUN,
    knives_: tuple[Knife, ...] = READY,
    things: tuple[Thing, ...] = (),
    goes_by: GoesBy = GoesBy.PICK_UP,
    label_: ReturnLabel | None = None,
    owed_cents: int = 0,
) -> CloseCheck:
    """Where the close-out of a box of three ready knives stands, today."""
    return check(close_out, knives_, things, goes_by, label_, owing(knives_, owed_cents), TODAY)


def test_a_whole_box_goes_step_by_step() -> None:
    """Count, what it comes with, names, who collects, money, go: each is asked for until it is stored."""
    close_out, seen = BEGUN, []
    steps = (
        {"counted": 3},
        {"ticked_things": frozenset({1})},
        {"names_ok": True},
        {"handed_to": "his son"},
        {"settled": Settling.ON_ACCOUNT},
    )

    for change in steps:
        seen.append(stands(close_out, things=(ROLL,), owed_cents=2700).step)
        close_out = replace(close_out, **change)
    end = stands(close_out, things=(ROLL,), owed_cents=2700)

    assert seen == [CloseStep.COUNT, CloseStep.COMES_WITH, CloseStep.NAMES, CloseStep.LABEL, CloseStep.MONEY]
    assert end == CloseCheck(step=CloseStep.GO, going=IDS)


def test_before_the_count_nothing_is_told() -> None:
    """The count is blind: not a knife, not a thing, not a sentence is told before it."""
    assert stands(things=(ROLL, SHEATH), owed_cents=2700) == CloseCheck(step=CloseStep.COUNT)


def test_a_right_count_means_all_of_them() -> None:
    """Three counted and three ready: these three go, and nothing needs ticking."""
    seen = stands(replace(BEGUN, counted=3))

    assert (seen.step, seen.going, seen.missing) == (CloseStep.NAMES, IDS, ())


@pytest.mark.parametrize("counted", [0, 2, 4, 13])
def test_a_count_that_differs_asks_for_the_tags_and_tells_nothing(counted: int) -> None:
    """On a mismatch the tags in hand are ticked, and still nothing of what is expected is told."""
    assert stands(replace(BEGUN, counted=counted)) == CloseCheck(step=CloseStep.TICK)


def test_while_tags_are_ticked_nothing_is_told() -> None:
    """Two of three ticked is still ticking: the third is not named until the person says that is all."""
    assert stands(replace(BEGUN, ticking=True, ticked=frozenset(IDS[:2]))) == CloseCheck(step=CloseStep.TICK)


def test_ticking_without_a_count_is_allowed() -> None:
    """Who ticks every tag has counted: no number is asked for."""
    seen = stands(replace(BEGUN, ticking=True, ticked=frozenset(IDS), ticks_done=True))

    assert (seen.step, seen.going) == (CloseStep.NAMES, IDS)


def test_what_is_not_ticked_is_missing_and_needs_a_reason() -> None:
    """Eleven of twelve ticked: the twelfth is named, and the box goes without it only with a typed reason."""
    ticked = replace(BEGUN, counted=2, ticking=True, ticked=frozenset(IDS[:2]), ticks_done=True)

    seen = stands(ticked)
    assert (seen.step, seen.going, seen.missing) == (CloseStep.MISSING, IDS[:2], IDS[2:])
    assert stands(replace(ticked, missing_reason="  ")).step is CloseStep.MISSING
    assert stands(replace(ticked, missing_reason="customer cannot wait")).step is CloseStep.NAMES


def test_part_of_a_box_goes_today() -> None:
    """Nine of twelve ready, three on the bench: a count of nine lets these nine go and the three stay."""
    box = knives(322, *[Column.READY] * 9, *[Column.ON_BENCH] * 3)

    seen = stands(replace(BEGUN, counted=9), box)

    assert (len(seen.going), seen.missing, len(seen.staying)) == (9, (), 3)


def test_a_declined_knife_counts() -> None:
    """A knife that goes back unsharpened is expected in hand like the others."""
    cracked = knife("360-4", column=Column.READY, declined=DeclineReason.CRACKED)

    assert stands(replace(BEGUN, counted=3), (*READY, cracked)).step is CloseStep.TICK
    assert cracked.id in stands(replace(BEGUN, counted=4), (*READY, cracked)).going


def test_a_knife_that_is_looked_for_is_not_expected() -> None:
    """Nobody can hold what is being looked for: it stays on the board and the count is without it."""
    lost = knife("360-4", column=Column.READY, looking_for=True)

    seen = stands(replace(BEGUN, counted=3), (*READY, lost))

    assert (seen.going, seen.staying) == (IDS, (lost.id,))


def test_gone_knives_are_not_counted_again() -> None:
    """The second close-out of a box that left in parts expects only what is still here."""
    gone = knife("360-4", column=Column.GONE)

    assert stands(replace(BEGUN, counted=3), (*READY, gone)).going == IDS


def test_a_ticked_knife_that_went_back_to_the_bench_stops_everything() -> None:
    """When another window takes a ticked knife back to work, the close-out says so before anything goes."""
    box = (*READY[:2], replace(READY[2], column=Column.ON_BENCH))
    done = replace(BEGUN, ticking=True, ticked=frozenset(IDS), ticks_done=True, names_ok=True, handed_to="herself")

    seen = stands(done, box)

    assert seen.step is CloseStep.TICK
    assert seen.trouble == "360-3 is ticked, but is on the bench. Untick it, or make it ready first."


def test_a_knife_made_ready_after_the_count_is_asked_about() -> None:
    """A count that was right stops being right when another knife becomes ready: its tag must be seen."""
    late = knife("360-4", column=Column.READY)

    assert stands(replace(BEGUN, counted=3, names_ok=True), (*READY, late)).step is CloseStep.TICK


def test_nothing_in_hand_is_said() -> None:
    """With no knife and no thing to go the close-out cannot go on, and says what to do."""
    on_bench = knives(360, Column.ON_BENCH)

    assert stands(replace(BEGUN, counted=0), on_bench).trouble.startswith("No knife in hand is ready to go.")
    for things in ((), (ROLL,)):
        seen = stands(replace(BEGUN, counted=0, ticking=True, ticks_done=True), things=things)
        assert seen.step is CloseStep.TICK
        assert seen.trouble.startswith("No knife in hand is ready to go.")


def test_a_sheath_left_behind_can_still_go() -> None:
    """When all knives have left, what is still here of the things can follow them."""
    gone = knives(360, Column.GONE, Column.GONE)
    counted = replace(BEGUN, counted=0)

    assert stands(counted, gone, (SHEATH,)).step is CloseStep.COMES_WITH
    assert stands(replace(counted, ticked_things=frozenset({2})), gone, (SHEATH,)).step is CloseStep.NAMES
    assert stands(replace(counted, things_done=True), gone, (SHEATH,)).trouble.startswith("Nothing of this box is in")


def test_things_are_ticked_or_missed_with_a_reason() -> None:
    """The sheath that is not there is named, and the box goes without it only with a typed reason."""
    roll_ticked = replace(BEGUN, counted=3, ticked_things=frozenset({1}))
    things = (ROLL, SHEATH)

    assert stands(roll_ticked, things=things).missing_things == (2,)
    said_all = replace(roll_ticked, things_done=True)
    seen = stands(said_all, things=things)
    assert (seen.step, seen.missing_things) == (CloseStep.COMES_WITH, (2,))
    assert seen.trouble == "Not in hand: sheath. Say why the box goes without."
    assert stands(replace(said_all, missing_reason="looked everywhere"), things=things).step is CloseStep.NAMES


def test_things_may_stay_with_the_rest_of_the_box() -> None:
    """While knives of the box stay at work, an unticked roll is not missing: it waits for them."""
    box = (*READY, knife("360-4", column=Column.ON_BENCH))

    seen = stands(replace(BEGUN, counted=3, things_done=True), box, (ROLL,))

    assert (seen.step, seen.missing_things) == (CloseStep.NAMES, ())


def test_things_that_are_gone_or_looked_for_are_not_asked_for() -> None:
    """Only what is here must be ticked."""
    things = (replace(ROLL, state=ThingState.GONE), replace(SHEATH, state=ThingState.LOOKING))

    assert stands(replace(BEGUN, counted=3), things=things).step is CloseStep.NAMES


NAMED = replace(BEGUN, counted=3, names_ok=True)


@pytest.mark.parametrize(
    ("label_", "said"),
    [
        (None, "no return label"),
        (label(box_number=360, state=LabelState.TO_BUY), "still to be bought"),
        (label(box_number=360, state=LabelState.USED), "used already"),
        (label(box_number=360, expires_on=TODAY - timedelta(days=1)), "good until 25 November 2026"),
    ],
)
def test_a_parcel_without_a_good_label_stays(label_: ReturnLabel | None, said: str) -> None:
    """No label, one to buy, one used and one expired each stop the parcel with a sentence, confirmed or not."""
    for label_ok in (False, True):
        seen = stands(replace(NAMED, label_ok=label_ok), goes_by=GoesBy.PARCEL, label_=label_)

        assert seen.step is CloseStep.LABEL
        assert said in seen.trouble


@pytest.mark.parametrize("days", [0, 1, None])
def test_a_label_in_date_is_confirmed(days: int | None) -> None:
    """A label that is good today, its last day included, needs only to be confirmed."""
    good = label(box_number=360, expires_on=None if days is None else TODAY + timedelta(days=days))

    assert stands(NAMED, goes_by=GoesBy.PARCEL, label_=good) == CloseCheck(step=CloseStep.LABEL, going=IDS)
    assert stands(replace(NAMED, label_ok=True), goes_by=GoesBy.PARCEL, label_=good).step is CloseStep.GO


def test_a_pick_up_needs_no_label_but_a_name() -> None:
    """Who collected it is asked at the counter, whatever label there was."""
    assert stands(replace(NAMED, label_ok=True)).step is CloseStep.LABEL
    assert stands(replace(NAMED, handed_to="Mrs Oake")).step is CloseStep.GO


HANDED = replace(NAMED, handed_to="Mrs Oake")


def test_nothing_owed_needs_no_settling() -> None:
    """Paid in full, or too much, goes on by itself."""
    assert stands(HANDED, owed_cents=0).step is CloseStep.GO
    assert stands(HANDED, owed_cents=-100).step is CloseStep.GO
    assert stands(HANDED, owed_cents=1) == CloseCheck(step=CloseStep.MONEY, going=IDS)


def test_gone_unpaid_needs_because() -> None:
    """Unpaid goes with a reason, on account without one."""
    unpaid = replace(HANDED, settled=Settling.UNPAID)

    assert stands(unpaid, owed_cents=900).trouble == "Say why it goes unpaid."
    assert stands(replace(unpaid, settled_why="pays on Friday"), owed_cents=900).step is CloseStep.GO
    assert stands(replace(HANDED, settled=Settling.ON_ACCOUNT), owed_cents=900).step is CloseStep.GO


def test_paid_with_money_owed_is_not_paid() -> None:
    """Marked paid while money is owed stops the last of a box, but not a part that was paid by itself."""
    paid = replace(HANDED, settled=Settling.PAID)

    assert stands(paid, owed_cents=900).step is CloseStep.MONEY
    for rest in (knife("360-4", column=Column.ON_BENCH), knife("360-4", column=Column.READY, looking_for=True)):
        assert stands(paid, (*READY, rest), owed_cents=900).step is CloseStep.GO
