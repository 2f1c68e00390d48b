"""A market day typed in from the stall's paper: a line and Enter for each customer, then all of it taken in at once."""

from collections.abc import Callable
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.answer_line import AnswerLine
from queueboard.clean import cell_text
from queueboard.errors import QueueboardError, RuleError, TypedError
from queueboard.phrases import market as words
from queueboard.phrases.dates import date_words
from queueboard.phrases.typed_market import (
    HOW,
    adds_to,
    read_market_line,
    read_tags,
    text_with_tag,
    usual_kind,
    with_added,
)
from queueboard.shop.market import next_market, take_market
from queueboard.shop.market_pad import Pad, PadLine, new_pad, pad_of, put_line, set_tags, strike_line
from queueboard.shop.picture import Picture
from queueboard.shop.receiving import customers


class MarketScreen(ShopScreen[None]):
    """Down the paper: tag, count, name, phone, paid; gaps and doubles of the printed tags stand below."""

    DEFAULT_CSS = """
    MarketScreen > #heading { padding: 0 1; text-style: bold; }
    MarketScreen > #lines { height: 1fr; }
    MarketScreen #paper { height: auto; padding: 0 1; text-wrap: nowrap; text-overflow: ellipsis; }
    MarketScreen > #sums { height: auto; padding: 0 1; }
    MarketScreen > #said { height: auto; padding: 0 1; text-style: bold; }
    MarketScreen > #answer { margin: 0 1; width: 1fr; }
    MarketScreen > #keys { padding: 0 1; }
    """
    BINDING_GROUP_TITLE = "A market day typed in"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "leave; the lines stay until they are taken in", id="market.leave"),
        Binding("up", "step(-1)", "line before", id="market.before", priority=True),
        Binding("down", "step(1)", "next line", id="market.next", priority=True),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.pad, self.taken = pad_of(desk.shop, desk.clock())
        self.place: int | None = None
        """The line under the cursor; None at the end, where the next one comes."""
        self.mends: int | None = None
        """The id of the line that is typed anew."""

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
        if self.taken:
            self.say("These lines are taken in. u takes that back; the next line begins a new market day.")
        elif self.pad.lines:
            self.say(f"Typed before and not taken in yet: go on behind {self.day.lines[-1].kept.text[:40]}.")

    def show(self, picture: Picture) -> None:
        """Show the paper with the shop as it is now."""
        if not self.query("#paper"):
            return
        self.pad, self.taken = pad_of(self.desk.shop, picture.now) if self.pad.lines else (self.pad, False)
        day, today = self.day, picture.now.date()
        coming = next_market(picture.settings, today)
        then = f", next one {date_words(coming[0], today)}" if coming else ", no market day is to come"
        state = ", TAKEN IN" if self.taken else ""
        self._put("heading", f"Market {date_words(self.pad.day, today)}{state} · tags {day.first}-{day.last}{then}")
        lines = [self._line(place, seen, day) for place, seen in enumerate(day.lines)]
        end = Content("▸ …\n" if self.place is None else "")
        self.query_one("#paper", Static).update(Content.assemble(*lines, end))
        self._put("sums", "\n".join((*words.tags_words(day), words.sums_words(day, picture.settings))))
        how = HOW.format(kind=usual_kind(picture.settings).name)
        self._put(
            "keys",
            f"{how}\nEnter keep · + take all in · ↑ line: Enter mend, k known, x off · . leave",
        )
        # At the end a letter may be the beginning of a name that was typed without its count.
        self.query_one(AnswerLine).quick = frozenset("./+" if self.place is None and not self.taken else "./+kxu")
        at = len(day.lines) if self.place is None else self.place
        self.query_one("#lines").scroll_to(y=max(0, at - 5), animate=False)

    @property
    def day(self) -> words.MarketDay:
        """The pad as it stands, read with the shop's numbers and customers."""
        picture = self.desk.picture
        taken = frozenset() if self.taken else frozenset(box.box.number for box in picture.boxes)
        return words.market_day(self.pad, picture.settings, customers(self.desk.shop), taken)

    def _line(self, place: int, seen: words.SeenLine, day: words.MarketDay) -> Content:
        sign = "▸" if place == self.place else " "
        said = cell_text(words.line_words(seen, day))
        if seen.line is None:
            return Content.assemble((f"{sign} ", "bold"), f"{said}\n")
        tag = "-" if seen.line.tag is None else f"{seen.line.tag}"
        head = f"{sign} {tag:>4} {len(seen.line.knives):>2}  {cell_text(words.who_words(seen.line))}"
        return Content.assemble((head, "bold"), f": {said}\n")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Keep a line; what cannot be read stays to be mended."""
        text = event.value.strip()
        try:
            if text:
                self._take(text)
            else:
                self._load()
                return
        except QueueboardError as error:
            self.say(str(error), trouble=True)
            return
        self.query_one(AnswerLine).clear()
        self.mends = self.place = None
        self.show(self.desk.picture)

    def _take(self, text: str) -> None:
        """Keep one typed line: the tags of the day, something for a line that is there, or a line."""
        settings = self.desk.picture.settings
        tags = read_tags(text)
        if tags is not None:
            self._keep(lambda pad: set_tags(self.desk.shop, pad, tags))
            self.say(f"Tags {tags[0]} to {tags[1]} were printed for this day.")
            return
        added = None if self.mends else adds_to(text)
        if added is not None:
            self._add(added, text)
            return
        before = None if self.mends is None else self.pad.line(self.mends)
        kept = text_with_tag(text, self.day.next_tag)
        read_market_line(kept, settings, next_tag=None)
        self._keep(
            lambda pad: put_line(
                self.desk.shop, pad, PadLine(id=self.mends or 0, text=kept, whose=before.whose if before else "")
            )
        )
        self._say_kept(self.mends or self.pad.lines[-1].id)

    def _add(self, tag: int, text: str) -> None:
        """What `512 *` says goes to the line of its tag."""
        there = [seen.kept for seen in self.day.lines if seen.line is not None and seen.line.tag == tag]
        if len(there) != 1:
            why = "stands in two lines; go to one with ↑" if there else "has no line yet; type count and name behind it"
            raise TypedError(f"Tag {tag} {why}.")
        (kept,) = there
        more = PadLine(id=kept.id, text=with_added(kept.text, text, self.desk.picture.settings), whose=kept.whose)
        self._keep(lambda pad: put_line(self.desk.shop, pad, more))
        self._say_kept(kept.id)

    def _keep(self, change: Callable[[Pad], Pad]) -> None:
        """Change the pad; the first line behind one that is taken in begins another."""
        if self.desk.only_read:
            raise RuleError("This shop file may only be read; nothing can be typed in here.")
        if self.taken:
            self.pad, self.taken = new_pad(self.desk.shop, self.desk.clock()), False
        self.pad = change(self.pad)

    def _say_kept(self, line_id: int) -> None:
        day = self.day
        seen = next(one for one in day.lines if one.kept.id == line_id)
        self.say(f"{seen.kept.text.split(' ')[0]}: {words.line_words(seen, day)}")

    def _load(self) -> None:
        """Take the line under the cursor into the answer, to be typed over."""
        if self.place is None or self.taken:
            return
        kept = self.day.lines[self.place].kept
        self.mends = kept.id
        line = self.query_one(AnswerLine)
        line.value = kept.text
        line.cursor_position = len(kept.text)
        self.say("Mend it, then Enter; escape leaves it as it was.")

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
        day, settings = self.day, self.desk.picture.settings
        if self.taken:
            raise RuleError("These lines are taken in already; u takes that back.")
        if why := words.stops_taking_in(day):
            raise RuleError(why)
        if question := words.ask_first(day, settings):
            self.insist(question, question)
        done = self.attempt(take_market, day.boxes, self.pad.id)
        if done is None:
            return
        self.place = None
        self.show(self.desk.picture)
        own = [
            f"{seen.line.name} {number}"
            for seen, number in zip(day.lines, done[0].numbers, strict=True)
            if seen.line is not None and seen.line.tag is None
        ]
        tags = f" Tags to write: {', '.join(own)}." if own else ""
        self.say(f"Taken in: {words.sums_words(day, settings)}.{tags} u takes all of it back.")

    def next_whose(self) -> None:
        """Say that a line is of the next one who may be meant, or of somebody new."""
        seen = self._under_cursor()
        if not seen.alike:
            raise RuleError("No known customer has this name or this phone.")
        whose = words.next_whose(seen)
        changed = PadLine(id=seen.kept.id, text=seen.kept.text, whose=whose)
        self._keep(lambda pad: put_line(self.desk.shop, pad, changed))
        self._say_kept(seen.kept.id)
        self.show(self.desk.picture)

    def strike(self) -> None:
        """Take the line under the cursor off; its text stays to be typed again with Enter."""
        if self.place is None:
            raise RuleError("Go to a line with ↑ first; x takes it off.")
        kept = self._under_cursor().kept
        self._keep(lambda pad: strike_line(self.desk.shop, pad, kept.id))
        self.place = None
        line = self.query_one(AnswerLine)
        line.value = kept.text
        self.show(self.desk.picture)
        self.say("Taken off. Enter puts it back at the end; escape lets it go.")

    def undo(self) -> None:
        """To the steps that can be undone."""
        from queueboard.board.screens.undo import UndoScreen

        self.app.push_screen(UndoScreen(self.desk))

    def _under_cursor(self) -> words.SeenLine:
        """The line under the cursor, or the newest one."""
        lines = self.day.lines
        if not lines:
            raise RuleError(words.NOTHING_TYPED)
        if self.taken:
            raise RuleError("These lines are taken in; u takes that back.")
        return lines[-1 if self.place is None else self.place]

    def _put(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Static).update(Content(cell_text(text)))

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it above the answer line."""
        self.query_one("#said", Static).update(Content(cell_text(f"! {sentence}" if trouble else sentence)))

    def action_step(self, by: int) -> None:
        """To the line before or behind; behind the last one is the end."""
        end = len(self.pad.lines)
        at = min(max(0, (end if self.place is None else self.place) + by), end)
        self.place = None if at == end else at
        self.show(self.desk.picture)

    def action_leave(self) -> None:
        """Let go of what is half typed; with nothing typed, leave."""
        line = self.query_one(AnswerLine)
        if line.value:
            line.clear()
            self.mends = None
            self.say("")
        else:
            self.dismiss(None)
