"""README's picture shows the board as it is now."""

from pathlib import Path

from tests.house.picture import PICTURE, drawn, words


async def test_the_picture_in_readme_is_not_stale(tmp_path: Path) -> None:
    """The picture reads as the board reads now; `python -m tests.house.picture` draws it anew."""
    kept = words(PICTURE.read_text(encoding="utf-8"))

    assert kept == words(await drawn(tmp_path))


async def test_the_picture_fetches_nothing(tmp_path: Path) -> None:
    """The picture names no font or file of somebody else's machine."""
    kept = PICTURE.read_text(encoding="utf-8")

    assert "url(http" not in kept
    assert "LATE" in kept
