"""One table of the settings text, and its values taken out with their checks; every mistake names its line."""

import re
from collections.abc import Callable, Iterable, Mapping
from datetime import date, datetime, time
from decimal import Decimal

from queueboard.clean import clean, insist_on_signs, shown
from queueboard.errors import SettingsError, TypedError
from queueboard.settings.locate import Path
from queueboard.settings.shapes import MOST_CENTS, Span
from queueboard.slotted import dataclass

_CLOCK = re.compile(r"([01][0-9]|2[0-3]):([0-5][0-9])")


def meant(word: str, known: Iterable[str], otherwise: str) -> str:
    """What a word that nobody knows may be a slip of the pen for; *otherwise* where it is like nothing known."""
    from difflib import get_close_matches

    close = get_close_matches(word, known, n=1, cutoff=0.5)
    return f"do you mean {close[0]}?" if close else otherwise


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table with its values, its place in the text, and what tells the lines of the whole text once one is wrong."""

    values: Mapping[str, object]
    path: Path
    lines: Callable[[], Mapping[Path, int]]

    @property
    def name(self) -> str:
        """The table as a person finds it in the text: [bench], a [[kinds]], or the whole text."""
        names = [part for part in self.path if isinstance(part, str)]
        if not names:
            return "the list of settings"
        return f"[[{'.'.join(names)}]]" if isinstance(self.path[-1], int) else f"[{'.'.join(names)}]"

    def wrong(self, sentence: str, *keys: str | int) -> SettingsError:
        """The error for a value under these keys (none: the table itself), with the line where it stands."""
        lines = self.lines()
        path = (*self.path, *keys)
        while path not in lines:
            path = path[:-1]
        return SettingsError(f"line {lines[path]}: {sentence}")

    def has(self, key: str) -> bool:
        """True when the key is written."""
        return key in self.values

    def only(self, *known: str) -> None:
        """Refuse keys that nobody reads: they are slips of the pen, and a slip must not be silent."""
        for key in self.values:
            if key not in known:
                hint = meant(key, known, f"known here: {', '.join(known)}")
                raise self.wrong(f"{self.name} has no “{shown(key)}”; {hint}", key)

    def without_controls(self) -> "Table":
        """The same table, once every text in it, however deep, was found to be of signs that show."""
        self._without_controls(self.values)
        return self

    def _without_controls(self, value: object, *keys: str | int) -> None:
        if isinstance(value, str):
            name = next((shown(key) for key in reversed(keys) if isinstance(key, str)), "text")
            try:
                insist_on_signs(value, name)
            except TypedError as trouble:
                raise self.wrong(f"{trouble}", *keys) from None
        inner = value.items() if isinstance(value, Mapping) else enumerate(value) if isinstance(value, list) else ()
        for key, one in inner:
            self._without_controls(one, *keys, key)

    def need(self, key: str) -> object:
        """The value as written; refused when it is missing."""
        if key not in self.values:
            raise self.wrong(f"{self.name} needs “{key}”; add it")
        return self.values[key]

    def text(self, key: str, *, longest: int, shortest: int = 1) -> str:
        """A text in quotes, made safe to show, with this many characters after that."""
        return self._text(self.need(key), longest, shortest, key)

    def texts(self, key: str, *, longest: int) -> tuple[str, ...]:
        """A list of texts in quotes."""
        return tuple(self._text(value, longest, 1, key, place) for place, value in enumerate(self.list_of(key)))

    def _text(self, value: object, longest: int, shortest: int, *keys: str | int) -> str:
        what = f"{keys[0]}"
        if not isinstance(value, str):
            raise self.wrong(f"{what} is a text: write it in quotes", *keys)
        try:
            cleaned = clean(value, limit=longest, field=what)
        except TypedError as trouble:
            raise self.wrong(f"{trouble}", *keys) from None
        if len(cleaned) < shortest:
            raise self.wrong(f"{what} is empty; write something in quotes", *keys)
        return cleaned

    def list_of(self, key: str) -> list[object]:
        """A list in square brackets; refused when it is something else."""
        value = self.need(key)
        if not isinstance(value, list):
            raise self.wrong(f"{key} is a list: write it in square brackets, like [ ... ]", key)
        return list(value)

    def whole(self, key: str, low: int, high: int, unit: str) -> int:
        """A whole number from *low* to *high*."""
        value = self.need(key)
        if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= high:
            raise self.wrong(f"{key} is a whole number of {unit} from {low} to {high}, not {written(value)}", key)
        return value

    def yes(self, key: str) -> bool:
        """The value, written true or false."""
        value = self.need(key)
        if not isinstance(value, bool):
            raise self.wrong(f"{key} is true or false, without quotes, not {written(value)}", key)
        return value

    def micrometres(self, key: str) -> float:
        """A size above 0 and up to 3000 micrometres, coarser than any belt."""
        value = self.need(key)
        number = decimal_of(value)
        if number is None or not 0 < float(number) <= 3000:
            raise self.wrong(f"{key} is a number of micrometres above 0 and up to 3000, not {written(value)}", key)
        return float(number)

    def cents(self, key: str) -> int:
        """An amount such as 9 or 9.50 as whole cents, 0 to 99999.99."""
        value = self.need(key)
        number = decimal_of(value)
        if number is None or not 0 <= number <= Decimal(MOST_CENTS).scaleb(-2):
            raise self.wrong(f"{key} is an amount from 0 to 99999.99 like 9.50, not {written(value)}", key)
        cents = int(number * 100)
        if Decimal(cents).scaleb(-2) != number:
            raise self.wrong(f"{key} {written(value)} has parts of a cent; at most two digits go behind the point", key)
        return cents

    def day(self, key: str) -> date:
        """A date without quotes, 2026-11-27."""
        value = self.need(key)
        if not isinstance(value, date) or isinstance(value, datetime):
            raise self.wrong(f"{key} is a date written without quotes like 2026-11-27, not {written(value)}", key)
        return value

    def clock(self, key: str) -> time:
        """A time of day in quotes, "16:00"."""
        value = self.need(key)
        found = _CLOCK.fullmatch(value) if isinstance(value, str) else None
        if found is None:
            raise self.wrong(f'{key} is a time of day in quotes from "00:00" to "23:59", not {written(value)}', key)
        return time(int(found[1]), int(found[2]))

    def span(self, key: str, place: int, what: str) -> Span:
        """One "08:00-12:00" in a list of them."""
        value = self.list_of(key)[place]
        start, dash, end = (part.strip() for part in value.partition("-")) if isinstance(value, str) else ("", "", "")
        ends = _CLOCK.fullmatch(start), _CLOCK.fullmatch(end)
        if not dash or ends[0] is None or ends[1] is None:
            raise self.wrong(f'{what} look like "08:00-12:00", not {written(value)}', key, place)
        first, last = (time(int(found[1]), int(found[2])) for found in ends if found)
        if last <= first:
            raise self.wrong(f"{what} {start}-{end} end before they begin; write the earlier time first", key, place)
        return first, last

    def table(self, key: str) -> "Table":
        """The table under this key."""
        return self._inner(self.need(key), key)

    def tables(self, key: str) -> tuple["Table", ...]:
        """The list of tables under this key; none when it is not written."""
        if not self.has(key):
            return ()
        return tuple(self._inner(value, key, place) for place, value in enumerate(self.list_of(key)))

    def _inner(self, value: object, *keys: str | int) -> "Table":
        if not isinstance(value, dict):
            raise self.wrong(f"{keys[0]} is a table; write its values below a line [{keys[0]}]", *keys)
        return Table(values=value, path=(*self.path, *keys), lines=self.lines)


def written(value: object) -> str:
    """A value from the text as it may stand in a sentence."""
    if isinstance(value, str):
        return f"“{shown(value)}”"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list | dict):
        return "a list" if isinstance(value, list) else "a table"
    if isinstance(value, int) and abs(value) >= 10**40:
        return "a number of more than 40 digits"
    return f"{value}"[:40]


def decimal_of(value: object) -> Decimal | None:
    """The exact number, or None for what is none (infinities and booleans too)."""
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        return None
    number = Decimal(value)
    return number if number.is_finite() else None
