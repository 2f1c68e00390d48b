"""One transaction that changes state and adds the matching lines of history, or does neither."""

import hashlib
import hmac
import json
from collections.abc import Collection, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import field

from queueboard.errors import ChangedError
from queueboard.records import statements
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import to_us
from queueboard.records.row import Row
from queueboard.records.tables import STATE, BoxRow, CustomerRow, HistoryRow, PersonalRow
from queueboard.records.telling import who_changed_last
from queueboard.slotted import dataclass
from queueboard.values.actor import Actor

FIRST_PREVIOUS = "0" * 64
"""What the first line of history is chained to."""

Values = dict[str, Cell]

_AS_WRITTEN = json.JSONEncoder(sort_keys=True, separators=(",", ":"), ensure_ascii=False)

_OF_A_BOX = ("box_id", "from_box_id", "to_box_id")
"""The columns that say which box a row belongs to; a knife that is moved belongs to two."""


def masked(table: type[Row], values: Mapping[str, Cell], salt: str) -> Values:
    """A row as history may hold it: a person's own text becomes a salted digest (empty text stays empty)."""
    return {
        name: digest(str(cell), salt) if name in table.personal and cell not in (None, "") else cell
        for name, cell in values.items()
    }


def only_changed(table: type[Row], before: Values | None, after: Values | None) -> tuple[Values | None, Values | None]:
    """What a line of history holds of a row: all of it when it comes or goes, else what changed and what is asked for.

    A row of twenty columns is moved five times in its life; told whole each time, history would be most of the file.
    """
    if before is None or after is None:
        return before, after
    names = [name for name in after if name in table.told or before[name] != after[name]]
    return {name: before[name] for name in names}, {name: after[name] for name in names}


def digest(text: str, salt: str) -> str:
    """A salted digest that names a text without telling it."""
    return "#" + hmac.digest(bytes.fromhex(salt), text.encode(), "sha256").hex()[:24]


def canonical(values: object) -> str:
    """JSON that is the same for the same content, whatever the order."""
    return _AS_WRITTEN.encode(values)


def chain(previous: str, line: Mapping[str, Cell]) -> str:
    """The hash of a line, chained to the hash of the line before."""
    return hashlib.sha256((previous + canonical(dict(line))).encode()).hexdigest()


@dataclass(slots=True)
class Writing:
    """The open transaction of one action."""

    database: ShopDatabase
    actor: Actor
    operation: str
    salt: str
    about: dict[str, object] = field(default_factory=dict)
    undoes: str | None = None
    reason: str = ""
    lines: int = 0
    words_kept: bool = True
    """False for the action that erases words: what stood before is not kept beside history either."""
    customers: set[int] = field(default_factory=set)
    """Ids of the customers that the action has touched."""
    boxes: set[int] = field(default_factory=set)
    """Ids of the boxes that the action has touched, themselves or in what belongs to them."""
    tables: set[type[Row]] = field(default_factory=set)
    """The tables that the action has touched."""
    _rows: dict[tuple[type[Row], int], Values | None] = field(default_factory=dict)
    """Rows as they are stored: nobody else writes while the action is open, so that each is read once."""
    _last: str = ""
    """The hash of the newest line of history; empty before it is asked for."""

    @property
    def now_us(self) -> int:
        """The instant of the action."""
        return to_us(self.actor.now)

    def tell(self, **about: object) -> None:
        """Say what the action is about, before its first change; no person's text."""
        self.about.update({name: value for name, value in about.items() if value is not None})

    def row(self, table: type[Row], row_id: int) -> Values | None:
        """The row as it is stored; None when it is not there. It is not to be changed by hand."""
        key = table, row_id
        if key not in self._rows:
            self._rows[key] = statements.select(self.database, table, row_id)
        return self._rows[key]

    def read_rows(self, table: type[Row], ids: Collection[int]) -> None:
        """Read many rows with one query, for whoever will look at each of them."""
        left = {row_id for row_id in ids if (table, row_id) not in self._rows}
        found = statements.select_many(self.database, table, left) if left else {}
        self._rows.update({(table, row_id): found.get(row_id) for row_id in left})

    def insert(self, table: type[Row], **values: Cell) -> int:
        """Add a row and its line of history; returns its id."""
        row_id = statements.insert(self.database, table, {"row_version": 1, **values})
        self._rows.pop((table, row_id), None)
        self._remember(table, row_id, None, self.row(table, row_id))
        return row_id

    def change(self, table: type[Row], row_id: int, seen: int | None, **values: Cell) -> None:
        """Change a row that still has the version that was seen (None: whatever it has)."""
        before = self.row(table, row_id)
        if before is None or (seen is not None and before["row_version"] != seen):
            raise ChangedError(self._who_changed(table, row_id))
        changed = {name: value for name, value in values.items() if before[name] != value}
        if changed:
            self._write(table, before, changed)

    def touch(self, table: type[Row], row_id: int) -> None:
        """Raise the version of a row for something told of it that stands in a row of its own.

        Whoever still has the old version in view (a second window that tells another date) is refused.
        """
        before = self.row(table, row_id)
        if before is not None:
            self._write(table, before, {})

    def _write(self, table: type[Row], before: Values, changed: Values) -> None:
        row_id = int(str(before["id"]))
        version = int(str(before["row_version"]))
        after = {**before, **changed, "row_version": version + 1}
        if not statements.update(self.database, table, row_id, version, {**changed, "row_version": version + 1}):
            raise ChangedError(self._who_changed(table, row_id))
        self._rows[table, row_id] = after
        self._remember(table, row_id, before, after)

    def remove(self, table: type[Row], row_id: int) -> None:
        """Take a row away (a tick, or a line typed by mistake); history keeps it."""
        before = self.row(table, row_id)
        if before is None:
            raise ChangedError(self._who_changed(table, row_id))
        statements.delete(self.database, table, row_id)
        self._rows[table, row_id] = None
        self._remember(table, row_id, before, None)

    def put_back(self, table: type[Row], row_id: int, values: Values) -> None:
        """Put a removed row back under its old id."""
        statements.insert(self.database, table, {**values, "id": row_id})
        self._rows.pop((table, row_id), None)
        self._remember(table, row_id, None, self.row(table, row_id))

    def _who_changed(self, table: type[Row], row_id: int) -> str:
        name = _name_of(table)
        by = who_changed_last(self.database, name, row_id)
        who = f"{by} has" if by else "Somebody has"
        return f"{who} just changed this {name.replace('_', '-')}; nothing was stored. Look again, then decide."

    def _remember(self, table: type[Row], row_id: int, before: Values | None, after: Values | None) -> None:
        first = self.lines == 0
        was, now = only_changed(table, before, after)
        line: dict[str, Cell] = {
            "group_id": self.actor.group_id,
            "line": self.lines,
            "at_us": self.now_us,
            "by": self.actor.initials,
            "operation": self.operation,
            "about": canonical(self.about) if first else None,
            "undoes": self.undoes if first else None,
            "reason": digest(self.reason, self.salt) if first and self.reason else None,
            "entity": _name_of(table),
            "entity_id": row_id,
            "before": None if was is None else canonical(masked(table, was, self.salt)),
            "after": None if now is None else canonical(masked(table, now, self.salt)),
        }
        previous = self._last or str(
            self.database.one("SELECT hash FROM history ORDER BY id DESC LIMIT 1") or FIRST_PREVIOUS
        )
        self._last = chain(previous, line)
        history_id = statements.insert(self.database, HistoryRow, {**line, "previous": previous, "hash": self._last})
        self.lines += 1
        self.tables.add(table)
        if table is CustomerRow:
            self.customers.add(row_id)
        if table is BoxRow:
            self.boxes.add(row_id)
        belongs = (row.get(name) for row in (before or {}, after or {}) for name in _OF_A_BOX)
        self.boxes.update(int(box_id) for box_id in belongs if box_id is not None)
        self._keep_apart(table, history_id, was, now, self.reason if first else "")

    def _keep_apart(
        self, table: type[Row], history_id: int, before: Values | None, after: Values | None, reason: str
    ) -> None:
        texts: list[dict[str, Cell]] = [
            {"history_id": history_id, "side": side, "field": name, "text": str(values[name])}
            for side, values in (("before", before), ("after", after))
            if values is not None and self.words_kept
            for name in sorted(table.personal)
            if values.get(name) not in (None, "")
        ]
        if reason:
            texts.append({"history_id": history_id, "side": "reason", "field": "reason", "text": reason})
        for text in texts:
            statements.insert(self.database, PersonalRow, text)


@contextmanager
def transaction(database: ShopDatabase, actor: Actor, operation: str, salt: str) -> Iterator[Writing]:
    """One BEGIN IMMEDIATE ... COMMIT; any error inside rolls all of it back."""
    with database.atomic():
        yield Writing(database=database, actor=actor, operation=operation, salt=salt)


def _name_of(table: type[Row]) -> str:
    return next(name for name, candidate in STATE.items() if candidate is table)
