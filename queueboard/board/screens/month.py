"""The figures of a month, one month at a time."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.headed import headed
from queueboard.board.screens.paper_out import write_paper
from queueboard.errors import QueueboardError
from queueboard.figures.month import Month, month_of
from queueboard.papers.month import month_sheet
from queueboard.phrases import helping
from queueboard.phrases.month import month_words
from queueboard.phrases.typed_figures import FIRST_YEAR
from queueboard.shop.month_seen import figures_of
from queueboard.shop.picture import Picture

KEYS = "← → another month · z what was said · k charts · / file · ? keys · . back"


class MonthScreen(ShopScreen[int | None]):
    """One month to scroll through; it is read again only when something has happened since."""

    CSS_PATH = "lists.tcss"
    leads_to_tags = True
    HELP = helping.MONTH
    BINDING_GROUP_TITLE = "The figures of a month"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left,minus", "month(-1)", "the month before", id="month.before", priority=True),
        Binding("right,plus", "month(1)", "the next month", id="month.after", priority=True),
        Binding("slash,v", "write", "write it to a file, to print it", id="month.write"),
        Binding("z", "said", "what was said, and what was seen", id="month.said"),
        Binding("k", "charts", "the charts of the readings", id="month.charts"),
        Binding("escape,full_stop,comma,q,M,enter", "leave", "back to the board", id="month.leave"),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.month: Month = month_of(desk.picture.now.date())
        self.sheet = ""
        self._read: tuple[object, ...] = ()

    def compose(self) -> ComposeResult:
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="days"):
            yield Static(id="tables", markup=False)
        yield Static(id="typed", markup=False)
        yield Static(KEYS, id="keys", markup=False)

    def on_mount(self) -> None:
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Work the month out, where anything was written down since or a day has begun."""
        read = (self.month, picture.last_line, picture.now.date())
        if self.children and read != self._read:
            self._read, self.sheet = read, ""
            self.work(month_words(self.month, picture.now.date()), self._work_out)

    def _work_out(self) -> None:
        picture = self.desk.picture
        self.sheet = month_sheet(figures_of(self.desk.shop, picture.now, self.month), picture)
        title, _, tables = self.sheet.partition("\n\n")
        self.query_one("#heading", Static).update(Content(title))
        self.query_one("#tables", Static).update(headed(tables))

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it under the figures."""
        self.query_one("#typed", Static).update(Content(f"! {sentence}" if trouble else sentence))

    def action_month(self, months: int) -> None:
        """Another month; there is none after this one."""
        there = self.month.after if months > 0 else self.month.before
        if there.first > self.desk.picture.now.date() or there.first.year < FIRST_YEAR:
            self.say("No figures reach beyond this month.", trouble=True)
            return
        self.month = there
        self.say("")
        self.show(self.desk.picture)

    def action_write(self) -> None:
        """Write the sheet where it can be printed from."""
        if not self.sheet:
            self._work_out()
        try:
            path = write_paper(self.desk, f"month-{self.month.first:%Y-%m}.txt", self.sheet)
        except QueueboardError as error:
            self.say(str(error), trouble=True)
        else:
            self.say(f"Written to {path}")

    def action_said(self) -> None:
        from queueboard.board.screens.said import SaidScreen

        self.app.push_screen(SaidScreen(self.desk))

    def action_charts(self) -> None:
        from queueboard.board.screens.bench import CHART, BenchScreen

        self.app.push_screen(BenchScreen(self.desk, CHART))

    def action_leave(self) -> None:
        self.dismiss(None)
