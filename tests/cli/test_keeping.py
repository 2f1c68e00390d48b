"""The commands that keep the data, as a person types them."""

import json
import sqlite3
from contextlib import closing
from datetime import timedelta
from pathlib import Path
from unittest.mock import Mock

import pytest

from queueboard.cli import main
from queueboard.cli.common import FINE, NOTHING_FOUND, REFUSED, USAGE
from queueboard.records import database
from queueboard.seedfiles import seed_text
from queueboard.shop.keeping import daily_copy
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.receiving import add_customer
from queueboard.words import Settling
from tests.cli.schema import clock, valid
from tests.shop.place import NOW, by, counter, parcel
from tests.shop.undo_charging import gone_as

pytestmark = pytest.mark.sqlite_file


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    """The exit code of a command, what it printed and its sentence."""
    code = main(list(arguments), clock=clock)
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_a_new_file_is_sound_and_wants_copies(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The first lines say that nothing is damaged; what is missing is said with what to do."""
    code, said, _ = run(capsys, "check", "--file", empty)

    assert code == FINE
    assert said.startswith(f"{empty} is sound. 2 things to look at.\n")
    assert "look  copy       no good copy beside the file\n                 Open the board once a day" in said
    assert f"{sqlite3.sqlite_version}, mode" in said


def test_a_damaged_row_is_named_with_the_copy_to_go_back_to(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """What SQLite alone would not see has the code for refused, and the newest good copy is in the sentence."""
    shop = open_shop(Path(empty))
    copy = daily_copy(shop, NOW)
    close_shop(shop)
    with closing(sqlite3.connect(empty)) as raw, raw:
        assert raw.execute("UPDATE closed_day SET name = 'Nobody''s Day' WHERE id = 1").rowcount == 1

    code, said, _ = run(capsys, "check", "--file", empty)

    assert code == REFUSED
    assert f"{empty} is damaged." in said
    assert "damaged  history    closed day 1 is not as its history left it" in said
    assert f"Go back to the copy {copy} with `queueboard restore`; the damaged file is kept." in said


def test_copies_too_old_and_spoiled_are_said(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """A copy that is not as it was written counts for none, and is named."""
    shop = open_shop(Path(empty))
    first, second = daily_copy(shop, NOW - timedelta(days=1)), daily_copy(shop, NOW)
    close_shop(shop)
    assert first is not None
    assert second is not None
    second.write_bytes(second.read_bytes()[:-1] + b"\xa5")

    facts = valid("check", run(capsys, "check", "--json", "--file", empty)[1])

    assert facts["sound"] is True
    said = {found["name"]: found for found in facts["findings"]} if isinstance(facts["findings"], list) else {}
    assert said["spoiled"]["says"] == f"not as written any more: {second.name}"
    assert str(facts["last_good_copy"]).startswith("20")


def test_a_share_an_open_mode_and_a_race_are_said(
    empty: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the file lies, who may read it, and what its SQLite is prone to are said with a remedy; none is damage."""
    Path(empty).chmod(0o644)
    with closing(sqlite3.connect(empty)) as raw:
        raw.execute("PRAGMA journal_mode = WAL")
    monkeypatch.setattr("queueboard.shop.checking.share_of", Mock(return_value="nfs4"))
    monkeypatch.setattr(database, "has_wal_reset_fix", Mock(return_value=False))

    code, said, _ = run(capsys, "check", "--file", empty)

    assert code == FINE
    for line in (
        "look  place      on a network share (nfs4)",
        "Move the file to a disk of this machine.",
        "look  readers    others on this machine may read it",
        f"chmod 600 {empty}",
        "look  SQLite",
        "open one board at a time until then",
    ):
        assert line in said


@pytest.mark.parametrize("missing", [True, False])
def test_what_is_no_shop_file_is_one_sentence(
    missing: bool, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file that is missing or another's is refused as it is at opening."""
    path = tmp_path / "other.qb"
    if not missing:
        path.write_text("knives: 13\n", encoding="utf-8")

    code, said, trouble = run(capsys, "check", "--file", str(path))

    assert (code, said) == (REFUSED, "")
    assert trouble.startswith("There is no shop file" if missing else f"{path} is not a shop file")


def test_going_back_says_what_became_of_it(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The copy, the folder aside, and how much has to be typed again."""
    path = Path(empty)
    copy, aside = path.with_name("a copy.qb"), path.with_name("test-aside-2026-11-09-150000")
    assert run(capsys, "backup", str(copy), "--file", empty)[0] == FINE
    shop = open_shop(path)
    lines = shop.database.one("SELECT count(*) FROM history")
    parcel(shop)
    close_shop(shop)

    code, said, _ = run(capsys, "restore", str(copy), "--file", empty)

    assert code == FINE
    assert said.splitlines()[:2] == [
        f"{path} is now what was in '{copy}': {lines} lines of history, verified.",
        f"The file that stood there lies in {aside}, with all that belongs to it.",
    ]
    assert said.splitlines()[2].endswith("lines of history more: type again what is gone.")
    assert f"kept aside, with customers' data as they were: {aside.name}" in run(capsys, "check", "--file", empty)[1]


def test_going_back_under_an_open_board_is_refused(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """One sentence, and the code for refused."""
    copy = Path(empty).with_name("stick.qb")
    run(capsys, "backup", str(copy), "--file", empty)
    board = open_shop(Path(empty))

    code, said, trouble = run(capsys, "restore", str(copy), "--file", empty)

    assert (code, said) == (REFUSED, "")
    assert "Close every board on it" in trouble
    close_shop(board)


def test_everything_is_written_out_and_taken_in(empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each command says how much it was; the new file is the shop."""
    out, new = tmp_path / "all of it.jsonl", tmp_path / "new.qb"
    code, said, _ = run(capsys, "export", str(out), "--file", empty)
    assert code == FINE
    assert said.endswith(f"all of the shop file, in '{out}'. Only its owner may read it.\n")

    code, said, _ = run(capsys, "take", str(out), "--file", str(new))

    assert code == FINE
    assert said.startswith(f"{new} now holds all of '{out}': ")
    assert run(capsys, "settings", "--file", str(new)) == run(capsys, "settings", "--file", empty)


def test_a_damaged_export_is_refused_with_its_line(
    empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One sentence, the code for refused, and no file."""
    out = tmp_path / "out.jsonl"
    run(capsys, "export", str(out), "--file", empty)
    out.write_bytes(out.read_bytes().replace(b"Veterans", b"Veterens", 1))

    code, said, trouble = run(capsys, "take", str(out), "--file", str(tmp_path / "new.qb"))

    assert (code, said) == (REFUSED, "")
    assert trouble.startswith(f"{out}: line ")
    assert not (tmp_path / "new.qb").exists()


def served(empty: str) -> None:
    """Two customers, one of whom asked and never brought a box; erasing waits for nothing."""
    shop = open_shop(Path(empty))
    take_settings(shop, by(), seed_text("settings.toml").replace("= 730", "= 0"))
    counter(shop, name="Ms Verrin")
    add_customer(shop, by(), name="[red]Perpetua[/] Quillon", town="Dunmere")
    close_shop(shop)


def test_a_customer_is_shown_written_out_and_erased(
    empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Found by a word, shown, written for the owner alone, erased with a reason, and not found any more."""
    served(empty)
    target = tmp_path / "hers.json"
    code, said, _ = run(capsys, "customer", "quillon", "--file", empty)
    assert (code, said.splitlines()[0]) == (FINE, "Customer 2")
    assert "[red]Perpetua[/] Quillon" in said
    assert "2 texts kept beside history" in said
    facts = valid("customer", run(capsys, "customer", "2", "--json", "--file", empty)[1])
    assert run(capsys, "customer", "2", "--write", str(target), "--file", empty)[0] == FINE
    assert json.loads(target.read_text(encoding="utf-8")) == facts

    code, said, _ = run(capsys, "customer", "2", "--erase", "--reason", "asked", "--as", "MB", "--file", empty)

    assert code == FINE
    assert said.startswith("Customer 2 is erased. Copies made before hold the words until they are thinned out")
    assert run(capsys, "customer", "quillon", "--file", empty)[0] == NOTHING_FOUND
    assert run(capsys, "check", "--file", empty)[0] == FINE


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        ("customer dunmere --erase --as MB", REFUSED, "say why with --reason"),
        ("customer dunmere --erase --reason asked", USAGE, "Say who acts"),
        ("customer dunmere --erase --json --reason asked --as MB", USAGE, "First write down what is known"),
        ("customer verrin --erase --reason asked --as MB", REFUSED, "of this customer is still here"),
        ("customer dunmere --though-owing", USAGE, "goes with --erase only"),
        ("customer nobody", NOTHING_FOUND, "No customer fits"),
    ],
)
def test_what_cannot_be_done_to_a_customer_is_said(
    arguments: str, code: int, words: str, empty: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each refusal is one sentence and erases nobody."""
    served(empty)

    ended, _, trouble = run(capsys, *arguments.split(), "--file", empty)

    assert ended == code
    assert words in trouble
    assert run(capsys, "customer", "dunmere", "--file", empty)[0] == FINE


def test_several_who_fit_are_listed_with_their_numbers(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Nobody is erased by half a name."""
    served(empty)

    code, said, _ = run(capsys, "customer", "r", "--erase", "--reason", "x", "--as", "MB", "--file", empty)

    assert (code, said) == (FINE, "2  Dunmere     [red]Perpetua[/] Quillon\n1  Port Ansel  Ms Verrin\n")


def test_who_owes_money_is_erased_only_once_the_sum_is_known(empty: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The refusal names sum and box; with the option that it names the customer goes."""
    shop = open_shop(Path(empty))
    take_settings(shop, by(), seed_text("settings.toml").replace("= 730", "= 0"))
    gone_as(shop, Settling.ON_ACCOUNT)
    close_shop(shop)
    erasing = ("customer", "verrin", "--erase", "--reason", "asked", "--as", "MB", "--file", empty)

    code, _, trouble = run(capsys, *erasing)

    assert code == REFUSED
    assert "still owes 18.00 USD (18.00 for box 100)" in trouble
    assert run(capsys, *erasing, "--though-owing")[0] == FINE
    assert run(capsys, "customer", "verrin", "--file", empty)[0] == NOTHING_FOUND
