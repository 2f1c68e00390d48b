"""Whose box it is: pick a customer by surname, or add a new one."""

from collections.abc import Sequence
from typing import ClassVar, TypeVar

from textual import on
from textual.actions import SkipAction
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import Input, OptionList, Static

from queueboard.board.base import ShopScreen
from queueboard.board.forms.fields import Field, Row, Taken
from queueboard.board.widgets.signed_list import SignedList
from queueboard.clean import cell_text, clean_name, figures, folded, shown
from queueboard.errors import TypedError
from queueboard.values.customer import Customer
from queueboard.values.new import NewCustomer

Answer = TypeVar("Answer")

SHOWN = 5
"""Matches shown at once; more letters make them fewer."""


def matching(known: Sequence[Customer], typed: str) -> tuple[Customer, ...]:
    """The customers that fit: every word typed stands in name or town, or the figures end the phone.

    Those with a name that begins with what was typed come first, else by name.
    """
    words = folded(typed).split()
    if not words:
        return ()
    found = [customer for customer in known if _fits(customer, words)]
    return tuple(sorted(found, key=lambda c: (not _begins(c, words[0]), folded(c.name), c.id)))


def _fits(customer: Customer, words: Sequence[str]) -> bool:
    text = folded(f"{customer.name} {customer.town}")
    phone = figures(customer.phone)
    return all(word in text or (len(word) >= 3 and word.isdigit() and phone.endswith(word)) for word in words)


def _begins(customer: Customer, word: str) -> bool:
    return any(part.startswith(word) for part in folded(customer.name).split())


def customer_words(customer: Customer) -> str:
    """Name, town and phone, as far as they are known; a person's text, for a literal place only."""
    return " · ".join(filter(None, (customer.name, customer.town, customer.phone)))


class CustomerPicker(Vertical):
    """Type a surname; one match is offered at once, of several the arrows choose; or a new customer by that name."""

    DEFAULT_CSS = """
    CustomerPicker { height: auto; }
    CustomerPicker > OptionList { height: auto; max-height: 7; margin-left: 12; display: none; }
    CustomerPicker > .picked { padding-left: 14; text-style: bold; display: none; }
    CustomerPicker > #new { display: none; }
    """
    BINDING_GROUP_TITLE = "In the customer's field"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "down",
            "mark(1)",
            "Next",
            False,
            tooltip="The next customer who fits; Enter takes the marked one.",
            id="customer.next",
        ),
        Binding("up", "mark(-1)", "Before", False, tooltip="The customer before.", id="customer.before"),
    ]

    def __init__(self, known: Sequence[Customer], *, label: str = "customer", new: bool = True) -> None:
        super().__init__()
        self.known = tuple(known)
        self.label = label
        self.new = new
        self.typed = Field(hint="surname, town, or the last figures of the phone")
        self.phone, self.town = Field(hint="may stay empty"), Field(hint="may stay empty")
        self.picked: Customer | None = None
        self.new_name = ""
        self.matches: tuple[Customer, ...] = ()

    def compose(self) -> ComposeResult:
        yield Row((self.label, self.typed))
        offers = SignedList(markup=False, compact=True)
        offers.can_focus = False
        yield offers
        yield Static("", classes="picked")
        yield Row(("phone", self.phone), ("town", self.town), id="new")

    @on(Input.Changed)
    def look_up(self, event: Input.Changed) -> None:
        """Each letter makes the matches fewer; what was picked before is let go."""
        if event.input is not self.typed:
            return
        self._settle(None, "")
        self.matches = matching(self.known, self.typed.value)[:SHOWN]
        offers, name = self.query_one(SignedList), self.typed.value.strip()
        lines = [customer_words(c) for c in self.matches]
        if self.new and name:
            lines.append(f"new customer “{name}”")
        offers.offer([Content(cell_text(line)) for line in lines])
        offers.display = offers.option_count > 0
        offers.highlighted = 0 if len(self.matches) <= 1 and offers.option_count else None

    def action_mark(self, by: int) -> None:
        """Move the mark among the matches; where none are offered the arrow is the form's, from line to line."""
        offers = self.query_one(OptionList)
        if not (self.typed.has_focus and offers.display and offers.option_count):
            raise SkipAction
        start = -1 if offers.highlighted is None and by > 0 else offers.highlighted or 0
        offers.highlighted = (start + by) % offers.option_count

    @on(OptionList.OptionSelected)
    def clicked(self, event: OptionList.OptionSelected) -> None:
        """A click takes a match."""
        event.stop()
        self._take(event.option_index)

    @on(Input.Submitted)
    def entered(self, event: Input.Submitted) -> None:
        """Enter takes the marked match; several without a mark are asked back."""
        if event.input is not self.typed:
            return
        event.stop()
        offers = self.query_one(OptionList)
        if self.picked is not None or self.new_name:
            self.post_message(Taken(self.typed))
        elif offers.highlighted is not None and offers.option_count:
            self._take(offers.highlighted)
        else:
            self._ask()

    def _take(self, place: int) -> None:
        try:
            if place < len(self.matches):
                self._settle(self.matches[place], "")
            else:
                self._settle(None, clean_name(self.typed.value))
        except TypedError as error:
            self._say(str(error))
            return
        self.post_message(Taken(self.typed))

    def _settle(self, customer: Customer | None, new_name: str) -> None:
        self.picked, self.new_name = customer, new_name
        self.query_one(OptionList).display = False
        self.query_one("#new").display = bool(new_name)
        name = customer_words(customer) if customer is not None else f"new: {new_name}" if new_name else ""
        self._say(name)

    def _say(self, text: str) -> None:
        said = self.query_one(".picked", Static)
        said.update(Content(text))
        said.display = bool(text)

    def _ask(self) -> None:
        if isinstance(self.screen, ShopScreen):
            self.screen.say(self.question(), trouble=True)

    @property
    def touched(self) -> bool:
        """True when somebody is picked or named."""
        return self.picked is not None or bool(self.new_name)

    def kept(self) -> str:
        """Who is picked or named, as one text."""
        return f"id {self.picked.id}" if self.picked is not None else f"new {self.new_name}" if self.new_name else ""

    def put_back(self, text: str) -> None:
        """Pick or name whom was kept; a customer who is gone since is asked for again."""
        how, _, who = text.partition(" ")
        known = {str(customer.id): customer for customer in self.known}
        if how == "id" and who in known:
            self._settle(known[who], "")
        elif how == "new":
            self._settle(None, who)

    def chosen(self) -> Customer | NewCustomer:
        """Who is picked or newly named; TypedError, with the cursor back in the field, while nobody is.

        A name that no customer has, and that was left by another key than Enter, is that of a new one.
        """
        if not self.touched and self.new and self.typed.value.strip() and not self.matches:
            self._settle(None, clean_name(self.typed.value))
        if not self.touched:
            self.typed.focus()
            raise TypedError(self.question())
        return self.picked or NewCustomer(name=self.new_name, phone=self.phone.value, town=self.town.value)

    def question(self) -> str:
        """What to ask while nobody is picked yet."""
        if not self.typed.value.strip():
            return "Whose is it? Type the surname."
        if not self.matches:
            return f"No customer fits “{shown(self.typed.value)}”; type the surname, the town or figures of the phone."
        return (
            f"{len(self.matches)} customers fit “{shown(self.typed.value)}”: choose one with the down key, then Enter."
        )
