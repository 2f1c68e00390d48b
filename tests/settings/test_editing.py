"""One number changed in the text, every other sign as it was; what comes out is held against Python's own reader."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.seedfiles import seed_text
from queueboard.settings.editing import put, quoted, take_out, value_at, values_in, with_row
from queueboard.settings.locate import Path, layout_of

STARTER = seed_text("settings.toml")
VALUES = values_in(STARTER)
WRITTEN = sorted((path for path in layout_of(STARTER).values if value_at(VALUES, path) is not None), key=repr)
ROWS: tuple[Path, ...] = (("kinds",), ("processes",), ("belts", "kinds"), ("prices", "shipping"), ("parcels", "boxes"))


def around(before: str, after: str) -> tuple[str, str]:
    """What stands in one text alone, when the same beginning and end are taken away."""
    start = next((at for at, (one, other) in enumerate(zip(before, after, strict=False)) if one != other), 0)
    end = 0
    while end < min(len(before), len(after)) - start and before[-1 - end] == after[-1 - end]:
        end += 1
    return before[start : len(before) - end], after[start : len(after) - end]


@given(path=st.sampled_from(WRITTEN), value=st.integers(0, 10**6) | st.text(max_size=20))
def test_a_value_changes_and_nothing_else_does(path: Path, value: int | str) -> None:
    """Wherever it stands, the new value is read back from its place, and all signs outside the old one stay."""
    literal = quoted(value) if isinstance(value, str) else str(value)
    start, end = layout_of(STARTER).values[path]
    layout = layout_of(STARTER)
    if any(start <= remark < end for remark in layout.remarks):
        with pytest.raises(TypedError, match="remarks of its own"):
            put(STARTER, path, literal)
        return

    after = put(STARTER, path, literal)

    assert value_at(tomllib.loads(after), path) == value
    assert (after[:start], after[start + len(literal) :]) == (STARTER[:start], STARTER[end:])


@given(path=st.sampled_from(ROWS), place=st.integers(0, 30), lines=st.sampled_from(["\n", "\r\n"]))
def test_a_row_goes_in_and_comes_out_again(path: Path, place: int, lines: str) -> None:
    """A new row stands at its place; taken out, all values are as before and every remark is still there."""
    text = STARTER.replace("\n", lines)
    rows = value_at(VALUES, path)
    assert isinstance(rows, list)
    place = min(place, len(rows))

    more = with_row(text, path, [(("name",), quoted("new")), (("minutes", "dull"), "6")], place)

    assert value_at(values_in(more), (*path, place)) == {"name": "new", "minutes": {"dull": 6}}
    back = take_out(more, (*path, place))
    assert values_in(back) == VALUES
    assert back.count("#") == text.count("#")
    assert back.count("\n") == text.count("\n")


@pytest.mark.parametrize("path", ROWS)
def test_a_row_taken_out_takes_no_other_line_with_it(path: Path) -> None:
    """The rows before and behind it and all remarks outside it stay letter for letter."""
    after = take_out(STARTER, (*path, 0))

    gone, come = around(STARTER, after)
    assert come == ""
    assert gone.count("[[") == 1
    assert "\n# " not in gone


def test_what_was_never_written_is_put_where_it_belongs() -> None:
    """A key behind its neighbours, a table behind its example, a row's own table inside its row."""
    minimum = put(STARTER, ("prices", "minimum"), "5.00")
    assert "hold_after_days = 45          # an account open longer is on hold; 0 never\nminimum = 5.00\n" in minimum

    tax = put(STARTER, ("prices", "tax", "knives"), "7.25")
    assert "# shipping = 0\n\n[prices.tax]\nknives = 7.25\n\n# Setting up" in tax

    closed = with_row(STARTER, ("closures",), [(("first",), "2026-12-24"), (("reason",), quoted("rest"))])
    assert '# reason = "winter break"\n\n[[closures]]\nfirst = 2026-12-24\nreason = "rest"\n\n# Market' in closed

    carriers = with_row(STARTER, ("carriers",), [(("name",), quoted("A"))])
    carriers = with_row(carriers, ("carriers",), [(("name",), quoted("B"))])
    carriers = with_row(carriers, ("carriers", 0, "last_ship"), [(("ship_on",), "2026-12-18")])
    assert value_at(values_in(carriers), ("carriers", 0, "last_ship", 0, "ship_on")) is not None
    assert take_out(carriers, ("carriers", 0)).count("ship_on") == STARTER.count("ship_on")

    minutes = put(STARTER, ("kinds", 8, "minutes", "big_chips"), "30")
    assert "minutes = { tired = 6, dull = 10, small_chips = 15, big_chips = 30 }    # big chips: declined" in minutes
    assert take_out(minutes, ("kinds", 8, "minutes", "big_chips")) == STARTER
    first = take_out(STARTER, ("kinds", 0, "minutes", "tired"))
    assert "minutes = { dull = 6, small_chips = 9, big_chips = 15 }" in first


@pytest.mark.parametrize(
    ("text", "path"),
    [
        ('shop.name = "x"\n', ("shop", "zone")),
        ("a = { b = 1 }\n", ("a", "c", "d")),
        ("a = [\n 1, # one\n 2,\n]\n", ("a",)),
        ("a = [\n { b = 1 }, # one\n]\n", ("a",)),
    ],
)
def test_what_is_written_otherwise_is_refused_and_not_bent(text: str, path: Path) -> None:
    """A text that is valid and yet unforeseen is left as it is, with the way round."""
    with pytest.raises(TypedError, match="v writes it"):
        put(text, path, "5")


def test_lists_in_one_line_take_rows_too() -> None:
    """Rows as inline tables are added and taken out at any place; the last one leaves an empty list."""
    text = 'kinds = [{ name = "a" }, { name = "b" }]  # two\n'
    for place, told in enumerate(("cab", "acb", "abc")):
        more = with_row(text, ("kinds",), [(("name",), quoted("c"))], place)
        assert "".join(row["name"] for row in tomllib.loads(more)["kinds"]) == told
        assert take_out(more, ("kinds", place)) == text
    assert take_out(take_out(text, ("kinds", 1)), ("kinds", 0)) == "kinds = []  # two\n"
