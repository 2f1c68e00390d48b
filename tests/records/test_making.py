"""New files appear whole and for the owner only, or not at all."""

import errno
import os
import stat
from contextlib import suppress
from pathlib import Path

import pytest

from queueboard.errors import FileError
from queueboard.records.making import making

pytestmark = pytest.mark.sqlite_file


def made(path: Path, content: str = "whole") -> None:
    """Make a small file."""
    with making(path) as place:
        place.write_text(content, encoding="utf-8")


def no_second_name(source: Path, target: Path) -> None:
    """A disk that knows no hard links."""
    raise OSError(errno.EPERM, os.strerror(errno.EPERM))


def test_a_file_appears_whole_in_a_folder_of_its_own(tmp_path: Path) -> None:
    """File and folder are the owner's alone, and nothing else is left beside it."""
    path = tmp_path / "new" / "shop.qb"
    made(path)

    assert path.read_text(encoding="utf-8") == "whole"
    assert list(path.parent.iterdir()) == [path]
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700


def test_nobody_sees_the_file_while_it_is_made(tmp_path: Path) -> None:
    """Until the end there is no such file, and the place where it is made may be entered by the owner only."""
    path = tmp_path / "shop.qb"
    with making(path) as place:
        place.write_text("half", encoding="utf-8")

        assert not path.exists()
        assert place.parent.parent == tmp_path
        assert stat.S_IMODE(place.parent.stat().st_mode) == 0o700


def test_a_failure_leaves_nothing(tmp_path: Path) -> None:
    """What went wrong comes out, and neither a half-made file nor the folder made for it stays."""
    path = tmp_path / "new" / "shop.qb"
    with suppress(TimeoutError), making(path) as place:
        place.write_text("half", encoding="utf-8")
        raise TimeoutError

    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("links", [True, False])
def test_another_window_that_was_faster_keeps_its_file(
    links: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A file that appeared meanwhile is not written over, also on a disk without second names."""
    path = tmp_path / "shop.qb"
    if not links:
        monkeypatch.setattr(os, "link", no_second_name)
    place = making(path)
    place.__enter__().write_text("mine", encoding="utf-8")
    path.write_text("theirs", encoding="utf-8")
    with pytest.raises(FileError, match="is there already"):
        place.__exit__(None, None, None)

    assert path.read_text(encoding="utf-8") == "theirs"
    assert list(tmp_path.iterdir()) == [path]


def test_a_disk_without_second_names_will_do(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where a file cannot have two names it is moved into place."""
    monkeypatch.setattr(os, "link", no_second_name)
    made(tmp_path / "shop.qb")

    assert [path.name for path in tmp_path.iterdir()] == ["shop.qb"]


def test_a_folder_that_takes_no_file_is_a_sentence(tmp_path: Path) -> None:
    """Where a file stands in the place of a folder, the sentence says so and what to do."""
    (tmp_path / "flat").write_text("", encoding="utf-8")

    with pytest.raises(FileError, match=r"cannot be made: .*--file"):
        made(tmp_path / "flat" / "shop.qb")


def test_a_disk_that_fails_at_the_last_step_is_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the disk refuses to take the finished file, nothing is left of it and the reason is said."""

    def broken(number: int) -> None:
        raise OSError(errno.EIO, os.strerror(errno.EIO))

    monkeypatch.setattr(os, "fsync", broken)
    with pytest.raises(FileError, match="cannot be made: Input/output error"):
        made(tmp_path / "shop.qb")

    assert list(tmp_path.iterdir()) == []
