"""When the gauge is asked for and what an edge is held against, read from a table that may be missing."""

from collections.abc import Mapping, Sequence

from queueboard.settings.fields import Table, meant, written
from queueboard.settings.reading_work import EDGES
from queueboard.settings.shapes import Gauge, Kind
from queueboard.words import Edge

_NUMBERS = {
    "every": (0, 999, "knives"),
    "wobble_gf": (1, 200, "grams-force"),
    "most_apart_gf": (10, 2000, "grams-force"),
}
"""Lowest, highest and unit of each number."""
_YES_OR_NO = ("fresh_belt", "proof_card", "complaint")
_LOWEST_GF, _HIGHEST_GF = 20, 2000


def read_gauge(whole: Table, kinds: Sequence[Kind]) -> Gauge:
    """The shop's sampling rule and its lines; what is not written is as in Gauge."""
    if not whole.has("gauge"):
        return Gauge()
    table = whole.table("gauge")
    table.only(*_NUMBERS, *_YES_OR_NO, "always", "by_cutting", "lines", "edges")
    usual = Gauge()
    always, by_cutting = _kinds(table, "always", kinds), _kinds(table, "by_cutting", kinds)
    if both := sorted(always & by_cutting):
        raise table.wrong(f"{written(both[0])} is tested by cutting, so it is never read; leave it out here", "always")
    return Gauge(
        every=_number(table, "every", usual.every),
        fresh_belt=_wish(table, "fresh_belt"),
        proof_card=_wish(table, "proof_card"),
        complaint=_wish(table, "complaint"),
        always=always,
        by_cutting=by_cutting,
        wobble_gf=_number(table, "wobble_gf", usual.wobble_gf),
        most_apart_gf=_number(table, "most_apart_gf", usual.most_apart_gf),
        lines=_lines(table, kinds),
        edges={**usual.edges, **_edges(table)},
    )


def _number(table: Table, key: str, usual: int) -> int:
    return table.whole(key, *_NUMBERS[key]) if table.has(key) else usual


def _wish(table: Table, key: str) -> bool:
    return table.yes(key) if table.has(key) else True


def _kinds(table: Table, key: str, kinds: Sequence[Kind]) -> frozenset[str]:
    """Names of kinds out of a list; empty where it is missing."""
    named = table.texts(key, longest=30) if table.has(key) else ()
    for name in named:
        _known(table, name, kinds, key)
    return frozenset(named)


def _lines(table: Table, kinds: Sequence[Kind]) -> Mapping[str, int]:
    if not table.has("lines"):
        return {}
    lines = table.table("lines")
    for name in lines.values:
        _known(lines, name, kinds, name)
    return {name: lines.whole(name, _LOWEST_GF, _HIGHEST_GF, "grams-force") for name in lines.values}


def _edges(table: Table) -> Mapping[Edge, int]:
    if not table.has("edges"):
        return {}
    edges = table.table("edges")
    edges.only(*EDGES)
    return {EDGES[name]: edges.whole(name, _LOWEST_GF, _HIGHEST_GF, "grams-force") for name in EDGES if edges.has(name)}


def _known(table: Table, name: str, kinds: Sequence[Kind], key: str) -> None:
    names = [kind.name for kind in kinds]
    if name not in names:
        hint = meant(name, names, f"the kinds are {', '.join(names)}")
        raise table.wrong(f"there is no kind {written(name)}; {hint}", key)
