"""Whose is a knife that lies loose? The open and found knives that fit what can be seen of it, likeliest first."""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal

from queueboard.clean import folded
from queueboard.errors import TypedError
from queueboard.intake.lengths import MM_PER, looks_like_length
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.values.found import FoundKnife
from queueboard.values.knife import Knife

NEAR_MM = 25
"""So far a length may be off: measured in a hurry here, typed in inches there. [common practice, no source]"""
UNMEASURED_MM = NEAR_MM // 2
"""How far a knife without a length counts as off: behind what fits well, before what hardly does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What can be seen of a loose knife; what was not typed is empty."""

    kind: str = ""
    lengths_mm: tuple[int, ...] = ()
    """A bare number may be cm or inches: it fits in either."""
    words: tuple[str, ...] = ()
    """Words of its mark, without accents and case."""
    tag: str = ""
    """Its tag, where it still hangs on it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A knife that it could be."""

    knife: Knife | FoundKnife
    box: BoxPicture | None
    """The box that it belongs to; None for a found knife."""
    other_kind: bool
    off_mm: int | None
    """How far its length is off; None where one of the two is not known."""
    lacks: tuple[str, ...]
    """The words typed that its mark does not have."""


def read_seen(text: str, settings: Settings) -> Seen:
    """Read free words such as `chef 20 black nick`: kind, length, the rest is its mark, in any order."""
    words = text.replace(",", " ").split()
    if not words:
        raise TypedError("Type what can be seen of it: kind, length, mark, such as chef 20 black nick.")
    if len(words) == 1 and re.fullmatch(r"[0-9]{1,6}-[0-9]{1,3}", words[0]):
        return Seen(tag=words[0])
    kind, rest = "", list[str]()
    lengths_mm: tuple[int, ...] = ()
    while words:
        pair = " ".join(words[:2])
        if not kind and len(words) > 1 and (known := settings.kind(pair)):
            kind, words = known.name, words[2:]
        elif len(words) > 1 and not lengths_mm and words[1].lower() in MM_PER and looks_like_length(pair.lower()):
            lengths_mm, words = _lengths_mm(pair), words[2:]
        else:
            word, words = words[0], words[1:]
            if not kind and (known := settings.kind(word)):
                kind = known.name
            elif not lengths_mm and looks_like_length(word.lower()):
                lengths_mm = _lengths_mm(word)
            else:
                rest.append(folded(word))
    return Seen(kind=kind, lengths_mm=lengths_mm, words=tuple(rest))


def _lengths_mm(typed: str) -> tuple[int, ...]:
    number = Decimal(re.sub(r"[^0-9.]", "", typed.replace(",", ".")))
    unit = re.sub(r"[0-9.,\s]", "", typed.lower())
    return tuple(int(number * MM_PER[one]) for one in ([unit] if unit else ["cm", "in"]))


def fitting(picture: Picture, seen: Seen) -> tuple[Candidate, ...]:
    """The knives it could be: of its kind, or with all words of its mark; never one whose length is far off.

    First those of its kind, then those with most of the words, then by length; of equals one that is looked for.
    """
    return tuple(sorted(_fitting(picture, seen), key=_rank))


def _fitting(picture: Picture, seen: Seen) -> Iterator[Candidate]:
    knives: Sequence[tuple[Knife | FoundKnife, BoxPicture | None]] = (
        *((knife, box) for box in picture.boxes for knife in box.on_hand),
        *((found, None) for found in picture.found),
    )
    for knife, box in knives:
        if seen.tag:
            if isinstance(knife, Knife) and knife.tag == seen.tag:
                yield Candidate(knife=knife, box=box, other_kind=False, off_mm=None, lacks=())
            continue
        mark = folded(f"{knife.mark} {knife.wish}" if isinstance(knife, Knife) else knife.mark)
        here = Candidate(
            knife=knife,
            box=box,
            other_kind=bool(seen.kind) and folded(knife.kind) != folded(seen.kind),
            off_mm=_off_mm(knife.length_mm, seen.lengths_mm),
            lacks=tuple(word for word in seen.words if word not in mark),
        )
        marked = bool(seen.words) and not here.lacks
        if not (seen.kind or seen.lengths_mm) and len(here.lacks) == len(seen.words):
            continue
        if (marked or not here.other_kind) and (here.off_mm or 0) <= NEAR_MM:
            yield here


def _off_mm(length_mm: int | None, lengths_mm: tuple[int, ...]) -> int | None:
    if length_mm is None or not lengths_mm:
        return None
    return min(abs(length_mm - one) for one in lengths_mm)


def _rank(one: Candidate) -> tuple[bool, int, int, bool]:
    looked_for = not isinstance(one.knife, Knife) or one.knife.looking_for
    return one.other_kind, len(one.lacks), UNMEASURED_MM if one.off_mm is None else one.off_mm, not looked_for
