"""Counts the places where the types are loose: Any, cast and type: ignore, room by room.

Run it with `python -m tests.house.escapes`.
"""

import ast
import io
import re
import tokenize
from collections import Counter
from collections.abc import Iterator

from tests.house.tree import Source, sources

KINDS = ("Any", "cast", "type: ignore")
WORDS = re.compile(rf"\b(?:{'|'.join(KINDS)})\b")


def escapes(source: Source) -> Iterator[tuple[int, str]]:
    """Line and kind of each place where mypy is told to look away; a file that has none of the words is not read."""
    if not WORDS.search(source.text):
        return
    for node in ast.walk(source.tree):
        match node:
            case ast.Name(id="Any" | "cast" as kind) | ast.Attribute(value=ast.Name(id="typing" | "t"), attr=kind):
                if kind in KINDS:
                    yield node.lineno, kind
            case _:
                pass
    for token in tokenize.generate_tokens(io.StringIO(source.text).readline):
        if token.type == tokenize.COMMENT and token.string.removeprefix("#").strip().startswith("type: ignore"):
            yield token.start[0], "type: ignore"


def main() -> None:
    """Print one line a room, and the sum."""
    counts = Counter(
        (source.room, kind) for source in sources("queueboard", "seed", "tests") for _, kind in escapes(source)
    )
    rooms = sorted({source.room for source in sources("queueboard", "seed", "tests")})
    print(f"{'room':14}" + "".join(f"{kind:>14}" for kind in KINDS))
    for room in rooms:
        print(f"{room:14}" + "".join(f"{counts[room, kind]:14}" for kind in KINDS))
    print(f"{'together':14}" + "".join(f"{sum(counts[room, kind] for room in rooms):14}" for kind in KINDS))


if __name__ == "__main__":
    main()
