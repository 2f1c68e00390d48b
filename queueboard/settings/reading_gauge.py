"""When the gauge is asked for and what its readings are held against, read from a table that may be missing."""

from difflib import get_close_matches

from queueboard.settings.fields import Table, written
from queueboard.settings.reading_work import EDGES
from queueboard.settings.shapes import Gauge, Kind

LOWEST_LINE_GF, HIGHEST_LINE_GF = 50, 5000
"""A razor blade needs about 50 grams-force (common practice, no source); no gauge of the trade shows 5000."""

_NUMBERS = {
    "every": (0, 1000, "knives"),
    "line_gf": (LOWEST_LINE_GF, HIGHEST_LINE_GF, "grams-force"),
    "wobble_gf": (0, 500, "grams-force"),
    "most_apart_gf": (0, HIGHEST_LINE_GF, "grams-force"),
}
"""Lowest, highest and unit of each number."""
_YES = ("fresh_belt", "proof_card", "complaint")
_KINDS = ("always", "by_material")


def read_gauge(whole: Table, kinds: tuple[Kind, ...]) -> Gauge:
    """The shop's sampling rule and lines; what is not written is as in Gauge."""
    if not whole.has("gauge"):
        return Gauge()
    table = whole.table("gauge")
    table.only(*_NUMBERS, *_YES, *_KINDS, "edges")
    plain = Gauge()
    numbers = {name: table.whole(name, *ends) for name, ends in _NUMBERS.items() if table.has(name)}
    named = {name: _kind_names(table, name, kinds) for name in _KINDS if table.has(name)}
    both = sorted(named.get("always", frozenset()) & named.get("by_material", frozenset()))
    if both:
        raise table.wrong(f"{both[0]} is always read and never read; take it out of one of the two", "by_material")
    yes = {name: table.yes(name) if table.has(name) else getattr(plain, name) is True for name in _YES}
    edges = plain.edges
    if table.has("edges"):
        lines = table.table("edges")
        lines.only(*EDGES)
        ends = _NUMBERS["line_gf"]
        edges = {edge: lines.whole(name, *ends) for name, edge in EDGES.items() if lines.has(name)}
    return Gauge(
        **numbers,
        fresh_belt=yes["fresh_belt"],
        proof_card=yes["proof_card"],
        complaint=yes["complaint"],
        always=named.get("always", plain.always),
        by_material=named.get("by_material", plain.by_material),
        edges=edges,
    )


def _kind_names(table: Table, key: str, kinds: tuple[Kind, ...]) -> frozenset[str]:
    names = [kind.name for kind in kinds]
    for place, name in enumerate(table.texts(key, longest=30)):
        if name not in names:
            close = get_close_matches(name, names, n=1, cutoff=0.5)
            hint = f"do you mean {close[0]}?" if close else f"the kinds are {', '.join(names)}"
            raise table.wrong(f"there is no kind {written(name)}; {hint}", key, place)
    return frozenset(table.texts(key, longest=30))
