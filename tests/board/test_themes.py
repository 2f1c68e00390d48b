"""The colours can be read: contrast after WCAG 2.2, computed here with nothing but its own formula.

Web Content Accessibility Guidelines 2.2, definitions of relative luminance and contrast ratio, and success criterion
1.4.3 (4.5 to 1 for text): https://www.w3.org/TR/WCAG22/ (the formula from memory).
"""

from itertools import product

import pytest
from textual.theme import Theme

from queueboard.board.app import QueueboardApp
from queueboard.board.run import run_board
from queueboard.board.themes import THEMES
from queueboard.shop.opening import Shop
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
