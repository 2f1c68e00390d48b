"""A shop on a server, as the shop room opens, makes and fills one. Loaded only for such a shop."""

import sys
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.errors import FileError
from queueboard.records import database as db
from queueboard.records import looking_over
from queueboard.records.line_file import hand_over
from queueboard.records.migrations import STEPS

if "psycopg" in sys.modules and sys.modules["psycopg"] is None:
    del sys.modules["psycopg"]  # a start that took the name for that of a file spares itself all drivers

try:
    from queueboard.records import server
except ModuleNotFoundError as error:
    raise FileError(
        "This queueboard knows no servers yet: the library psycopg is missing. Install it with "
        "`pip install 'queueboard[postgres]'`; nothing was changed."
    ) from error

PATIENCE_MS = 10_000


def connected(path: Path, address: str, patience_ms: int) -> server.ServerDatabase:
    """Connect; every fault becomes a sentence."""
    with db.faults(path):
        return server.connect(address, patience_ms)


def open_on_server(path: Path, address: str, patience_ms: int) -> tuple[server.ServerDatabase, str]:
    """Open the shop of a database, and lead it to today's layout where it is older; its salt beside it."""
    database = connected(path, address, patience_ms)
    try:
        with db.faults(path):
            if not server.has_shop(database):
                raise FileError(
                    "There is no shop in that database yet. `queueboard start` makes one there; "
                    "`queueboard take FILE` brings one that was written out."
                )
            layout = database.layout()
            if layout < len(STEPS):
                with database.atomic():
                    server.bring_up(database)
            salt = database.one("SELECT salt FROM shop")
        if layout > len(STEPS):
            raise db.newer(path, layout)
    except FileError:
        database.close()
        raise
    return database, str(salt)


@contextmanager
def new_on_server(path: Path, address: str) -> Iterator[Path]:
    """A place for a file that is taken to an empty database at the end; nothing of the file stays here."""
    with closing(connected(path, address, PATIENCE_MS)) as database, db.faults(path):
        if server.has_shop(database):
            raise server.there_already()
        with TemporaryDirectory(prefix="queueboard-") as folder:
            made = Path(folder) / "made.qb"
            yield made
            with closing(db.connect(made, PATIENCE_MS)) as file, file.reading():
                server.make(database, lambda raw: _fill(raw, file))


def _fill(raw: server.ServerRaw, file: db.ShopDatabase) -> None:
    hand_over(file.raw(), raw)
    server.number_on(raw)
    raw.execute("SET CONSTRAINTS ALL IMMEDIATE")
    found = looking_over.look_over(raw)
    if not found.sound:
        why = "; ".join((*found.integrity, *found.history)) or "its rows do not fit each other"
        raise FileError(f"The server does not hold what was brought there: {why}. Nothing of it was kept there.")
