"""Which copies need not be read once more to be known as good."""

import os
from pathlib import Path
from unittest.mock import Mock

import pytest

from queueboard.records import copies, copying
from queueboard.records.copies import known_good


def copied(folder: Path) -> Path:
    """A copy with the sum to check it by, written a second before that."""
    copy = folder / "shop-2026-11-27.qb"
    passing = copying.passing_name(copy)
    passing.write_bytes(b"all of a shop")
    copying.give_name(passing, copy)
    before = copy.stat().st_mtime_ns - 1_000_000_000
    os.utime(copy, ns=(before, before))
    return copy


def test_a_copy_that_nobody_wrote_to_is_not_read_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A copy that lies there as when it was verified is good, however large, and read only once it was written to."""
    copy, read = copied(tmp_path), Mock(return_value=True)
    monkeypatch.setattr(copies, "as_written", read)

    assert known_good(copy)
    read.assert_not_called()

    os.utime(copy)
    assert known_good(copy)
    read.assert_called_once_with(copy)


def test_a_copy_that_was_spoiled_or_has_no_sum_is_not_good(tmp_path: Path) -> None:
    """What was written behind the verifying tells, and so does a sum that is missing."""
    copy = copied(tmp_path)
    copy.write_bytes(b"half of a sh")
    assert not known_good(copy)

    other = copied(tmp_path)
    copies.sum_file(other).unlink()
    assert not known_good(other)
