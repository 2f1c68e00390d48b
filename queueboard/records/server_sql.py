"""The fixed SQL of the shop as the server's driver wants it written."""

import re
from functools import cache


@cache
def for_driver(sql: str) -> str:
    """A statement with its places for values as the driver has them, and without the index that SQLite is told."""
    return re.sub(r" INDEXED BY \w+", "", sql).replace("%", "%%").replace("?", "%s")
