"""Spots and readings: marked once, read at the same place before and after, struck and never replaced."""

import pytest

from queueboard.errors import ChangedError, ReasonNeededError, RuleError, TypedError
from queueboard.records.edge_reads import read_knives
from queueboard.shop.comparing import worked_seen
from queueboard.shop.edges_seen import charts_seen
from queueboard.shop.gauging import correct_reading, edge, mark_spots, read_spot
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_knife, strike_knife
from queueboard.shop.testing import judge_edge
from queueboard.shop.undoing import box_history, undo
from queueboard.values.edge import NewSpot
from queueboard.values.new import NewKnife
from queueboard.words import Edge, Stage
from tests.shop.place import box, by, chef, counter, parcel, state
from tests.shop.readings import read
from tests.shop.undo_edges import at_the_test


def test_the_first_reading_marks_heel_middle_and_tip(shop: Shop) -> None:
    """A knife of 200 mm gets its spots at 25, 100 and 175 mm from the heel, and the reading stands at its own."""
    (knife,) = counter(shop, knives=1).knives
    read_spot(shop, by(), knife, "Tip", 1320, Stage.BEFORE)

    seen = edge(shop, knife)
    assert [(spot.name, spot.from_heel_mm) for spot in seen.spots] == [("heel", 25), ("middle", 100), ("tip", 175)]
    assert [one.force_gf for one in seen.at(seen.spots[2], Stage.BEFORE)] == [1320]
    assert seen.readings[0].read_by == "J"


@pytest.mark.parametrize("force", [0, -5, 5001, 20_000])
def test_what_no_tester_shows_is_refused(shop: Shop, force: int) -> None:
    """Zero, less than zero and 20,000 gf are refused with the number, and nothing is stored."""
    (knife,) = counter(shop, knives=1).knives
    before = state(shop)

    with pytest.raises(TypedError, match=f"{force} gf is nothing a tester shows"):
        read_spot(shop, by(), knife, "heel", force)

    assert state(shop) == before


def test_scissors_are_never_read(shop: Shop) -> None:
    """They cut the real material; a reading is refused with that."""
    made = counter(shop, knives=1)
    tag = add_knife(shop, by(), made.box, NewKnife(kind="scissors", edge=Edge.PLAIN))
    knife = next(one for one in box(shop, made.box.number).knives if one.tag == tag)

    with pytest.raises(RuleError, match="tested by cutting the real material"):
        read_spot(shop, by(), knife, "tip", 180)


def test_a_spot_that_is_not_there_is_named(shop: Shop) -> None:
    """A reading for a spot that does not exist is refused, with the spots that do."""
    (knife,) = counter(shop, knives=1).knives

    with pytest.raises(TypedError, match=r"no spot called belly\. Its spots are: heel, middle, tip"):
        read_spot(shop, by(), knife, "belly", 180)


@pytest.mark.parametrize(
    ("spots", "says"),
    [
        ([], "0 spots cannot be read"),
        ([NewSpot(name="a")] * 21, "21 spots cannot be read"),
        ([NewSpot(name="a"), NewSpot(name="A ")], "a name of its own"),
        ([NewSpot(name=" ")], "a name of its own"),
        ([NewSpot(name="far", from_heel_mm=201)], "201 mm from the heel is not on this edge. Type 0 to 200"),
        ([NewSpot(name="third", tooth=3)], "plain edge and so no teeth"),
    ],
)
def test_spots_that_cannot_be_found_again_are_refused(shop: Shop, spots: list[NewSpot], says: str) -> None:
    """Each spot needs a name and a place that this edge has."""
    (knife,) = counter(shop, knives=1).knives

    with pytest.raises(TypedError, match=says):
        mark_spots(shop, by(), knife, spots)


def test_spots_stay_where_they_are_once_they_were_read(shop: Shop) -> None:
    """Another place cannot be compared with the one that was read before."""
    (knife,) = counter(shop, knives=1).knives
    mark_spots(shop, by(), knife, [NewSpot(name="belly", from_heel_mm=90)])
    mark_spots(shop, by(), knife, [NewSpot(name="belly", from_heel_mm=80)])
    read_spot(shop, by(), knife, "belly", 900, Stage.BEFORE)

    with pytest.raises(RuleError, match="was read at its spots already"):
        mark_spots(shop, by(), knife, [NewSpot(name="belly", from_heel_mm=70)])

    assert edge(shop, knife).spots[0].from_heel_mm == 80


def test_a_reading_between_belts_says_behind_which_and_whether_the_burr_was_on(shop: Shop) -> None:
    """It takes a belt of the knife's own process and is never counted as finished."""
    (knife,) = counter(shop, knives=1).knives
    with pytest.raises(TypedError, match="no belt P40 for"):
        read_spot(shop, by(), knife, "heel", 300, Stage.BETWEEN, belt="P40")
    read_spot(shop, by(), knife, "heel", 300, Stage.BETWEEN, belt="P400", deburred=False)

    seen = edge(shop, knife)
    assert [(one.belt, one.deburred) for one in seen.readings] == [("P400", False)]
    assert not any(seen.finished_gf().values())


def test_a_corrected_reading_is_of_the_moment_it_was_read(shop: Shop) -> None:
    """Put right after a test that was not OK, it is history as the wrong one was: nobody has read the edge again."""
    knife = at_the_test(shop)
    judge_edge(shop, by(minutes=3), knife, ok=False)
    back = box(shop, knife.box_number).knives[knife.number - 1]
    assert not any(edge(shop, back).finished_gf().values())
    wrong = edge(shop, back).readings[0]
    correct_reading(shop, by("K", minutes=9), back, wrong, 190, "misread the display")

    assert not any(edge(shop, back).finished_gf().values())
    assert [one.read_at for one in edge(shop, back).readings if one.force_gf == 190] == [wrong.read_at]


def test_corrections_do_not_turn_a_trial(shop: Shop) -> None:
    """A gram more at one spot of each knife changes the trial's figures by about a gram, whenever it is put right."""
    made = parcel(shop, knives=8)
    for place, one in enumerate(made.knives):
        read(shop, by(minutes=place), one, {"heel": 300 + place, "tip": 180}, {"heel": 900, "tip": 900})
    before = worked_seen(shop).changes.whole
    for one in made.knives:
        heel = edge(shop, one).at(edge(shop, one).spots[0], Stage.AFTER)[0]
        correct_reading(shop, by(minutes=60), one, heel, heel.force_gf + 2, "off by two")

    assert [(b, a + 1) for b, a in before.pairs_gf] == list(worked_seen(shop).changes.whole.pairs_gf)
    assert [one.first_after["heel"] for one in read_knives(shop.database)] == [302 + place for place in range(8)]


def test_a_wrong_reading_is_struck_and_stays_in_the_file(shop: Shop) -> None:
    """The old force stands where it was, struck with the reason; the right one is another reading beside it."""
    knife = at_the_test(shop)
    wrong = edge(shop, knife).readings[0]
    correct_reading(shop, by("K", minutes=2), knife, wrong, 190, "misread the display")

    assert [one.force_gf for one in edge(shop, knife).readings] == [170, 210, 190]
    rows = shop.database.rows("SELECT force_gf, struck_why, read_by FROM reading ORDER BY id")
    assert rows[0] == (180, "misread the display", "J")
    assert rows[-1] == (190, "", "K")


def test_a_correction_says_why_and_happens_once(shop: Shop) -> None:
    """Without a reason nothing is struck; a reading that another window struck is not struck twice."""
    knife = at_the_test(shop)
    wrong = edge(shop, knife).readings[0]
    with pytest.raises(ReasonNeededError, match="Say why 180 gf is wrong"):
        correct_reading(shop, by(), knife, wrong, None, "  ")
    correct_reading(shop, by("K"), knife, wrong, None, "of another knife")

    with pytest.raises(ChangedError, match="struck meanwhile"):
        correct_reading(shop, by(), knife, wrong, 190, "misread")


def test_a_struck_knife_takes_its_readings_along(shop: Shop) -> None:
    """A knife that was typed twice leaves nothing of its edge behind; undo brings all of it back."""
    knife = at_the_test(shop)
    add_knife(shop, by(), box(shop, knife.box_number).box, chef())
    before = state(shop)
    actor = by(minutes=1)
    strike_knife(shop, actor, box(shop, knife.box_number).knives[0], "typed twice")

    after = state(shop)
    assert not any(after[name] for name in ("spot", "reading", "edge_test", "second_look"))
    undo(shop, by(minutes=2), actor.group_id)
    assert state(shop) == before


def test_before_is_refused_once_the_knife_was_worked(shop: Shop) -> None:
    """A reading of a finished edge would be told as one of a dull knife."""
    knife = at_the_test(shop)
    before = state(shop)

    with pytest.raises(RuleError, match=f"{knife.tag} was worked already"):
        read_spot(shop, by(minutes=1), knife, "heel", 900, Stage.BEFORE)

    assert state(shop) == before


def test_an_edge_with_teeth_is_read_only_at_a_tooth(shop: Shop) -> None:
    """Its usual spots have names alone; a reading waits until each one has its tooth."""
    made = counter(shop, knives=1)
    tag = add_knife(shop, by(), made.box, NewKnife(kind="bread", edge=Edge.SERRATED, length_mm=220))
    knife = next(one for one in box(shop, made.box.number).knives if one.tag == tag)
    with pytest.raises(RuleError, match=r"at which tooth each spot is \(heel, middle, tip\)"):
        read_spot(shop, by(), knife, "heel", 400, Stage.BEFORE)
    assert edge(shop, knife).spots == ()
    mark_spots(shop, by(), knife, [NewSpot(name="heel", tooth=3)])
    read_spot(shop, by(), knife, "heel", 400, Stage.BEFORE)

    assert [one.force_gf for one in edge(shop, knife).readings] == [400]


def test_the_first_reading_is_told_with_its_figure(shop: Shop) -> None:
    """Also where the same step marks the usual spots."""
    (knife,) = counter(shop, knives=1).knives
    read_spot(shop, by(), knife, "tip", 1320, Stage.BEFORE)

    assert box_history(shop, knife.box_id)[0].about.to == "1320"


def test_half_a_knife_counts_at_its_spots_alone(shop: Shop) -> None:
    """A knife with a spot that was not read is no pair of the knives, but one of the spot that was."""
    made = parcel(shop, knives=2)
    read(shop, by(), made.knives[0], {"heel": 180, "tip": 190}, {"heel": 900, "tip": 900})
    mark_spots(shop, by(), made.knives[1], [NewSpot(name="heel"), NewSpot(name="tip")])
    read_spot(shop, by(), made.knives[1], "heel", 900, Stage.BEFORE)
    read_spot(shop, by(minutes=1), made.knives[1], "heel", 310)

    seen = worked_seen(shop).changes
    assert seen.whole.pairs == 1
    assert [(row.name, row.pairs) for row in seen.spots] == [("heel", 2), ("tip", 1)]
    assert [len(chart.tags) for chart in charts_seen(shop, by().now)] == [1]
