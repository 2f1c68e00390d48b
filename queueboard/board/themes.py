"""Three themes of the shop: quiet grounds, one accent of brass, red only for what is late or refused.

The third is for a projector, the sun on the screen, or tired eyes: black ground, every text at 7 to 1 or more.
"""

from dataclasses import replace

from textual.theme import Theme

from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Colours:
    """What a theme is made of; everything else that Textual asks for is one of these."""

    name: str
    dark: bool
    ground: str
    surface: str
    panel: str
    heading: str
    """The ground of headings."""
    text: str
    quiet: str
    disabled: str
    accent: str
    good: str
    warning: str
    bad: str
    cursor: str
    """The ground under the cursor, and under what is selected."""
    on_cursor: str
    rule: str

    def theme(self) -> Theme:
        """The theme, as Textual wears it."""
        return Theme(
            name=self.name,
            dark=self.dark,
            primary=self.accent,
            secondary=self.accent,
            accent=self.accent,
            foreground=self.text,
            background=self.ground,
            surface=self.surface,
            panel=self.panel,
            success=self.good,
            warning=self.warning,
            error=self.bad,
            variables={
                "text": self.text,
                "text-muted": self.quiet,
                "text-disabled": self.disabled,
                "text-primary": self.accent,
                "text-accent": self.accent,
                "text-success": self.good,
                "text-warning": self.warning,
                "text-error": self.bad,
                "heading-ground": self.heading,
                "input-selection-background": self.cursor,
                "input-cursor-background": self.surface,
                "input-cursor-foreground": self.text,
                "input-cursor-text-style": "reverse",  # seen without colours too
                "cursor-ground": self.cursor,
                "cursor-text": self.on_cursor,
                "block-cursor-background": self.cursor,
                "block-cursor-foreground": self.on_cursor,
                "block-cursor-blurred-background": self.cursor,
                "block-cursor-blurred-foreground": self.on_cursor,
                "rule": self.rule,
            },
        )

    def plain(self, ground: str) -> "Colours":
        """The same with cursor and headings on one plain ground: the sign ▸ says where the cursor is."""
        return replace(self, panel=ground, heading=ground, cursor=ground)


_DARK = Colours(
    name="shop-dark",
    dark=True,
    ground="#15181a",
    surface="#1b1f22",
    panel="#24292d",
    heading="#1e2326",
    text="#dcd8cf",
    quiet="#aaa79f",
    disabled="#aaa79f",
    accent="#d8ad5a",
    good="#9fc08f",
    warning="#e2b866",
    bad="#f2917d",
    cursor="#3b3420",
    on_cursor="#f6efdd",
    rule="#4a5056",
)
_LIGHT = Colours(
    name="shop-light",
    dark=False,
    ground="#f4f1ea",
    surface="#ece8df",
    panel="#e2ddd1",
    heading="#eae5da",
    text="#24282b",
    quiet="#57544d",
    disabled="#57544d",
    accent="#664600",
    good="#2d5d25",
    warning="#664600",
    bad="#9b2318",
    cursor="#efd9a4",
    on_cursor="#1d1a12",
    rule="#b3aea2",
)
_CONTRAST = Colours(
    name="shop-contrast",
    dark=True,
    ground="#000000",
    surface="#121212",
    panel="#242424",
    heading="#1a1a1a",
    text="#ffffff",
    quiet="#dcdcdc",
    disabled="#cfcfcf",
    accent="#ffd75f",
    good="#b5f0a5",
    warning="#ffd75f",
    bad="#ffb0a0",
    cursor="#4d3d00",
    on_cursor="#ffffff",
    rule="#767676",
)
_NAVY, _BLACK, _WHITE, _YELLOW = "#000080", "#000000", "#ffffff", "#ffff00"

DARK, LIGHT, CONTRAST = _DARK.theme(), _LIGHT.theme(), _CONTRAST.theme()
THEMES = (DARK, LIGHT, CONTRAST)
"""The first one is worn unless another is asked for; the key turns through them in this order."""

SIXTEEN = (
    replace(_DARK.plain(_BLACK), accent=_YELLOW, warning=_YELLOW).theme(),
    replace(_LIGHT.plain(_LIGHT.ground), accent=_NAVY, warning=_NAVY, quiet=_BLACK, disabled=_BLACK).theme(),
    replace(_CONTRAST.plain(_BLACK), bad=_WHITE).theme(),
)
"""The same three for a terminal of 16 colours, where brass, brown and pale red come down to greys that are too weak."""

_BROWN = "#875f00"
"""The only brown among the 256 that is read on light greys, by 4.5 to 1 on the darkest of these."""

EIGHT_BIT = (
    replace(_DARK, cursor="#3a3a3a").theme(),
    replace(
        replace(_LIGHT, ground=_WHITE, surface="#f4f4f4", panel="#ebebeb", heading="#f4f4f4", cursor="#ffd787"),
        accent=_BROWN,
        warning=_BROWN,
    ).theme(),
    replace(_CONTRAST, cursor="#3a3a3a").theme(),
)
"""The same three for a terminal of 256 colours, as most are over ssh: dark brown comes down to olive, paper to pink.

A grey comes down to one that is darker by a step: #f4f4f4 is shown as #eeeeee, #ebebeb as #e4e4e4.
"""


def themes_for(color_system: str | None) -> tuple[Theme, ...]:
    """The themes for what Rich found that the terminal can show: standard is 16 colours."""
    return {"standard": SIXTEEN, "256": EIGHT_BIT}.get(color_system or "", THEMES)
