"""Files, classes and functions stay short enough to be read at one sitting."""

import ast
from collections.abc import Iterator

from tests.house.tree import Source, lines_of, sources

FILE_LINES = 320
CLASS_LINES = 160
FUNCTION_LINES = 45


def too_long(source: Source) -> Iterator[str]:
    """A line for everything in a file that passes its limit."""
    count = source.text.count("\n")
    if count > FILE_LINES:
        yield f"{source.where}: {count} lines, at most {FILE_LINES}"
    for name, node in source.definitions():
        limit = CLASS_LINES if isinstance(node, ast.ClassDef) else FUNCTION_LINES
        if lines_of(node) > limit:
            yield f"{source.where}:{node.lineno} {name}: {lines_of(node)} lines, at most {limit}"


def test_nothing_is_too_long() -> None:
    """No file, class or function passes its limit; one that does hides an idea without a name."""
    offenders = [line for source in sources("queueboard", "seed", "tests") for line in too_long(source)]

    assert not offenders, "\n".join(offenders)
