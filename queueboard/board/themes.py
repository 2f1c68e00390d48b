"""Three themes of the shop: quiet grounds, one accent of brass, red only for what is late or refused.

The third is for a projector, the sun on the screen, or tired eyes: black ground, every text at 7 to 1 or more.
"""

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
        "text-muted": "#9d9a92",
        "text-disabled": "#95928a",
        "text-primary": "#d8ad5a",
        "text-accent": "#d8ad5a",
        "text-success": "#9fc08f",
        "text-warning": "#e2b866",
        "text-error": "#f2917d",
        "heading-ground": "#1e2326",
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
    primary="#76500a",
    secondary="#76500a",
    accent="#76500a",
    foreground="#24282b",
    background="#f4f1ea",
    surface="#ece8df",
    panel="#e2ddd1",
    success="#2d5d25",
    warning="#76500a",
    error="#9b2318",
    variables={
        "text": "#24282b",
        "text-muted": "#57544d",
        "text-disabled": "#605d56",
        "text-primary": "#76500a",
        "text-accent": "#76500a",
        "text-success": "#2d5d25",
        "text-warning": "#76500a",
        "text-error": "#9b2318",
        "heading-ground": "#eae5da",
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
