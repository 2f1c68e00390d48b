"""What a kitchen's set has, what a round brought, and what a missing knife is charged with."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.intake.lines import read_lines
from queueboard.phrases.swaps import counts_words, missing_words
from queueboard.phrases.typed import parse_cents, parse_count
from queueboard.shop.receiving import customers
from queueboard.shop.swapping import charge_missing, define_set, note_round
from queueboard.shop.swaps_seen import Kitchen, MissingSeen
from queueboard.values.new import NewCustomer
from queueboard.values.swap import NewRound


class DefineSetDialog(Dialog):
    """A known kitchen by its name, or a new one; a set with the same name gets these kinds instead."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.kitchen = Field(hint="its name, or a part of it")
        self.set_name = Field("A")
        self.knives = Field(hint="4 chef, 3 paring, 2 bread", check=self.read_knives)
        self.every = Field("7", check=parse_count)

    def heading(self) -> str:
        return "What does a kitchen's swap set have when it is whole?"

    def fields(self) -> ComposeResult:
        yield Row(("kitchen", self.kitchen))
        yield Row(("set", self.set_name))
        yield Row(("knives", self.knives))
        yield Row(("every so many days", self.every))

    def read_knives(self, text: str) -> object:
        """The lines of knives; TypedError asks back."""
        return read_lines(text, self.desk.picture.settings)

    def go(self) -> None:
        self.read(self.knives, self.read_knives)
        every = self.read(self.every, parse_count)
        whose = self.whose()
        self.done(self.attempt(define_set, whose, self.set_name.value, self.knives.value, every))

    def whose(self) -> int | NewCustomer:
        """The customer who is meant; a name that fits nobody is asked back once, and is then a new customer."""
        typed = self.kitchen.value.strip()
        if not typed:
            self.kitchen.focus()
            raise TypedError("Type the kitchen's name.")
        known = customers(self.desk.shop)
        same = [one for one in known if one.name.casefold() == typed.casefold()]
        fits = same or [one for one in known if typed.casefold() in one.name.casefold()]
        if len(fits) > 1:
            self.kitchen.focus()
            raise TypedError(f"{len(fits)} customers fit “{cell_text(typed)}”; type more of the name.")
        if not fits:
            self.insist(typed, f"Nobody is called “{cell_text(typed)}” yet. Enter once more adds a new customer.")
            return NewCustomer(name=typed)
        return fits[0].id


class RoundDialog(Dialog):
    """Which set was brought sharp, which one came back, and with what."""

    hint = "a digit takes a set · knives as at receiving: 3 chef, 1 chef chip 0.5mm, 1 paring tip · Esc leaves"

    def __init__(self, desk: Desk, kitchen: Kitchen) -> None:
        super().__init__(desk)
        self.kitchen = kitchen
        names = [(cell_text(one.set.name), one.set.id) for one in kitchen.sets]
        answers: list[tuple[str, int | None]] = [*names, ("none", None)]
        brought = kitchen.next_set.id if kitchen.next_set is not None and len(kitchen.sets) > 1 else None
        back = next((one.set.id for one in kitchen.sets if one.place.with_kitchen), None)
        if back is None:
            back = next((one.set.id for one in kitchen.sets if one.place.is_new and one.set.id != brought), None)
        places = {value: place for place, (_, value) in enumerate(answers)}
        self.sharp = Choice(answers, at=places[brought])
        self.dull = Choice(answers, at=places[back])
        self.counted = Field(hint="what came back, by kind")

    def heading(self) -> str:
        return f"A round: {self.kitchen.customer.name}"

    def fields(self) -> ComposeResult:
        wholes = "\n".join(f"set {one.set.name}: {counts_words(one.set.whole)}" for one in self.kitchen.sets)
        yield Static(Content(wholes))
        yield Row(("brought sharp", self.sharp))
        yield Row(("came back dull", self.dull))
        yield Row(("came back with", self.counted))

    def go(self) -> None:
        new = NewRound(sharp_set_id=self.sharp.value, dull_set_id=self.dull.value, dull=self.counted.value)
        self.done(self.attempt(note_round, new))


class ChargeMissingDialog(Dialog):
    """What a missing knife costs the kitchen, on the newest box of it that is here."""

    hint = "Enter charges it · Esc leaves"

    def __init__(self, desk: Desk, missing: MissingSeen, customer_id: int) -> None:
        super().__init__(desk)
        self.missing, self.customer_id = missing, customer_id
        self.cents = Field(hint="24.00", check=parse_cents)

    def heading(self) -> str:
        return f"What is charged for the missing {self.missing.knife.kind}?"

    def fields(self) -> ComposeResult:
        yield Static(Content(cell_text(missing_words(self.missing, self.desk.picture.now.date()))))
        yield Row((f"amount, {self.desk.picture.settings.currency}", self.cents))

    def go(self) -> None:
        cents = self.read(self.cents, parse_cents)
        boxes = [one.box for one in self.desk.picture.boxes if one.box.customer_id == self.customer_id]
        if not boxes:
            raise TypedError("No box of this kitchen is here to charge it on; note the next round first.")
        self.done(self.attempt(charge_missing, self.missing.knife, max(boxes, key=lambda box: box.id), cents))
