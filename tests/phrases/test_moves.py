"""History and undo in words."""

import importlib
import pkgutil

import pytest

import queueboard.shop
from queueboard.phrases.moves import OPERATION_WORDS, about_words, history_words, step_words, undo_words, undone_words
from queueboard.shop.operation import OPERATIONS
from queueboard.values.step import About, Step
from tests.pictures import at


def step(operation: str, about: About, *, by: str = "MB") -> Step:
    """A step of yesterday afternoon."""
    return Step(group_id="g", operation=operation, about=about, at=at(16, 20, days=-1), by=by, needs_reason=False)


def test_every_operation_has_its_words() -> None:
    """No operation of the shop is without words for what it did and for its undo, and no words are without one."""
    for module in pkgutil.iter_modules(queueboard.shop.__path__):
        if module.name != "on_server":  # it wants a library of its own, and has no operations
            importlib.import_module(f"queueboard.shop.{module.name}")

    assert set(OPERATION_WORDS) == set(OPERATIONS) - {"undo"}


@pytest.mark.parametrize(
    ("operation", "about", "done", "undo"),
    [
        (
            "move_knives",
            About(tags=("417-3",), was="on bench", to="testing"),
            "417-3 moved to testing",
            "put 417-3 back on the bench",
        ),
        (
            "move_knives",
            About(tags=("417-1", "417-2", "418-5"), to="ready"),
            "417-1, 417-2 and 418-5 moved to ready",
            "put 417-1, 417-2 and 418-5 back where they were",
        ),
        (
            "move_knives",
            About(tags=tuple(f"417-{n}" for n in range(1, 10)), was="received", to="on bench"),
            "9 knives of 417 moved to on bench",
            "put 9 knives of 417 back to received",
        ),
        (
            "knives_wait",
            About(tags=("417-3",), to="belts"),
            "417-3 waits for belts",
            "417-3 does not wait for belts after all",
        ),
        ("knives_wait", About(tags=("417-3",)), "417-3 goes on", "417-3 waits again"),
        (
            "take_payment",
            About(number=417, cents=4100, to="cash"),
            "41.00 cash taken for box 417",
            "take back the payment of 41.00 cash for box 417",
        ),
        ("send_off", About(number=417, tags=("417-1",)), "417-1 gone", "bring 417-1 back into the shop"),
        ("undo", About(tags=("417-3",), to="ready", undone="move_knives"), "undone: 417-3 moved to ready", None),
        ("something_new", About(), "it changed", "put it back as it was"),
    ],
)
def test_a_step_is_told_and_taken_back_in_words(operation: str, about: About, done: str, undo: str | None) -> None:
    """What was done is said in the past, what undo does as an order."""
    told = step(operation, about)

    assert step_words(told) == done
    assert undo is None or undo_words(told) == undo


def test_undoing_an_undo_does_it_again() -> None:
    """The step after an undo offers the thing itself."""
    told = step("undo", About(tags=("417-3",), to="ready", undone="move_knives"))

    assert undo_words(told) == "do again: 417-3 moved to ready"


def test_history_says_when_who_and_what() -> None:
    """A line of history has day, time, initials and the words of the step."""
    told = step("note_box", About(number=417))

    assert history_words(told, at(9)) == "yesterday 16:20 MB: note on box 417"
    assert undone_words(told) == "Undone: note on box 417."


def test_nothing_named_is_called_it() -> None:
    """A step about no tag and no box still reads as a sentence."""
    assert about_words(About()) == "it"
