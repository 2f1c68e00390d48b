"""The words that may be typed for an edge, a condition or a finding, and the questions where one is not enough."""

from collections.abc import Mapping
from typing import TypeVar

from queueboard.clean import shown
from queueboard.errors import TypedError
from queueboard.priced_words import Finding
from queueboard.words import Condition, Edge

Word = TypeVar("Word", Edge, Condition)

EDGE_WORDS: Mapping[str, Edge] = {
    "plain": Edge.PLAIN,
    "serrated": Edge.SERRATED,
    "scalloped": Edge.SCALLOPED,
    "single right": Edge.SINGLE_RIGHT,
    "single left": Edge.SINGLE_LEFT,
    "single bevel right": Edge.SINGLE_RIGHT,
    "single bevel left": Edge.SINGLE_LEFT,
}
"""What may be typed for an edge."""

CONDITION_WORDS: Mapping[str, Condition] = {
    "tired": Condition.TIRED,
    "dull": Condition.DULL,
    "blunt": Condition.DULL,
    "small chips": Condition.SMALL_CHIPS,
    "chips to 1 mm": Condition.SMALL_CHIPS,
    "big chips": Condition.BIG_CHIPS,
    "chips 2-3 mm": Condition.BIG_CHIPS,
}
"""What may be typed for how an edge came in."""

FINDING_WORDS: Mapping[str, Finding] = {
    **{finding.value: finding for finding in Finding if finding is not Finding.TIP_BROKEN},
    "rolled": Finding.ROLLED,
    "burnt": Finding.BURNT,
    "rounded": Finding.TIP_ROUNDED,
    "rounded tip": Finding.TIP_ROUNDED,
    "bent tip": Finding.TIP_BENT,
    "bent": Finding.BENT,
    "warped": Finding.WARPED,
    "overground": Finding.OVER_GROUND,
    "recurve": Finding.RECURVE,
    "loose handle": Finding.HANDLE_LOOSE,
    "cracked handle": Finding.HANDLE_CRACKED,
    "melted": Finding.HANDLE_MELTED,
    "melted handle": Finding.HANDLE_MELTED,
    "rivet": Finding.RIVET_GONE,
    "swollen": Finding.WET_SWOLLEN,
    "freckles": Finding.FRECKLES,
    "edge pits": Finding.EDGE_PITS,
    "rust pits": Finding.EDGE_PITS,
    "play": Finding.PLAY,
    "no lock": Finding.NO_LOCK,
    "heirloom": Finding.HEIRLOOM,
    "thin": Finding.THIN,
    "photo": Finding.PHOTO,
}
"""What may be typed for a finding; a broken tip is typed with what is missing of it (intake/damage.py)."""

HALF_WORDS: Mapping[str, str] = {
    "single bevel": "single bevel left or right? Type “single left” or “single right”",
    "single": "single bevel left or right? Type “single left” or “single right”",
    "left": "for a left-handed edge type “single left”; a left-handed owner belongs behind “!”",
    "right": "for a right-handed edge type “single right”",
    "chips": "how deep are the chips? Type “small chips” (to 1 mm) or “big chips” (2-3 mm)",
    "chip": "how deep is the chip? Type “small chips” (to 1 mm) or “big chips” (2-3 mm)",
    "chipped": "how deep are the chips? Type “small chips” (to 1 mm) or “big chips” (2-3 mm)",
    "rust": "freckles, or pits at the edge? Type “freckles” or “edge pits”",
    "pits": "where are the pits? Type “edge pits” for rust pits at the edge, “pitted” for the blade",
    "cracked": "what is cracked? Type “handle cracked”; a cracked blade is declined",
    "loose": "what is loose? Type “handle loose”; a loose tang is declined",
    "broken": "is the tip broken? Type “tip broken 3mm” with what is missing",
    "handle": "what of the handle? Type “handle loose”, “handle cracked” or “handle melted”; its look goes behind “,”",
    "small": "small what? Type “small chips” for chips to 1 mm",
    "big": "big what? Type “big chips” for chips of 2-3 mm",
}
"""Words that leave something open, with the question to ask back."""


EDGES_SHORT = ("plain", "serrated", "scalloped", "single left", "single right")
CONDITIONS_SHORT = ("tired", "dull", "small chips", "big chips")
"""What is offered when a word is not understood, in short."""


def read_edge(text: str) -> Edge:
    """The edge typed in a field of its own; TypedError names what may be typed."""
    return _one_of(text, EDGE_WORDS, "edge", EDGES_SHORT)


def read_condition(text: str) -> Condition:
    """The condition typed in a field of its own; TypedError names what may be typed."""
    return _one_of(text, CONDITION_WORDS, "condition", CONDITIONS_SHORT)


def _one_of(text: str, words: Mapping[str, Word], what: str, offered: tuple[str, ...]) -> Word:
    typed = " ".join(text.casefold().split())
    if typed in words:
        return words[typed]
    article = "an" if what[0] in "aeiou" else "a"
    raise TypedError(f"“{text.strip()}” is not {article} {what} the shop knows. Type one of: {', '.join(offered)}.")


def read_findings(text: str) -> tuple[Finding, ...]:
    """Findings typed in a field of their own, with commas between, in the order of the list; TypedError for others."""
    typed = [" ".join(part.casefold().split()) for part in text.split(",")]
    known = {**FINDING_WORDS, Finding.TIP_BROKEN.value: Finding.TIP_BROKEN}
    for word in filter(None, typed):
        if word not in known:
            raise TypedError(f"“{shown(word)}” is not in the list: {', '.join(finding.value for finding in Finding)}.")
    found = {known[word] for word in typed if word}
    return tuple(finding for finding in Finding if finding in found)
