"""Belt trials: the rule, and which half a knife comes into."""

import pytest

from queueboard.edges.trial import Draw, Half, half_of
from queueboard.errors import RuleError, TypedError
from queueboard.records.trials import drawn_knives, open_trials
from queueboard.seedfiles import seed_text
from queueboard.shop import undoing
from queueboard.shop.correcting import correct_knife
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import decline_knife
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_knife
from queueboard.shop.running import start_run
from queueboard.shop.testing import let_go_by_eye
from queueboard.shop.trial_results import trials_seen
from queueboard.shop.trialling import begin_trial, end_trial
from queueboard.values.new import NewKnife
from queueboard.words import Column, Condition, DeclineReason, Edge, WhyRead
from tests.shop.place import box, by, parcel
from tests.shop.readings import read


def begun(shop: Shop, draw: Draw = Draw.ALTERNATE, each: int = 20) -> None:
    """A trial of the finest belt on chef's knives."""
    begin_trial(shop, by(), kind="chef", process="plain", belt="16 um", draw=draw, each=each)


def again(shop: Shop, made: BoxPicture) -> BoxPicture:
    """The box as it stands now."""
    return box(shop, made.box.number)


@pytest.mark.parametrize("draw", list(Draw))
def test_knives_get_their_half_when_they_come_to_the_bench(shop: Shop, draw: Draw) -> None:
    """Moved or in a run, each knife has the half of its place in the trial."""
    begun(shop, draw)
    made = parcel(shop, knives=5)
    move_knives(shop, by(minutes=1), made.knives[:2], Column.ON_BENCH)
    start_run(shop, by(minutes=2), "plain", again(shop, made).knives[2:], 90)

    (trial,) = open_trials(shop.database)
    drawn = drawn_knives(shop.database)
    assert [one.knife_id for one in drawn] == [knife.id for knife in made.knives]
    assert [one.half for one in drawn] == [half_of(place, draw, trial.seed) for place in range(5)]
    assert {one.half for one in drawn} == set(Half)


def test_a_knife_keeps_its_half(shop: Shop) -> None:
    """Taken back and put on the bench again, it is in the trial once, with the half it had."""
    begun(shop)
    made = parcel(shop, knives=1)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)
    before = drawn_knives(shop.database)
    move_knives(shop, by(), again(shop, made).knives, Column.RECEIVED)
    move_knives(shop, by(), again(shop, made).knives, Column.ON_BENCH)

    assert drawn_knives(shop.database) == before


def test_only_like_knives_are_drawn(shop: Shop) -> None:
    """Another kind, an edge of another process, chips, and work done again stay out."""
    begun(shop)
    made = parcel(shop, knives=1)
    move_knives(shop, by(), made.knives, Column.READY)
    move_knives(shop, by(), again(shop, made).knives, Column.ON_BENCH)
    for new in (
        NewKnife(kind="paring", edge=Edge.PLAIN),
        NewKnife(kind="chef", edge=Edge.SERRATED),
        NewKnife(kind="chef", edge=Edge.PLAIN, condition=Condition.BIG_CHIPS),
    ):
        add_knife(shop, by(), again(shop, made).box, new)
    move_knives(shop, by(), again(shop, made).knives[1:], Column.ON_BENCH)

    assert drawn_knives(shop.database) == ()


def test_no_more_are_drawn_than_the_rule_asks_for(shop: Shop) -> None:
    """With twenty in each half the next knives are worked as always."""
    begun(shop)
    made = parcel(shop, knives=45)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)

    halves = [one.half for one in drawn_knives(shop.database)]
    assert (halves.count(Half.WITH), halves.count(Half.WITHOUT)) == (20, 20)


def test_a_knife_that_was_let_go_unread_is_made_up_for(shop: Shop) -> None:
    """Forty drawn and two of them lost to it, by eye and declined: the next knives are drawn in their place."""
    begun(shop)
    made = parcel(shop, knives=40)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)
    let_go_by_eye(shop, by(minutes=1), again(shop, made).knives[0])
    decline_knife(shop, by(minutes=2), again(shop, made).knives[1], DeclineReason.CRACKED)
    move_knives(shop, by(minutes=3), parcel(shop, knives=5).knives, Column.ON_BENCH)

    assert len(drawn_knives(shop.database)) == 42


@pytest.mark.parametrize(("kind", "condition"), [("bread", None), (None, Condition.BIG_CHIPS)])
def test_a_knife_that_is_no_longer_like_the_others_counts_no_more(
    shop: Shop, kind: str | None, condition: Condition | None
) -> None:
    """Its line was corrected to another kind, or to chips: it is left out of the trial."""
    begun(shop)
    made = parcel(shop, knives=2)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)
    read(shop, by(minutes=1), again(shop, made).knives[0], {"heel": 180})
    correct_knife(shop, by(minutes=2), again(shop, made).knives[0], kind=kind, condition=condition)

    (seen,) = trials_seen(shop)
    assert sum(seen.read.values()) == 0
    assert sum(seen.drawn.values()) == 1


def test_what_turns_out_to_be_scissors_is_asked_for_no_gauge(shop: Shop) -> None:
    """Nothing could be read on them: once the kind is put right, the daily test decides."""
    begun(shop)
    made = parcel(shop, knives=1)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)
    assert again(shop, made).knives[0].gauge is WhyRead.TRIAL
    correct_knife(shop, by(minutes=1), again(shop, made).knives[0], kind="scissors")
    move_knives(shop, by(minutes=2), again(shop, made).knives, Column.READY)

    assert again(shop, made).knives[0].column is Column.READY


def test_a_kind_that_is_cut_with_from_now_on_is_asked_for_no_gauge(shop: Shop) -> None:
    """Settings that say so take the question back for what lies on the bench."""
    begun(shop)
    made = parcel(shop, knives=1)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)
    text = seed_text("settings.toml").replace("by_cutting = [", 'by_cutting = ["chef", ')
    take_settings(shop, by(minutes=1), text)

    assert again(shop, made).knives[0].gauge is None


def test_an_ended_trial_draws_none(shop: Shop) -> None:
    """What comes to the bench after its end is in no trial; a trial ends once."""
    begun(shop)
    (trial,) = open_trials(shop.database)
    end_trial(shop, by(), trial)
    move_knives(shop, by(), parcel(shop).knives, Column.ON_BENCH)

    assert drawn_knives(shop.database) == ()
    begun(shop)


def test_a_draw_that_is_undone_can_be_done_again(shop: Shop) -> None:
    """Though another knife has come to its place meanwhile, the knife gets its half back."""
    begun(shop)
    one, other = parcel(shop, knives=1), parcel(shop, knives=1)
    first, back = by(minutes=1), by(minutes=2)
    move_knives(shop, first, one.knives, Column.ON_BENCH)
    undoing.undo(shop, back, first.group_id)
    move_knives(shop, by(minutes=3), other.knives, Column.ON_BENCH)
    undoing.undo(shop, by(minutes=4), back.group_id)

    assert {drawn.knife_id for drawn in drawn_knives(shop.database)} == {one.knives[0].id, other.knives[0].id}


def test_a_half_cannot_be_picked_by_undo(shop: Shop) -> None:
    """Taken back by undo and put on the bench again after others, a knife is in the half it had."""
    begun(shop)
    made = parcel(shop, knives=4)
    first = by(minutes=1)
    move_knives(shop, first, made.knives[:1], Column.ON_BENCH)
    (before,) = drawn_knives(shop.database)
    undoing.undo(shop, by(minutes=2), first.group_id)
    move_knives(shop, by(minutes=3), again(shop, made).knives[1:], Column.ON_BENCH)
    move_knives(shop, by(minutes=4), again(shop, made).knives[:1], Column.ON_BENCH)

    assert before in drawn_knives(shop.database)


def test_one_kind_is_in_one_trial(shop: Shop) -> None:
    """Two trials with the same kind would hide each other's belts."""
    begun(shop)

    with pytest.raises(RuleError, match="goes on already"):
        begin_trial(shop, by(), kind="chef", process="plain", belt="P400")


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        ({"each": 19}, "Type 20 to 500"),
        ({"kind": "scissors", "process": "scissors", "belt": "P240"}, "tested by cutting and never read"),
        ({"kind": "bread"}, "bread is not worked by plain"),
        ({"each": 501}, "Type 20 to 500"),
        ({"fall_wobbles": -1.0}, "outside 0 to 10"),
        ({"fall_wobbles": 10.5}, "outside 0 to 10"),
        ({"kind": "sword"}, "no kind"),
        ({"belt": "P36"}, "no belt called"),
        ({"process": "quick"}, "no process called"),
    ],
)
def test_a_rule_that_cannot_hold_is_refused(shop: Shop, wrong: dict[str, object], says: str) -> None:
    """Fewer than twenty each, an impossible fall, or something the shop does not have gets a sentence."""
    rule: dict[str, object] = {"kind": "chef", "process": "plain", "belt": "16 um", **wrong}

    with pytest.raises(TypedError, match=says):
        begin_trial(shop, by(), **rule)  # type: ignore[arg-type]  # the wrong ones are of the right type
