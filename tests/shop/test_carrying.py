"""Everything written out and taken in: the same again, or refused whole with the line that is wrong."""

import json
import random
import sqlite3
import stat
from collections.abc import Callable, Iterator
from contextlib import closing
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from queueboard.errors import FileError
from queueboard.records.line_file import write_lines
from queueboard.records.migrations import STEPS
from queueboard.shop import moving, noting, undoing
from queueboard.shop.carrying import take_in, write_out
from queueboard.shop.checking import check
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.words import Column
from tests.bench.exports import DAMAGES, comes_out_the_same, is_taken, turn_a_bit
from tests.records.test_migrating import OLDER, old_file
from tests.shop.place import NOW, by, parcel, picture, small_disk, small_shop, state

pytestmark = pytest.mark.sqlite_file


def busy(folder: Path) -> Shop:
    """A shop in which a few things were done, one of them undone, a row taken away."""
    shop = small_shop(folder)
    made = parcel(shop, name="Élodie “Perpetua”\u2028Quillon", things=("a roll 🎏",))
    moving.move_knives(shop, by("K"), made.knives, Column.ON_BENCH)
    actor = by("J", minutes=1)
    noting.add_thing(shop, actor, made.box, "towel")
    undoing.undo(shop, by("J", minutes=2), actor.group_id)
    return shop


@cache
def written() -> bytes:
    """That shop, written out."""
    with TemporaryDirectory() as folder:
        shop = busy(Path(folder))
        write_out(shop, Path(folder) / "out.jsonl")
        close_shop(shop)
        return (Path(folder) / "out.jsonl").read_bytes()


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """The shop in which a few things were done."""
    made = busy(tmp_path)
    yield made
    close_shop(made)


def refused(content: bytes, tmp_path: Path, words: str) -> None:
    """Taking this in is refused with these words, and nothing of it stays."""
    source, target = tmp_path / "in.jsonl", tmp_path / "new" / "shop.qb"
    source.write_bytes(content)

    with pytest.raises(FileError, match=words):
        take_in(target, source, by())

    assert not target.parent.exists()


def test_what_was_written_out_is_the_same_shop_again(shop: Shop, tmp_path: Path) -> None:
    """Every row is there, the file is sound, and work and undo go on where they were."""
    rows = write_out(shop, tmp_path / "out.jsonl")
    lines, _ = take_in(tmp_path / "new" / "shop.qb", tmp_path / "out.jsonl", by())

    assert rows == (tmp_path / "out.jsonl").read_bytes().count(b"\n") - 2
    assert lines == shop.database.one("SELECT count(*) FROM history")
    again = open_shop(tmp_path / "new" / "shop.qb")
    assert state(again) == state(shop)
    assert check(again.path, NOW).sound
    undoing.undo(again, by("K"), undoing.steps(again, "K")[0].group_id)
    assert {knife.column for knife in picture(again).boxes[0].knives} == {Column.RECEIVED}
    close_shop(again)


def test_a_number_that_was_taken_away_is_not_given_again(shop: Shop, tmp_path: Path) -> None:
    """The next row gets the number that it would have got in the file that was written out."""
    write_out(shop, tmp_path / "out.jsonl")
    take_in(tmp_path / "shop.qb", tmp_path / "out.jsonl", by())
    again = open_shop(tmp_path / "shop.qb")
    for one in (shop, again):
        noting.add_thing(one, by("J", minutes=3), picture(one).boxes[0].box, "sheath")

    assert state(again)["thing"] == state(shop)["thing"]
    assert len(state(again)["thing"]) == 2
    close_shop(again)


def test_only_the_owner_may_read_it(shop: Shop, tmp_path: Path) -> None:
    """What is written out holds all that the shop knows of its customers."""
    write_out(shop, tmp_path / "out.jsonl")

    assert stat.S_IMODE((tmp_path / "out.jsonl").stat().st_mode) == 0o600


def test_the_first_and_last_line_say_what_is_between(shop: Shop, tmp_path: Path) -> None:
    """Other programs can read it: one JSON value a line, with layout, columns and counts."""
    write_out(shop, tmp_path / "out.jsonl")
    first, *rows, last = map(json.loads, (tmp_path / "out.jsonl").read_text(encoding="utf-8").split("\n")[:-1])

    assert first["layout"] == len(STEPS)
    assert first["rows"] == last["rows"] == {name: sum(row[0] == name for row in rows) for name in first["columns"]}
    assert all(len(row[1]) == len(first["columns"][row[0]]) for row in rows)


@settings(max_examples=25)
@given(st.lists(st.text(st.characters(codec="utf-8", exclude_characters="\0"), max_size=60), min_size=1, max_size=4))
def test_whatever_people_type_comes_out_the_same(texts: list[str]) -> None:
    """Written out, taken in and written out again, any shop is the same byte for byte."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        shop = small_shop(folder)
        made = parcel(shop, knives=len(texts))
        for knife, text in zip(made.knives, texts, strict=True):
            noting.note_knife(shop, by(), knife, text)
        write_out(shop, folder / "out.jsonl")
        close_shop(shop)

        assert comes_out_the_same((folder / "out.jsonl").read_bytes(), folder)


@pytest.mark.parametrize("layout", OLDER)
def test_an_older_layout_that_was_written_out_is_led_on(layout: int, tmp_path: Path) -> None:
    """What the program of that time would have written is taken in, and is sound in today's layout."""
    with (
        closing(sqlite3.connect(old_file(layout, tmp_path / "old.qb"))) as raw,
        (tmp_path / "out.jsonl").open("wb") as out,
    ):
        write_lines(raw, out)

    take_in(tmp_path / "shop.qb", tmp_path / "out.jsonl", by())

    found = check(tmp_path / "shop.qb", NOW)
    assert (found.layout, found.sound) == (len(STEPS), True)


@given(st.sampled_from(DAMAGES), st.integers(0, 2**32))
@settings(max_examples=60)
def test_no_damage_is_taken_in(damage: Callable[[bytes, random.Random], bytes], seed: int) -> None:
    """Turned bits, cut ends, lines doubled, dropped or exchanged and bytes added are refused; undamaged it is taken."""
    damaged = damage(written(), random.Random(seed))  # noqa: S311  # no secret hangs on it
    with TemporaryDirectory() as folder:
        assert is_taken(damaged, Path(folder)) is (damaged == written())


def test_the_control_is_taken(tmp_path: Path) -> None:
    """The same file without any damage is taken in and comes out the same."""
    assert comes_out_the_same(written(), tmp_path)


@given(st.integers(0, 2**32))
@settings(max_examples=25)
def test_the_line_with_the_turned_bit_is_named(seed: int) -> None:
    """Of thousands of lines the sentence names the one that is wrong."""
    damaged = turn_a_bit(written(), random.Random(seed))  # noqa: S311  # no secret hangs on it
    place = next(at for at, (one, other) in enumerate(zip(written(), damaged, strict=True)) if one != other)
    with TemporaryDirectory() as folder:
        wrong = written().count(b"\n", 0, place) + 1
        refused(damaged, Path(folder), rf"in\.jsonl: line {wrong} .*\. Nothing was taken in")


def lines() -> list[bytes]:
    """The lines of the file that was written."""
    return written().splitlines(keepends=True)


def test_a_doubled_and_a_missing_line_are_named(tmp_path: Path) -> None:
    """The second of a doubled line is the wrong one; where one is missing, the one that came in its place."""
    twice, gone = lines(), lines()
    twice.insert(9, twice[8])
    del gone[8]

    refused(b"".join(twice), tmp_path, "line 10 is not as it was written, or not where it was written")
    refused(b"".join(gone), tmp_path, "line 9 is not as it was written, or not where it was written")


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "line 1 is missing: the file ends too early"),
        (b"knives: 13\n", "line 1 is not as it was written"),
        (b"{}\n", "line 1 does not say that this is a shop written out by queueboard"),
        (b'{"kind":"queueboard"}\n', "line 1 is not as it was written"),
        (b"[" * 100_000 + b"\n", "line 1 is not as it was written"),
        (b"\xff\n", "line 1 is not as it was written"),
    ],
)
def test_a_file_that_was_never_ours_is_one_sentence(content: bytes, words: str, tmp_path: Path) -> None:
    """An empty file, a text, other JSON, and what no reader can read."""
    refused(content, tmp_path, words)


def test_an_end_that_is_missing_or_not_the_end_is_refused(tmp_path: Path) -> None:
    """Without its last line, with half of it, with Windows line ends, or with more behind it."""
    count = len(lines())
    refused(b"".join(lines()[:-1]), tmp_path, f"line {count} is missing: the file ends too early")
    refused(written()[:-1], tmp_path, f"line {count} is cut off")
    refused(written().replace(b"\n", b"\r\n"), tmp_path, "line 1 is not as it was written")
    refused(written() + b"\n", tmp_path, f"line {count + 1} comes after the end")


def sealed_anew(tmp_path: Path, *attack: str) -> bytes:
    """An export in which every figure is right, of a file whose content is not."""
    made = busy(tmp_path / "attacked")
    close_shop(made)
    with closing(sqlite3.connect(made.path, isolation_level=None)) as raw, (tmp_path / "x").open("wb") as out:
        for statement in attack:
            raw.execute(statement)
        write_lines(raw, out)
    return (tmp_path / "x").read_bytes()


@pytest.mark.parametrize(
    ("attack", "words"),
    [
        (
            ("UPDATE knife SET price_cents = 1 WHERE id = 1",),
            "what it holds is not: knife 1 is not as its",
        ),
        (("PRAGMA foreign_keys = OFF", "DELETE FROM box"), "is complete, but what it holds is not"),
        (("PRAGMA ignore_check_constraints = ON", "UPDATE box SET number = 0"), r"line [0-9]+ does not fit .*CHECK"),
        (("CREATE TABLE more (id INTEGER)",), f"line 1 names other tables than layout {len(STEPS)} has"),
        (("PRAGMA user_version = 99",), "layout is 99"),
    ],
)
def test_a_file_with_right_figures_and_wrong_content_is_refused(
    attack: tuple[str, ...], words: str, tmp_path: Path
) -> None:
    """Who writes such a file by hand still meets the history, the tables' own rules and the layout."""
    refused(sealed_anew(tmp_path, *attack), tmp_path, words)


def test_a_damaged_shop_is_not_written_out(shop: Shop, tmp_path: Path) -> None:
    """What does not fit its history is refused where it could still be put right."""
    shop.database.run("UPDATE knife SET price_cents = 1 WHERE id = 1")

    with pytest.raises(FileError, match="is damaged"):
        write_out(shop, tmp_path / "out.jsonl")

    assert not (tmp_path / "out.jsonl").exists()


def test_nothing_is_written_over(shop: Shop, tmp_path: Path) -> None:
    """Neither an export nor a shop file takes the place of a file that is there."""
    mine = tmp_path / "mine.txt"
    mine.write_text("dear diary", encoding="utf-8")
    source = tmp_path / "out.jsonl"
    write_out(shop, source)

    with pytest.raises(FileError, match=r"is there already; nothing was changed\. Name a new file for it"):
        write_out(shop, mine)
    with pytest.raises(FileError, match=r"is there already; nothing was changed\. Choose another place with --file"):
        take_in(mine, source, by())

    assert mine.read_text(encoding="utf-8") == "dear diary"


def test_a_full_disk_is_a_sentence_and_leaves_nothing(shop: Shop, tmp_path: Path) -> None:
    """Neither half an export nor half a shop stays where the disk is too small."""
    write_out(shop, tmp_path / "out.jsonl")

    with small_disk(), pytest.raises(FileError, match=r"could not be written: .*The shop file is whole"):
        write_out(shop, tmp_path / "more.jsonl")
    with small_disk(), pytest.raises(FileError, match=r"is full|could not be read or written"):
        take_in(tmp_path / "shop.qb", tmp_path / "out.jsonl", by())

    assert {file.name for file in tmp_path.iterdir()} == {"shop", "out.jsonl"}


def test_a_missing_source_and_a_pipe_are_sentences(tmp_path: Path) -> None:
    """What is not there, and what would be waited for, are refused at once."""
    with pytest.raises(FileError, match="cannot be read: No such file"):
        take_in(tmp_path / "shop.qb", tmp_path / "none.jsonl", by())
    with pytest.raises(FileError, match="is a folder, not a shop written out"):
        take_in(tmp_path / "shop.qb", tmp_path, by())
