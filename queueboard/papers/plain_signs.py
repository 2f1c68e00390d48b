"""Bars, rules and arrows for a terminal that cannot show them: other signs, cell for cell, so that nothing moves.

What a stream can hold is its encoding. A person who asks for the locale C or POSIX is taken at their word, and the
Linux console without a window is taken to have the signs of code page 437 (from memory); all else is told by names
that no program can look behind. Letters of names are none of these signs: an encoding without them shows `?`.
"""

import os
from collections.abc import Mapping
from typing import TextIO

PLAIN: Mapping[str, str] = {
    **dict.fromkeys("▁▂▏▎░┄", "."),
    **dict.fromkeys("▃▄▍▌", ":"),
    **dict.fromkeys("▅▆▋▊", "="),
    **dict.fromkeys("▇█▉", "#"),
    **dict.fromkeys("─━–", "-"),
    **dict.fromkeys("│┃", "|"),
    **dict.fromkeys("╭╮╰╯┌┐└┘┏┓┗┛", "+"),
    **dict.fromkeys("▸→", ">"),
    "←": "<",
    "▹": "=",
    "●": "o",
    **dict.fromkeys("…≈", "~"),
    **dict.fromkeys("“”", '"'),
    "↑": "^",
    "↓": "v",
    "×": "x",
    "·": "|",
    "✓": "+",
}
"""Each sign of ours or of a frame or scroll bar, and what stands for it."""


def plain_signs(encoding: str) -> Mapping[int, str]:
    """The signs that an encoding cannot hold and what stands for them, ready for str.translate; empty for UTF-8."""
    return {ord(sign): plain for sign, plain in PLAIN.items() if not _holds(encoding, sign)}


def signs_for(stream: TextIO, environment: Mapping[str, str] = os.environ) -> Mapping[int, str]:
    """The same for what is written to a stream; only on a terminal do locale and console count."""
    encoding = stream.encoding or "utf-8"  # a text in memory has none and holds everything
    if not stream.isatty():
        return plain_signs(encoding)
    if _locale(environment) in {"C", "POSIX"}:
        return plain_signs("ascii")
    return plain_signs("cp437" if environment.get("TERM") == "linux" else encoding)


def _holds(encoding: str, sign: str) -> bool:
    try:
        sign.encode(encoding)
    except UnicodeEncodeError:
        return False
    return True


def _locale(environment: Mapping[str, str]) -> str:
    """What the person has chosen for letters. Python itself writes C.UTF-8 there when it finds LANG=C (PEP 538)."""
    every = (environment.get(name, "") for name in ("LC_ALL", "LC_CTYPE", "LANG"))
    return next((one for one in every if one not in {"", "C.UTF-8"}), "")
