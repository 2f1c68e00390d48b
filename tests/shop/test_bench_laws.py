"""Undo at the bench: no two belts on a step, no study with a hole in it, and the reason said in the shop's words."""

import pytest

from queueboard.errors import RuleError
from queueboard.records.studies import studies
from queueboard.records.trials import open_trials
from queueboard.shop import undoing
from queueboard.shop.fitting import fit_belt, remove_belt
from queueboard.shop.opening import Shop
from queueboard.shop.trialling import begin_trial, end_trial
from queueboard.shop.wobbling import begin_study, finish_study, next_reading, read_study, wobble_now
from queueboard.values.actor import Actor
from queueboard.words import BeltEnd
from tests.shop.place import by, state
from tests.shop.undo_edges import only_belt, only_study


def read_all(shop: Shop) -> list[Actor]:
    """Every reading of the study under way; who read them, in their order."""
    actors: list[Actor] = []
    while next_reading(only_study(shop)) is not None:
        actors.append(by(minutes=len(actors)))
        read_study(shop, actors[-1], only_study(shop), 180 + len(actors) % 3)
    return actors


def refused(shop: Shop, action: Actor, says: str) -> None:
    """The undo of an action is refused with a sentence, and leaves nothing behind."""
    before = state(shop)
    with pytest.raises(RuleError, match=says):
        undoing.undo(shop, by(minutes=99), action.group_id)
    assert state(shop) == before


def test_a_belt_comes_back_only_to_a_free_step(shop: Shop) -> None:
    """Its taking off is not undone while another is up in its place."""
    off = by(minutes=1)
    fit_belt(shop, by(), "plain", "P400")
    remove_belt(shop, off, only_belt(shop), BeltEnd.WORN)
    fit_belt(shop, by(minutes=2), "plain", "P400")

    refused(shop, off, "Another belt is up for P400 of plain by now")


def test_a_study_is_undone_from_its_end(shop: Shop) -> None:
    """A reading before others, and one of a finished study, stay until what rests on them is undone."""
    begin_study(shop, by(), "", 5)
    read = read_all(shop)
    refused(shop, read[11], "Later readings of that study are there")
    finish = by(minutes=50)
    finish_study(shop, finish, only_study(shop))
    figure = wobble_now(shop)
    refused(shop, read[-1], "take its finish back first")
    assert wobble_now(shop) == figure

    undoing.undo(shop, by(minutes=60), finish.group_id)
    undoing.undo(shop, by(minutes=61), read[-1].group_id)
    assert next_reading(only_study(shop)) is not None


def test_one_study_is_under_way(shop: Shop) -> None:
    """The finish of an older one is not undone beside it."""
    begin_study(shop, by(), "", 5)
    read_all(shop)
    finish = by(minutes=50)
    finish_study(shop, finish, only_study(shop))
    begin_study(shop, by(minutes=51), "filament", 5)

    refused(shop, finish, "Another study of the tester is under way by now")
    assert [study.finished_at is None for study in studies(shop.database)] == [True, False]


def test_one_trial_of_a_kind_goes_on(shop: Shop) -> None:
    """The end of an older one is not undone beside a newer one."""
    begin_trial(shop, by(), kind="chef", process="plain", belt="16 um")
    end = by(minutes=1)
    end_trial(shop, end, open_trials(shop.database)[0])
    begin_trial(shop, by(minutes=2), kind="chef", process="plain", belt="P400")

    refused(shop, end, "Another trial with that kind goes on by now")
