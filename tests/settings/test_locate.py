"""The line of every setting in its text."""

import json
import tomllib
from collections.abc import Iterator

from hypothesis import given
from hypothesis import strategies as st

from queueboard.settings.locate import Path, lines_of

TEXT = """\
# a comment with [brackets] and "quotes"
top = 1
[shop]   # behind a table
name = "a # no comment [x]"
story = \"\"\"
two = 2
[not.a.table]
\"\"\"
raw = '''
x''''
list = [
  1,  # one
  [2, 3],

  { a = "}", b = [4] },
]
[[kinds]]
name = 'one'
[kinds.minutes]
dull = 3
[[ kinds ]]
"name two" . x = 2
minutes = { dull = 4 }
[[kinds.parts]]
p = 1
[[kinds.parts]]
p = 2
"""


def paths(value: object, path: Path = ()) -> Iterator[Path]:
    """The path of every table, key and list entry."""
    yield path
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from paths(inner, (*path, key))
    if isinstance(value, list):
        for place, inner in enumerate(value):
            yield from paths(inner, (*path, place))


def test_every_kind_of_line_is_found() -> None:
    """Tables, lists over several lines, inline tables, quoted keys and long texts each have the line they begin on."""
    lines = lines_of(TEXT)

    assert lines["top",] == 2
    assert lines["shop",] == 3
    assert lines["shop", "story"] == 5
    assert lines["shop", "raw"] == 9
    assert [lines["shop", "list", place] for place in range(3)] == [12, 13, 15]
    assert lines["shop", "list", 1, 1] == 13
    assert lines["shop", "list", 2, "b", 0] == 15
    assert lines["kinds", 0, "minutes"] == 19
    assert lines["kinds", 1] == 21
    assert lines["kinds", 1, "name two", "x"] == 22
    assert lines["kinds", 1, "minutes", "dull"] == 23
    assert lines["kinds", 1, "parts", 1, "p"] == 27
    assert lines[()] == 27


def test_nothing_in_the_text_is_without_a_line() -> None:
    """Every path that the TOML reader sees has a line, and no other path has one."""
    assert set(lines_of(TEXT)) == set(paths(tomllib.loads(TEXT)))


def test_line_ends_of_other_systems_count_once() -> None:
    """A text with carriage returns has the same lines."""
    assert lines_of(TEXT.replace("\n", "\r\n")) == lines_of(TEXT)


KEYS = st.text(min_size=1, max_size=5)
VALUES = st.recursive(
    st.integers(-99, 99) | st.booleans() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(KEYS, inner, max_size=3),
    max_leaves=6,
)


def written(value: object) -> str:
    """A value as TOML; lists are broken over lines with a comment, as people do."""
    if isinstance(value, list):
        return "[" + "".join(f"\n  {written(inner)}, # ]" for inner in value) + "\n]"
    if isinstance(value, dict):
        return "{" + ", ".join(f"{quoted(key)} = {written(inner)}" for key, inner in value.items()) + "}"
    return quoted(value) if isinstance(value, str) else json.dumps(value)


def quoted(text: str) -> str:
    """A text in quotes with its odd characters escaped; JSON writes DEL as it is, TOML does not take it."""
    return "".join(sign if 31 < ord(sign) < 127 and sign not in '"\\' else f"\\U{ord(sign):08X}" for sign in text).join(
        '""'
    )


@given(st.dictionaries(KEYS, st.dictionaries(KEYS, VALUES, max_size=4), max_size=4))
def test_any_text_is_walked_to_its_end(document: dict[str, dict[str, object]]) -> None:
    """Whatever stands in a valid text, each key of a table has the line on which it was written."""
    lines: list[str] = []
    expected: dict[Path, int] = {}
    for table, values in document.items():
        lines += [f"[{quoted(table)}]"]
        expected[table,] = len(lines)
        for key, value in values.items():
            expected[table, key] = len(lines) + 1
            lines += f"{quoted(key)} = {written(value)}".split("\n")
    text = "\n".join(lines)

    found = lines_of(text)

    assert set(found) == set(paths(tomllib.loads(text)))
    assert {path: found[path] for path in expected} == expected
