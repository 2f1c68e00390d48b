"""One line of typed shorthand read as knives: `4 chef 20 dull, black handle ! keep the patina`.

A line is: how many (1 when left out), the kind or its short form, then in any order the length, the edge and the
condition; after a comma what tells the knife apart, after `!` the customer's wish. What is not understood is asked
back in a sentence, never guessed.
"""

import re
from dataclasses import dataclass
from difflib import get_close_matches

from queueboard.clean import clean
from queueboard.errors import TypedError
from queueboard.intake.lengths import MM_PER, looks_like_length, read_length_mm
from queueboard.intake.words_typed import CONDITION_WORDS, CONDITIONS_SHORT, EDGE_WORDS, EDGES_SHORT, HALF_WORDS
from queueboard.money.pricing import quote
from queueboard.settings.rules import minutes_of
from queueboard.settings.shapes import Kind, Settings
from queueboard.values.new import NewKnife
from queueboard.words import Condition, Edge

MOST = 999
LONGEST_PHRASE = 4
SHAPE = "A line is: how many, kind, length, edge, condition, then “, mark” and “! wish”."

_COUNT = re.compile(r"([0-9]+)x?")
_MARK_COMMA = re.compile(r",(?![0-9])|(?<![0-9]),")
"""A comma between two digits belongs to a number: 20,5."""
_CHIP_WORDS = ("chip", "chips")
_DEPTH = re.compile(r"([0-9]+(?:[.,][0-9]+)?)(mm)?")


@dataclass(frozen=True, slots=True, kw_only=True)
class KnifeLine:
    """One typed line, read: a number of knives that are alike."""

    typed: str
    count: int
    """1 to 999."""
    knife: NewKnife
    minutes: int | None
    """Hands-on minutes of one knife; None where the shop's list has none, for such a knife is declined."""
    price_cents: int
    """The price of one knife with its add-ons, by the shop's list."""


@dataclass(slots=True, kw_only=True)
class _Found:
    """What has been read of a line so far."""

    length_mm: int | None = None
    edge: Edge | None = None
    condition: Condition | None = None


def read_line(text: str, settings: Settings) -> KnifeLine:
    """Read one line; TypedError is the question to ask back, with the word that is in doubt."""
    text = clean(text, field="line of knives")
    head, mark, wish = _parts(text)
    _no_knives_in(mark, settings)
    words = head.casefold().split()
    count, words = _count(words)
    kind, words = _kind(words, settings)
    found = _rest(words, kind, settings.length_unit)
    edge = found.edge or kind.edge
    condition = found.condition or Condition.DULL
    knife = NewKnife(kind=kind.name, edge=edge, condition=condition, length_mm=found.length_mm, mark=mark, wish=wish)
    return KnifeLine(
        typed=text,
        count=count,
        knife=knife,
        minutes=minutes_of(settings, kind.name, edge, condition),
        price_cents=quote(settings, kind, knife).cents,
    )


def read_lines(text: str, settings: Settings) -> tuple[KnifeLine, ...]:
    """Read several lines with commas between, of knives that nobody has to tell apart: `4 chef, 1 bread 9 chips`."""
    return tuple(read_line(part, settings) for part in _MARK_COMMA.split(text))


def _parts(text: str) -> tuple[str, str, str]:
    """Head, mark and wish of a line, each without white space around it."""
    before, _, wish = text.partition("!")
    head, *marks = _MARK_COMMA.split(before, maxsplit=1)
    return head.strip(), "".join(marks).strip(), wish.strip()


def _no_knives_in(mark: str, settings: Settings) -> None:
    """Ask back where a mark reads as more knives: `4 chef, 1 bread` is five knives or four with an odd mark."""
    words = mark.casefold().split()
    if words and _COUNT.fullmatch(words[0]) and _known_kind(words[1:], settings) is not None:
        raise TypedError(f"“{mark}” behind the comma reads as more knives. Type them in a line of their own.")


def _count(words: list[str]) -> tuple[int, list[str]]:
    match = _COUNT.fullmatch(words[0]) if words else None
    if match is None:
        if words and _odd_number(words[0]):
            raise TypedError(f"“{words[0]}” knives in one line? Type a whole number of 1 or more, in figures: 3 chef.")
        return 1, words
    count = int(match[1])
    if not 1 <= count <= MOST:
        raise TypedError(f"{match[1]} knives in one line? Type 1 to {MOST}.")
    return count, words[1:]


def _odd_number(word: str) -> bool:
    """True for a number that counts no knives: -3, 1.5, ½, or one in figures other than 0 to 9."""
    return any(sign.isnumeric() for sign in word) and not any(sign.isalpha() for sign in word)


def _kind(words: list[str], settings: Settings) -> tuple[Kind, list[str]]:
    """The kind that the line begins with (the longest name wins), and the words behind it."""
    if not words:
        raise TypedError(f"The kind of knife is missing. {SHAPE}")
    known = _known_kind(words, settings)
    if known is not None:
        return known
    names = [name for kind in settings.kinds for name in (kind.name, *kind.short)]
    raise TypedError(
        f"The shop has no kind “{words[0]}”. {_perhaps(words[0], names)}The kinds are: "
        f"{', '.join(kind.name for kind in settings.kinds)}."
    )


def _known_kind(words: list[str], settings: Settings) -> tuple[Kind, list[str]] | None:
    for length in range(min(LONGEST_PHRASE, len(words)), 0, -1):
        kind = settings.kind(" ".join(words[:length]))
        if kind is not None:
            return kind, words[length:]
    return None


def _rest(words: list[str], kind: Kind, shop_unit: str) -> _Found:
    found = _Found()
    while words:
        taken = _phrase(words, found) or _chip_depth(words, found) or _length(words, found, kind, shop_unit)
        if not taken:
            raise TypedError(_question(words, shop_unit))
        words = words[taken:]
    return found


def _phrase(words: list[str], found: _Found) -> int:
    """Take an edge or a condition from the front; how many words it was, 0 for none."""
    for length in range(min(LONGEST_PHRASE, len(words)), 0, -1):
        phrase = " ".join(words[:length])
        if phrase in EDGE_WORDS:
            _once(found.edge, "edges", EDGE_WORDS[phrase])
            found.edge = EDGE_WORDS[phrase]
            return length
        if phrase in CONDITION_WORDS:
            _take_condition(CONDITION_WORDS[phrase], found)
            return length
    return 0


def _take_condition(condition: Condition, found: _Found) -> None:
    _once(found.condition, "conditions", condition)
    found.condition = condition


def _chip_depth(words: list[str], found: _Found) -> int:
    """Take `chip 2mm` from the front; a bare `chip 2` may be two chips or two millimetres and is asked back."""
    match = _DEPTH.fullmatch(words[1]) if len(words) > 1 and words[0] in _CHIP_WORDS else None
    if match is None:
        return 0
    apart = words[2:3] == ["mm"]
    if match[2] is None and not apart:
        raise TypedError(
            f"“{words[0]} {words[1]}”: {words[1]} chips, or {words[1]} mm deep? "
            "Type “small chips” (to 1 mm), “big chips” (2-3 mm) or the depth with its mm."
        )
    _take_condition(_depth(match[1]), found)
    return 3 if apart else 2


def _depth(typed: str) -> Condition:
    depth_mm = float(typed.replace(",", "."))
    if 0 < depth_mm <= 1:
        return Condition.SMALL_CHIPS
    if 2 <= depth_mm <= 3:
        return Condition.BIG_CHIPS
    raise TypedError(
        f"Chips of {typed} mm are not in the shop's list, which has chips to 1 mm and chips of 2-3 mm. "
        "Type “small chips” or “big chips”, and the rest behind a comma."
    )


def _length(words: list[str], found: _Found, kind: Kind, shop_unit: str) -> int:
    if not looks_like_length(words[0]):
        return 0
    unit = words[1] if len(words) > 1 and words[1] in MM_PER else ""
    length_mm = read_length_mm(f"{words[0]} {unit}", shop_unit=shop_unit, usual_mm=kind.length_mm)
    _once(found.length_mm, "lengths", length_mm)
    found.length_mm = length_mm
    return 2 if unit else 1


def _once(before: Edge | Condition | int | None, what: str, now: Edge | Condition | int) -> None:
    if before is not None:
        pair = f"{before} and {now}" if isinstance(now, str) else f"{before} mm and {now} mm"
        raise TypedError(f"Two {what} in one line: {pair}. Knives that differ get a line each.")


def _question(words: list[str], shop_unit: str) -> str:
    for length in (2, 1):
        phrase = " ".join(words[:length])
        if phrase in HALF_WORDS:
            return f"“{phrase}”: {HALF_WORDS[phrase]}."
    perhaps = _perhaps(words[0], [*EDGE_WORDS, *CONDITION_WORDS])
    if perhaps:
        return f"“{words[0]}” is not understood. {perhaps}".rstrip()
    units = "inches" if shop_unit == "in" else "centimetres"
    return (
        f"“{words[0]}” is not understood. Condition: {', '.join(CONDITIONS_SHORT)}. Edge: {', '.join(EDGES_SHORT)}. "
        f"Lengths are in {units}; a mark stands behind a comma."
    )


def _perhaps(word: str, known: list[str]) -> str:
    close = get_close_matches(word, known, n=1, cutoff=0.7)
    return f"Do you mean “{close[0]}”? " if close else ""
