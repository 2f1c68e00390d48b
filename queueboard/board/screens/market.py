"""A market day typed in from the stall's paper: a line and Enter for each customer, then all of it taken in at once."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.market_typed import IS_TAKEN, TypedMarket
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.clean import cell_text
from queueboard.errors import QueueboardError, RuleError
from queueboard.phrases import helping
from queueboard.phrases import market as words
from queueboard.phrases.dates import date_words
from queueboard.phrases.typed_market import HOW, usual_kind
from queueboard.shop.market import next_market, take_market
from queueboard.shop.picture import Picture


class MarketScreen(ShopScreen[None]):
    """Down the paper: tag, count, name, phone, paid; gaps and doubles of the printed tags stand below."""

    DEFAULT_CSS = """
    MarketScreen > #lines { height: 1fr; }
    MarketScreen #paper { height: auto; padding: 0 1; text-wrap: nowrap; text-overflow: ellipsis; }
    MarketScreen > #sums { height: auto; padding: 0 1; }
    MarketScreen > #said { height: auto; padding: 0 1; text-style: bold; }
    MarketScreen > #answer { margin: 0 1; width: 1fr; }
    """
    HELP = helping.MARKET
    BINDING_GROUP_TITLE = "A market day typed in"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "leave; the lines stay until they are taken in", id="market.leave"),
        Binding("up", "step(-1)", "line before", id="market.before", priority=True),
        Binding("down", "step(1)", "next line", id="market.next", priority=True),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.typed = TypedMarket(desk)

    def compose(self) -> ComposeResult:
        """The paper, its sums, what is said, the answer, the keys."""
        yield Static(id="heading", markup=False)
        with VerticalScroll(id="lines", can_focus=False):
            yield Static(id="paper", markup=False)
        yield Static(id="sums", markup=False)
        yield Static(id="said", markup=False)
        yield AnswerLine(id="answer")
        yield Static(id="keys", markup=False)

    def on_mount(self) -> None:
        """Go on where it was left, also where the power went."""
        line = self.query_one(AnswerLine)
        line.focus()
        self.show(self.desk.picture)
        if self.typed.taken:
            self.say("These lines are taken in. u takes that back; the next line begins a new market day.")
        elif lines := self.typed.pad.lines:
            self.say(f"Typed before and not taken in yet: go on behind {lines[-1].text[:40]}.")

    def show(self, picture: Picture) -> None:
        """Show the paper with the shop as it is now."""
        if not self.query("#paper"):
            return
        typed = self.typed
        typed.read_again(picture.now)
        day, today = typed.day, picture.now.date()
        coming = next_market(picture.settings, today)
        then = f", next one {date_words(coming[0], today)}" if coming else ", no market day is to come"
        state = ", TAKEN IN" if typed.taken else ""
        self._put("heading", f"Market {date_words(typed.pad.day, today)}{state} · tags {day.first}-{day.last}{then}")
        lines = [_line(seen, day, under_cursor=place == typed.place) for place, seen in enumerate(day.lines)]
        end = Content("▸ …\n" if typed.place is None else "")
        self.query_one("#paper", Static).update(Content.assemble(*lines, end))
        self._put("sums", "\n".join((*words.tags_words(day), words.sums_words(day, picture.settings))))
        how = HOW.format(kind=usual_kind(picture.settings).name)
        self._put("keys", f"{how}\nEnter keep · + take all in · ↑ line: Enter mend, k known, x off · . leave")
        # At the end a letter may be the beginning of a name that was typed without its count.
        self.query_one(AnswerLine).quick = frozenset("./+" if typed.place is None and not typed.taken else "./+kxu")
        at = len(day.lines) if typed.place is None else typed.place
        self.query_one("#lines").scroll_to(y=max(0, at - 5), animate=False)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Keep a line; what cannot be read stays to be mended. An empty line loads the one under the cursor."""
        text, line = event.value.strip(), self.query_one(AnswerLine)
        if not text:
            line.value = self.typed.mend()
            line.cursor_position = len(line.value)
            self.say("Mend it, then Enter; Esc leaves it as it was." if line.value else "")
            return
        try:
            said = self.typed.take(text)
        except QueueboardError as error:
            self.say(str(error), trouble=True)
            return
        line.clear()
        self.typed.to_end()
        self.say(said)
        self.show(self.desk.picture)

    def on_answer_line_quick(self, event: AnswerLine.Quick) -> None:
        """The single keys on an empty line."""
        keys = {
            "+": self.take_in,
            "k": self.next_whose,
            "x": self.strike,
            "u": self.undo,
            "/": lambda: self.action_step(-1),
            ".": self.action_leave,
        }
        try:
            keys[event.character]()
        except QueueboardError as error:
            self.say(str(error), trouble=True)

    def take_in(self) -> None:
        """Everything into the shop as one step; what is unusual is asked once."""
        day, settings = self.typed.day, self.desk.picture.settings
        if self.typed.taken:
            raise RuleError(IS_TAKEN)
        if why := words.stops_taking_in(day):
            raise RuleError(why)
        if question := words.ask_first(day, settings):
            self.insist(question, question)
        done = self.attempt(take_market, day.boxes, self.typed.pad.id)
        if done is None:
            return
        self.typed.to_end()
        self.show(self.desk.picture)
        own = [
            f"{seen.line.name} {number}"
            for seen, number in zip(day.lines, done[0].numbers, strict=True)
            if seen.line is not None and seen.line.tag is None
        ]
        tags = f" Tags to write: {', '.join(own)}." if own else ""
        self.say(f"Taken in: {words.sums_words(day, settings)}.{tags} u takes all of it back.")

    def next_whose(self) -> None:
        """The line is of the next one who may be meant, or of somebody new."""
        self.say(self.typed.next_whose())
        self.show(self.desk.picture)

    def strike(self) -> None:
        """Take the line under the cursor off; its text stays to be typed again with Enter."""
        self.query_one(AnswerLine).value = self.typed.strike()
        self.show(self.desk.picture)
        self.say("Taken off. Enter puts it back at the end; Esc lets it go.")

    def undo(self) -> None:
        """To the steps that can be undone."""
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))

    def _put(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Static).update(Content(cell_text(text)))

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it above the answer line."""
        self.query_one("#said", Static).update(Content(cell_text(f"! {sentence}" if trouble else sentence)))

    def action_step(self, by: int) -> None:
        """To the line before or behind."""
        self.typed.step(by)
        self.show(self.desk.picture)

    def action_leave(self) -> None:
        """Let go of what is half typed; with nothing typed, leave."""
        line = self.query_one(AnswerLine)
        if line.value:
            line.clear()
            self.typed.mends = None
            self.say("")
        else:
            self.dismiss(None)


def _line(seen: words.SeenLine, day: words.MarketDay, *, under_cursor: bool) -> Content:
    sign = "▸" if under_cursor else " "
    said = cell_text(words.line_words(seen, day))
    if seen.line is None:
        return Content.assemble((f"{sign} ", "bold"), f"{said}\n")
    tag = "-" if seen.line.tag is None else f"{seen.line.tag}"
    head = f"{sign} {tag:>4} {len(seen.line.knives):>2}  {cell_text(words.who_words(seen.line))}"
    return Content.assemble((head, "bold"), f": {said}\n")
