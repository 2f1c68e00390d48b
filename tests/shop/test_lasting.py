"""How the edge lasted: the same knives, read when they left and when they came back."""

from collections.abc import Sequence

import pytest

from queueboard.edges.trial import Half
from queueboard.records.edge_tables import TrialKnifeRow
from queueboard.records.trials import open_trials
from queueboard.shop.comparing import worked_seen
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.trialling import begin_trial
from queueboard.values.new import NewBox
from queueboard.words import CameBy, GoesBy
from tests.shop.place import box, by, chef
from tests.shop.readings import read

DAY = 24 * 60


def visit(shop: Shop, customer: int, marks: Sequence[str], day: int, before: int, after: int) -> BoxPicture:
    """A set that comes in on a day and is read before and after, a little more push for each knife."""
    knives = tuple(chef(mark=mark) for mark in marks)
    new = NewBox(
        customer_id=customer, came_by=CameBy.COUNTER, goes_by=GoesBy.PICK_UP, counted=len(knives), knives=knives
    )
    number = receive_box(shop, by(minutes=day * DAY), new)
    made = box(shop, number)
    for place, knife in enumerate(made.knives):
        read(shop, by(minutes=day * DAY), knife, {"heel": after + place}, {"heel": before + 2 * place})
    return made


def test_a_weekly_set_tells_how_its_edges_lasted(shop: Shop) -> None:
    """Eight marked knives back after a week need 200 gf more and one more each; below six nothing is said."""
    customer = add_customer(shop, by(), name="The Lantern Room")
    marks = [f"ring {number}" for number in range(8)]
    visit(shop, customer, marks, 0, 900, 150)
    visit(shop, customer, marks, 7, 350, 150)

    whole = worked_seen(shop).lasted.whole
    assert (whole.knives, whole.days) == (8, 7)
    assert whole.change is not None
    assert whole.change.mean_gf == 200 + 3.5


@pytest.mark.parametrize("marks", [["", *"bcdef"], [*"aabcde"]])
def test_a_knife_that_cannot_be_told_apart_is_left_out(shop: Shop, marks: list[str]) -> None:
    """Without a mark, or with one that two of the box have, no pair is made of it."""
    customer = add_customer(shop, by(), name="The Lantern Room")
    for day in (0, 7):
        visit(shop, customer, marks, day, 900, 150)

    whole = worked_seen(shop).lasted.whole
    assert whole.knives == len([mark for mark in marks if mark and marks.count(mark) == 1])
    assert whole.change is None


def test_another_customer_s_knife_is_another_knife(shop: Shop) -> None:
    """The same mark on another customer's knife makes no pair."""
    for day, name in ((0, "The Lantern Room"), (7, "Old Quay Inn")):
        visit(shop, add_customer(shop, by(), name=name), [*"abcdef"], day, 900, 150)

    assert worked_seen(shop).lasted.whole.knives == 0


def test_the_halves_of_a_trial_are_told_apart(shop: Shop) -> None:
    """With six each their difference is given with its interval; it is of the half in which the knife left."""
    begin_trial(shop, by(), kind="chef", process="plain", belt="16 um")
    (trial,) = open_trials(shop.database)
    customer = add_customer(shop, by(), name="The Lantern Room")
    marks = [f"ring {number}" for number in range(12)]
    made = visit(shop, customer, marks, 0, 900, 150)
    with shop.writing(by(), "by hand") as writing:
        for place, knife in enumerate(made.knives):
            half = Half.WITH if place < 6 else Half.WITHOUT
            writing.insert(TrialKnifeRow, trial_id=trial.id, knife_id=knife.id, place=place, half=half.value)
    visit(shop, customer, marks, 7, 350, 150)

    ((first, second, apart),) = worked_seen(shop).lasted.halves
    assert (first.name, first.knives, second.name, second.knives) == ("with 16 um", 6, "without 16 um", 6)
    assert apart is not None
    assert apart.mean == pytest.approx(-6)
    assert apart.interval.holds(-6)
