"""The colours can be read: contrast after WCAG 2.2, computed here with nothing but its own formula.

Web Content Accessibility Guidelines 2.2, definitions of relative luminance and contrast ratio, and success criterion
1.4.3 (4.5 to 1 for text): https://www.w3.org/TR/WCAG22/ (the formula from memory).
"""

from itertools import product
from pathlib import Path

import pytest
from textual.theme import Theme

import queueboard.board.run
from queueboard.board.app import QueueboardApp
from queueboard.board.appearance import chosen, keep, theme_named
from queueboard.board.run import run_board
from queueboard.board.screens.board import BoardScreen
from queueboard.board.themes import CONTRAST, DARK, LIGHT, THEMES
from queueboard.errors import TypedError
from queueboard.shop.opening import Shop
from tests.board.dump import dump
from tests.board.host import SMALL, FakeDesk
from tests.busy_morning import busy_morning
from tests.shop.place import NOW

READABLE = 4.5
TEXTS = ("text", "text-muted", "text-disabled", "text-primary", "text-error", "text-success", "text-warning")


def luminance(colour: str) -> float:
    """Relative luminance of #rrggbb, 0 for black to 1 for white."""
    channels = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def test_the_formula_knows_its_ends() -> None:
    """Black on white is 21 to 1, a colour on itself 1 to 1, and the well-known grey #767676 on white just passes."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#d8ad5a", "#d8ad5a") == 1
    assert READABLE < contrast("#767676", "#ffffff") < READABLE + 0.1


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_every_text_can_be_read_on_every_ground(theme: Theme) -> None:
    """Each colour of text has at least 4.5 to 1 on the background, the panel, the surface and a heading's ground."""
    grounds = {
        "background": theme.background,
        "surface": theme.surface,
        "panel": theme.panel,
        "heading": theme.variables["heading-ground"],
    }
    ratios = {
        (text, name): contrast(theme.variables[text], ground or "")
        for text, (name, ground) in product(TEXTS, grounds.items())
    }

    assert not {pair: round(ratio, 2) for pair, ratio in ratios.items() if ratio < READABLE}


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_the_row_under_the_cursor_can_be_read(theme: Theme) -> None:
    """The cursor's text has at least 7 to 1 on its ground."""
    assert contrast(theme.variables["cursor-text"], theme.variables["cursor-ground"]) >= 7


def test_the_high_contrast_theme_has_more() -> None:
    """Each text of the third theme has at least 7 to 1 (success criterion 1.4.6) on each of its grounds."""
    grounds = (CONTRAST.background, CONTRAST.surface, CONTRAST.panel, CONTRAST.variables["heading-ground"])

    assert min(contrast(CONTRAST.variables[t], g or "") for t in TEXTS for g in grounds) >= 7


async def test_a_key_turns_through_the_themes_and_the_choice_is_kept(tmp_path: Path) -> None:
    """A leads to light, high contrast and back to dark; each is written down, said by its name, and moves no word."""
    choice = tmp_path / "settings" / "appearance"
    app = QueueboardApp(FakeDesk(busy_morning()), choice=choice)
    async with app.run_test(size=SMALL) as pilot:
        await pilot.pause()
        before, worn = dump(app).splitlines()[:20], list[tuple[str, str, Theme]]()
        for _ in THEMES:
            await pilot.press("A")
            worn.append((app.theme, choice.read_text(encoding="utf-8").strip(), chosen("", choice)))
            assert dump(app).splitlines()[:20] == before
            assert "The board is" in dump(app)

        assert isinstance(app.screen, BoardScreen)
    assert worn == [
        (LIGHT.name, "light", LIGHT),
        (CONTRAST.name, "contrast", CONTRAST),
        (DARK.name, "dark", DARK),
    ]


def test_a_name_that_no_theme_has_is_told(two_boxes: Shop, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """QUEUEBOARD_THEME with an unknown name is refused with the names there are; a known one wins over the kept one."""
    choice = tmp_path / "appearance"
    monkeypatch.setattr(queueboard.board.run, "choice_file", lambda: choice)
    monkeypatch.setenv("QUEUEBOARD_THEME", "pink")
    with pytest.raises(TypedError, match="no theme “pink”; type dark, light or contrast"):
        run_board(two_boxes, "MB", lambda: NOW)

    assert keep(LIGHT, choice) == ""
    assert chosen("Contrast", choice) is theme_named("contrast") is CONTRAST


@pytest.mark.parametrize("written", [b"", b"pink", b"\xff\xfe", b"[red]x[/]" * 99])
def test_a_kept_choice_that_cannot_be_read_is_as_good_as_none(written: bytes, tmp_path: Path) -> None:
    """The board opens dark; a folder in the file's place, or none that can be written, is a sentence and no more."""
    choice = tmp_path / "appearance"
    choice.write_bytes(written)

    assert chosen("", choice) is chosen("", tmp_path) is chosen("", None) is DARK
    assert "cannot be written" in keep(LIGHT, tmp_path)


@pytest.mark.parametrize(("value", "plain"), [(None, False), ("", False), ("1", True), ("0", True)])
def test_colour_is_left_out_where_it_is_asked_for(
    value: str | None, plain: bool, two_boxes: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    """NO_COLOR with anything in it leaves colour out, an empty one asks for nothing (no-color.org, from memory)."""
    opened: list[QueueboardApp] = []
    monkeypatch.setattr(QueueboardApp, "run", lambda app, **_: opened.append(app))
    if value is not None:
        monkeypatch.setenv("NO_COLOR", value)

    assert run_board(two_boxes, "MB", lambda: NOW) == 0
    assert [app.no_color for app in opened] == [plain]
