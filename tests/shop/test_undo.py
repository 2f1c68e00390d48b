"""Undo of every operation, several steps back, and the refusals."""

import ast
import importlib
import pkgutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

import queueboard.shop
from queueboard.errors import ChangedError, ReasonNeededError, RuleError
from queueboard.shop import correcting, moving, noting, undoing
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.operation import OPERATIONS, operation
from queueboard.shop.settings_now import settings_text
from queueboard.words import Column
from tests.bench.undos import undo_at_random
from tests.shop.place import box, by, parcel, state
from tests.shop.undo_scenarios import SCENARIOS

ROOT = Path(__file__).parents[2]
EXAMPLES = 24
"""Of random acts taken back; `python -m tests.bench.undos` does a thousand."""


def test_every_operation_has_a_scenario() -> None:
    """An operation without an undo test fails here."""
    for module in pkgutil.iter_modules(queueboard.shop.__path__):
        if module.name != "on_server":  # it wants a library of its own, and has no operations
            importlib.import_module(f"queueboard.shop.{module.name}")

    assert set(SCENARIOS) == set(OPERATIONS)


FOR_GOOD = frozenset(name for name, kind in OPERATIONS.items() if kind.for_good)


@pytest.mark.parametrize("name", sorted(FOR_GOOD))
def test_what_is_done_for_good_cannot_be_undone(shop: Shop, name: str) -> None:
    """It is refused with a sentence, changes nothing, and is not offered among a person's steps."""
    act = SCENARIOS[name](shop)
    actor = by("J", minutes=1)
    act(actor)
    after = state(shop)

    with pytest.raises(RuleError, match="for good"):
        undoing.undo(shop, by("J", minutes=2), actor.group_id, "pressed by mistake")

    assert state(shop) == after
    assert actor.group_id not in [step.group_id for step in undoing.steps(shop, "J")]


@pytest.mark.parametrize("name", sorted(set(SCENARIOS) - FOR_GOOD))
def test_undo_brings_the_state_back(shop: Shop, name: str) -> None:
    """Undo of an operation leaves every row as it was before, and undoing the undo does it again."""
    act = SCENARIOS[name](shop)
    before = state(shop)
    actor = by("J", minutes=1)
    act(actor)
    after = state(shop)
    assert after != before

    back = by("J", minutes=2)
    undoing.undo(shop, back, actor.group_id, "pressed by mistake")
    assert state(shop) == before

    undoing.undo(shop, by("J", minutes=3), back.group_id, "it was right after all")
    assert state(shop) == after


@pytest.mark.parametrize("name", sorted(name for name, kind in OPERATIONS.items() if kind.undo_needs_reason))
def test_undo_asks_for_a_reason_where_the_world_is_concerned(shop: Shop, name: str) -> None:
    """A parcel, a payment or a told date is taken back only with a reason."""
    act = SCENARIOS[name](shop)
    actor = by("J", minutes=1)
    act(actor)
    after = state(shop)

    with pytest.raises(ReasonNeededError, match="type why"):
        undoing.undo(shop, by(), actor.group_id, "  ")

    assert state(shop) == after


def test_several_steps_back(shop: Shop) -> None:
    """Undo goes back step by step through what one person did, and leaves another's steps alone."""
    made = parcel(shop)
    start = state(shop)
    for minute, to in enumerate((Column.ON_BENCH, Column.TESTING, Column.READY)):
        moving.move_knives(shop, by("J", minutes=minute), box(shop, made.box.number).knives, to)
    noting.note_box(shop, by("K", minutes=9), box(shop, made.box.number).box, "call first")

    for _ in range(3):
        undoing.undo(shop, by("J", minutes=10), undoing.steps(shop, "J")[0].group_id)

    assert [step.operation for step in undoing.steps(shop, "K")] == ["note_box"]
    undoing.undo(shop, by("K", minutes=11), undoing.steps(shop, "K")[0].group_id)
    assert state(shop) == start


def test_undo_is_refused_when_somebody_changed_the_row_since(shop: Shop) -> None:
    """A step whose knife another person has moved since stays as it is, and the sentence names who."""
    made = parcel(shop)
    mine = by("J")
    moving.move_knives(shop, mine, made.knives, Column.ON_BENCH)
    moving.move_knives(shop, by("K"), box(shop, made.box.number).knives[:1], Column.TESTING)
    before = state(shop)

    with pytest.raises(ChangedError, match="K has changed it since"):
        undoing.undo(shop, by("J"), mine.group_id)

    assert state(shop) == before


def test_undo_twice_is_refused(shop: Shop) -> None:
    """A step that is undone already cannot be undone again."""
    made = parcel(shop)
    actor = by()
    moving.move_knives(shop, actor, made.knives, Column.ON_BENCH)
    undoing.undo(shop, by(), actor.group_id)

    with pytest.raises(RuleError, match="undone already"):
        undoing.undo(shop, by(), actor.group_id)


def test_the_same_action_sent_twice_acts_once(shop: Shop) -> None:
    """A second try with the same group id is refused and changes nothing."""
    made = parcel(shop)
    actor = by()
    noting.add_thing(shop, actor, made.box, "sheath")
    before = state(shop)

    with pytest.raises(RuleError, match="stored already"):
        noting.add_thing(shop, replace(actor), made.box, "sheath")

    assert state(shop) == before


def test_words_that_were_erased_cannot_be_put_back(shop: Shop) -> None:
    """Once a person's words are emptied from beside history, undo says so instead of inventing some."""
    made = parcel(shop)
    actor = by()
    correcting.correct_customer(shop, actor, made.customer, name="Somebody Else")
    shop.database.run("DELETE FROM personal")

    with pytest.raises(RuleError, match="erased since"):
        undoing.undo(shop, by(), actor.group_id)


@pytest.mark.own_folder
def test_random_acts_taken_back_and_done_again() -> None:
    """Of acts of every family, each step back and forth is exact; taken back in the wrong order, some are not."""
    tally = undo_at_random(EXAMPLES, 7)

    assert (tally.examples, tally.wrong) == (EXAMPLES, 0)
    assert tally.undone > 2 * EXAMPLES
    assert tally.control > 0


def test_undo_knows_every_operation_of_the_shop() -> None:
    """Right after a start, before any screen has loaded its own, each operation that history may hold is known."""
    folder = Path(operation.__code__.co_filename).parent
    written = {
        function.name
        for path in sorted(folder.glob("*.py"))
        for function in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(function, ast.FunctionDef)
        and any(ast.unparse(decorator).startswith("operation(") for decorator in function.decorator_list)
    }
    asked = "import queueboard.shop.undoing; from queueboard.shop.operation import OPERATIONS; print(*OPERATIONS)"
    known = subprocess.run([sys.executable, "-c", asked], check=True, capture_output=True, text=True, cwd=ROOT)

    assert len(written) > 90
    assert set(known.stdout.split()) == written


def test_older_numbers_are_not_undone_under_newer_ones(shop: Shop) -> None:
    """The newest settings hold, so taking older ones away would change nothing and only say so."""
    first, second = by(), by(minutes=1)
    text = settings_text(shop)
    take_settings(shop, first, text.replace('name = "', 'name = "Old ', 1))
    take_settings(shop, second, text.replace('name = "', 'name = "New ', 1))

    with pytest.raises(ChangedError, match="Later numbers of the shop are in force"):
        undoing.undo(shop, by(minutes=2), first.group_id)
    undoing.undo(shop, by(minutes=3), second.group_id)
    undoing.undo(shop, by(minutes=4), first.group_id)
    assert settings_text(shop) == text
