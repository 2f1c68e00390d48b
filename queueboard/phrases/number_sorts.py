"""The shop's own numbers one by one: how each is shown, how it is typed, and how the settings write it."""

import re
from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal

from queueboard.clean import clean, shown
from queueboard.errors import TypedError
from queueboard.intake.lengths import MM_PER, read_length_mm
from queueboard.phrases.dates import date_words, many
from queueboard.phrases.knives import length_words
from queueboard.phrases.money import amount
from queueboard.phrases.typed import parse_cents, parse_time, read_day
from queueboard.phrases.typed_parcels import parse_grams, parse_sides
from queueboard.settings.editing import quoted
from queueboard.settings.reading_hours import WEEKDAYS
from queueboard.slotted import dataclass
from queueboard.values.units import MM_PER_CM, MM_PER_INCH

LONGEST_TYPED = 400
"""Signs of one value; what is shorter by the settings' own rule is refused by them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ways:
    """By what numbers are read and shown."""

    currency: str
    length_unit: str
    """cm or in."""
    today: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Sort:
    """One sort of number. Values are as Python's TOML reader gives them, and were checked when they were taken in."""

    show: Callable[[object, Ways], str]
    """In the shop's words, with its unit."""
    typed: Callable[[object, Ways], str]
    """As it stands in a field; typing just that gives the same value."""
    literal: Callable[[str, Ways], str]
    """What was typed as TOML writes it; TypedError where it is no such number at all."""
    hint: str = ""
    """What a field says while it is empty."""


def _text_literal(typed: str, _ways: Ways) -> str:
    return quoted(clean(typed, limit=LONGEST_TYPED, field="text"))


def _plain(value: object, _ways: Ways) -> str:
    return f"{value}"


TEXT = Sort(show=_plain, typed=_plain, literal=_text_literal)


def whole(unit: str) -> Sort:
    """A whole number of something: minutes, knives, percent; or of nothing that has a name."""
    of = f" of {unit}" if unit else ""

    def literal(typed: str, _ways: Ways) -> str:
        found = re.fullmatch(rf"([0-9]{{1,9}})\s*(?:{re.escape(unit)}|%)?", typed.strip())
        if found is None:
            raise TypedError(f"“{shown(typed)}” is no whole number{of}. Type digits like 6.")
        return f"{int(found[1])}"

    return Sort(show=lambda value, _: f"{value} {unit}".rstrip(), typed=_plain, literal=literal, hint=unit)


def counted(thing: str) -> Sort:
    """A whole number of things, said with their noun: 1 knife, 10 knives."""
    plain = whole(many(2, thing).partition(" ")[2])
    return Sort(
        show=lambda value, _: many(value, thing) if isinstance(value, int) else f"{value}",
        typed=_plain,
        literal=plain.literal,
        hint=plain.hint,
    )


def number(unit: str) -> Sort:
    """A number that may have a point: percent of tax, micrometres."""

    def literal(typed: str, _ways: Ways) -> str:
        found = re.fullmatch(r"([0-9]{1,6})(?:[.,]([0-9]{1,6}))?\s*%?", typed.strip())
        if found is None:
            raise TypedError(f"“{shown(typed)}” is no number. Type digits like 7 or 7.25.")
        return f"{int(found[1])}.{found[2]}" if found[2] else f"{int(found[1])}"

    return Sort(show=lambda value, _: f"{value} {unit}".rstrip(), typed=_plain, literal=literal, hint=unit)


def _cents(value: object) -> int:
    return int(Decimal(f"{value}") * 100)


MONEY = Sort(
    show=lambda value, ways: f"{amount(_cents(value))} {ways.currency}".rstrip(),
    typed=lambda value, _ways: amount(_cents(value)),
    literal=lambda typed, _ways: amount(parse_cents(typed)),
    hint="like 9.00",
)

CLOCK = Sort(show=_plain, typed=_plain, literal=lambda typed, _ways: f'"{parse_time(typed):%H:%M}"', hint="like 16:00")


def _spans_shown(value: object, _ways: Ways) -> str:
    return ", ".join(map(str, value)) if isinstance(value, list) and value else "closed"


def _spans_literal(typed: str, _ways: Ways) -> str:
    if typed.strip().casefold() == "closed":
        return "[]"
    spans = []
    for part in re.split(r"\s*,\s*", typed.strip().strip(",")):
        ends = re.split(r"\s*[-–]\s*", part)
        if len(ends) != 2:
            raise TypedError(f"“{shown(part)}” are no hours. Type them like 08:00-12:00, 13:00-17:00, or closed.")
        # Nobody opens at nine in the evening, so that the pad alone will do: 9-18.
        first = f"0{ends[0]}" if ends[0] in {"7", "8", "9"} else ends[0]
        spans.append(f'"{parse_time(first):%H:%M}-{parse_time(ends[1]):%H:%M}"')
    return f"[{', '.join(spans)}]"


SPANS = Sort(show=_spans_shown, typed=_spans_shown, literal=_spans_literal, hint="08:00-12:00, 13:00-17:00, or closed")

DAY = Sort(
    show=lambda value, ways: date_words(value, ways.today) if isinstance(value, date) else f"{value}",
    typed=_plain,
    literal=lambda typed, ways: read_day(typed, ways.today).isoformat(),
    hint="like 2026-11-27, 27 nov, today",
)


def one_of(words: Mapping[str, str]) -> Sort:
    """One of a closed list: what the settings write, and what it is called; the beginning of either is enough."""

    def literal(typed: str, _ways: Ways) -> str:
        begun = typed.strip().casefold()
        exact = [name for name, said in words.items() if begun in (name.casefold(), said.casefold())]
        found = exact or [
            name for name, said in words.items() if said.casefold().startswith(begun) or name.startswith(begun)
        ]
        if len(found) != 1 or not begun:
            raise TypedError(f"“{shown(typed)}” can not be told. Type one of: {', '.join(words.values())}.")
        return quoted(found[0])

    def said(value: object, _ways: Ways) -> str:
        return words.get(f"{value}", f"{value}")

    return Sort(show=said, typed=said, literal=literal, hint=", ".join(words.values()))


def _yes_literal(typed: str, _ways: Ways) -> str:
    if typed.strip().casefold() not in {"yes", "y", "no", "n"}:
        raise TypedError(f"“{shown(typed)}” is neither yes nor no. Type yes or no.")
    return "true" if typed.strip().casefold().startswith("y") else "false"


YES = Sort(
    show=lambda value, _ways: "yes" if value else "no",
    typed=lambda value, _ways: "yes" if value else "no",
    literal=_yes_literal,
    hint="yes or no",
)


def _names_shown(value: object, _ways: Ways) -> str:
    return ", ".join(map(str, value)) if isinstance(value, list) else f"{value}"


def _names_literal(typed: str, _ways: Ways) -> str:
    names = (clean(part, field="name") for part in typed.split(","))
    return f"[{', '.join(quoted(name) for name in names if name)}]"


NAMES = Sort(show=_names_shown, typed=_names_shown, literal=_names_literal, hint="with commas between")


def _days_shown(value: object, _ways: Ways) -> str:
    days = ", ".join(map(str, _list(value)))
    return f"{days} days" if days else "no notices"


def _days_literal(typed: str, _ways: Ways) -> str:
    """Days typed as people say them: 7, 21, 42 or 7 21 42 days; an empty line for none."""
    parts = typed.casefold().removesuffix("days").replace(",", " ").split()
    odd = next((part for part in parts if not (part.isascii() and part.isdigit())), None)
    if odd is not None:
        raise TypedError(f"“{shown(odd)}” is no number of days; type them like 7, 21, 42.")
    return f"[{', '.join(str(int(part)) for part in parts)}]"


DAYS = Sort(
    show=_days_shown,
    typed=lambda value, _ways: ", ".join(map(str, _list(value))),
    literal=_days_literal,
    hint="days with commas between, each larger than the one before",
)


def _weekdays_shown(value: object, _ways: Ways) -> str:
    return " ".join(f"{day}".title() for day in value) if isinstance(value, list) else f"{value}"


def _weekdays_literal(typed: str, _ways: Ways) -> str:
    days: list[str] = []
    for part in re.findall(r"[^\s,]+", typed.casefold()):
        first, _, last = part.partition("-")
        ends = [_weekday(end, part) for end in (first, last or first)]
        span = (
            WEEKDAYS[ends[0] : ends[1] + 1] if ends[0] <= ends[1] else (*WEEKDAYS[ends[0] :], *WEEKDAYS[: ends[1] + 1])
        )
        days += [day for day in span if day not in days]
    return f"[{', '.join(quoted(day) for day in days)}]"


def _weekday(typed: str, part: str) -> int:
    found = [place for place, day in enumerate(WEEKDAYS) if len(typed) >= 2 and typed[:3] in (day, day[:2])]
    if len(found) != 1:
        raise TypedError(f"“{shown(part)}” is no weekday. Type them like mon tue fri, or mon-fri.")
    return found[0]


COLLECTION = Sort(
    show=_weekdays_shown, typed=_weekdays_shown, literal=_weekdays_literal, hint="like mon-fri, or mon wed fri"
)

LENGTH = Sort(
    show=lambda value, ways: length_words(int(f"{value}"), ways.length_unit),
    typed=lambda value, ways: length_words(int(f"{value}"), ways.length_unit),
    literal=lambda typed, ways: f"{read_length_mm(typed, shop_unit=ways.length_unit)}",
    hint="like 8 in, 20 cm, 205 mm",
)


def _any_length(typed: str, ways: Ways) -> str:
    found = re.fullmatch(r"([0-9]{1,4}(?:[.,][0-9]{1,3})?)\s*(mm|cm|in|\")?", typed.strip().lower())
    if found is None:
        raise TypedError(f"“{shown(typed)}” is no length. Type it with its unit: 13 cm, 5 in, 130 mm.")
    return f"{round(Decimal(found[1].replace(',', '.')) * MM_PER[found[2] or ways.length_unit])}"


HANDLE = Sort(show=LENGTH.show, typed=LENGTH.typed, literal=_any_length, hint=LENGTH.hint)


def _grams_literal(typed: str, _ways: Ways) -> str:
    return "0" if re.fullmatch(r"0\s*g?", typed.strip()) else f"{parse_grams(typed)}"


GRAMS = Sort(
    show=lambda value, _ways: f"{value} g",
    typed=lambda value, _ways: f"{value} g",
    literal=_grams_literal,
    hint="like 250 g, 8 oz",
)


def _sides_shown(value: object, ways: Ways) -> str:
    per = MM_PER_INCH if ways.length_unit == "in" else MM_PER_CM
    sides = (f"{(Decimal(side) / per).quantize(Decimal('0.1')).normalize():f}" for side in _list(value))
    return f"{' x '.join(sides)} {ways.length_unit}"


def _list(value: object) -> list[int]:
    return [int(f"{side}") for side in value] if isinstance(value, list) else []


SIDES = Sort(
    show=_sides_shown,
    typed=lambda value, _ways: f"{' x '.join(map(str, _list(value)))} mm",
    literal=lambda typed, ways: f"[{', '.join(map(str, parse_sides(typed, ways.length_unit)))}]",
    hint="like 45 x 25 x 10 cm",
)


def _belts_shown(value: object, _ways: Ways) -> str:
    belts = value if isinstance(value, list) else []
    return " > ".join(f"{belt['label']}" for belt in belts) if belts else "no belt"


def _belts_typed(value: object, _ways: Ways) -> str:
    belts = value if isinstance(value, list) else []
    return ", ".join(f"{belt['label']} {belt['grit_um']}" for belt in belts)


def _belts_literal(typed: str, ways: Ways) -> str:
    belts = []
    for part in filter(None, (part.strip() for part in typed.split(","))):
        label, _, grit = part.rpartition(" ")
        if not label.strip() or not re.fullmatch(r"[0-9]{1,4}(\.[0-9]{1,3})?", grit):
            raise TypedError(
                f"“{shown(part)}” is no belt. Type what stands on its back, then its micrometres: P240 58.5, 16 um 16."
            )
        belts.append(f"{{ label = {_text_literal(label, ways)}, grit_um = {number('').literal(grit, ways)} }}")
    return f"[{', '.join(belts)}]"


BELTS = Sort(
    show=_belts_shown,
    typed=_belts_typed,
    literal=_belts_literal,
    hint="back and micrometres: P240 58.5, 16 um 16; empty for none",
)
