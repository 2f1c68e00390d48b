"""What is charged beside the prices of knives: put on the bill, taken off it, and the most that was agreed."""

from textual import on
from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Turned
from queueboard.board.forms.form import Dialog
from queueboard.board.screens.dialogs.waiting import WaitingDialog
from queueboard.errors import RuleError
from queueboard.money.pricing import listed_charge
from queueboard.phrases.bill import charge_words, sums_words
from queueboard.phrases.money import amount, charge_text, money
from queueboard.phrases.typed import parse_cents, parse_charge
from queueboard.priced_words import ChargeSort
from queueboard.shop.charging import ONE_A_BOX, add_charge, set_limit, strike_charge
from queueboard.shop.picture import BoxPicture
from queueboard.values.box import Box, Charge
from queueboard.values.knife import Knife
from queueboard.values.new import NewCharge

FOR_A_BOX = (ChargeSort.DISCOUNT, ChargeSort.SHIPPING, ChargeSort.RUSH, ChargeSort.MINIMUM, ChargeSort.OTHER)
FOR_A_KNIFE = tuple(sort for sort in ChargeSort if sort not in ONE_A_BOX)


class ChargeDialog(Dialog):
    """What is charged, and how much; the list's price is offered."""

    hint = "a digit says what · Enter on, at the end it is stored · Esc leaves"

    def __init__(self, desk: Desk, about: Knife | Box) -> None:
        super().__init__(desk)
        self.about = about
        self.opened = self.box_now(about.box_id if isinstance(about, Knife) else about.id)
        sorts = FOR_A_KNIFE if isinstance(about, Knife) else FOR_A_BOX
        self.what = Choice([(sort.value, sort) for sort in sorts], across=False)
        self.cents = Field(self._listed(), hint="12.50, or 10 % for a discount or a rush", check=parse_charge)
        self.words = Field(hint="may stay empty; it stands on the papers")

    def heading(self) -> str:
        box = self.opened
        of = f"{self.about.tag} {self.about.kind} of " if isinstance(self.about, Knife) else ""
        return f"On the bill for {of}box {box.box.number}, {box.customer.name}"

    def fields(self) -> ComposeResult:
        yield self.what
        yield Row((f"how much, {self.desk.picture.settings.currency}", self.cents))
        yield Row(("what for", self.words))

    @on(Turned)
    def offer_the_list(self) -> None:
        """Offer the list's price of another sort, unless an amount was typed."""
        if not self.cents.touched:
            self.cents.value = self.cents.first = self._listed()

    def _listed(self) -> str:
        knife = self.about if isinstance(self.about, Knife) else None
        box = self.opened
        on_hand, work = len(box.on_hand), box.totals.work_cents
        listed = listed_charge(
            self.desk.picture.settings.prices,
            self.what.value,
            chip_um=None if knife is None else knife.chip_um,
            came_by=box.box.came_by,
            knives=on_hand,
            work_cents=work,
        )
        return "" if listed is None else charge_text(listed)

    def go(self) -> None:
        cents, ppm = self.read(self.cents, parse_charge)
        new = NewCharge(sort=self.what.value, cents=cents, ppm=ppm, text=self.words.value)
        knife = self.about if isinstance(self.about, Knife) else None
        done_or_ask(self, self.attempt(add_charge, self.opened.box, new, knife), self.opened)

    def anew(self) -> Dialog:
        return ChargeDialog(self.desk, self.now(self.about))


class StrikeChargeDialog(Dialog):
    """Which of the charges comes off the bill."""

    hint = "a digit takes its line off · Enter the one shown · - or Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        if not self.opened.charges:
            raise RuleError("Nothing is charged beside the prices of the knives; $ changes a price.")
        self.which: Choice[Charge] = Choice(
            [(charge_words(charge, self.opened), charge) for charge in self.opened.charges], across=False
        )

    def heading(self) -> str:
        return f"Take off the bill of box {self.opened.box.number}, {self.opened.customer.name}"

    def fields(self) -> ComposeResult:
        yield self.which

    def go(self) -> None:
        self.done(self.attempt(strike_charge, self.opened.box, self.which.value))

    def anew(self) -> Dialog:
        return StrikeChargeDialog(self.desk, self.opened.box.id)


class LimitDialog(Dialog):
    """The most that the customer has agreed to."""

    hint = "Enter sets it, empty takes it away · Esc leaves"

    def __init__(self, desk: Desk, box_id: int) -> None:
        super().__init__(desk)
        self.opened = self.box_now(box_id)
        limit = self.opened.box.not_above_cents
        self.most = Field("" if limit is None else amount(limit), hint="nothing agreed", check=parse_cents)

    def heading(self) -> str:
        return f"Go ahead up to how much? Box {self.opened.box.number}, {self.opened.customer.name}"

    def fields(self) -> ComposeResult:
        settings = self.desk.picture.settings
        sums = sums_words(self.opened.totals, settings) or money(self.opened.price_cents, settings)
        yield Static(Content(f"It comes to {sums}"))
        yield Row((f"not above, {settings.currency}", self.most))

    def go(self) -> None:
        most = self.read_or(self.most, parse_cents, None)
        done_or_ask(self, self.attempt(set_limit, self.opened.box, most), self.opened)

    def anew(self) -> Dialog:
        return LimitDialog(self.desk, self.opened.box.id)


class AboveLimitDialog(WaitingDialog):
    """The box has come to more than was agreed: the customer is called, and it waits for the yes."""

    def __init__(self, desk: Desk, box: Box) -> None:
        super().__init__(desk, box)
        self.box_id = box.id

    def heading(self) -> str:
        box, settings = self.box_now(self.box_id), self.desk.picture.settings
        limit = money(box.box.not_above_cents or 0, settings)
        comes_to = f"Box {box.box.number} comes to {money(box.price_cents, settings)}, above the {limit} agreed."
        return f"{comes_to} Call {box.customer.name} {box.customer.phone}".rstrip() + ". Meanwhile it waits for"


def done_or_ask(dialog: Dialog, answer: tuple[object] | None, before: BoxPicture) -> None:
    """Leave a dialog when its operation went through; where the box went above its limit ask to call first."""
    box = next((one for one in dialog.desk.picture.boxes if one.box.id == before.box.id), None)
    if answer is None or box is None or not box.above_limit or box.box.waiting_for is not None:
        dialog.done(answer)
        return
    dialog.app.push_screen(AboveLimitDialog(dialog.desk, box.box), lambda _: dialog.done(answer))
