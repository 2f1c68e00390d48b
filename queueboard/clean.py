"""People's text made safe at the boundary: shown literally later, never able to command a terminal."""

import re
import unicodedata

from queueboard.errors import TypedError

TEXT_LIMIT = 200
"""Most characters in a short text."""
NAME_LIMIT = 300
"""Most characters in a name."""

_TERMINAL_SEQUENCE = re.compile(
    r"""
    # CSI: colours, cursor
      (?:\x1b\[|\x9b) [0-?]* [ -/]* [@-~]
    # OSC, DCS, SOS, PM, APC, up to their end
    | (?:\x1b[\]PX^_]|[\x90\x98\x9d-\x9f]) [^\x1b\x07\x9c]* (?:\x1b\\|[\x07\x9c])
    # character sets
    | \x1b [ -/]+ [0-~]
    """,
    re.VERBOSE,
)
"""Sequences of ECMA-48, whose letters mean nothing to a person. What is left of a broken one loses its controls."""

_TURNS_DIRECTION = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Marks that reorder the text around them (CVE-2021-42574); letters written right to left need none of them."""

_UNSTEADY_WIDTH = frozenset("\ufe0e\ufe0f\u20e3\U0001f3fb\U0001f3fc\U0001f3fd\U0001f3fe\U0001f3ff")
"""Variation selectors, keycap and skin tones: terminals disagree about their width, and a list line would shift."""

_BLANK_LETTERS = frozenset("\u115f\u1160\u3164\uffa0\u2800\U0001d159")
"""Fillers and the empty Braille cell, which Unicode counts as letters and symbols though nothing of them shows."""

_PLAIN_LETTERS = str.maketrans({"ø": "o", "ł": "l", "đ": "d", "ð": "d", "ı": "i", "æ": "ae", "œ": "oe", "þ": "th"})
"""Letters that Unicode does not take apart but fingers type plain."""


def clean(text: str, *, limit: int = TEXT_LIMIT, field: str = "text") -> str:
    """Bring a person's text into the form that is stored; everything a person can see stays as it was typed.

    Terminal sequences, control characters and direction marks go; any white space becomes one space; the result is in
    Unicode form NFC, and empty when nothing of it shows. Cleaning twice changes nothing more. TypedError, naming
    *field*, for a NUL, half of a character, or more than *limit* characters.
    """
    thing = field.partition(" of ")[0]
    many = thing.endswith("s") and not thing.endswith("ss")
    has, holds, it = ("have", "hold", "them") if many else ("has", "holds", "it")
    if "\0" in text:
        raise TypedError(f"The {field} {holds} a NUL character, which no keyboard types. Type {it} again by hand.")
    if any(unicodedata.category(sign) == "Cs" for sign in text):
        raise TypedError(f"The {field} {holds} half of a character (a lone surrogate). Type {it} again by hand.")
    without_sequences = _TERMINAL_SEQUENCE.sub("", text)
    spaced = " ".join(without_sequences.split())
    visible = "".join(sign for sign in without_turns(spaced) if unicodedata.category(sign) != "Cc")
    cleaned = " ".join(unicodedata.normalize("NFC", visible).split())
    if len(cleaned) > limit:
        raise TypedError(f"The {field} {has} {len(cleaned)} characters; at most {limit} fit. Shorten {it}.")
    return cleaned if any(map(_shows, cleaned)) else ""


def without_commands(text: str) -> str:
    """The text without sequences that command a terminal, nor a lone Esc; nothing else is touched."""
    return _TERMINAL_SEQUENCE.sub("", text).replace("\x1b", "")


def one_line(text: str) -> str:
    """What was pasted as the one line there is room for: white space is one space, and control characters are gone."""
    return "".join(sign for sign in " ".join(without_commands(text).split()) if unicodedata.category(sign) != "Cc")


def insist_on_signs(text: str, field: str) -> None:
    """Refuse control characters, white space aside: a program wrote them, or a key that is no letter.

    For what is not typed with the cursor in a field, where a person would see what goes and what stays. TypedError
    names *field* and the character.
    """
    for sign in text:
        if unicodedata.category(sign) == "Cc" and not sign.isspace():
            raise TypedError(
                f"The {field} holds a control character (U+{ord(sign):04X}), which shows nothing and may command a "
                "terminal. Type it again by hand."
            )


def _shows(sign: str) -> bool:
    """True for letters, figures, signs and symbols; what Unicode leaves to others or to later may be one of them."""
    category = unicodedata.category(sign)
    return (category[0] in "LNPS" and sign not in _BLANK_LETTERS) or category in {"Co", "Cn"}


def clean_name(text: str) -> str:
    """Clean a person's name, up to NAME_LIMIT characters; TypedError when nothing to be seen is left of it."""
    name = clean(text, limit=NAME_LIMIT, field="name")
    if not name:
        raise TypedError("The name is empty. Type at least one letter.")
    return name


def without_turns(text: str) -> str:
    """The text without marks that would reorder what stands beside it."""
    return "".join(sign for sign in text if sign not in _TURNS_DIRECTION)


def cell_text(text: str) -> str:
    """The text for one cell of a list: without the signs whose width terminals disagree about.

    Nor does it hold marks that turn what stands beside it: what was pasted is shown before it is cleaned and stored.
    """
    return "".join(sign for sign in without_turns(text) if sign not in _UNSTEADY_WIDTH)


def shown(text: str) -> str:
    """What was typed as a sentence may quote it: its first 40 signs, without any that could command a terminal."""
    visible = "".join(sign for sign in text.strip() if sign.isprintable())
    return visible if len(visible) <= 40 else f"{visible[:39]}…"


def figures(text: str) -> str:
    """The figures of a phone as it is compared: nothing of how they are set apart."""
    return "".join(sign for sign in text if sign.isdigit())


def folded(text: str) -> str:
    """The text as it is compared when finding: no case, no accents, no invisible signs, single spaces."""
    if text.isascii() and text.isprintable():
        return " ".join(text.lower().split())
    apart = unicodedata.normalize("NFKD", text.casefold()).casefold().translate(_PLAIN_LETTERS)
    kept = "".join(sign for sign in apart if unicodedata.category(sign) not in {"Mn", "Cf", "Cc"} or sign.isspace())
    return " ".join(unicodedata.normalize("NFKC", kept).casefold().split())
