"""What is looked for: found again, or settled with the customer; and a knife that was typed but never there."""

from textual.app import ComposeResult

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.errors import ChangedError, RuleError
from queueboard.phrases.knives import knife_name, last_seen_words
from queueboard.shop.losing import found, settle_lost
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.receiving import strike_knife
from queueboard.values.knife import Knife, Thing
from queueboard.words import ThingState


def looked_for(box: BoxPicture) -> tuple[Knife | Thing, ...]:
    """The knives and things of a box that nobody can find."""
    knives = (knife for knife in box.knives if knife.looking_for)
    return (*knives, *(thing for thing in box.things if thing.state is ThingState.LOOKING))


def _named(lost: Knife | Thing, picture: Picture) -> str:
    if isinstance(lost, Thing):
        return lost.name
    return f"{lost.tag}, last seen {last_seen_words(lost, picture.now)}: {knife_name(lost, picture.settings)}"


class LostDialog(Dialog):
    """Which one, and what became of it."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.box_id = box_id
        lost = looked_for(self.box_now(box_id))
        if not lost:
            raise RuleError(f"Nothing of box {self.box_now(box_id).box.number} is looked for.")
        self.which = Choice([(_named(one, desk.picture), one) for one in lost], across=False)
        self.what = Choice([("it was found", True), ("settled with the customer", False)])
        self.how = Field(hint="how the loss was settled")
        self.how_row = Row(("how", self.how))

    def heading(self) -> str:
        box = self.box_now(self.box_id)
        return f"Looked for: box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        yield self.which
        yield Row(("what became", self.what))
        yield self.how_row

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        self.how_row.display = not self.what.value

    def go(self) -> None:
        chosen = self.which.value
        now = next((one for one in looked_for(self.box_now(self.box_id)) if _same(one, chosen)), None)
        if now is None:
            raise ChangedError("That is not looked for any more; nothing was stored.")
        if self.what.value:
            self.done(self.attempt(found, now))
        else:
            self.done(self.attempt(settle_lost, now, self.how.value))


def _same(one: Knife | Thing, other: Knife | Thing) -> bool:
    return type(one) is type(other) and one.id == other.id


class StrikeDialog(Dialog):
    """A knife that was typed by mistake; it asks why, for a knife never just vanishes."""

    hint = "Enter takes it off the box · Esc leaves"

    def __init__(self, desk: Desk, knife: Knife) -> None:
        super().__init__(desk)
        self.knife = knife
        self.why = Field(hint="why it was never there")

    def heading(self) -> str:
        return f"Take {self.knife.tag} {self.knife.kind} off the box: it was typed by mistake"

    def fields(self) -> ComposeResult:
        yield Row(("why", self.why))

    def go(self) -> None:
        self.done(self.attempt(strike_knife, self.knife, self.why.value))

    def anew(self) -> Dialog:
        return StrikeDialog(self.desk, self.knife_now(self.knife))
