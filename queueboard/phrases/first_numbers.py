"""What a new shop is asked before its first box: the fields, and the starter text with the answers in it."""

from collections.abc import Mapping, Sequence

from queueboard.errors import TypedError
from queueboard.phrases.number_sorts import MONEY, SPANS, TEXT, Ways
from queueboard.phrases.own_numbers import Number
from queueboard.settings.editing import put, quoted, take_out, value_at, values_in
from queueboard.settings.locate import Path
from queueboard.settings.reading_hours import WEEKDAYS

OPEN_DAYS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("mon-fri", WEEKDAYS[:5]),
    ("mon-sat", WEEKDAYS[:6]),
    ("tue-sat", WEEKDAYS[1:6]),
    ("every day", WEEKDAYS),
)
"""The weeks that are offered; a day of its own hours is typed later, among the shop's own numbers."""

NAME = Number(path=("shop", "name"), words="shop's name", sort=TEXT, needed=True)
COUNTRY = Number(path=("shop", "country"), words="two letters", sort=TEXT, emptied='""')
REGION = Number(path=("shop", "region"), words="region", sort=TEXT, emptied='""')
ZONE = Number(path=("shop", "zone"), words="clock on the wall", sort=TEXT, needed=True)
CURRENCY = Number(path=("shop", "currency"), words="currency", sort=TEXT, needed=True)
HOURS = Number(path=("hours",), words="open from-to", sort=SPANS, needed=True)
BENCH = Number(path=("bench",), words="at the bench", sort=SPANS, needed=True)
PRICED = ("chef", "paring", "bread")
"""The kinds whose prices are asked first: most of what comes in (common practice, no source)."""


def priced(text: str) -> tuple[Number, ...]:
    """The prices asked first, in the starter text."""
    kinds = value_at(values_in(text), ("kinds",))
    names = [kind["name"] for kind in kinds] if isinstance(kinds, list) else []
    places = ((name, names.index(name)) for name in PRICED)
    return tuple(Number(path=("kinds", place, "price"), words=name, sort=MONEY, needed=True) for name, place in places)


def offered_hours(text: str, ways: Ways) -> tuple[str, str]:
    """The opening and bench hours of the starter's Monday, as they stand in a field."""
    values = values_in(text)
    hours, bench = (SPANS.typed(value_at(values, (table, WEEKDAYS[0])), ways) for table in ("hours", "bench"))
    return hours, bench


def bench_within(hours: str, bench: str, ways: Ways) -> str:
    """What of the bench hours lies in other opening hours; all of those where nothing does. TypedError for no hours."""
    opened, usual = _spans(hours, ways), _spans(bench, ways)
    inside = [
        (max(first, begin), min(last, end))
        for first, last in opened
        for begin, end in usual
        if max(first, begin) < min(last, end)
    ]
    return ", ".join(f"{first}-{last}" for first, last in inside or opened)


def _spans(typed: str, ways: Ways) -> list[tuple[str, str]]:
    spans = values_in(f"x = {SPANS.literal(typed, ways)}")["x"]
    ends = (f"{span}".partition("-") for span in spans) if isinstance(spans, list) else ()
    return [(first, last) for first, _, last in ends]


def read_country(typed: str) -> str:
    """Two letters as they stand in ISO 3166, in capitals; empty for none. TypedError for anything else."""
    code = typed.strip().upper()
    if code and not (len(code) == len(code.encode()) == 2 and code.isalpha()):
        raise TypedError("A country is typed as two letters, like NZ or SE; empty means no public holidays.")
    return code


def with_first_numbers(
    text: str, literals: Mapping[Path, str], days: Sequence[str], *, length_unit: str, paper: str
) -> str:
    """The starter text with the answers in it, every remark where it was.

    literals: by the path of each field what the settings write for it; hours and bench hold for each of the *days*,
    all other weekdays are closed. Public holidays on which the starter opens are those of its own country.
    """
    written = values_in(text)
    put_in = {path: literal for path, literal in literals.items() if len(path) > 1}
    put_in[("shop", "length_unit")] = quoted(length_unit)
    put_in |= {("papers", use): quoted(paper) for use in ("size", "slips")}
    for (table,) in (HOURS.path, BENCH.path):
        put_in |= {(table, day): literals[table,] for day in days}
        for day in set(WEEKDAYS) - set(days):
            text = take_out(text, (table, day))
    if literals[COUNTRY.path] != quoted(f"{value_at(written, COUNTRY.path)}"):
        put_in[("shop", "open_on_holidays")] = "[]"
    for path, literal in put_in.items():
        if values_in(f"x = {literal}")["x"] != value_at(written, path):
            text = put(text, path, literal)
    return text
