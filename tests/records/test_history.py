"""History is only ever added to, chained line to line, and holds no person's text."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from peewee import IntegrityError, Model

from queueboard.records.tables import STATE, HistoryRow, PersonalRow, ShopRow
from queueboard.records.writing import FIRST_PREVIOUS, chain, masked
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import note_box
from queueboard.shop.opening import Shop, close_shop
from queueboard.words import Column
from tests.shop.place import by, parcel, small_shop

CHAINED = (
    "group_id", "line", "at_us", "by", "operation", "about", "undoes", "reason", "entity", "entity_id", "before",
    "after",
)  # fmt: skip


@pytest.fixture
def worked(tmp_path: Path) -> Iterator[Shop]:
    """A shop in which a few things were done."""
    shop = small_shop(tmp_path)
    made = parcel(shop, name="Perpetua Quillon", things=("her grandmother's roll",))
    note_box(shop, by(), made.box, "knows Barnaby at the ferry")
    move_knives(shop, by("K"), made.knives, Column.ON_BENCH)
    yield shop
    close_shop(shop)


@pytest.mark.sqlite_file
@pytest.mark.parametrize(
    "attack",
    [
        "UPDATE history SET by = 'X' WHERE id = 1",
        "DELETE FROM history WHERE id = 1",
        "INSERT OR REPLACE INTO history SELECT * FROM history WHERE id = 1",
        "REPLACE INTO history SELECT * FROM history WHERE id = 1",
    ],
)
def test_history_refuses_to_be_changed(worked: Shop, attack: str) -> None:
    """UPDATE, DELETE and REPLACE of a line are refused by the file itself."""
    with pytest.raises(IntegrityError, match="only ever added to"):
        worked.database.rows(attack)


def test_every_line_is_chained_to_the_one_before(worked: Shop) -> None:
    """Each hash follows from the line and the hash before it; emptying the personal texts changes none."""
    worked.database.run("DELETE FROM personal")
    previous = FIRST_PREVIOUS

    for row in worked.database.rows(f"SELECT previous, hash, {', '.join(CHAINED)} FROM history ORDER BY id"):
        assert row[0] == previous
        assert row[1] == chain(previous, dict(zip(CHAINED, row[2:], strict=True)))
        previous = str(row[1])

    assert previous != FIRST_PREVIOUS


def test_history_holds_no_persons_text(worked: Shop) -> None:
    """Names, phones, towns, notes and marks stand beside history, never in it."""
    lines = " ".join(str(cell) for row in worked.database.rows("SELECT * FROM history") for cell in row)
    beside = " ".join(str(cell) for row in worked.database.rows("SELECT * FROM personal") for cell in row)

    for text in ("Quillon", "555 0142", "Dunmere", "Barnaby", "grandmother", "nick 1"):
        assert text not in lines
        assert text in beside


def test_each_before_is_the_after_before_it(worked: Shop) -> None:
    """History tells each row's whole life, and its last line is the row as it stands."""
    for name, table in STATE.items():
        for row in table.select().dicts().execute(worked.database):
            lines = worked.database.rows(
                "SELECT before, after FROM history WHERE entity = ? AND entity_id = ? ORDER BY id", (name, row["id"])
            )
            assert lines[0][0] is None
            life = json.loads(str(lines[0][1]))
            for before, after in lines[1:]:
                assert {**life, **json.loads(str(before))} == life
                life |= json.loads(str(after))
            salt = str(worked.database.one("SELECT salt FROM shop"))
            assert life == masked(table, row, salt)


@pytest.mark.sqlite_file
@pytest.mark.parametrize("table", [ShopRow, HistoryRow, PersonalRow, *STATE.values()])
def test_the_tables_are_what_the_schema_makes(worked: Shop, table: type[Model]) -> None:
    """The columns peewee knows are the columns of the migrated file, in the same order."""
    name = table._meta.table_name
    stored = [str(row[1]) for row in worked.database.rows(f"PRAGMA table_info({name})")]

    assert sorted(stored) == sorted(table._meta.sorted_field_names)
    assert worked.database.one("SELECT strict FROM pragma_table_list WHERE name = ?", (name,)) == 1
