"""What was told for a box, once its knives are seen: it holds, or another date is told, and whom and why."""

from datetime import date

from textual import on
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import Static

from queueboard.board.desk import Desk
from queueboard.board.forms.fields import Choice, Field, Row, Turned
from queueboard.board.forms.form import Form
from queueboard.board.forms.parts import Answer, PromisePart
from queueboard.phrases.dates import told_words
from queueboard.shop.picture import BoxPicture
from queueboard.shop.wishing import Wish
from queueboard.values.new import NewKnife, NewPromise


class ToldPart(Vertical):
    """The person says which date holds; only another one is asked for."""

    DEFAULT_CSS = "ToldPart, ToldPart > Vertical { height: auto; }"

    def __init__(self, desk: Desk, box: BoxPicture) -> None:
        super().__init__()
        self.desk, self.box = desk, box
        self.second = box.promise is not None
        stays = "what was told holds" if self.second else "none is told yet"
        self.anew = Choice([(stays, False), ("tell another" if self.second else "tell one", True)])
        self.promised = PromisePart(desk, box.box.goes_by, box.promise)
        self.told_to = Field(box.customer.name if self.second else "", hint="who was told")
        self.why = Field(hint="such as: more knives than announced; the first one stays in the history")
        whom = Row(("told to", self.told_to))
        self.another = Vertical(self.promised, whom, *((Row(("why", self.why)),) if self.second else ()))

    def compose(self) -> ComposeResult:
        if self.box.promise is not None:
            now = self.desk.picture.now
            yield Static(Content(f"told: {told_words(self.box.promise, now, self.box.box.goes_by)}"))
        yield Row(("date", self.anew))
        yield self.another

    def on_mount(self) -> None:
        self.ask_another()

    @on(Turned)
    def ask_another(self) -> None:
        """Only another date has a day, and whom it was told."""
        self.another.display = self.anew.value

    def take_day(self, day: date) -> None:
        """Tell another date, this one, as if it had been typed."""
        self.anew.take(True)
        self.promised.take_day(day)

    def wish(self, knives: tuple[NewKnife, ...]) -> Wish:
        """The box with these knives, asked about for the date that would hold."""
        own, told = self.box.box, self.promised.so_far() if self.anew.value else self.box.promise
        kind = self.box.promise.kind if self.box.promise and not self.anew.value else self.promised.kind.value
        return Wish(
            knives=knives,
            goes_by=own.goes_by,
            carrier_days=own.carrier_days,
            kind=kind,
            day=None if told is None else told.day,
            at=None if told is None else told.at,
            again=own.id,
        )

    def read(self, form: Form[Answer]) -> NewPromise | None:
        """The other date; None when what was told holds. TypedError as of a promise."""
        if not self.anew.value:
            return None
        return self.promised.read(form, told_to=self.told_to.value, reason=self.why.value if self.second else "")
