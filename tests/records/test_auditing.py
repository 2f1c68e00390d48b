"""The shop file held against its own history: what was changed behind its back is found."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest

from queueboard.records.auditing import audit
from queueboard.shop import correcting, moving, noting, undoing
from queueboard.shop.opening import close_shop
from queueboard.words import Column
from tests.bench.damage import turn_bits
from tests.records.test_migrating import OLDER, old_file
from tests.shop.place import box, by, parcel, small_shop
from tests.shop.undo_scenarios import SCENARIOS

pytestmark = pytest.mark.sqlite_file


@pytest.fixture
def worked(tmp_path: Path) -> Path:
    """A shop in which a few things were done, one of them undone; closed."""
    shop = small_shop(tmp_path)
    made = parcel(shop, name="Perpetua Quillon", things=("her grandmother's roll",))
    noting.note_box(shop, by(), made.box, "knows Barnaby at the ferry")
    moving.move_knives(shop, by("K"), made.knives, Column.ON_BENCH)
    correcting.correct_customer(shop, by(), made.customer, phone="555 0177")
    actor = by("J", minutes=1)
    noting.note_knife(shop, actor, box(shop, made.box.number).knives[0], "blue at the tip")
    undoing.undo(shop, by("J", minutes=2), actor.group_id)
    close_shop(shop)
    return shop.path


@pytest.fixture
def raw(worked: Path) -> Iterator[sqlite3.Connection]:
    """The same file, open to whoever means harm."""
    with closing(sqlite3.connect(worked, isolation_level=None)) as connection:
        yield connection


@pytest.mark.parametrize("name", sorted(SCENARIOS))
def test_every_operation_leaves_a_sound_file(name: str, tmp_path: Path) -> None:
    """Whatever is done, the tables are what history says, and the words beside it are those it names."""
    shop = small_shop(tmp_path)
    SCENARIOS[name](shop)(by("J", minutes=1))

    assert list(audit(shop.database.raw())) == []
    close_shop(shop)


@pytest.mark.parametrize("layout", OLDER)
def test_a_file_of_every_older_layout_is_sound(layout: int, tmp_path: Path) -> None:
    """What was written by the program of that time holds together before and after it is led on."""
    with closing(sqlite3.connect(old_file(layout, tmp_path / "old.qb"))) as raw:
        assert list(audit(raw)) == []


@pytest.mark.parametrize(
    ("attack", "said"),
    [
        ("UPDATE knife SET price_cents = price_cents + 1 WHERE id = 2", "knife 2 is not as its history left it"),
        ("UPDATE customer SET phone = '555 0000'", "customer 1 is not as its history left it"),
        ("DELETE FROM thing", "thing 1 is missing, against its history"),
        (
            "INSERT INTO thing (row_version, box_id, name, state) VALUES (1, 1, 'x', 'here')",
            "there are rows of thing that history does not know",
        ),
        ("UPDATE sqlite_sequence SET seq = 90 WHERE name = 'knife'", "the next number for a knife does not follow"),
        ("UPDATE personal SET text = 'Somebody' WHERE id = 3", "are not those that were written"),
        ("UPDATE personal SET text = '' WHERE id = 3", "are not those that were written"),
        ("DELETE FROM personal WHERE id = 3", "are not those that were written"),
        ("UPDATE personal SET field = 'mark' WHERE id = 3", "are not those that were written"),
        ("UPDATE shop SET created_us = created_us + 1", "the day on which the file was made"),
        ("UPDATE shop SET salt = '00000000000000000000000000000000'", "is not as its history left it"),
        ("DROP TRIGGER history_no_update", "its tables are not those of layout"),
        ("CREATE TABLE mine (id INTEGER)", "its tables are not those of layout"),
        ("DROP TRIGGER history_no_update; UPDATE history SET by = 'X' WHERE id = 9", "line 9 of history is not as"),
        ("DROP TRIGGER history_no_delete; DELETE FROM history WHERE id = 9", "line 9 of history is not there"),
        (
            "DROP TRIGGER history_no_delete; DELETE FROM history WHERE id = (SELECT max(id) FROM history)",
            "some of history is not there",
        ),
        ("DROP TRIGGER history_no_update; UPDATE history SET before = 'x' WHERE id = 12", "line 12 of history"),
    ],
)
def test_what_was_changed_behind_its_back_is_found(attack: str, said: str, raw: sqlite3.Connection) -> None:
    """A row, a word, a line, a guard: each is held against something else that tells of it."""
    assert list(audit(raw)) == []
    for statement in attack.split("; "):
        raw.execute(statement)

    assert any(said in trouble for trouble in audit(raw))


def test_a_history_that_was_written_anew_is_found(raw: sqlite3.Connection) -> None:
    """Who repairs the hash of one line breaks the next one."""
    raw.execute("DROP TRIGGER history_no_update")
    raw.execute("UPDATE history SET previous = hash, hash = previous WHERE id = 9")

    assert "line 9 of history is not as it was written" in list(audit(raw))


@pytest.fixture
def turned(worked: Path, tmp_path: Path) -> Callable[[int], tuple[int, int]]:
    """Turn so many bits; how many of them were noticed, and how many by SQLite alone."""

    def turn(wanted: int) -> tuple[int, int]:
        tally = turn_bits(worked.read_bytes(), wanted, 7, tmp_path)
        assert tally.missed == []
        return tally.noticed, tally.by_sqlite

    return turn


def test_every_turned_bit_that_changes_something_is_noticed(turned: Callable[[int], tuple[int, int]]) -> None:
    """All of a hundred are noticed; the control, SQLite's own check, misses some of the same."""
    noticed, by_sqlite = turned(100)

    assert noticed == 100
    assert by_sqlite < 100
