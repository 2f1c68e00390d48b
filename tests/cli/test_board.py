"""The commands that open the board, and the invented shop behind every reading command."""

import json
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

import queueboard.board.run
import queueboard.cli.board
from queueboard.cli import main
from queueboard.cli.common import FINE, REFUSED, closing_shop
from queueboard.cli.first import place_here, zone_here
from queueboard.errors import FileError
from queueboard.shop.opening import Shop, close_shop, open_shop
from queueboard.shop.saying import is_said
from tests.cli.schema import READING, valid
from tests.shop.place import NOW, demo_shop, half_past_eight, parcel, small_shop

Started = list[tuple[Path, str, str, datetime]]
"""What the board was opened with: file, initials, demo, the time on its clock."""


@pytest.fixture
def started(monkeypatch: pytest.MonkeyPatch) -> Started:
    """A terminal and a board that is left at once."""
    boards: Started = []

    def run_board(shop: Shop, initials: str, clock: Callable[[], datetime], *, demo: str = "", **_told: object) -> int:
        boards.append((shop.path, initials, demo, clock()))
        return FINE

    monkeypatch.setattr(queueboard.board.run, "run_board", run_board)
    monkeypatch.setattr(queueboard.cli.board, "terminal_here", lambda: True)
    return boards


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A shop with one parcel."""
    shop = small_shop(tmp_path)
    parcel(shop)
    close_shop(shop)
    return shop.path


def test_without_a_command_the_board_opens_on_the_shop(file: Path, started: Started) -> None:
    """The board gets the file, the initials from --as, and the clock."""
    assert main(["--file", str(file), "--as", "MB"], clock=lambda: NOW) == FINE

    assert started == [(file, "MB", "", NOW)]


def test_initials_come_from_the_environment_or_are_left_to_the_board(
    file: Path, started: Started, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nobody named leaves the question to the board; QUEUEBOARD_AS answers it."""
    main(["--file", str(file)], clock=lambda: NOW)
    monkeypatch.setenv("QUEUEBOARD_AS", "JK")
    main(["--file", str(file)], clock=lambda: NOW)

    assert [initials for _, initials, _, _ in started] == ["", "JK"]


@pytest.mark.parametrize("answered", [True, pytest.param(False, marks=pytest.mark.sqlite_file)])
def test_where_no_shop_is_its_numbers_are_asked_first(
    tmp_path: Path,
    started: Started,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    answered: bool,
) -> None:
    """Answered, the file is made and the board opens as whoever answered; left, nothing at all stays behind."""

    def ask(_shop: Shop, initials: str, *_told: object, **_more: object) -> tuple[int, str]:
        return FINE, "JK" if answered else initials

    monkeypatch.setattr(queueboard.board.run, "ask_for_numbers", ask)
    path = tmp_path / "new.qb"

    assert main(["--file", str(path)], clock=lambda: NOW) == FINE

    assert [initials for _, initials, _, _ in started] == (["JK"] if answered else [])
    assert path.exists() == answered
    assert answered or not list(tmp_path.iterdir())
    assert ("No shop was made" in capsys.readouterr().out) == (not answered)


def test_a_named_folder_that_is_not_there_begins_no_new_shop(
    tmp_path: Path, started: Started, capsys: pytest.CaptureFixture[str]
) -> None:
    """A stick that is not in must not look like an empty shop: it is said that no file is there."""
    assert main(["--file", str(tmp_path / "stick" / "shop.qb")], clock=lambda: NOW) == REFUSED

    assert "There is no shop file" in capsys.readouterr().err
    assert not started
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(("zone", "country"), [("Pacific/Auckland", "NZ"), ("America/Chicago", "US"), ("Etc/UTC", "")])
def test_the_machine_tells_where_it_is(zone: str, country: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """The time zone it is set to leads to a country, where it belongs to one."""
    monkeypatch.setenv("TZ", zone)

    assert place_here(zone_here()) == (zone, country)


@pytest.mark.sqlite_file
def test_the_first_start_of_a_day_makes_one_copy(file: Path, started: Started) -> None:
    """Two starts on one day leave one copy, the next day brings a second."""
    for now in (NOW, NOW, NOW + timedelta(days=1)):
        main(["--file", str(file)], clock=now.astimezone)

    assert len(list((file.parent / "copies").glob("*.qb"))) == 2
    assert len(started) == 3


def test_a_copy_that_fails_does_not_keep_the_board_shut(
    file: Path, started: Started, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The board opens all the same, and what the plan says is kept; afterwards the sentence is said, the code tells."""

    def full(shop: Shop, now: datetime) -> None:
        raise FileError("The copy could not be made.")

    monkeypatch.setattr(queueboard.cli.board, "daily_copy", full)

    assert main(["--file", str(file)], clock=lambda: NOW) == REFUSED
    assert len(started) == 1
    assert capsys.readouterr().err == "The copy could not be made.\n"
    with closing_shop(open_shop(file)) as shop:
        assert is_said(shop, NOW.date())


def test_the_demo_is_thrown_away_and_never_touches_the_shop(
    file: Path, started: Started, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The invented shop lies elsewhere, is gone afterwards, and the real file is as it was."""
    monkeypatch.setenv("QUEUEBOARD_FILE", str(file))
    before = file.read_bytes()

    assert main(["demo", "--date", "2026-12-31"], clock=lambda: NOW) == FINE

    ((path, initials, demo, moment),) = started
    assert (demo, bool(initials), moment.date()) == ("thrown away", True, date(2026, 12, 31))
    assert not path.exists()
    assert not path.parent.exists()
    assert file.read_bytes() == before


def test_a_demo_with_a_file_of_its_own_is_kept(tmp_path: Path, started: Started) -> None:
    """It is there afterwards, and the board does not say that it is thrown away."""
    assert main(["demo", "--file", str(tmp_path / "mine.qb")], clock=lambda: NOW) == FINE

    assert [demo for _, _, demo, _ in started] == ["kept"]
    assert (tmp_path / "mine.qb").is_file()


@pytest.mark.parametrize("day", ["2026-11-23", "2026-11-27", "2026-12-31", "2026-03-08"])
def test_every_command_reads_the_invented_shop(day: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """On a Monday, a Friday, the year's last day and a day the clocks change, texts print and JSON fits its schema."""
    file, now = str(tmp_path / "demo.qb"), half_past_eight(date.fromisoformat(day))

    def clock() -> datetime:
        return now.astimezone(UTC)

    close_shop(demo_shop(Path(file), now))
    for command in READING:
        assert main([command, "--file", file], clock=clock) == FINE
        assert capsys.readouterr().out.count("\n") > 1
        assert main([command, "--json", "--file", file], clock=clock) == FINE
        valid(command, capsys.readouterr().out)
    main(["boxes", "--json", "--file", file], clock=clock)
    for box in json.loads(capsys.readouterr().out)["boxes"]:
        assert main(["box", str(box["number"]), "--json", "--file", file], clock=clock) == FINE
        valid("box", capsys.readouterr().out)


@pytest.mark.sqlite_file
def test_a_file_that_may_only_be_read_is_shown(
    started: Started, file: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The board opens; nobody is asked who acts, and nothing that a morning would store is tried."""
    monkeypatch.setattr("queueboard.records.database._writable", lambda _: False)
    before = file.read_bytes()

    assert main(["--file", str(file)], clock=lambda: NOW) == FINE

    assert started == [(file, "shop", "", NOW)]
    assert capsys.readouterr().err == ""
    assert file.read_bytes() == before
    assert not (file.parent / "copies").exists()
