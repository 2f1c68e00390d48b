"""A file of orders taken in: first what it holds and what cannot be taken, then the good ones, or none."""

from pathlib import Path

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Field, Row
from queueboard.board.forms.form import Dialog
from queueboard.clean import cell_text
from queueboard.errors import RuleError, TypedError
from queueboard.intake.orders import COLUMNS, Orders, read_orders
from queueboard.phrases.dates import many
from queueboard.phrases.orders import orders_report, taken_words
from queueboard.plainfiles import read_text
from queueboard.shop.orders import take_orders, try_orders
from queueboard.values.actor import Actor

HINT = "Enter reads it, nothing is taken in yet · Esc leaves"
HINT_READ = "Enter announces the good ones · ↑ ↓ scroll · Esc takes none"


class OrdersDialog(Dialog):
    """The name of a file, and beneath it a line for each order in it."""

    DEFAULT_CSS = "OrdersDialog #report { height: auto; max-height: 12; margin-top: 1; }"
    hint = HINT

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.file = Field(hint="/home/me/orders.csv", typed_over=False)
        self.tried: Orders | None = None
        """What the file holds; None until it was read, and again once another name is typed."""

    def heading(self) -> str:
        return "Orders from a file: boxes that will come by mail"

    def fields(self) -> ComposeResult:
        yield Row(("file", self.file))
        with VerticalScroll(id="report", can_focus=False):
            yield Static(Content(f"CSV or JSON Lines, with these columns: {', '.join(COLUMNS)}."), id="lines")

    def changed(self) -> None:
        self.tried = None
        self.say_keys(HINT)

    def go(self) -> None:
        if self.tried is None:
            self.read_it()
        elif not self.tried.good:
            raise RuleError("There is nothing in it that could be taken in.")
        else:
            numbers = self.attempt(take_orders, self.tried.good)
            if numbers is not None:
                self.app.notify(taken_words(numbers[0]), markup=False)
            self.done(numbers)

    def read_it(self) -> None:
        """Read the file and say what it holds."""
        typed = self.file.value.strip()
        if not typed:
            raise TypedError("Type the name of the file, with its folder.")
        orders = read_orders(read_text(Path(typed).expanduser(), "a file of orders"), self.desk.picture.settings)
        self.work(many(len(orders.good), "order"), lambda: self.try_them(orders))

    def try_them(self, orders: Orders) -> None:
        """Try each and say what became of it; hundreds of them take their time."""
        self.tried = try_orders(self.desk.shop, Actor(initials=self.desk.initials, now=self.desk.clock()), orders)
        report = "\n".join(cell_text(line) for line in orders_report(self.tried, self.desk.picture))
        self.query_one("#lines", Static).update(Content(report))
        self.say_keys(HINT_READ if self.tried.good else HINT)
        self.say("")

    def key_down(self) -> None:
        """Further down the report."""
        self.query_one("#report").scroll_down(animate=False)

    def key_up(self) -> None:
        """Further up."""
        self.query_one("#report").scroll_up(animate=False)
