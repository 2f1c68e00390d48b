"""README's pictures show the screens as they are now."""

import re
from pathlib import Path

import pytest

from tests.house.picture import FOLDER, KEYS, drawn, words
from tests.house.tree import ROOT


@pytest.mark.sqlite_file
async def test_no_picture_in_readme_is_stale(tmp_path: Path) -> None:
    """Each picture reads as its screen reads now; `python -m tests.house.picture` draws them anew."""
    kept = {name: words((FOLDER / f"{name}.svg").read_text(encoding="utf-8")) for name in KEYS}

    assert kept == {name: words(svg) for name, svg in (await drawn(tmp_path)).items()}


def test_readme_shows_each_picture_with_words_for_who_cannot_see_it() -> None:
    """Every picture that is drawn stands in README with a sentence of its own, and no other does."""
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    shown = re.findall(r"!\[([^]]+)\]\(\.pictures/([\w-]+)\.svg\)", readme)

    assert sorted(name for _, name in shown) == sorted(KEYS)
    assert all(len(sentence) > 40 for sentence, _ in shown)
    assert len(KEYS) <= 12
    assert {path.stem for path in FOLDER.iterdir()} == set(KEYS)


def test_the_pictures_fetch_nothing() -> None:
    """The pictures name no font or file of somebody else's machine."""
    for name in KEYS:
        kept = (FOLDER / f"{name}.svg").read_text(encoding="utf-8")
        assert "url(http" not in kept
    assert "LATE" in (FOLDER / "board.svg").read_text(encoding="utf-8")
