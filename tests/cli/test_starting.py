"""Making a shop's file: whole or not at all, and said so that it can be pasted into the next command."""

import os
import shlex
import subprocess
import sys
from datetime import date, datetime
from pathlib import Path

import platformdirs
import pytest

from queueboard.cli import main
from queueboard.cli.board import DEMO_MORNING
from queueboard.cli.common import FINE, REFUSED
from queueboard.seedfiles import seed_text
from queueboard.settings.reading import MOST_CHARACTERS
from queueboard.shop.opening import Shop
from tests.cli.schema import clock
from tests.house.tree import ROOT
from tests.shop.place import MORNING, demo_shop


@pytest.mark.sqlite_file
@pytest.mark.parametrize("command", ["start", "demo --date 2026-11-09"])
@pytest.mark.parametrize("kilobytes", [0, 4, 40, 132])
def test_a_disk_that_takes_no_more_leaves_nothing(command: str, kilobytes: int, tmp_path: Path) -> None:
    """Where the system takes only so much of a file, making one ends in a sentence, and not a byte of it stays."""
    file = tmp_path / "new" / "shop.qb"
    # -B: a module that it is the first to compile would be kept cut off, too, for all that come after
    asked = f"'{sys.executable}' -B -m queueboard --file '{file}' {command}"
    done = subprocess.run(
        ["bash", "-c", f"ulimit -f {kilobytes}; {asked}"], cwd=ROOT, capture_output=True, check=False, text=True
    )

    assert (done.returncode, done.stdout) == (REFUSED, "")
    assert str(file) in done.stderr
    assert done.stderr.count("\n") == 1
    assert list(tmp_path.iterdir()) == []


@pytest.mark.sqlite_file
def test_wrong_settings_leave_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Settings that are refused only once the file is there, for holidays nobody knows, leave no file behind."""
    mine = tmp_path / "mine.toml"
    mine.write_text(seed_text("settings.toml").replace('country = "US"', 'country = "XX"'), encoding="utf-8")
    arguments = ["start", "--settings", str(mine), "--file", str(tmp_path / "new" / "shop.qb")]

    assert main(arguments, clock=clock) == REFUSED
    assert "No public holidays are known" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == [mine]


@pytest.mark.sqlite_file
@pytest.mark.parametrize(
    "name",
    ["two words.qb", 'it\'s; $(rm) "x" [red].qb', "\x1b[31mred\n.qb", "\u202eback.qb", b"\xff.qb", "-.qb", "é.qb"],
)
def test_the_commands_it_names_can_be_pasted(
    name: str | bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whatever the file is called, its name is shown in signs that show, and a shell reads it back as the same file."""
    file = tmp_path / (name if isinstance(name, str) else name.decode(errors="surrogateescape"))
    assert main(["start", "--file", str(file)], clock=clock) == FINE

    said = capsys.readouterr().out
    assert not [sign for sign in said if sign != "\n" and not sign.isprintable()]
    command = said.split("`")[1].replace("queueboard --file", "printf %s", 1)
    printed = subprocess.run(["bash", "-c", command], capture_output=True, check=True).stdout
    assert printed == bytes(file)
    assert file.exists()


@pytest.mark.sqlite_file
def test_other_commands_show_their_files_so_too(empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A copy, settings taken in and a kept demo are named in a form to paste."""
    mine = tmp_path / "my own.toml"
    mine.write_text(seed_text("settings.toml"), encoding="utf-8")
    for arguments, named in (
        (["backup", str(tmp_path / "a copy.qb"), "--file", empty], tmp_path / "a copy.qb"),
        (["settings", "--take", str(mine), "--as", "MB", "--file", empty], mine),
        (["demo", "--date", "2026-11-09", "--file", str(tmp_path / "a demo.qb")], tmp_path / "a demo.qb"),
    ):
        assert main(arguments, clock=clock) == FINE
        assert shlex.quote(str(named)) in capsys.readouterr().out


@pytest.mark.server
def test_a_shop_on_a_server_is_where_its_address_says(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The file on this machine that holds the address is not what a person is told."""
    file = tmp_path / "shop.qb"
    assert main(["start", "--file", str(file)], clock=clock) == FINE

    said = capsys.readouterr().out
    assert f"The shop is in {shlex.quote(file.read_text(encoding='utf-8').strip())}. Open" in said
    assert str(file) not in said


@pytest.mark.parametrize("day", ["0001-01-01", "1999-12-31", "2100-01-01", "9999-12-31"])
def test_a_demo_of_another_age_is_refused(day: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Days for which no calendar of holidays and clocks can be vouched for are typed wrong; no file is made."""
    assert main(["demo", "--date", day, "--file", str(tmp_path / "demo.qb")], clock=clock) == 2

    assert f"{day} is too far away; type a day from 2000-01-01 to 2099-12-31" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("day", ["2000-01-01", "2099-12-31"])
def test_the_first_and_the_last_demo_open(day: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Both ends of the days a demo may begin on can be looked at."""
    file = str(tmp_path / "demo.qb")

    assert main(["demo", "--date", day, "--file", file], clock=clock) == FINE
    assert "The invented shop is in" in capsys.readouterr().out


@pytest.mark.parametrize(("typed", "day"), [("31 dec 2026", date(2026, 12, 31)), ("+3", date(2026, 11, 12))])
def test_the_day_of_a_demo_is_typed_as_in_every_field(
    typed: str, day: date, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """In words, or so many days from today: the invented shop is made for the morning of that day."""
    begun: list[datetime] = []

    def make(path: Path, now: datetime) -> Shop:
        begun.append(now)
        return demo_shop(path, MORNING)

    monkeypatch.setattr("queueboard.shop.demo.make_demo_shop", make)

    assert main(["demo", "--date", typed, "--file", str(tmp_path / "demo.qb")], clock=clock) == FINE
    assert "The invented shop is in" in capsys.readouterr().out
    assert begun == [datetime.combine(day, DEMO_MORNING)]


def test_settings_as_windows_writes_them_are_read(tmp_path: Path) -> None:
    """A mark of byte order at the beginning, and two signs at each line's end, are how some editors save."""
    mine = tmp_path / "mine.toml"
    mine.write_bytes(b"\xef\xbb\xbf" + seed_text("settings.toml").replace("\n", "\r\n").encode())

    assert main(["start", "--settings", str(mine), "--file", str(tmp_path / "shop.qb")], clock=clock) == FINE


@pytest.mark.parametrize("content", ["# long\n" * (MOST_CHARACTERS // 5), "é" * 2_000_000], ids=["long", "longer"])
def test_settings_beyond_measure_are_refused(
    content: str, empty: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A text that the shop's file does not hold is refused with its limit, and the shop keeps its numbers."""
    mine = tmp_path / "mine.toml"
    mine.write_text(content, encoding="utf-8")

    assert main(["settings", "--take", str(mine), "--as", "MB", "--file", empty], clock=clock) == REFUSED
    assert f"more than {MOST_CHARACTERS} characters" in capsys.readouterr().err


@pytest.mark.parametrize("asked", ["start --settings", "settings --as MB --take"])
@pytest.mark.parametrize("kind", ["pipe", "device", "folder", "nothing"])
def test_settings_that_are_no_file_are_refused_at_once(asked: str, kind: str, empty: str, tmp_path: Path) -> None:
    """A pipe nobody writes to, a device that never ends, a folder or nothing in the place of settings is a sentence."""
    mine = {"pipe": tmp_path / "pipe", "device": Path("/dev/zero"), "folder": tmp_path}.get(kind, tmp_path / "none")
    if kind == "pipe":
        os.mkfifo(mine)
    file = empty if asked.startswith("settings") else str(tmp_path / "new" / "shop.qb")
    done = subprocess.run(
        [sys.executable, "-m", "queueboard", "--file", file, *asked.split(), str(mine)],
        cwd=ROOT,
        capture_output=True,
        check=False,
        text=True,
        timeout=30,
    )

    assert (done.returncode, done.stdout) == (REFUSED, "")
    assert done.stderr.startswith(f"{mine} ")
    assert ("not a file of settings. Name a file" in done.stderr) is (kind != "nothing")
    assert done.stderr.count("\n") == 1
    assert not (tmp_path / "new").exists()


def test_no_place_for_data_is_a_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Where the system knows no full path to the user's data, no file is made wherever the program happens to stand."""
    monkeypatch.setattr(platformdirs, "user_data_path", lambda name: Path("~") / name)
    monkeypatch.chdir(tmp_path)

    assert main(["start"], clock=clock) == REFUSED
    assert capsys.readouterr().err.startswith("No folder for your data is known: ~/queueboard is no full path.")
    assert list(tmp_path.iterdir()) == []
