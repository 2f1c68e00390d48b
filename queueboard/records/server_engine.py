"""What the looks into a shop must know of a PostgreSQL server."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from queueboard.records.connection import Cell, Raw
from queueboard.records.engine import Defaults, made_names, pattern
from queueboard.records.server import ServerRaw

OURS = ("layout_now", "number_given")
"""What a server has besides the tables of the layout."""


class ServerEngine:
    """PostgreSQL, one schema of one database."""

    def __init__(self, connection: Raw) -> None:
        if not isinstance(connection, ServerRaw):
            raise TypeError(f"a connection of ours was expected, not {type(connection).__name__}")
        self.connection = connection

    def layout(self) -> int:
        """Stands in a table of its own."""
        return int(self.connection.execute("SELECT layout FROM layout_now").fetchone()[0])

    def columns(self) -> dict[str, Defaults]:
        """Those of the layout; that the server has them so is for strange() to see."""
        return pattern(self.layout())

    def strange(self) -> bool:
        """Tables with their columns, indexes and guards, held against the layout by name."""
        layout = self.layout()
        found = self.connection.execute(
            "SELECT table_name, column_name FROM information_schema.columns WHERE table_schema = current_schema() "
            "ORDER BY table_name, ordinal_position"
        ).fetchall()
        there: dict[str, list[str]] = {}
        for table, column in found:
            there.setdefault(table, []).append(column)
        if {name: there[name] for name in there if name not in OURS} != {
            name: list(columns) for name, columns in pattern(layout).items()
        }:
            return True
        guards = self.connection.execute(
            "SELECT 'index', indexname FROM pg_indexes WHERE schemaname = current_schema() UNION ALL "
            "SELECT 'trigger', tgname FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid "
            "WHERE c.relnamespace = current_schema()::regnamespace AND tgenabled <> 'D' AND NOT tgisinternal"
        ).fetchall()
        wanted = {one for one in made_names(layout) if one[0] != "table"}
        return not wanted | {("trigger", "history_no_truncate")} <= {tuple(map(str, row)) for row in guards}

    def given(self) -> dict[str, int]:
        """A table of ours."""
        return dict(self.connection.execute("SELECT name, number FROM number_given").fetchall())

    def give_on(self, table: str, highest: int) -> None:
        """A table of ours."""
        self.connection.execute(
            "INSERT INTO number_given (name, number) VALUES (?, ?) "
            "ON CONFLICT (name) DO UPDATE SET number = excluded.number",
            (table, highest),
        )

    def integrity(self, most: int) -> list[str]:  # noqa: ARG002  # a server finds nothing by itself that we could ask
        """Checksums of pages are the server's own work; nothing to ask it for."""
        return []

    def unmatched(self) -> int:
        """The server lets no reference dangle, and none was put off."""
        return 0

    def streamed(self, sql: str, values: Sequence[Cell] = ()) -> Iterator[tuple[Any, ...]]:
        """A portion at a time."""
        return self.connection.streamed(sql, values)

    def put_in(self, table: str, columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> None:
        """In one stream, so that not each of them waits for the server."""
        self.connection.put_in(table, columns, rows)

    def facts(self) -> tuple[str, int, int]:
        """The server's version in the place of the journal's mode; its pages for all tables of the shop."""
        version = str(self.connection.execute("SHOW server_version").fetchone()[0]).split()[0]
        pages = self.connection.execute(
            "SELECT coalesce(sum(pg_total_relation_size(oid)), 0) / 8192 FROM pg_class "
            "WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r'"
        ).fetchone()[0]
        return f"PostgreSQL {version}", int(pages), 8192
