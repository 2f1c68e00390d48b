"""The shop's own numbers as its screen shows them: sections, groups, lines, and what a line's fields become.

A section is one declaration (number_sections.py) of parts: single numbers, rows of a list, a number for each name.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import field, replace
from datetime import date

from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.phrases.dates import date_words, many
from queueboard.phrases.number_sorts import Sort, Ways
from queueboard.settings.editing import Parts, put, take_out, value_at, values_in, with_row
from queueboard.settings.locate import Path
from queueboard.shop.picture import Picture
from queueboard.slotted import dataclass

Values = Mapping[str, object]
Row = Mapping[str, object]
_DAYS_A_MONTH, _DAYS_A_YEAR = 30.44, 365.25
_NUMBER_COLUMNS, _ROW_COLUMNS = 32, 18
"""Cells for the name of a number, and of a row, which has more behind it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """One number: where it stands, what it is called, what sort it is."""

    path: Path
    """In the whole text; of a column, in its row."""
    words: str
    sort: Sort
    unset: str = "not written"
    """What holds where nothing is written."""
    needed: bool = False
    """True where it cannot be taken away."""
    emptied: str = ""
    """What the settings write for an empty field; nothing where the number is simply left out."""

    def shown(self, values: object, ways: Ways) -> str:
        """In words, with its unit; what holds where it is not written."""
        value = value_at(values, self.path)
        return self.unset if value in (None, "", []) else self.sort.show(value, ways)

    def typed(self, values: object, ways: Ways) -> str:
        """As it stands in a field; empty where it is not written."""
        value = value_at(values, self.path)
        return "" if value is None else self.sort.typed(value, ways)

    def literal(self, typed: str, ways: Ways) -> str:
        """What was typed as the settings write it; empty where the number is left out. TypedError when it is none."""
        if typed.strip():
            return self.sort.literal(typed, ways)
        if self.needed:
            raise TypedError(f"“{self.words}” cannot be empty. Type it, or Esc leaves it as it was.")
        return self.emptied


@dataclass(frozen=True, slots=True, kw_only=True)
class Rows:
    """A list of which rows are added and taken out."""

    path: Path
    one: str
    """What one is called: kind."""
    columns: tuple[Number, ...]
    line: Callable[[Row, Ways], tuple[str, str]]
    """A row's name, and the rest of it in words."""
    by: str = ""
    """The key by which the rows have to rise; empty where the order is free."""
    used: Callable[[str, Picture], str] = lambda _name, _picture: ""
    """What in the open boxes rests on the row with this name, as a sentence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One line of a section, with the fields that Enter opens."""

    words: str
    shows: str
    numbers: tuple[Number, ...]
    row: Path | None = None
    """What - takes out; None for what cannot be."""
    rows: Rows | None = None
    """The list it is in, to which + adds."""
    at: Path = ()
    """What tells it from the others; its own heading has the path of the list."""

    @property
    def id(self) -> str:
        """The same as long as the line stands where it stands."""
        return "/".join(map(str, self.at))


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Lines under one heading."""

    heading: str
    entries: tuple[Entry, ...]
    rows: Rows | None = None


Part = Callable[[Values, Ways], Iterator[Group]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One part of the settings on the screen."""

    name: str
    """As in [last_checked]."""
    title: str
    tables: tuple[str, ...]
    """What of the whole text it shows: tables, or keys of one such as prices.tax."""
    parts: tuple[Part, ...]
    counts: str
    """From when a change counts, and what it leaves alone."""
    caution: str = ""
    checked: Path = field(default=())

    def checked_path(self) -> Path:
        """Where the day stands on which it was last checked."""
        return self.checked or ("last_checked", self.name)

    def groups(self, text: str, ways: Ways) -> tuple[Group, ...]:
        """What it shows of a text."""
        values = values_in(text)
        return tuple(group for part in self.parts for group in part(values, ways))


def numbers(heading: str, *found: Number) -> Part:
    """Single numbers, a line each."""

    def part(values: Values, ways: Ways) -> Iterator[Group]:
        yield Group(heading=heading, entries=tuple(_entry(number, values, ways) for number in found))

    return part


def each(heading: str, names: Callable[[Values], Iterable[tuple[str, str]]], number: Number) -> Part:
    """One number for each name: names give the key and what it is called; the number's path is what stands above."""

    def part(values: Values, ways: Ways) -> Iterator[Group]:
        own = (replace(number, path=(*number.path, key), words=said) for key, said in names(values))
        yield Group(heading=heading, entries=tuple(_entry(one, values, ways) for one in own))

    return part


def together(heading: str, names: Callable[[Values], Iterable[tuple[str, str]]], path: Path, *columns: Number) -> Part:
    """Numbers that are written together or not at all, for each name."""

    def part(values: Values, ways: Ways) -> Iterator[Group]:
        entries = []
        for key, said in names(values):
            own = tuple(replace(one, path=(*path, key, *one.path)) for one in columns)
            there = value_at(values, (*path, key)) is not None
            shows = ", ".join(f"{one.words} {one.shown(values, ways)}" for one in own) if there else columns[0].unset
            row = (*path, key) if there else None
            entries.append(Entry(words=said, shows=shows, numbers=own, row=row, at=(*path, key)))
        yield Group(heading=heading, entries=tuple(entries))

    return part


def listed(heading: str, rows: Rows) -> Part:
    """Rows that are added and taken out."""

    def part(values: Values, ways: Ways) -> Iterator[Group]:
        yield rows_group(heading, rows, values, ways)

    return part


def rows_group(heading: str, rows: Rows, values: Values, ways: Ways) -> Group:
    """The group of a list, with a line for each of its rows."""
    found = value_at(values, rows.path)
    entries = []
    for place, row in enumerate(found if isinstance(found, list) else ()):
        name, shows = rows.line(row, ways)
        path = (*rows.path, place)
        own = tuple(replace(column, path=(*path, *column.path)) for column in rows.columns)
        entries.append(Entry(words=name, shows=shows, numbers=own, row=path, rows=rows, at=path))
    return Group(heading=heading, entries=tuple(entries), rows=rows)


def _entry(number: Number, values: Values, ways: Ways) -> Entry:
    return Entry(words=number.words, shows=number.shown(values, ways), numbers=(number,), at=number.path)


def with_typed(text: str, entry: Entry, literals: Sequence[str | None]) -> str:
    """The text with what was typed for a line: a value, empty for none, or None where nothing was changed."""
    values = values_in(text)
    gone = [not literal if literal is not None else value_at(values, number.path) is None
            for number, literal in zip(entry.numbers, literals, strict=True)]  # fmt: skip
    if all(gone) and entry.row is not None and entry.rows is None:
        return take_out(text, entry.row)
    for number, literal in zip(entry.numbers, literals, strict=True):
        if literal:
            text = put(text, number.path, literal)
        elif literal is not None:
            text = take_out(text, number.path)
    return text


def with_typed_row(text: str, rows: Rows, literals: Sequence[str | None]) -> tuple[str, Path]:
    """The text with a new row out of what was typed, and where it stands: in its place where the rows have to rise."""
    parts: Parts = [
        (tuple(map(str, column.path)), literal)
        for column, literal in zip(rows.columns, literals, strict=True)
        if literal
    ]
    found = value_at(values_in(text), rows.path)
    there = found if isinstance(found, list) else []
    new = next((int(literal) for keys, literal in parts if keys == (rows.by,) and literal.isdigit()), None)
    place = len(there) if new is None else sum(row[rows.by] <= new for row in there)
    return with_row(text, rows.path, parts, place), (*rows.path, place)


def checked_on(text: str, section: Section) -> date | None:
    """The day on which a section was last checked; None for never."""
    day = value_at(values_in(text), section.checked_path())
    return day if isinstance(day, date) else None


def ago_words(day: date, today: date) -> str:
    """Today; 3 days ago; 14 months ago; 3 years ago."""
    days = (today - day).days
    if days < 1:
        return "today"
    months = int(days / _DAYS_A_MONTH)
    if months < 2:
        return f"{many(days, 'day')} ago"
    return f"{months} months ago" if months < 24 else f"{int(days / _DAYS_A_YEAR)} years ago"


def checked_words(day: date | None, after_days: int, today: date) -> str:
    """Checked today; checked Mon 2 Nov; NOT CHECKED FOR 14 months; never checked."""
    if day is None:
        return "never checked"
    if (today - day).days > after_days:
        return f"OLD: checked {ago_words(day, today)}"
    near = (today - day).days < 1
    return "checked today" if near else f"checked {date_words(day, today)}, {ago_words(day, today)}"


def line_words(entry: Entry) -> str:
    """A line: its name in a column of its own, then what it shows; where the name is long, that comes behind it."""
    width = _NUMBER_COLUMNS if entry.rows is None else _ROW_COLUMNS
    return f"{cell_text(entry.words):{width}} {cell_text(entry.shows)}"


def with_checked(text: str, path: Path, today: date) -> str:
    """The text with today as the day of checking."""
    return put(text, path, today.isoformat())


def after_words(section: Section | None, before: Picture, after: Picture) -> str:
    """What is said once a change is in force: from when it counts, and whether the plan names more late boxes.

    No section: all numbers may have changed.
    """
    said = "In force. What was told and quoted stays told." if section is None else f"In force. {section.counts}"
    was, now = (line.late + line.will_be_late for line in (before.day_line, after.day_line))
    if was != now:
        said += f" LATE or WILL BE LATE: {was} before, {now} now; j lists them."
    return said
