"""A file that holds no shop, but the address of the database on a server that does.

Papers, half-typed forms and the list of who was erased lie beside it, as they do beside a shop file.
"""

import re
from pathlib import Path
from urllib.parse import unquote

from queueboard.errors import FileError

SCHEMES = ("postgresql://", "postgres://")
LONGEST = 2000
"""Bytes."""

PASSWORD = re.compile(r"//[^?]*:[^?]*@|[?&](ssl)?password=", re.IGNORECASE)
"""An address with a password in it: user:password@ (RFC 3986, section 3.2.1), or among its parameters.

A slash in a password would have to be written as %2F; one that was not is found as well.
"""


def is_address(text: str) -> bool:
    """True for the address of a database on a server."""
    return text.startswith(SCHEMES)


def checked_address(text: str) -> str:
    """An address as it may be kept; FileError, which does not repeat it, for one with a password in it."""
    if PASSWORD.search(text) or PASSWORD.search(unquote(text)):
        raise FileError(
            "The address has a password in it, and whoever looks at this machine's processes could read it. Leave it "
            "out, and write it into ~/.pgpass (chmod 600) or the file that PGPASSFILE names."
        )
    if not text.isprintable() or len(text.encode()) > LONGEST:
        raise FileError("The address has signs in it that no address has. Type it again.")
    return text


def address_in(path: Path) -> str | None:
    """The address in a file; None for anything else, a shop file and no file at all among it."""
    try:
        if not path.is_file():
            return None
        with path.open("rb") as file:
            if not file.read(len(SCHEMES[0])).startswith(tuple(one.encode() for one in SCHEMES)):
                return None
            file.seek(0)
            return checked_address(file.read(LONGEST + 1).decode(errors="replace").strip())
    except OSError:
        return None


def insist_on_file(path: Path) -> None:
    """FileError for a shop on a server, where something is done that only a file can have."""
    if address_in(path) is not None:
        raise FileError(
            "That shop is on a server: its copies, and going back to one, are the server's own (pg_dump, pg_restore). "
            "`queueboard export FILE` looks it over and writes all of it out. Nothing was changed."
        )


def point(path: Path, address: str) -> None:
    """Write down where a shop is, for its owner alone; what stands there already is left as it is."""
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    if address_in(path) == address:
        return
    passing = path.with_name(path.name + ".part")
    passing.touch(mode=0o600)
    passing.write_text(address + "\n", encoding="utf-8")
    passing.replace(path)


def folder_name(address: str) -> str:
    """What the folder for a shop on a server is called on this machine: its host and database, and no user."""
    _, _, rest = address.partition("://")
    rest = rest.rpartition("@")[2]
    return re.sub(r"[^A-Za-z0-9.-]+", "_", rest).strip("_.")[:100] or "server"
