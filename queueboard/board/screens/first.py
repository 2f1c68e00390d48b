"""The first screen of a new shop: what it needs before its first box, each with an answer to take by Enter."""

from collections.abc import Iterator
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, FormScroll, Row
from queueboard.board.forms.form import Form
from queueboard.board.forms.mistakes import mistake_in
from queueboard.board.screens.numbers import ways_of
from queueboard.clean import clean
from queueboard.errors import QueueboardError, TypedError
from queueboard.phrases import first_numbers as first
from queueboard.phrases import helping
from queueboard.phrases.own_numbers import Number
from queueboard.seedfiles import seed_text
from queueboard.settings.countries import Country, read_countries
from queueboard.settings.editing import quoted, values_in
from queueboard.settings.locate import Path
from queueboard.shop.numbers import take_settings
from queueboard.shop.settings_now import settings_text

UNITS = ("in", "cm")


class FirstScreen(Form[bool]):
    """Asks for hours, country, currency and first prices; True when they are written, None when nothing was."""

    DEFAULT_CSS = """
    FirstScreen #about { color: $text-muted; height: auto; padding: 0 1; margin: 1 0; }
    FirstScreen #form { height: 1fr; padding-left: 1; }
    FirstScreen #form Row > .name { min-width: 19; }
    FirstScreen #form Row.group { margin-top: 1; }
    FirstScreen #form Row > .name.later { min-width: 0; }
    FirstScreen #sentence { height: auto; padding: 0 1; }
    FirstScreen #sentence.-trouble { color: $text-error; text-style: bold; }
    FirstScreen #hint { height: auto; padding: 0 1; color: $text-muted; }
    """
    HELP = helping.FIRST
    BINDING_GROUP_TITLE = "A new shop"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f2", "go", "make the shop now", tooltip="Take all answers as they stand.", id="first.go"),
        Binding("escape", "leave", "leave, nothing is made", id="first.leave"),
    ]
    AUTO_FOCUS = "Field"
    hint = "Enter takes an answer, the last makes the shop · F2 now · F1 keys · Esc leaves"
    asked_to_leave = False

    def __init__(self, desk: Desk, initials: str, zone: str, code: str) -> None:
        """Zone and code are the time zone and the country this machine is set to, each empty where not known."""
        super().__init__(desk)
        self.starter, self.here = settings_text(desk.shop), (zone, code)
        self.new_text = self.starter
        self.countries = read_countries(seed_text("countries.toml"))
        chosen = [country.code for country in self.countries if country.short]
        names = [(country.short, country.code) for country in self.countries if country.short]
        self.who = Field(initials, hint="up to 8 signs", check=_initials)
        self.country = Choice([*names, ("other", "")], at=_place(code, chosen))
        self.code = Field("" if code in chosen else code, hint="like NZ; empty: no public holidays", check=_code)
        self.length_unit = Choice([(unit, unit) for unit in UNITS])
        self.days = Choice(first.OPEN_DAYS)
        self.hours, self.bench = first.offered_hours(self.starter, ways_of(desk.picture))
        self.typed: dict[Path, Field] = {}
        self._offered_for: str | None = None

    def field(self, number: Number, value: str = "", hint: str = "") -> Field:
        """The field of one number, its answer read when Enter leaves it."""
        ways = ways_of(self.desk.picture)
        field = Field(value, hint=hint or number.sort.hint, check=lambda typed: number.literal(typed, ways))
        self.typed[number.path] = field
        return field

    def compose(self) -> ComposeResult:
        yield Static("A new shop. Each answer can be changed later: N on the board.", id="heading", markup=False)
        yield Static(
            Content(f"There is no shop in {self.desk.shop.path} yet. One is made there at the end."),
            id="about",
        )
        with FormScroll(id="form"):
            yield from self._questions()
        yield from (Static("", id="sentence"), Static(Content(self.hint), id="hint"))

    def _questions(self) -> Iterator[Row]:
        yield Row(("your initials", self.who), ("shop's name", self.field(first.NAME, hint="stands on papers")))
        yield Row(("country", self.country), classes="group")
        yield Row((first.COUNTRY.words, self.code), id="code")
        yield Row(("state, province", self.field(first.REGION, hint="for its own holidays, like NY; or empty")))
        yield Row((first.ZONE.words, self.field(first.ZONE)))
        yield Row((first.CURRENCY.words, self.field(first.CURRENCY)), ("lengths in", self.length_unit))
        yield Row(("open", self.days), classes="group")
        yield Row((first.HOURS.words, self.field(first.HOURS, self.hours)))
        yield Row((first.BENCH.words, self.field(first.BENCH, self.bench)))
        values, ways = values_in(self.starter), ways_of(self.desk.picture)
        prices = [(one.words, self.field(one, one.typed(values, ways))) for one in first.priced(self.starter)]
        yield Row((f"price: {prices[0][0]}", prices[0][1]), *prices[1:], classes="group")

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        """Offer what goes with the country and the hours, in place of what was offered and not typed over."""
        self.asked_to_leave = False
        self.query_one("#code").display = not self.country.value
        code = self.country.value or self.code.value.strip().upper()
        if code != self._offered_for:
            self._offered_for = code
            self._offer_for(code)
        try:
            inside = first.bench_within(self.typed[first.HOURS.path].value, self.bench, ways_of(self.desk.picture))
        except TypedError:
            return
        _offer(self.typed[first.BENCH.path], inside)

    def _offer_for(self, code: str) -> None:
        country, (zone, here) = self._country(code), self.here
        _offer(self.typed[first.ZONE.path], zone if zone and here == code else country.zone if country else "")
        _offer(self.typed[first.CURRENCY.path], country.currency if country else "")
        if country and not self.length_unit.touched:
            self.length_unit.first = self.length_unit.at = UNITS.index(country.length_unit)

    def _country(self, code: str) -> Country | None:
        return next((country for country in self.countries if country.code == code), None)

    def go(self) -> None:
        who = self.read(self.who, _initials)
        ways = ways_of(self.desk.picture)
        numbers = (
            *(first.NAME, first.REGION, first.ZONE, first.CURRENCY, first.HOURS, first.BENCH),
            *first.priced(self.starter),
        )
        code = self.country.value or self.read(self.code, _code)
        literals = {first.COUNTRY.path: quoted(code)} | {
            one.path: self.read(self.typed[one.path], lambda typed, one=one: one.literal(typed, ways))  # type: ignore[misc]  # one is bound at once
            for one in numbers
        }
        country = self._country(code)
        self.new_text = first.with_first_numbers(
            self.starter,
            literals,
            self.days.value,
            length_unit=self.length_unit.value,
            paper=country.paper if country else "A4",
        )
        self.desk.initials = who
        if self.attempt(take_settings, self.new_text, seen=self.starter) is not None:
            self.dismiss(True)

    def refused(self, error: QueueboardError) -> None:
        """Say a mistake at its field."""
        day = self.days.value[0]
        asked = [((*path, day) if len(path) == 1 else path, field) for path, field in self.typed.items()]
        mistake = mistake_in(error, self.new_text, [*asked, (first.COUNTRY.path, self.code)])
        if mistake is None:
            super().refused(error)
            return
        self.say(mistake[0], trouble=True)
        if mistake[1] is not None:
            mistake[1].focus()

    def action_leave(self) -> None:
        """Leave with nothing made; with something typed it asks once."""
        touched = any(part.touched for part in (*self.query(Field), *self.query(Choice)))
        if touched and not self.asked_to_leave:
            self.asked_to_leave = True
            self.say("Leave? Nothing is made, and what is typed here is let go. Esc again leaves.", trouble=True)
            return
        self.dismiss(None)


def _offer(field: Field, value: str) -> None:
    """Put another answer into a field that still holds the one it was offered with."""
    if not field.touched:
        field.first = field.value = value


def _place(code: str, chosen: list[str]) -> int:
    """Where the country of the machine stands among the answers: the first where it is not known, else the last."""
    return 0 if not code else chosen.index(code) if code in chosen else len(chosen)


def _initials(typed: str) -> str:
    initials = clean(typed, limit=8, field="initials")
    if not initials:
        raise TypedError("Type your initials; they stand beside every step in the history.")
    return initials


def _code(typed: str) -> str:
    return first.read_country(typed)
