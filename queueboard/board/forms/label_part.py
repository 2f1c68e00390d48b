"""The part of a form that asks for a return label: whose it is, whether it is here, what is printed on it."""

from datetime import date
from typing import TypeVar

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Turned
from queueboard.board.forms.form import Form
from queueboard.board.forms.parts import day_hint
from queueboard.clean import clean
from queueboard.phrases.money import amount
from queueboard.phrases.parcels import grams_words
from queueboard.phrases.typed import parse_cents, parse_day
from queueboard.phrases.typed_parcels import WEIGHT_HINT, parse_grams
from queueboard.shop.label_fields import insist_not_over
from queueboard.values.box import ReturnLabel
from queueboard.values.new import NewLabel
from queueboard.words import LabelOwner, LabelState

Answer = TypeVar("Answer")
Standing = tuple[LabelOwner, LabelState]

STANDINGS: tuple[tuple[str, Standing], ...] = (
    ("to buy", (LabelOwner.SHOP, LabelState.TO_BUY)),
    ("bought", (LabelOwner.SHOP, LabelState.HERE)),
    ("customer's", (LabelOwner.CUSTOMER, LabelState.HERE)),
    ("customer's to come", (LabelOwner.CUSTOMER, LabelState.TO_BUY)),
)
PRINTED = "as printed"


class LabelPart(Vertical):
    """Whose label and where it is; what is printed on it is asked once it is here."""

    DEFAULT_CSS = "LabelPart { height: auto; }"

    def __init__(self, desk: Desk, before: ReturnLabel | None = None) -> None:
        super().__init__()
        self.desk = desk
        self.before = before
        standings = [standing for _, standing in STANDINGS]
        stands = (before.owner, before.state) if before is not None else standings[0]
        self.standing = Choice(STANDINGS, at=standings.index(stands) if stands in standings else 0)
        expires_on = before.expires_on.isoformat() if before is not None and before.expires_on is not None else ""
        self.expires = Field(expires_on, hint=f"last day, as printed: {day_hint(desk)}", check=self.day_of)
        self.carrier = Field(before.carrier if before is not None else "", hint=PRINTED)
        self.name_on = Field(before.name_on if before is not None else "", hint=PRINTED)
        self.address_on = Field(before.address_on if before is not None else "", hint=PRINTED, check=address_of)
        limit_g = None if before is None else before.limit_g
        self.limit = Field("" if limit_g is None else grams_words(limit_g), hint=WEIGHT_HINT, check=parse_grams)
        self.value = Field(_amount(None if before is None else before.value_cents), hint="insured", check=parse_cents)
        self.price = Field(_amount(None if before is None else before.price_cents), hint="paid", check=parse_cents)
        self.price_row = Row(("its price", self.price))
        self.printed = (
            Row(("expires", self.expires)),
            Row(("carrier", self.carrier), ("name on it", self.name_on)),
            Row(("addressed to", self.address_on)),
            Row(("at most", self.limit), ("value", self.value)),
        )

    def compose(self) -> ComposeResult:
        yield Row(("label", self.standing))
        yield from self.printed
        yield self.price_row

    def on_mount(self) -> None:
        self.ask_printed()

    @on(Turned)
    def ask_printed(self) -> None:
        """A label still to come has nothing printed on it yet; only what the shop buys has a price."""
        owner, state = self.standing.value
        for row in self.printed:
            row.display = state is LabelState.HERE
        self.price_row.display = owner is LabelOwner.SHOP and state is LabelState.HERE

    def day_of(self, text: str) -> date | None:
        """The day typed, counted from today on the shop's calendar; TypedError for one that is over."""
        today = self.desk.picture.now.date()
        day = parse_day(text, today)
        if self.before is None or day != self.before.expires_on:
            insist_not_over(day, today)
        return day

    def read(self, form: Form[Answer], *, note_name: str = "", note_address: str = "") -> NewLabel:
        """What was typed; TypedError, with the cursor back in the field, for an expiry that is no day and the like."""
        owner, state = self.standing.value
        if state is not LabelState.HERE:
            return NewLabel(owner=owner, state=state, note_name=note_name, note_address=note_address)
        return NewLabel(
            owner=owner,
            state=state,
            carrier=self.carrier.value,
            expires_on=form.read_or(self.expires, self.day_of, None),
            name_on=self.name_on.value,
            address_on=self.address_on.value,
            limit_g=self.read_limit(form),
            value_cents=form.read_or(self.value, parse_cents, None),
            price_cents=form.read_or(self.price, parse_cents, None) if owner is LabelOwner.SHOP else None,
            note_name=note_name,
            note_address=note_address,
        )

    def read_limit(self, form: Form[Answer]) -> int | None:
        """The limit in grams; as it stood where nothing was typed over it, for what is shown is rounded."""
        if self.before is not None and not self.limit.touched:
            return self.before.limit_g
        return form.read_or(self.limit, parse_grams, None)


def address_of(text: str) -> str:
    """An address as it can be kept; TypedError for one that is too long."""
    return clean(text, limit=500, field="address")


def _amount(cents: int | None) -> str:
    return "" if cents is None else amount(cents)
