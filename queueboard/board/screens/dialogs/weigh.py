"""What the packed parcel weighs and how large it is, from scale and rule."""

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.phrases.carriers import carrier_words, rules_words
from queueboard.phrases.parcels import grams_words, parcel_words, size_words
from queueboard.phrases.typed_parcels import WEIGHT_HINT, parse_grams, parse_sides
from queueboard.shop.weighing import weigh_parcel
from queueboard.shop.weight_seen import parcel_weight


class WeighDialog(Dialog):
    """Weight and three sides; an empty field takes back what was there."""

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        own, self.unit = self.opened.box, desk.picture.settings.length_unit
        self.weight = Field(
            "" if own.packed_g is None else grams_words(own.packed_g), hint=WEIGHT_HINT, check=parse_grams
        )
        size = size_words(own.parcel_mm, self.unit) if own.parcel_mm else ""
        unit = "inches" if self.unit == "in" else self.unit
        self.size_typed = Field(size, hint=f"length x width x height in {unit}", check=self.sides_of)

    def heading(self) -> str:
        box = self.opened
        return f"Parcel of box {box.box.number}, {box.customer.name}: on the scale"

    def fields(self) -> ComposeResult:
        yield Row(("weighs", self.weight))
        yield Row(("size", self.size_typed))
        picture = self.desk.picture
        settings, today = picture.settings, picture.now.date()
        weight = parcel_weight(self.opened, settings)
        lines = (
            *(() if weight is None else parcel_words(weight, settings)),
            carrier_words(settings.parcels, self.opened.label, today),
            rules_words(settings.parcels, self.opened.label, today),
        )
        yield Static(Content("\n".join(lines)))

    def sides_of(self, text: str) -> tuple[int, ...]:
        """The sides typed, in the shop's unit."""
        return parse_sides(text, self.unit)

    def go(self) -> None:
        own = self.opened.box
        grams = self.read_or(self.weight, parse_grams, None) if self.weight.touched else own.packed_g
        sides: tuple[int, ...] = own.parcel_mm
        if self.size_typed.touched:
            sides = self.read(self.size_typed, self.sides_of) if self.size_typed.value.strip() else ()
        self.done(self.attempt(weigh_parcel, own, grams, sides))

    def anew(self) -> Dialog:
        return WeighDialog(self.desk, self.opened.box.id)
