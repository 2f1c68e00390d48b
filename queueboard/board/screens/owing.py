"""Who owes for what has left, the oldest debt first; one key takes the money."""

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from queueboard.board.desk import Desk
from queueboard.board.screens.box_list import BoxListScreen, Line
from queueboard.board.screens.dialogs.account import AccountDialog
from queueboard.board.screens.dialogs.money import PaymentDialog
from queueboard.clean import cell_text
from queueboard.phrases import helping
from queueboard.phrases.owing import NOBODY_OWES, account_words, owed_box_words, owing_sum
from queueboard.shop.owing import Account, OwedBox, owing
from queueboard.shop.picture import Picture


class OwingScreen(BoxListScreen):
    """Each customer with what has left unpaid or on account, box by box."""

    HELP = helping.OWING
    BINDING_GROUP_TITLE = "On what is owed"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus,y", "pay", "take money for this box", id="owing.pay"),
    ]
    KEYS = "+ take money for it · Enter to an open box · digits: a box · ? keys · . back"

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.accounts: tuple[Account, ...] = ()

    def first_show(self) -> None:
        self.work("what is owed", lambda: self.show(self.desk.picture))

    def show(self, picture: Picture) -> None:
        """Read the accounts anew with each picture."""
        self.accounts = owing(self.desk.shop, picture.now)
        super().show(picture)

    def heading(self, picture: Picture) -> Content:
        """How much is owed by how many."""
        said = owing_sum(self.accounts, picture.settings) if self.accounts else NOBODY_OWES
        return Content(f"Owed · {said}")

    def lines(self, picture: Picture) -> tuple[Line, ...]:
        """Each customer, then their boxes."""
        if not self.accounts:
            return (Line(id="nothing", text=Content("What leaves on account, or unpaid, stands here with its age.")),)
        return tuple(line for account in self.accounts for line in _lines(account, picture))

    def action_pay(self) -> None:
        """Take money for the box under the cursor."""
        owed = self.owed_here()
        if owed is None:
            self.say("Put the cursor on a box.", trouble=True)
        elif owed.box.closed_at is None:
            self.app.push_screen(PaymentDialog(self.desk, owed.box.id))
        else:
            self.app.push_screen(AccountDialog(self.desk, owed))

    def action_choose(self) -> None:
        """To an open box; one that is gone has no place on the board, so its money is asked for."""
        owed = self.owed_here()
        if not self.typed and owed is not None and owed.box.closed_at is not None:
            self.action_pay()
        else:
            super().action_choose()

    def owed_here(self) -> OwedBox | None:
        """The box under the cursor."""
        line = self.current()
        boxes = (owed for account in self.accounts for owed in account.boxes)
        return next((owed for owed in boxes if line is not None and line.id == f"box {owed.box.id}"), None)


def _lines(account: Account, picture: Picture) -> tuple[Line, ...]:
    customer = account.customer
    phone = f" · {cell_text(customer.phone)}" if customer.phone else ""
    head = Content.assemble((account_words(account, picture.settings), "bold"), f" · {cell_text(customer.name)}{phone}")
    boxes = (
        Line(
            id=f"box {owed.box.id}",
            text=Content(f"    {owed_box_words(owed)}"),
            number=owed.box.number if owed.box.closed_at is None else None,
            mentions=frozenset({owed.box.number}),
            stops=True,
        )
        for owed in account.boxes
    )
    return Line(id=f"customer {customer.id}", text=head), *boxes
