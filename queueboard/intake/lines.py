"""One line of typed shorthand read as knives: `4 chef 20 dull, black handle ! keep the patina`.

A line is: how many (1 when left out), the kind or its short form, then in any order the length, the edge, the
condition and what the inspection found (`chip 2mm`, `tip 3mm`, `very dull`); after a comma what tells the knife apart,
after `!` the customer's wish. What is not understood is asked back in a sentence, never guessed.
"""

import re
from collections.abc import Sequence
from dataclasses import field
from difflib import get_close_matches

from queueboard.clean import clean
from queueboard.errors import TypedError
from queueboard.intake.damage import condition_of, counts_chips, read_chips, read_tip
from queueboard.intake.lengths import MM_PER, fits_usual, looks_like_length, read_length_mm, typed_unit
from queueboard.intake.words_typed import (
    CONDITION_WORDS,
    CONDITIONS_SHORT,
    EDGE_WORDS,
    EDGES_SHORT,
    FINDING_WORDS,
    HALF_WORDS,
)
from queueboard.money.pricing import quote
from queueboard.priced_words import Finding
from queueboard.settings.rules import minutes_of
from queueboard.settings.shapes import Kind, Settings
from queueboard.slotted import dataclass
from queueboard.values.new import NewKnife
from queueboard.words import Condition, Edge

MOST = 999
LONGEST_PHRASE = 5
MOST_LIKELY_CHIPS = 12
"""More chips in one edge are seldom counted; a larger number before the word is taken for the length."""
SHAPE = "A line is: how many, kind, length, edge, condition, then “, mark” and “! wish”."

_COUNT = re.compile(r"([0-9]+)x?")
_MARK_COMMA = re.compile(r",(?![0-9])|(?<![0-9]),")
"""A comma between two digits belongs to a number: 20,5."""


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
    unit: str | None = None
    """The unit that was typed with its length, cm or in; None where none was."""


@dataclass(slots=True, kw_only=True)
class _Found:
    """What has been read of a line so far."""

    count: int
    kind: Kind
    shop_unit: str
    box_unit: str | None
    unit: str | None = None
    length_mm: int | None = None
    edge: Edge | None = None
    condition: Condition | None = None
    chips: int | None = None
    chip_um: int | None = None
    tip_um: int | None = None
    findings: set[Finding] = field(default_factory=set)
    each: bool = False
    apart: bool = False


def read_line(text: str, settings: Settings, *, box_unit: str | None = None) -> KnifeLine:
    """Read one line; TypedError is the question to ask back, with the word that is in doubt.

    box_unit: cm or in, where that was answered for an earlier line of the same box.
    """
    text = clean(text, field="line of knives")
    head, mark, wish = _parts(text)
    _no_knives_in(mark, settings)
    words = head.casefold().split()
    count, words = _count(words)
    kind, words = _kind(words, settings)
    found = _Found(count=count, kind=kind, shop_unit=settings.length_unit, box_unit=box_unit)
    _rest(words, found)
    _whose_damage(found)
    edge = found.edge or kind.edge
    condition = found.condition or _condition_by_tip(found)
    knife = NewKnife(
        kind=kind.name,
        edge=edge,
        condition=condition,
        length_mm=found.length_mm,
        mark=mark,
        wish=wish,
        chips=found.chips,
        chip_um=found.chip_um,
        tip_um=found.tip_um,
        findings=tuple(finding for finding in Finding if finding in found.findings),
        apart=found.apart,
    )
    return KnifeLine(
        typed=text,
        count=count,
        knife=knife,
        minutes=minutes_of(settings, kind.name, edge, condition),
        price_cents=quote(settings, kind, knife).cents,
        unit=found.unit,
    )


def _condition_by_tip(found: _Found) -> Condition:
    """A broken tip takes as long as big chips, by the shop's list; else a knife is dull unless somebody says more."""
    return Condition.BIG_CHIPS if Finding.TIP_BROKEN in found.findings else Condition.DULL


def box_unit_of(lines: Sequence[KnifeLine]) -> str | None:
    """The unit in which the lengths of a box were last typed, cm or in; None where no line says it."""
    return next((line.unit for line in reversed(lines) if line.unit is not None), None)


def read_lines(text: str, settings: Settings) -> tuple[KnifeLine, ...]:
    """Read several lines with commas between, of knives that nobody has to tell apart: `4 chef, 1 bread 9 dull`."""
    lines: list[KnifeLine] = []
    for part in _MARK_COMMA.split(text):
        lines.append(read_line(part, settings, box_unit=box_unit_of(lines)))
    return tuple(lines)


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


def _rest(words: list[str], found: _Found) -> None:
    while words:
        taken = _phrase(words, found) or _chips(words, found) or _tip(words, found) or _length(words, found)
        if not taken:
            raise TypedError(_question(words, found.shop_unit))
        words = words[taken:]


def _phrase(words: list[str], found: _Found) -> int:
    """Take an edge, a condition or a finding from the front; how many words it was, 0 for none."""
    for length in range(min(LONGEST_PHRASE, len(words)), 0, -1):
        phrase = " ".join(words[:length])
        if phrase in EDGE_WORDS:
            _once(found.edge, "edges", EDGE_WORDS[phrase])
            found.edge = EDGE_WORDS[phrase]
        elif phrase in CONDITION_WORDS:
            _take_condition(CONDITION_WORDS[phrase], found)
        elif phrase in FINDING_WORDS:
            found.findings.add(FINDING_WORDS[phrase])
        elif phrase == "each":
            found.each = True
        elif phrase == "apart":
            found.apart = True
        else:
            continue
        return length
    return 0


def _take_condition(condition: Condition, found: _Found) -> None:
    _once(found.condition, "conditions", condition)
    found.condition = condition


def _chips(words: list[str], found: _Found) -> int:
    """Take `chip 2mm` or `3 chips 1mm` from the front; how many words it was, 0 for none."""
    if counts_chips(words) and found.length_mm is None and fits_usual(words[0], found.kind.length_mm):
        if words[1] == "chips" and int(words[0]) <= MOST_LIKELY_CHIPS:
            unit = found.box_unit or found.shop_unit
            raise TypedError(
                f"“{words[0]} chips”: {words[0]} of them, or {words[0]} long with chips? Type the length with its "
                f"unit, “{words[0]}{unit}”, or behind the chips: “chips 1mm {words[0]}”."
            )
        return 0  # the length stands behind the kind: chef 20 chip 2mm
    chips = read_chips(words, found.count)
    if chips is None:
        return 0
    _take_condition(condition_of(chips.depth_um), found)
    found.chips, found.chip_um = chips.number, chips.depth_um
    return chips.taken


def _tip(words: list[str], found: _Found) -> int:
    """Take `tip 3mm` from the front."""
    tip = read_tip(words)
    if tip is None:
        return 0
    _once(found.tip_um, "broken tips", tip.missing_um)
    found.tip_um = tip.missing_um
    found.findings.add(Finding.TIP_BROKEN)
    return tip.taken


def _length(words: list[str], found: _Found) -> int:
    if not looks_like_length(words[0]):
        return 0
    unit = words[1] if len(words) > 1 and words[1] in MM_PER else ""
    typed = f"{words[0]} {unit}"
    length_mm = read_length_mm(typed, shop_unit=found.shop_unit, usual_mm=found.kind.length_mm, box_unit=found.box_unit)
    _once(found.length_mm, "lengths", length_mm)
    found.length_mm, found.unit = length_mm, typed_unit(typed)
    return 2 if unit else 1


def _whose_damage(found: _Found) -> None:
    """Ask back whose chip it is in a line of several knives, and what does not go together."""
    measured = "chip" if found.chip_um is not None else "broken tip" if found.tip_um is not None else ""
    if measured and found.count > 1 and not found.each:
        name = found.kind.name
        raise TypedError(
            f"Have all {found.count} {name} the {measured}, or one? Type “each” behind it when all have it; else give "
            f"the one a line of its own: {found.count - 1} {name}, then {name} with its {measured}."
        )
    if found.each and not measured:
        raise TypedError("“each” says that all knives of the line have a chip or a broken tip, and none is typed.")
    if Finding.VERY_DULL in found.findings and found.condition is Condition.TIRED:
        raise TypedError("Tired or very dull? Type one of the two.")


def _once(before: Edge | Condition | int | None, what: str, now: Edge | Condition | int) -> None:
    if before is not None:
        unit = "um" if what == "broken tips" else "mm"
        pair = f"{before} and {now}" if isinstance(now, str) else f"{before} {unit} and {now} {unit}"
        raise TypedError(f"Two {what} in one line: {pair}. Knives that differ get a line each.")


def _question(words: list[str], shop_unit: str) -> str:
    for length in (2, 1):
        phrase = " ".join(words[:length])
        if phrase in HALF_WORDS:
            return f"“{phrase}”: {HALF_WORDS[phrase]}."
    perhaps = _perhaps(words[0], [*EDGE_WORDS, *CONDITION_WORDS, *FINDING_WORDS])
    if perhaps:
        return f"“{words[0]}” is not understood. {perhaps}".rstrip()
    units = "inches" if shop_unit == "in" else "centimetres"
    return (
        f"“{words[0]}” is not understood. Condition: {', '.join(CONDITIONS_SHORT)}. Edge: {', '.join(EDGES_SHORT)}. "
        f"Found: chip 2mm, tip 3mm, very dull, freckles and the like. Lengths are in {units}; "
        "a mark stands behind a comma."
    )


def _perhaps(word: str, known: list[str]) -> str:
    close = get_close_matches(word, known, n=1, cutoff=0.7)
    return f"Do you mean “{close[0]}”? " if close else ""
