"""A line of the stall's paper as it is typed: `512 4 Verrin 555 0123, 1 bread *`."""

import re
from collections.abc import Iterable

from queueboard.clean import NAME_LIMIT, clean, figures, shown
from queueboard.errors import TypedError
from queueboard.intake.lines import read_line
from queueboard.intake.printed_tags import hold_against
from queueboard.phrases.typed import parse_cents
from queueboard.phrases.typed_back import WAYS
from queueboard.settings.shapes import Kind, Settings
from queueboard.slotted import dataclass
from queueboard.values.market import MarketLine
from queueboard.values.new import NewKnife
from queueboard.words import PayWay

HOW = (
    "tag count name phone, what is no {kind}:  512 4 Verrin 5550123, 1 bread *\n"
    "* paid  *20 paid 20  2* by card  - for no tag  > all, >2 two for next market"
)
NO_TAG = "-"
MOST = 99
"""More knives of one customer at a stall are a slip."""
MOST_PHONE, FEWEST_FIGURES = 60, 3

SURELY_A_PHONE = 5
"""Fewer figures behind a name belong to the name: Studio 54."""

_COMMA = re.compile(r",(?![0-9])|(?<![0-9]),")
_NUMBER = re.compile(r"[0-9]{1,6}")
_PAID = re.compile(r"([0-9])?\*([0-9.,]*)")
_STAYS = re.compile(r">([0-9]{0,3})")
_PHONE = re.compile(r"[+(]?[0-9][0-9()/.+-]*\)?")


@dataclass(slots=True, kw_only=True)
class _Typed:
    """What has been read so far."""

    tag: int | None
    count: int | None
    name: str = ""
    phone: str = ""
    knives: tuple[str, ...] = ()
    paid_cents: int | None = 0
    way: PayWay = PayWay.CASH
    stays: int | None = 0
    """None for all of them."""
    says_paid: bool = False
    says_stays: bool = False


def read_market_line(text: str, settings: Settings, *, next_tag: int | None) -> MarketLine:
    """Read one line; where only one number stands in front, it is the count, and the tag is the next one.

    Parts behind a comma say which of the knives are not of the usual kind. TypedError is what to ask back.
    """
    typed = _read(text, next_tag)
    if not typed.name:
        raise TypedError(f"Whose knives are they? Type the name behind the count: 512 4 Verrin, not “{shown(text)}”.")
    return _line(typed, settings)


def adds_to(text: str) -> int | None:
    """The tag, where a line only adds to the one that is there: `512 *`, `512 >2`; None for a line of its own."""
    typed = _read(text, None)
    return None if typed.name or typed.phone or typed.knives or typed.tag is None else typed.tag


def with_added(text: str, more: str, settings: Settings) -> str:
    """A line with what `512 4 *` adds: what was paid, what stays; TypedError where that counts another number."""
    before, added = _read(text, None), _read(more, None)
    if added.count is not None and added.count != before.count:
        raise TypedError(
            f"{added.count} knives here, and {before.count} in the line of {before.tag}. "
            "Count them; then type the whole line, or go to it and mend it."
        )
    if added.says_paid:
        before.paid_cents, before.way, before.says_paid = added.paid_cents, added.way, True
    if added.says_stays:
        before.stays, before.says_stays = added.stays, True
    _line(before, settings)
    return _text(before)


def text_with_tag(text: str, next_tag: int | None) -> str:
    """The line as it is kept: with its tag in front, everything in one order."""
    return _text(_read(text, next_tag))


def read_tags(text: str) -> tuple[int, int] | None:
    """The tags that were printed for the day, typed as 500-560; None for any other line, TypedError for a wrong one."""
    match = re.fullmatch(r"([0-9]{1,4})\s*-\s*([0-9]{1,4})", text.strip())
    if match is None:
        return None
    first, last = int(match[1]), int(match[2])
    hold_against(first, last, ())
    return first, last


def usual_kind(settings: Settings) -> Kind:
    """What a knife is taken for where only the count was written down."""
    return settings.kind(settings.market.kind) or settings.kinds[0]


def _read(text: str, next_tag: int | None) -> _Typed:
    first, *parts = _COMMA.split(text)
    words = first.split()
    tag, count, words = _numbers(words, next_tag, text)
    typed = _Typed(tag=tag, count=count)
    words = _signs(words, typed)
    phone: list[str] = []
    while words and _PHONE.fullmatch(words[-1]):
        phone.insert(0, words.pop())
    if len(figures("".join(phone))) < SURELY_A_PHONE:
        words, phone = [*words, *phone], []
    typed.name = clean(" ".join(words), limit=NAME_LIMIT, field="name")
    _take_phone(phone, typed, text)
    for part in parts:
        words = _signs(part.split(), typed)
        if words and all(map(_PHONE.fullmatch, words)):
            _take_phone(words, typed, text)
        elif words:
            typed.knives = (*typed.knives, " ".join(words))
    return typed


def _numbers(words: list[str], next_tag: int | None, text: str) -> tuple[int | None, int | None, list[str]]:
    if not words or not (words[0] == NO_TAG or _NUMBER.fullmatch(words[0])):
        raise TypedError(f"“{shown(text)}” begins with no number. Type tag, count and name: 512 4 Verrin.")
    if len(words) > 1 and _NUMBER.fullmatch(words[1]):
        return (None if words[0] == NO_TAG else int(words[0])), _count(words[1]), words[2:]
    if words[0] == NO_TAG:
        raise TypedError("How many knives? Without a tag a line is: - 4 Verrin.")
    alone = len(words) == 1 or bool(_PAID.fullmatch(words[1]) or _STAYS.fullmatch(words[1]))
    if alone:
        return int(words[0]), None, words[1:]
    if int(words[0]) > MOST:
        raise TypedError(f"How many knives of {words[0]}? Type the count behind the tag: {words[0]} 4 Verrin.")
    return next_tag, _count(words[0]), words[1:]


def _count(word: str) -> int:
    if not 1 <= int(word) <= MOST:
        raise TypedError(f"{word} knives of one customer cannot be right; type 1 to {MOST}. The tag comes first.")
    return int(word)


def _signs(words: list[str], typed: _Typed) -> list[str]:
    """Take what is paid and what stays off the end; what is left is a name or a kind."""
    while words:
        paid, stays = _PAID.fullmatch(words[-1]), _STAYS.fullmatch(words[-1])
        if paid is not None:
            way, cents = paid.groups()
            if way is not None and way not in WAYS:
                raise TypedError(f"There is no way {way} to pay: 1 cash, 2 card, 3 transfer, such as 2*41.00.")
            typed.paid_cents, typed.way = parse_cents(cents) if cents else None, WAYS[way or "1"]
            typed.says_paid = True
        elif stays is not None:
            typed.stays, typed.says_stays = int(stays[1]) if stays[1] else None, True
        else:
            break
        words = words[:-1]
    return words


def _take_phone(words: Iterable[str], typed: _Typed, text: str) -> None:
    phone = " ".join(words)
    if not phone:
        return
    if typed.phone:
        raise TypedError(f"Two phones, {typed.phone} and {phone}? Take one out of “{shown(text)}”.")
    if len(figures(phone)) < FEWEST_FIGURES:
        raise TypedError(f"“{phone}” is too short for a phone. Type name, then phone; kinds come behind a comma.")
    typed.phone = clean(phone, limit=MOST_PHONE, field="phone")


def _line(typed: _Typed, settings: Settings) -> MarketLine:
    if typed.count is None:
        raise TypedError(f"How many knives of {typed.tag}? Type the count behind the tag.")
    stays = typed.count if typed.stays is None else typed.stays
    if stays > typed.count:
        raise TypedError(f"{stays} are to be brought to the next market, and {typed.count} are there.")
    return MarketLine(
        tag=typed.tag,
        knives=_knives(typed, settings),
        name=typed.name,
        phone=typed.phone,
        paid_cents=typed.paid_cents,
        way=typed.way,
        stays=stays,
    )


def _knives(typed: _Typed, settings: Settings) -> tuple[NewKnife, ...]:
    """Those that were named, and as many of the usual kind as are left of the count."""
    read = [read_line(part, settings) for part in typed.knives]
    named = tuple(line.knife for line in read for _ in range(line.count))
    count = typed.count or 0
    if len(named) > count:
        raise TypedError(f"{len(named)} knives are named, and {count} were counted; one of the two is not right.")
    kind = usual_kind(settings)
    return (NewKnife(kind=kind.name, edge=kind.edge),) * (count - len(named)) + named


def _text(typed: _Typed) -> str:
    tag = NO_TAG if typed.tag is None else str(typed.tag)
    first = " ".join(filter(None, (tag, "" if typed.count is None else str(typed.count), typed.name)))
    signs = []
    if typed.says_paid:
        way = next(figure for figure, way in WAYS.items() if way is typed.way).replace("1", "")
        cents = "" if typed.paid_cents is None else f"{typed.paid_cents // 100}.{typed.paid_cents % 100:02}"
        signs.append(f"{way}*{cents}")
    if typed.says_stays:
        signs.append(">" if typed.stays is None else f">{typed.stays}")
    parts = [part for part in (first, typed.phone, *typed.knives) if part]
    return " ".join((", ".join(parts), *signs))
