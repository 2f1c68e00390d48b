"""The words that may be typed for an edge or a condition, and the questions asked back where one word is not enough."""

from collections.abc import Mapping
from typing import TypeVar

from queueboard.errors import TypedError
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

HALF_WORDS: Mapping[str, str] = {
    "single bevel": "single bevel left or right? Type “single left” or “single right”",
    "single": "single bevel left or right? Type “single left” or “single right”",
    "left": "for a left-handed edge type “single left”; a left-handed owner belongs behind “!”",
    "right": "for a right-handed edge type “single right”",
    "chips": "how deep are the chips? Type “small chips” (to 1 mm) or “big chips” (2-3 mm)",
    "chip": "how deep is the chip? Type “small chips” (to 1 mm) or “big chips” (2-3 mm)",
    "chipped": "how deep are the chips? Type “small chips” (to 1 mm) or “big chips” (2-3 mm)",
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
