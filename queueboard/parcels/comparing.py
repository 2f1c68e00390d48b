"""Names and addresses side by side: what differs, part by part, and never a guess that two of them mean the same.

Folded are only case, accents, points, the order of the parts, and the short forms below (common practice, no source).
Everything else that is not the same is said: somebody looks, and decides.
"""

import re
from collections import Counter
from collections.abc import Mapping, Sequence

from queueboard.clean import folded
from queueboard.slotted import dataclass
from queueboard.values.compared import Compared, Difference, Part, Source

_STREETS = {
    "street": "st",
    "saint": "st",
    "road": "rd",
    "avenue": "ave",
    "av": "ave",
    "lane": "ln",
    "drive": "dr",
    "boulevard": "blvd",
    "court": "ct",
    "place": "pl",
    "square": "sq",
    "terrace": "ter",
    "parkway": "pkwy",
    "highway": "hwy",
    "circle": "cir",
    "crescent": "cres",
    "close": "cl",
    "strasse": "str",
}
"""Words of streets by their short forms; of a word that may mean two things, such as St, both get the same one."""
_SHORT = {**_STREETS, "north": "n", "south": "s", "east": "e", "west": "w", "mount": "mt", "fort": "ft"}
_FLATS = frozenset({"apt", "apartment", "flat", "unit", "suite", "ste", "room", "rm", "box", "#"})
_BEFORE_NUMBERS = frozenset({"no", "nr", "num", "number"})
_TITLES = frozenset({"mr", "mrs", "ms", "miss", "mx", "dr", "prof", "herr", "frau", "mme"})
_DIRECTIONS = frozenset("nsew")

_WORD = re.compile(r"[0-9]+-[0-9]+[^\W_]*|[^\W_]+|#")
_ORDINAL = re.compile(r"[0-9]+(st|nd|rd|th)")
_FIGURES = re.compile(r"[0-9]{4,6}(-[0-9]{4})?")
_IN_TWO = (
    (re.compile(r"[a-z]{1,2}[0-9][a-z0-9]?"), re.compile(r"[0-9][a-z]{2}")),
    (re.compile(r"[a-z][0-9][a-z]"), re.compile(r"[0-9][a-z][0-9]")),
)
"""Postcodes of two halves, such as AB1 2CD and K1A 0B6."""
_IN_ONE = re.compile(r"[a-z]{1,2}[0-9][a-z0-9]?[0-9][a-z]{2}|[a-z][0-9][a-z][0-9][a-z][0-9]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """A name and an address as they stand somewhere; either may be empty."""

    name: str = ""
    address: str = ""


@dataclass(frozen=True, slots=True)
class _Word:
    """A word as it is compared, and as it was written."""

    same: str
    shown: str


@dataclass(frozen=True, slots=True)
class _Address:
    """An address in its parts, each in the order it was written."""

    house: tuple[_Word, ...]
    postcode: tuple[_Word, ...]
    flat: tuple[_Word, ...]
    words: tuple[_Word, ...]

    @property
    def street_ends(self) -> int | None:
        """The place of the word that ends the street, such as Lane; None where nothing says which words it has."""
        for place, word in enumerate(self.words):
            if (place and word.same in _STREETS.values()) or word.same.endswith("str"):
                return place
        return None


def compare(written: Mapping[Source, Written]) -> Compared:
    """Hold names against names and addresses against addresses, two or three of each; what is empty is left out.

    A number right behind Apt, Flat, # and the like, or Box, is a flat's or a box's; four to six figures that do not
    come first are a postcode, four alone only beside a house number; other numbers are house numbers. A postcode with
    four figures more behind it is the same as one without. A word counts to the street up to Lane, Road and the like,
    behind it to the town; where one of the addresses has no such word, nobody can say which.
    """
    names = {source: _name(one.name) for source, one in written.items() if one.name.strip()}
    addresses = {source: _address(one.address) for source, one in written.items() if one.address.strip()}
    found = [*_in_addresses(addresses), *_words({Part.NAME: names})]
    return Compared(
        differences=tuple(sorted(found, key=lambda one: list(Part).index(one.part))),
        names=tuple(names),
        addresses=tuple(addresses),
    )


def _in_addresses(addresses: Mapping[Source, _Address]) -> list[Difference]:
    codes = {source: address.postcode for source, address in addresses.items()}
    if any(code and "-" not in code[0].same for code in codes.values()):
        codes = {s: tuple(_Word(w.same.partition("-")[0], w.shown) for w in code) for s, code in codes.items()}
    figures = {
        Part.HOUSE: {source: address.house for source, address in addresses.items()},
        Part.POSTCODE: codes,
        Part.FLAT: {source: address.flat for source, address in addresses.items()},
    }
    whole = [
        Difference(part=part, says={source: _shown(words) for source, words in by_source.items()})
        for part, by_source in figures.items()
        if len({_figures(part, words) for words in by_source.values()}) > 1
    ]
    return [*whole, *_words(_streets_and_towns(addresses))]


def _figures(part: Part, words: Sequence[_Word]) -> tuple[str, ...]:
    """Several house numbers count in the order they stand in: 12 Route 45 is not 45 Route 12."""
    same = [word.same for word in words]
    return tuple(same if part is Part.HOUSE else sorted(same))


def _streets_and_towns(addresses: Mapping[Source, _Address]) -> Mapping[Part, Mapping[Source, tuple[_Word, ...]]]:
    ends = {source: address.street_ends for source, address in addresses.items()}
    if None in ends.values():
        return {Part.STREET_OR_TOWN: {source: address.words for source, address in addresses.items()}}
    return {
        Part.STREET: {source: address.words[: (ends[source] or 0) + 1] for source, address in addresses.items()},
        Part.TOWN: {source: address.words[(ends[source] or 0) + 1 :] for source, address in addresses.items()},
    }


def _words(parts: Mapping[Part, Mapping[Source, tuple[_Word, ...]]]) -> list[Difference]:
    """Of each part the words that not all have; each word as often as it stands there."""
    found = []
    for part, by_source in parts.items():
        counts = [Counter(word.same for word in words) for words in by_source.values()]
        common = counts[0] if counts else Counter[str]()
        for count in counts[1:]:
            common &= count
        left = {source: _without(words, common) for source, words in by_source.items()}
        if any(left.values()):
            found.append(Difference(part=part, says={source: _shown(words) for source, words in left.items()}))
    return found


def _without(words: Sequence[_Word], common: Counter[str]) -> tuple[_Word, ...]:
    left, rest = Counter(common), []
    for word in words:
        if left[word.same]:
            left[word.same] -= 1
        else:
            rest.append(word)
    return tuple(rest)


def _shown(words: Sequence[_Word]) -> str:
    return " ".join(word.shown for word in words)


def _split(text: str) -> list[_Word]:
    """The words of a text; one without any letter or figure is a word as it stands."""
    plain = re.sub(r"[\u2010-\u2015\u2212]", "-", re.sub(r"['\u2018\u2019`\u00b4]", "", text))
    found = [_Word(folded(word) or word, word) for word in _WORD.findall(plain)]
    return found or [_Word(folded(text) or text, text.strip())]


def _name(text: str) -> tuple[_Word, ...]:
    words = _split(text)
    return tuple(word for word in words if word.same not in _TITLES) or tuple(words)


def _address(text: str) -> _Address:
    words = _tidied(_split(text))
    flat: list[_Word] = []
    rest: list[_Word] = []
    for place, word in enumerate(words):
        before = words[place - 1].same if place else ""
        after = words[place + 1].same if place + 1 < len(words) else ""
        if before in _FLATS and _is_number(word.same):
            flat.append(word)
        elif not (word.same in _FLATS and _is_number(after)):
            rest.append(word)
    postcode, rest = _postcode(rest)
    return _Address(
        house=tuple(word for word in rest if _has_figure(word.same) and not _ORDINAL.fullmatch(word.same)),
        postcode=postcode,
        flat=tuple(flat),
        words=tuple(
            _Word(_short(word.same), word.shown)
            for word in rest
            if not _has_figure(word.same) or _ORDINAL.fullmatch(word.same)
        ),
    )


def _tidied(words: Sequence[_Word]) -> list[_Word]:
    """Without No. and P.O. before what they announce, and with the letter of a house number behind it: 12 A is 12a."""
    tidy: list[_Word] = []
    for place, word in enumerate(words):
        after = [one.same for one in words[place + 1 : place + 3]]
        before = words[place - 1].same if place else ""
        announces = word.same in _BEFORE_NUMBERS and bool(after) and _has_figure(after[0])
        of_a_box = (word.same == "p" and after == ["o", "box"]) or (word.same in {"po", "o"} and after[:1] == ["box"])
        letter = len(word.same) == 1 and word.same.isalpha() and word.same not in _DIRECTIONS
        if letter and re.fullmatch(r"[0-9]{1,4}", before) and not _is_street(after) and tidy:
            tidy[-1] = _Word(tidy[-1].same + word.same, tidy[-1].shown + word.shown.lower())
        elif not (announces or of_a_box):
            tidy.append(word)
    return tidy


def _postcode(words: list[_Word]) -> tuple[tuple[_Word, ...], list[_Word]]:
    """The postcode, as one word where it has two halves, and what is left without it."""
    for place in range(len(words) - 1, 0, -1):
        halves = words[place - 1].same, words[place].same
        if place > 1 and any(first.fullmatch(halves[0]) and last.fullmatch(halves[1]) for first, last in _IN_TWO):
            whole = _Word("".join(halves), f"{words[place - 1].shown} {words[place].shown}")
            return (whole,), words[: place - 1] + words[place + 1 :]
        if _IN_ONE.fullmatch(words[place].same):
            return (words[place],), words[:place] + words[place + 1 :]
    numbers = sum(_has_figure(word.same) and not _ORDINAL.fullmatch(word.same) for word in words)
    for place in range(len(words) - 1, 0, -1):
        same = words[place].same
        if _FIGURES.fullmatch(same) and (len(same) > 4 or numbers > 1):
            return (words[place],), words[:place] + words[place + 1 :]
    return (), words


def _short(same: str) -> str:
    if same.endswith("strasse"):
        return f"{same.removesuffix('strasse')}str"
    return _SHORT.get(same, same)


def _is_street(after: Sequence[str]) -> bool:
    return bool(after) and _short(after[0]) in _STREETS.values()


def _has_figure(same: str) -> bool:
    return any(sign.isdigit() for sign in same)


def _is_number(same: str) -> bool:
    return _has_figure(same) or (len(same) == 1 and same.isalpha())
