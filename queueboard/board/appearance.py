"""Which theme the board wears, kept over starts in a small file of the user's own, never in the shop's file."""

from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

import platformdirs
from textual.theme import Theme

from queueboard.board.themes import CONTRAST, DARK, LIGHT, THEMES
from queueboard.clean import shown
from queueboard.errors import TypedError

NAMES: Mapping[str, Theme] = {"dark": DARK, "light": LIGHT, "contrast": CONTRAST}
"""The names by which a person asks for a theme."""

LONGEST = 40
"""Characters read of the file: more than any name has."""


def choice_file() -> Path | None:
    """Where the choice is kept: `appearance` in the user's folder for settings; None where no such folder is known."""
    folder = platformdirs.user_config_path("queueboard")
    return folder / "appearance" if folder.is_absolute() else None


def theme_named(name: str) -> Theme:
    """The theme of this name, in capitals or not; TypedError for a name that none has."""
    theme = NAMES.get(name.strip().lower())
    if theme is None:
        raise TypedError(f"There is no theme “{shown(name)}”; type {', '.join(list(NAMES)[:-1])} or {list(NAMES)[-1]}.")
    return theme


def chosen(asked: str, path: Path | None) -> Theme:
    """The theme asked for by name, else the one kept, else the dark one.

    TypedError when *asked* names none. A kept choice that cannot be read, or names none, is as good as none: it is no
    reason to keep the board shut, and the next choice writes it anew.
    """
    if asked.strip():
        return theme_named(asked)
    with suppress(OSError, UnicodeDecodeError, TypedError):
        if path is not None and path.is_file():
            with path.open(encoding="utf-8") as file:
                return theme_named(file.read(LONGEST))
    return DARK


def keep(theme: Theme, path: Path | None) -> str:
    """Keep the choice for the next start; the sentence of what stood in the way, empty when nothing did."""
    if path is None:
        return "No folder for your settings is known, so it holds until you leave."
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(f"{name_of(theme)}\n", encoding="utf-8")
    except OSError as error:
        return f"It holds until you leave: {path} cannot be written ({error.strerror})."
    return ""


def after(name: str) -> Theme:
    """The theme behind the one of this (Textual's) name; behind the last one comes the first."""
    place = next((place for place, theme in enumerate(THEMES) if theme.name == name), -1)
    return THEMES[(place + 1) % len(THEMES)]


def name_of(theme: Theme) -> str:
    """The name by which a person asks for it."""
    return next(name for name, named in NAMES.items() if named is theme)
