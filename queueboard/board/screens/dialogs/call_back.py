"""Knives that come back since they are not sharp: received anew from the box that is gone, or linked to it."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.clean import cell_text
from queueboard.errors import RuleError, TypedError
from queueboard.phrases.call_backs import old_knife_words, rule_words
from queueboard.phrases.dates import date_words
from queueboard.shop.call_backs import days_since, free_by_rule, link_call_back, take_back, twins_of
from queueboard.shop.finding import gone_of_customer
from queueboard.shop.proof import CardKnife, card_of_box
from queueboard.values.shelf import GoneSeen, NewCallBack
from queueboard.words import Column, GoesBy

MOST_OLD = 5
WHY_HINT = "drags on tomato, tip does not cut"


class CallBackAsked(Dialog):
    """What both share: the shop's own rule, asked about only beyond its days."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.why = Field(hint=WHY_HINT)
        self.free = Choice([("at the price of the list", False), ("free all the same", True)])
        self.free_row = Row(("costs", self.free))

    def is_free(self, gone: GoneSeen) -> bool | None:
        """None within the shop's days, where its rule says; beyond them what was chosen."""
        days = days_since(gone, self.desk.picture.now)
        return None if free_by_rule(days, self.desk.picture.settings) else self.free.value

    def rule(self, gone: GoneSeen) -> str:
        """The shop's own rule for this box."""
        return rule_words(days_since(gone, self.desk.picture.now), self.desk.picture.settings)


class TakeBackDialog(CallBackAsked):
    """Which knives of a box that is gone came back, and what is wrong; they are received as a new box."""

    hint = "Enter on, at the end they are received as a new box · Esc leaves"

    def __init__(self, desk: Desk, gone: GoneSeen) -> None:
        super().__init__(desk)
        self.gone = gone
        self.cards = tuple(one for one in card_of_box(desk.shop, gone.box.id).knives if one.knife.column is Column.GONE)
        self.which = Field(hint="numbers with points between, 1.3; empty is all", check=self.chosen)
        ways = [("to be fetched", GoesBy.PICK_UP), ("back by parcel", GoesBy.PARCEL)]
        self.goes_by = Choice(ways, at=int(gone.box.goes_by is GoesBy.PARCEL))
        self.stored: int | None = None

    def heading(self) -> str:
        return f"Not sharp: knives of box {self.gone.box.number} came back; {self.rule(self.gone)}"

    def fields(self) -> ComposeResult:
        settings = self.desk.picture.settings
        lines = "\n".join(cell_text(old_knife_words(one, settings)) for one in self.cards)
        yield Static(Content(lines), classes="old")
        yield Row(("which", self.which))
        yield Row(("what is wrong", self.why))
        yield Row(("goes", self.goes_by))
        yield self.free_row

    def on_mount(self) -> None:
        self.free_row.display = self.is_free(self.gone) is not None

    def chosen(self, text: str) -> tuple[CardKnife, ...]:
        """The knives typed by the second half of their tags; TypedError for a number that none has."""
        words = text.replace(",", ".").replace(" ", ".").split(".")
        by_number = {str(one.knife.number): one for one in self.cards}
        wanted = [word.rpartition("-")[2] for word in words if word]
        unknown = [word for word in wanted if word not in by_number]
        if unknown:
            raise TypedError(f"No knife {unknown[0][:20]} left in box {self.gone.box.number}.")
        return tuple(by_number[word] for word in dict.fromkeys(wanted)) or self.cards

    def go(self) -> None:
        knives = self.read(self.which, self.chosen)
        parcel = self.goes_by.value is GoesBy.PARCEL
        number = self.attempt(
            take_back,
            NewCallBack(
                old_box_id=self.gone.box.id,
                old_knife_ids=tuple(one.knife.id for one in knives),
                why=self.why.value,
                free=self.is_free(self.gone),
                goes_by=self.goes_by.value,
                carrier_days=self.desk.picture.settings.parcels.carrier_days if parcel else 0,
            ),
        )
        self.stored = None if number is None else number[0]
        self.done(number)


class LinkCallBackDialog(CallBackAsked):
    """Which earlier box an open box was: its knives are known again by kind, length and mark."""

    hint = "Enter on, at the end it is linked · Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        if self.opened.call_back is not None:
            old = self.opened.call_back.old_number
            raise RuleError(f"Box {self.opened.box.number} is linked to box {old} already; u takes that back.")
        self.gone = gone_of_customer(desk.shop, self.opened.customer.id)[:MOST_OLD]
        if not self.gone:
            raise RuleError(f"No earlier box of this customer is gone; box {self.opened.box.number} cannot be one.")
        today = desk.picture.now.date()
        answers = [(f"box {one.box.number}, left {date_words(one.left_at.date(), today)}", one) for one in self.gone]
        self.which = Choice(answers, across=False)
        self.known = Static("", classes="old")

    def heading(self) -> str:
        return f"Box {self.opened.box.number} came back since it is not sharp. Which box was it?"

    def fields(self) -> ComposeResult:
        yield self.which
        yield self.known
        yield Row(("what is wrong", self.why))
        yield self.free_row

    def on_mount(self) -> None:
        self.changed()

    def changed(self) -> None:
        old = self.which.value
        self.free_row.display = self.is_free(old) is not None
        self.known.update(Content("\n".join((self.rule(old), *self._known_lines(old)))))

    def _known_lines(self, old: GoneSeen) -> Sequence[str]:
        pairs = twins_of(self.opened.knives, old.left)
        cards = {one.knife.id: one for one in card_of_box(self.desk.shop, old.box.id).knives}
        settings = self.desk.picture.settings
        said = [f"{new.tag} was {old_knife_words(cards[was.id], settings)}" for new, was in pairs]
        return [cell_text(line) for line in said] or ["No knife of it is known by kind, length and mark."]

    def go(self) -> None:
        old = self.which.value
        pairs = [(new.id, was.id) for new, was in twins_of(self.opened.knives, old.left)]
        free = self.is_free(old)
        self.done(self.attempt(link_call_back, self.opened.box, old.box.id, pairs, self.why.value, free=free))

    def anew(self) -> Dialog:
        return LinkCallBackDialog(self.desk, self.opened.box.id)
