"""What the test of an edge shows, and what is typed there: the knife, its spots, a number, stage and belt."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Key, Paste
from textual.widgets import Static

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.edge_lines import edge_lines, edge_title, first_stage, next_place
from queueboard.phrases.testing import keys_words, verdict_lines
from queueboard.shop.edge_now import edge_now
from queueboard.shop.picture import Picture
from queueboard.values.edge import Spot
from queueboard.values.knife import Knife
from queueboard.words import Stage

STAGES = (Stage.BEFORE, Stage.AFTER, Stage.BETWEEN)
LONGEST = 12
"""Signs of a number that are kept; more is no reading anyway."""


class EdgeView(ShopScreen[str]):
    """One knife at the test."""

    BINDING_GROUP_TITLE = "What is read at the test of an edge"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("slash", "stage", "before, after, between belts", id="edge.stage"),
        Binding("up", "spot(-1)", "spot before", id="edge.up", show=False),
        Binding("down", "spot(1)", "next spot", id="edge.down", show=False),
        Binding("b", "belt", "another belt: behind which, or back to which", id="edge.belt"),
        Binding("d", "burr", "between belts: deburred, or with the burr", id="edge.burr"),
        Binding("backspace", "untype", "take back", id="edge.untype", show=False),
    ]

    def __init__(self, desk: Desk, knife: Knife) -> None:
        super().__init__(desk)
        self.typed, self.said, self.trouble, self.comes_next = "", "", False, False
        self.begin(knife)

    def begin(self, knife: Knife) -> None:
        """Begin with a knife: the stage that is due, at its first spot that is not read."""
        self.seen = edge_now(self.desk.shop, knife)
        self.stage = first_stage(self.seen)
        self.belt, self.burr = len(self.seen.belts) - 1, True
        self.place = next_place(self.seen, self.stage, -1)

    def compose(self) -> ComposeResult:
        for part in ("heading", "spots", "verdict", "typed", "sentence"):
            yield Static(id=part, markup=False)
        yield Static(id="keys", markup=False)

    def on_mount(self) -> None:
        self.show(self.desk.picture)

    def show(self, picture: Picture) -> None:
        """Show the knife as it stands now; once it has left the board, it stays as it was last seen."""
        knife, spots = picture.knife(self.seen.knife.tag), self.seen.spots
        if knife is not None:
            self.seen = edge_now(self.desk.shop, knife)
        self.place = min(self.place, len(self.seen.spots) - 1)
        if self.typed and [spot.name for spot in spots] != [spot.name for spot in self.seen.spots]:
            self.said, self.trouble = f"The spots were marked anew: see where {self.typed} belongs.", True
        if self.query("#spots"):
            self._paint()

    def _paint(self) -> None:
        seen, picture = self.seen, self.desk.picture
        for part, text in (
            ("heading", f"{self._next_words()}{edge_title(seen, picture)}"),
            ("spots", "\n".join(edge_lines(seen, self.place, picture.now))),
            ("verdict", "\n".join(verdict_lines(seen))),
            ("typed", "" if seen.line is None else f"{self.spot.name}, {self._stage_words()}: {self.typed}_"),
            ("sentence", f"! {self.said}" if self.trouble else self.said),
            ("keys", keys_words(by_cutting=seen.line is None)),
        ):
            self.query_one(f"#{part}", Static).update(Content(text))

    def _next_words(self) -> str:
        """Large, until its first key: another knife lies here than a moment ago."""
        return (
            f" NEXT: {self.seen.knife.tag} ".center(max(20, self.app.size.width - 2), "=") + "\n"
            if self.comes_next
            else ""
        )

    @property
    def spot(self) -> Spot:
        """The spot under the cursor."""
        return self.seen.spots[self.place]

    @property
    def belt_label(self) -> str:
        """The belt chosen with b; empty for a process without belts."""
        return self.seen.belts[self.belt] if self.seen.belts else ""

    def _stage_words(self) -> str:
        if self.stage is Stage.BETWEEN:
            return f"behind {self.belt_label or 'no belt'}, {'with the burr' if self.burr else 'deburred'}"
        return "after, deburred" if self.stage is Stage.AFTER else "before"

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it below what is typed."""
        self.said, self.trouble = sentence, trouble
        if self.query("#sentence"):
            self._paint()

    def on_key(self, event: Key) -> None:
        """Digits begin a number; while one is typed every sign that does nothing of its own goes on with it."""
        sign = event.character or ""
        if sign.isdecimal() and self.seen.line is None:
            event.stop()
            self._takes_no_reading()
        elif sign.isdecimal() or (self.typed and sign.isprintable() and sign and sign not in "+-*/"):
            event.stop()
            self.typed, self.comes_next = (self.typed + sign)[:LONGEST], False
            self.say("")

    def on_paste(self, event: Paste) -> None:
        """What is pasted stands there as if it was typed; Enter says whether it is a reading."""
        event.stop()
        if self.seen.line is None:
            self._takes_no_reading()
            return
        self.typed = (self.typed + "".join(sign for sign in event.text if sign.isprintable()))[:LONGEST]
        self.say("")

    def action_untype(self) -> None:
        self.typed = self.typed[:-1]
        self._paint()

    def action_spot(self, by: int) -> None:
        self.place = (self.place + by) % len(self.seen.spots)
        self._paint()

    def action_stage(self) -> None:
        if self._half_typed():
            return
        self.stage = STAGES[(STAGES.index(self.stage) + 1) % len(STAGES)]
        self.place = next_place(self.seen, self.stage, -1)
        self._paint()

    def action_belt(self) -> None:
        self.belt = (self.belt - 1) % max(1, len(self.seen.belts))
        self.say(f"Behind {self.belt_label}; not OK goes back to it.")

    def action_burr(self) -> None:
        self.burr = not self.burr
        self._paint()

    def _takes_no_reading(self) -> None:
        knife = self.seen.knife
        self.say(f"No gauge reads {knife.tag}: cut with it. + it cuts, - it does not.", trouble=True)

    def _half_typed(self) -> bool:
        if self.typed:
            self.say(f"{self.typed} is still typed: Enter writes it down, Backspace takes it away.", trouble=True)
        return bool(self.typed)
