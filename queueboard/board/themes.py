"""Three themes of the shop: quiet grounds, one accent of brass, red only for what is late or refused.

The third is for a projector, the sun on the screen, or tired eyes: black ground, every text at 7 to 1 or more.
"""

from dataclasses import replace

from textual.theme import Theme

DARK = Theme(
    name="shop-dark",
    dark=True,
    primary="#d8ad5a",
    secondary="#d8ad5a",
    accent="#d8ad5a",
    foreground="#dcd8cf",
    background="#15181a",
    surface="#1b1f22",
    panel="#24292d",
    success="#9fc08f",
    warning="#e2b866",
    error="#f2917d",
    variables={
        "text": "#dcd8cf",
        "text-muted": "#aaa79f",
        "text-disabled": "#aaa79f",
        "text-primary": "#d8ad5a",
        "text-accent": "#d8ad5a",
        "text-success": "#9fc08f",
        "text-warning": "#e2b866",
        "text-error": "#f2917d",
        "heading-ground": "#1e2326",
        "input-selection-background": "#3b3420",
        "cursor-ground": "#3b3420",
        "cursor-text": "#f6efdd",
        "block-cursor-background": "#3b3420",
        "block-cursor-foreground": "#f6efdd",
        "block-cursor-blurred-background": "#3b3420",
        "block-cursor-blurred-foreground": "#f6efdd",
        "rule": "#4a5056",
    },
)

LIGHT = Theme(
    name="shop-light",
    dark=False,
    primary="#664600",
    secondary="#664600",
    accent="#664600",
    foreground="#24282b",
    background="#f4f1ea",
    surface="#ece8df",
    panel="#e2ddd1",
    success="#2d5d25",
    warning="#664600",
    error="#9b2318",
    variables={
        "text": "#24282b",
        "text-muted": "#57544d",
        "text-disabled": "#57544d",
        "text-primary": "#664600",
        "text-accent": "#664600",
        "text-success": "#2d5d25",
        "text-warning": "#664600",
        "text-error": "#9b2318",
        "heading-ground": "#eae5da",
        "input-selection-background": "#efd9a4",
        "cursor-ground": "#efd9a4",
        "cursor-text": "#1d1a12",
        "block-cursor-background": "#efd9a4",
        "block-cursor-foreground": "#1d1a12",
        "block-cursor-blurred-background": "#efd9a4",
        "block-cursor-blurred-foreground": "#1d1a12",
        "rule": "#b3aea2",
    },
)

CONTRAST = Theme(
    name="shop-contrast",
    dark=True,
    primary="#ffd75f",
    secondary="#ffd75f",
    accent="#ffd75f",
    foreground="#ffffff",
    background="#000000",
    surface="#000000",
    panel="#1c1c1c",
    success="#b5f0a5",
    warning="#ffd75f",
    error="#ffb0a0",
    variables={
        "text": "#ffffff",
        "text-muted": "#dcdcdc",
        "text-disabled": "#cfcfcf",
        "text-primary": "#ffd75f",
        "text-accent": "#ffd75f",
        "text-success": "#b5f0a5",
        "text-warning": "#ffd75f",
        "text-error": "#ffb0a0",
        "heading-ground": "#121212",
        "input-selection-background": "#4d3d00",
        "cursor-ground": "#4d3d00",
        "cursor-text": "#ffffff",
        "block-cursor-background": "#4d3d00",
        "block-cursor-foreground": "#ffffff",
        "block-cursor-blurred-background": "#4d3d00",
        "block-cursor-blurred-foreground": "#ffffff",
        "rule": "#9a9a9a",
    },
)

THEMES = (DARK, LIGHT, CONTRAST)
"""The first one is worn unless another is asked for; the key turns through them in this order."""

_ACCENTS = {"text-primary", "text-accent", "text-warning"}
_QUIET = {"text-muted", "text-disabled"}
_GROUNDS = {name for name in DARK.variables if name.endswith(("-ground", "-background"))}
_NAVY, _BLACK = "#000080", "#000000"


def _plain(theme: Theme, ground: str, **words: str) -> Theme:
    """A theme whose cursor and headings stand on its plain ground: the sign ▸ says where the cursor is."""
    return replace(theme, panel=ground, variables={**theme.variables, **dict.fromkeys(_GROUNDS, ground), **words})


SIXTEEN = (
    _plain(DARK, _BLACK),
    replace(
        _plain(LIGHT, "#f4f1ea", **dict.fromkeys(_ACCENTS, _NAVY), **dict.fromkeys(_QUIET, _BLACK)),
        primary=_NAVY,
        secondary=_NAVY,
        accent=_NAVY,
        warning=_NAVY,
    ),
    _plain(CONTRAST, _BLACK),
)
"""The same three for a terminal of 16 colours, where brown and quiet grey come down to greys that are too weak."""


def themes_for(color_system: str | None) -> tuple[Theme, ...]:
    """The themes for what Rich found that the terminal can show: standard is 16 colours."""
    return SIXTEEN if color_system == "standard" else THEMES
