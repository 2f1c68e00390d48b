"""Several windows that change one thing at once lose nothing."""

from pathlib import Path

from tests.bench.writers import race


def test_no_change_is_lost_between_four_windows(tmp_path: Path) -> None:
    """Each change that was said to be stored is there, and the file is sound."""
    done = race(tmp_path, 4, 80, careful=True)

    assert (done.lost, done.sound) == (0, True)


def test_the_control_loses_some(tmp_path: Path) -> None:
    """Without asking for the version that was seen, changes are written over."""
    assert any(race(tmp_path / str(number), 4, 80, careful=False).lost for number in range(10))
