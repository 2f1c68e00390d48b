"""When parcels leave, what they weigh and what each carrier asks for, read from tables of which most may be missing."""

from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from enum import StrEnum
from typing import TypeVar

from queueboard.settings.fields import Table, meant, written
from queueboard.settings.parcel_shapes import (
    HEAVIEST_G,
    LONGEST_SIDE_MM,
    SHORTEST_SIDE_MM,
    BoxSize,
    Carrier,
    LastShip,
    Parcels,
    SideRounding,
    Volume,
    WeightRounding,
    Weights,
)
from queueboard.settings.reading_hours import weekday_of
from queueboard.settings.shapes import Kind, Span

MOST_ROWS = 50
"""Carriers, boxes, and rows of a table of last days; more are a slip."""

_WEIGHTS = {
    "guard_and_wrap_g": (0, 500, "grams"),
    "thing_g": (0, 5000, "grams"),
    "other_g": (1, 20_000, "grams"),
    "handle_mm": (0, 400, "millimetres"),
}
"""Lowest, highest and unit of each number."""

Rounding = TypeVar("Rounding", bound=StrEnum)


def read_parcels(whole: Table, hours: Mapping[int, tuple[Span, ...]], kinds: Sequence[Kind]) -> Parcels:
    """Everything about parcels; only carrier_days, collection and cut_off must be written."""
    table = whole.table("parcels")
    table.only("carrier_days", "collection", "cut_off", "last_checked", "last_ship", "volume", "boxes", "weights")
    return Parcels(
        carrier_days=table.whole("carrier_days", 0, 60, "working days"),
        collection_weekdays=_collection(table, hours),
        cut_off=table.clock("cut_off"),
        last_ship=_last_ship(table),
        last_checked=_last_checked(table),
        volume=_volume(table.table("volume")) if table.has("volume") else None,
        boxes=_boxes(table),
        weights=_weights(table.table("weights"), kinds) if table.has("weights") else Weights(),
        carriers=_carriers(whole, hours),
    )


def _collection(table: Table, hours: Mapping[int, tuple[Span, ...]]) -> frozenset[int]:
    days = [weekday_of(table, "collection", place) for place in range(len(table.list_of("collection")))]
    if not set(days) & set(hours):
        raise table.wrong(
            "the carrier collects on no weekday on which the shop is open; no parcel could leave", "collection"
        )
    return frozenset(days)


def _last_checked(table: Table) -> date | None:
    return table.day("last_checked") if table.has("last_checked") else None


def _rows(table: Table, key: str) -> tuple[Table, ...]:
    rows = table.tables(key)
    if len(rows) > MOST_ROWS:
        raise rows[MOST_ROWS].wrong(f"there are {len(rows)} [[{key}]]; write at most {MOST_ROWS}")
    return rows


def _last_ship(table: Table) -> tuple[LastShip, ...]:
    """The rows of last days, by the day of leaving."""
    found = []
    for row in _rows(table, "last_ship"):
        row.only("ship_on", "arrives_by")
        ship_on, arrives_by = row.day("ship_on"), row.day("arrives_by")
        if arrives_by < ship_on:
            raise row.wrong(
                f"this row arrives by {arrives_by}, before it leaves on {ship_on}; write the later day behind",
                "arrives_by",
            )
        found.append(LastShip(ship_on=ship_on, arrives_by=arrives_by))
    return tuple(sorted(found, key=lambda row: (row.ship_on, row.arrives_by)))


def _carriers(whole: Table, hours: Mapping[int, tuple[Span, ...]]) -> tuple[Carrier, ...]:
    """The [[carriers]], each name once; a shop may write none."""
    taken: set[str] = set()
    found = []
    for table in _rows(whole, "carriers"):
        table.only("name", "carrier_days", "collection", "cut_off", "last_ship", "last_checked")
        name = table.text("name", longest=60)
        if name.casefold() in taken:
            raise table.wrong(f"{written(name)} stands in two [[carriers]]; write each carrier once", "name")
        taken.add(name.casefold())
        found.append(
            Carrier(
                name=name,
                carrier_days=table.whole("carrier_days", 0, 60, "working days") if table.has("carrier_days") else None,
                collection_weekdays=_collection(table, hours) if table.has("collection") else None,
                cut_off=table.clock("cut_off") if table.has("cut_off") else None,
                last_ship=_last_ship(table),
                last_checked=_last_checked(table),
            )
        )
    return tuple(found)


def _volume(table: Table) -> Volume:
    table.only("divisor", "unit", "sides", "weight")
    unit = table.text("unit", longest=10)
    if unit not in ("cm", "in"):
        raise table.wrong(f'unit is "cm" or "in", not {written(unit)}', "unit")
    return Volume(
        divisor=Decimal(table.whole("divisor", 1, 100_000, "cubic inches a pound, or cubic centimetres a kilogram,")),
        unit=unit,
        sides=_rounding(table, "sides", SideRounding.HALF_UP),
        weight=_rounding(table, "weight", WeightRounding.UP_TO_WHOLE),
    )


def _rounding(table: Table, key: str, usual: Rounding) -> Rounding:
    """One of the words of a rounding; the usual one where none is written."""
    if not table.has(key):
        return usual
    known, word = list(type(usual)), table.text(key, longest=30)
    if word not in known:
        hint = meant(word, known, f"write one of {', '.join(known)}")
        raise table.wrong(f"{written(word)} is no rounding; {hint}", key)
    return type(usual)(word)


def _boxes(table: Table) -> tuple[BoxSize, ...]:
    """The boxes the shop packs in, which are written by how many knives they hold."""
    found: list[BoxSize] = []
    for row in _rows(table, "boxes"):
        row.only("knives", "size_mm", "weight_g", "label")
        knives = row.whole("knives", 1, 999, "knives")
        if found and knives < found[-1].knives:
            raise row.wrong(
                f"a box for {knives} knives stands behind one for {found[-1].knives}; write the smallest first",
                "knives",
            )
        found.append(
            BoxSize(
                knives=knives,
                size_mm=_size(row),
                weight_g=row.whole("weight_g", 0, HEAVIEST_G, "grams"),
                label_cents=row.cents("label") if row.has("label") else None,
            )
        )
    return tuple(sorted(found, key=lambda box: (box.knives, box.size_mm)))


def _size(row: Table) -> tuple[int, int, int]:
    sides = row.list_of("size_mm")
    length, width, height = sides if len(sides) == 3 else (0, 0, 0)
    if not (_is_side(length) and _is_side(width) and _is_side(height)):
        raise row.wrong("size_mm is three whole numbers from 10 to 2000, like [450, 250, 100]", "size_mm")
    return int(f"{length}"), int(f"{width}"), int(f"{height}")


def _is_side(side: object) -> bool:
    return isinstance(side, int) and not isinstance(side, bool) and SHORTEST_SIDE_MM <= side <= LONGEST_SIDE_MM


def _weights(table: Table, kinds: Sequence[Kind]) -> Weights:
    table.only(*_WEIGHTS, "kinds")
    numbers = {name: table.whole(name, *ends) for name, ends in _WEIGHTS.items() if table.has(name)}
    return Weights(**numbers, kinds=_of_kinds(table.table("kinds"), kinds) if table.has("kinds") else {})


def _of_kinds(table: Table, kinds: Sequence[Kind]) -> Mapping[str, int]:
    names = [kind.name for kind in kinds]
    for name in table.values:
        if name not in names:
            hint = meant(name, names, f"the kinds are {', '.join(names)}")
            raise table.wrong(f"there is no kind {written(name)}; {hint}", name)
    return {name: table.whole(name, 1, 20_000, "grams") for name in table.values}
