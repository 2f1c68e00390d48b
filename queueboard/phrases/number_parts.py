"""The lists among the shop's own numbers: kinds, processes, belts, closed days, carriers, boxes, shipping."""

from collections.abc import Iterable, Iterator

from queueboard.phrases.dates import many
from queueboard.phrases.number_sorts import (
    BELTS,
    CLOCK,
    COLLECTION,
    DAY,
    GRAMS,
    LENGTH,
    MONEY,
    NAMES,
    SIDES,
    TEXT,
    Sort,
    Ways,
    counted,
    number,
    one_of,
    whole,
)
from queueboard.phrases.own_numbers import Group, Number, Row, Rows, Values, rows_group
from queueboard.settings.editing import value_at
from queueboard.settings.locate import Path
from queueboard.settings.reading_work import CONDITIONS, EDGES
from queueboard.shop.picture import Picture

EDGE = one_of({key: edge.value for key, edge in EDGES.items()})
DECLINED = "declined"


def kind_names(values: Values) -> Iterable[tuple[str, str]]:
    """The kinds by name."""
    rows = values.get("kinds")
    return tuple((f"{row['name']}", f"{row['name']}") for row in rows) if isinstance(rows, list) else ()


def edge_names(_values: Values) -> Iterable[tuple[str, str]]:
    """The edges as the settings write them, and as they are called."""
    return tuple((key, edge.value) for key, edge in EDGES.items())


def _shown(row: Row, key: str, sort: Sort, ways: Ways, unset: str = "") -> str:
    return Number(path=(key,), words="", sort=sort, unset=unset).shown(row, ways)


def _told(*parts: str) -> str:
    return " · ".join(filter(None, parts))


def _days(row: Row, ways: Ways, first: str, last: str) -> str:
    return " to ".join(dict.fromkeys(_shown(row, key, DAY, ways) for key in (first, last) if key in row))


def _kind_line(row: Row, ways: Ways) -> tuple[str, str]:
    minutes = row["minutes"] if isinstance(row["minutes"], dict) else {}
    told = " ".join(f"{minutes.get(key, '-')}" for key in CONDITIONS)
    rest = (
        _shown(row, "price", MONEY, ways),
        f"{told} min",
        _shown(row, "length_mm", LENGTH, ways),
        _shown(row, "process", TEXT, ways),
        "" if row["edge"] == row["process"] else _shown(row, "edge", EDGE, ways),
    )
    return f"{row['name']}", _told(*rest)


def _kind_used(name: str, picture: Picture) -> str:
    knives = [(box.box.number, knife) for box in picture.boxes for knife in box.knives if knife.kind == name]
    if not knives:
        return ""
    boxes = ", ".join(map(str, sorted({number for number, _ in knives})))
    return (
        f"{many(len(knives), 'knife')} in open boxes ({boxes}) {'is' if len(knives) == 1 else 'are'} of this kind. "
        "They keep their price; their minutes then count as the longest of any kind, in the first process."
    )


KIND_ROWS = Rows(
    path=("kinds",),
    one="kind",
    columns=(
        Number(path=("name",), words="name", sort=TEXT, needed=True),
        Number(path=("short",), words="short forms", sort=NAMES),
        Number(path=("process",), words="process", sort=TEXT, needed=True),
        Number(path=("edge",), words="usual edge", sort=EDGE, needed=True),
        Number(path=("length_mm",), words="usual length", sort=LENGTH),
        Number(path=("price",), words="price", sort=MONEY, needed=True),
        *(
            Number(path=("minutes", key), words=f"min, {said.value}", sort=whole("minutes"), unset=DECLINED)
            for key, said in CONDITIONS.items()
        ),
    ),
    line=_kind_line,
    used=_kind_used,
)

PROCESS_ROWS = Rows(
    path=("processes",),
    one="process",
    columns=(
        Number(path=("name",), words="name", sort=TEXT, needed=True),
        Number(path=("belts",), words="belts in order", sort=BELTS, emptied="[]"),
        Number(path=("finish",), words="finish", sort=TEXT, needed=True),
        Number(path=("run_size",), words="at one go", sort=counted("knife"), needed=True),
        Number(path=("set_up_seconds",), words="set-up", sort=whole("seconds"), unset="one change a belt"),
    ),
    line=lambda row, ways: (
        f"{row['name']}",
        _told(
            f"{_shown(row, 'belts', BELTS, ways, 'no belt')}, {row['finish']}",
            _shown(row, "run_size", counted("knife"), ways),
        ),
    ),
)

BELT_ROWS = Rows(
    path=("belts", "kinds"),
    one="belt",
    columns=(
        Number(path=("label",), words="on its back", sort=TEXT, needed=True),
        Number(path=("life_knives",), words="lasts", sort=counted("knife"), needed=True),
        Number(path=("cost",), words="costs", sort=MONEY, needed=True),
        Number(path=("reorder_at",), words="order at", sort=counted("spare"), needed=True),
    ),
    line=lambda row, ways: (
        f"{row['label']}",
        _told(
            f"lasts {_shown(row, 'life_knives', counted('knife'), ways)}",
            _shown(row, "cost", MONEY, ways),
            f"order at {_shown(row, 'reorder_at', counted('spare'), ways)}",
        ),
    ),
)

CLOSURE_ROWS = Rows(
    path=("closures",),
    one="closure",
    columns=(
        Number(path=("first",), words="first day", sort=DAY, needed=True),
        Number(path=("last",), words="last day", sort=DAY, unset="that day alone"),
        Number(path=("reason",), words="why", sort=TEXT, needed=True),
    ),
    line=lambda row, ways: (_days(row, ways, "first", "last"), f"{row['reason']}"),
)

MARKET_ROWS = Rows(
    path=("markets",),
    one="market day",
    columns=(
        Number(path=("name",), words="name", sort=TEXT, needed=True),
        Number(path=("rule",), words="rule (RFC 5545)", sort=TEXT, needed=True),
        Number(path=("start",), words="counted from", sort=DAY, needed=True),
    ),
    line=lambda row, ways: (f"{row['name']}", f"{row['rule']} from {_shown(row, 'start', DAY, ways)}"),
)

SHIPPING_ROWS = Rows(
    path=("prices", "shipping"),
    one="shipping band",
    columns=(
        Number(path=("knives",), words="up to", sort=counted("knife"), needed=True),
        Number(path=("price",), words="price", sort=MONEY, needed=True),
    ),
    line=lambda row, ways: (
        f"up to {_shown(row, 'knives', counted('knife'), ways)}",
        _shown(row, "price", MONEY, ways),
    ),
    by="knives",
)

BOX_ROWS = Rows(
    path=("parcels", "boxes"),
    one="box to pack in",
    columns=(
        Number(path=("knives",), words="up to", sort=counted("knife"), needed=True),
        Number(path=("size_mm",), words="outside", sort=SIDES, needed=True),
        Number(path=("weight_g",), words="empty, filled", sort=GRAMS, needed=True),
        Number(path=("label",), words="a label costs", sort=MONEY),
    ),
    line=lambda row, ways: (
        f"up to {_shown(row, 'knives', counted('knife'), ways)}",
        _told(
            _shown(row, "size_mm", SIDES, ways),
            _shown(row, "weight_g", GRAMS, ways),
            f"label {_shown(row, 'label', MONEY, ways, 'not known')}",
        ),
    ),
    by="knives",
)


def _carrier_used(name: str, picture: Picture) -> str:
    boxes = [
        f"{box.box.number}"
        for box in picture.boxes
        if box.label is not None and box.label.carrier.strip().casefold() == name.casefold()
    ]
    if not boxes:
        return ""
    return f"Labels of open boxes name it ({', '.join(boxes)}); they then go by the shop's usual days and cut-off."


CARRIER_ROWS = Rows(
    path=("carriers",),
    one="carrier",
    columns=(
        Number(path=("name",), words="as on its label", sort=TEXT, needed=True),
        Number(path=("carrier_days",), words="on the way", sort=whole("working days"), unset="as usual"),
        Number(path=("collection",), words="collects", sort=COLLECTION, unset="as usual"),
        Number(path=("cut_off",), words="cut-off", sort=CLOCK, unset="as usual"),
        Number(path=("last_checked",), words="last checked", sort=DAY, unset="never checked"),
    ),
    line=lambda row, ways: (
        f"{row['name']}",
        _told(
            _shown(row, "carrier_days", whole("days"), ways, "usual days"),
            _shown(row, "collection", COLLECTION, ways, "usual weekdays"),
            _shown(row, "cut_off", CLOCK, ways, "usual cut-off"),
            f"checked {_shown(row, 'last_checked', DAY, ways)}" if "last_checked" in row else "never checked",
        ),
    ),
    used=_carrier_used,
)


def _last_ship_rows(path: Path) -> Rows:
    return Rows(
        path=path,
        one="last day before a feast",
        columns=(
            Number(path=("arrives_by",), words="to be there by", sort=DAY, needed=True),
            Number(path=("ship_on",), words="leaves by", sort=DAY, needed=True),
        ),
        line=lambda row, ways: (
            f"there by {_shown(row, 'arrives_by', DAY, ways)}",
            f"leaves by {_shown(row, 'ship_on', DAY, ways)}",
        ),
    )


def last_days(values: Values, ways: Ways) -> Iterator[Group]:
    """The last days before feasts: for every carrier, then for each that has a name."""
    yield rows_group("Last days before feasts, any carrier", _last_ship_rows(("parcels", "last_ship")), values, ways)
    carriers = value_at(values, ("carriers",))
    for place, carrier in enumerate(carriers if isinstance(carriers, list) else ()):
        heading = f"Last days before feasts, {carrier['name']}"
        yield rows_group(heading, _last_ship_rows(("carriers", place, "last_ship")), values, ways)


LENGTH_COLUMNS = (
    Number(path=("base",), words="to begin with", sort=MONEY, unset="flat, by its kind", needed=True),
    Number(path=("each",), words="for each inch or cm", sort=MONEY, needed=True),
)
STEP = number("(inches or cm)")
