"""Processes with their belts, and kinds with their minutes and prices, read from their tables."""

from collections.abc import Mapping

from queueboard.settings.fields import Table, meant, written
from queueboard.settings.shapes import Belt, Kind, Process
from queueboard.words import Condition, Edge

EDGES: Mapping[str, Edge] = {edge.name.lower(): edge for edge in Edge}
"""How an edge is written in the settings: plain, serrated, scalloped, single_right, single_left."""

CONDITIONS: Mapping[str, Condition] = {condition.name.lower(): condition for condition in Condition}
"""How a condition is written in the settings: tired, dull, small_chips, big_chips."""


def read_processes(whole: Table) -> tuple[Process, ...]:
    """The processes, at least one, each name once."""
    belts = whole.table("belts")
    belts.only("change_seconds", "kinds")
    change_seconds = belts.whole("change_seconds", 0, 3600, "seconds")
    tables = whole.tables("processes")
    processes = tuple(_process(table, change_seconds) for table in tables)
    if not processes:
        raise whole.wrong("there is no process; add a [[processes]] with name, belts, finish and run_size")
    taken: set[str] = set()
    for table, process in zip(tables, processes, strict=True):
        _once(table, "name", process.name, taken)
    return processes


def _process(table: Table, change_seconds: int) -> Process:
    table.only("name", "belts", "finish", "run_size", "set_up_seconds")
    belts = tuple(_belt(belt) for belt in table.tables("belts"))
    labels = [belt.label for belt in belts]
    if twice := next((label for label in labels if labels.count(label) > 1), None):
        raise table.wrong(
            f"the belt {written(twice)} stands twice in one process; give each its own label, as on its back", "belts"
        )
    return Process(
        name=table.text("name", longest=30),
        belts=belts,
        finish=table.text("finish", longest=80),
        set_up_seconds=(
            table.whole("set_up_seconds", 0, 14_400, "seconds")
            if table.has("set_up_seconds")
            else len(belts) * change_seconds
        ),
        run_size=table.whole("run_size", 1, 200, "knives"),
    )


def _belt(table: Table) -> Belt:
    table.only("label", "grit_um")
    return Belt(label=table.text("label", longest=20), grit_um=table.micrometres("grit_um"))


def read_edges(whole: Table, processes: tuple[Process, ...]) -> Mapping[Edge, str]:
    """The process of each edge that a kind does not usually have; the table may be missing."""
    if not whole.has("edges"):
        return {}
    table = whole.table("edges")
    table.only(*EDGES)
    return {edge: _process_name(table, name, processes) for name, edge in EDGES.items() if table.has(name)}


def read_kinds(whole: Table, processes: tuple[Process, ...], edges: Mapping[Edge, str]) -> tuple[Kind, ...]:
    """The kinds, at least one; a name or short form stands for one kind only."""
    tables = whole.tables("kinds")
    kinds = tuple(_kind(table, processes, edges) for table in tables)
    if not kinds:
        raise whole.wrong("there is no kind of knife; add a [[kinds]] with name, process, edge, price and minutes")
    taken: set[str] = set()
    for table, kind in zip(tables, kinds, strict=True):
        _once(table, "name", kind.name, taken)
        for short in kind.short:
            _once(table, "short", short, taken)
    return kinds


def _kind(table: Table, processes: tuple[Process, ...], edges: Mapping[Edge, str]) -> Kind:
    table.only("name", "short", "process", "edge", "length_mm", "price", "minutes")
    kind = Kind(
        name=table.text("name", longest=30),
        process=_process_name(table, "process", processes),
        edge=_edge(table),
        price_cents=table.cents("price"),
        minutes=_minutes(table.table("minutes")),
        short=table.texts("short", longest=15) if table.has("short") else (),
        length_mm=table.whole("length_mm", 20, 900, "millimetres") if table.has("length_mm") else None,
    )
    for name in (kind.name, *kind.short):
        if not name[0].isalpha() or {",", "!"} & set(name) or len(name.split()) > 4:
            raise table.wrong(
                f"{written(name)} cannot be typed as a kind; up to four words, a letter first, no , or !", "name"
            )
    if kind.edge is not Edge.PLAIN and kind.process == edges.get(Edge.PLAIN):
        told = f"{kind.name} has a {kind.edge} edge but goes to {kind.process}, the process for plain edges"
        raise table.wrong(f"{told}; give it another", "process")
    return kind


def _minutes(table: Table) -> Mapping[Condition, int]:
    """Minutes by condition; one that is missing is declined."""
    table.only(*CONDITIONS)
    minutes = {
        condition: table.whole(name, 1, 600, "minutes") for name, condition in CONDITIONS.items() if table.has(name)
    }
    if not minutes:
        raise table.wrong(f"minutes are empty; write at least one of {', '.join(CONDITIONS)}")
    return minutes


def _edge(table: Table) -> Edge:
    name = table.text("edge", longest=30)
    if name not in EDGES:
        raise table.wrong(f"{written(name)} is no edge; write one of {', '.join(EDGES)}", "edge")
    return EDGES[name]


def _process_name(table: Table, key: str, processes: tuple[Process, ...]) -> str:
    name = table.text(key, longest=30)
    names = [process.name for process in processes]
    if name not in names:
        hint = meant(name, names, f"the processes are {', '.join(names)}")
        raise table.wrong(f"there is no process {written(name)}; {hint}", key)
    return name


def _once(table: Table, key: str, name: str, taken: set[str]) -> None:
    if name.casefold() in taken:
        raise table.wrong(f"{written(name)} stands for two things; every name and short form is written once", key)
    taken.add(name.casefold())
