"""One question before a whole tray moves: how many, from where to where, and which stay."""

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.events import Key
from textual.widgets import Digits, Static

from queueboard.board.base import ShopModal
from queueboard.board.desk import Desk
from queueboard.board.trays import Tray, read_staying, stay_anyway
from queueboard.clean import cell_text
from queueboard.errors import TypedError
from queueboard.phrases import helping
from queueboard.phrases.bench import at_the_test_words, tested_words
from queueboard.phrases.dates import many
from queueboard.phrases.knives import wishes_words
from queueboard.shop.picture import Picture
from queueboard.values.knife import Knife
from queueboard.words import Column


class TrayDialog(ShopModal[str]):
    """Leaves with the sentence of what was moved, or None."""

    HELP = helping.TRAY
    BINDING_GROUP_TITLE = "Before a whole tray moves"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter,plus", "go", "go", tooltip="Move the tray, but for the numbers typed.", id="tray.go"),
        Binding("minus,escape,q", "leave", "no", tooltip="Leave everything where it is.", id="tray.leave"),
        Binding("slash,tab", "turn", "another tray", tooltip="Another tray of this box.", id="tray.turn"),
        Binding("backspace", "untype", "take back", False, tooltip="Take back the last sign.", id="tray.untype"),
    ]
    AUTO_FOCUS = ""

    def __init__(self, desk: Desk, trays: tuple[Tray, ...]) -> None:
        super().__init__(desk)
        self.trays = trays
        self.typed = ""

    def compose(self) -> ComposeResult:
        with Vertical(id="tray"):
            with Horizontal(id="tray-top"):
                yield Digits(id="tray-count")
                yield Static(id="tray-what", markup=False)
            yield Static(id="tray-knives", markup=False)
            yield Static(id="tray-typed", markup=False)
            yield Static(id="tray-sentence", markup=False)
            yield Static(id="tray-keys", markup=False)

    def on_mount(self) -> None:
        self._paint()

    def show(self, picture: Picture) -> None:
        """Another window may have moved a knife meanwhile; the knives asked about stay those that were shown."""

    @property
    def tray(self) -> Tray:
        """The tray asked about."""
        return self.trays[0]

    def _staying(self) -> frozenset[int]:
        try:
            return read_staying(self.typed, self.tray)
        except TypedError:
            return frozenset()

    def _paint(self, sentence: str = "") -> None:
        tray, staying = self.tray, self._staying()
        name = cell_text(self.desk.picture.box_by_id(tray.box_id).customer.name)
        self.query_one("#tray-count", Digits).update(str(sum(knife not in tray.asked for knife in tray.going(staying))))
        self.query_one("#tray-what", Static).update(
            Content.assemble((f"{tray.places} → {tray.to.value}", "bold"), f"\n\n{tray.number} {name}")
        )
        what, ask = ("not OK", "are not OK") if tray.is_test else ("stays", "stay")
        marks = [f"({k.number} {what})" if k.number in staying else str(k.number) for k in tray.knives]
        held = _held_words(tray.held)
        wished = wishes_words(tray.going(staying)) if tray.to is Column.READY else ""
        wishes = f"\n{cell_text(wished)}" if wished else ""
        asked = f"\nat the test for the gauge: {', '.join(k.tag for k in tray.asked)}" if tray.asked else ""
        self.query_one("#tray-knives", Static).update(f"knives {'  '.join(marks)}{asked}{held}{wishes}")
        self.query_one("#tray-typed", Static).update(f"{ask.removeprefix('are ')}: {self.typed}_")
        said = sentence or stay_anyway(staying, tray)
        self.query_one("#tray-sentence", Static).update(said)
        self.query_one("#tray-sentence").display = bool(said)
        other = f" · / another tray: {self.trays[1].places} → {self.trays[1].to.value}" if len(self.trays) > 1 else ""
        self.query_one("#tray-keys", Static).update(f"Type which {ask} (3.7). Enter go · - no{other}")

    def take_first(self, key: Key) -> bool:
        """A dash behind the number of this box makes a tag of it, as a scanner types one; else it says no."""
        if key.character == "-" and self.typed.split(".")[-1] == str(self.tray.number):
            self.typed += "-"
            self._paint()
            return True
        return super().take_first(key)

    def on_key(self, event: Key) -> None:
        sign = event.character or ""
        if sign and sign in "0123456789., " and len(self.typed) < 60:
            event.stop()
            self.typed += "." if sign == "," else sign
            self._paint()

    def action_untype(self) -> None:
        self.typed = self.typed[:-1]
        self._paint()

    def action_turn(self) -> None:
        self.trays = (*self.trays[1:], self.trays[0])
        self._paint()

    def action_leave(self) -> None:
        self.dismiss(None)

    def action_go(self) -> None:
        from queueboard.shop.moving import move_knives

        if self._take_scanned():
            return
        try:
            going = self.tray.going(read_staying(self.typed, self.tray))
        except TypedError as error:
            self.say(str(error), trouble=True)
            return
        if self.tray.is_test:
            self._test(going)
        elif not going:
            self.say("Every knife would stay; - leaves them all where they are.", trouble=True)
        elif self.attempt(move_knives, going, self.tray.to) is not None:
            said = f"{many(len(going), 'knife')} of {self.tray.number} moved to {self.tray.to.value}."
            self.dismiss(f"{said}{at_the_test_words(going, self.tray.to)}")

    def _take_scanned(self) -> bool:
        """Take the tag at the end as one more number; True for one, since a scanner's Enter is no answer."""
        typed, dash, number = self.typed.rpartition("-")
        if not dash:
            return False
        self.typed = f"{typed.removesuffix(str(self.tray.number))}{number}."
        self._paint()
        return True

    def _test(self, ok: tuple[Knife, ...]) -> None:
        """The tray is tested: what was typed is not OK."""
        from queueboard.shop.testing import prove_tray

        back = tuple(knife for knife in self.tray.knives if knife not in ok)
        if self.attempt(prove_tray, self.tray.knives, back) is not None:
            self.dismiss(tested_words(ok, back, self.desk.picture.settings))

    def put(self, sentence: str, *, trouble: bool) -> None:
        self._paint(f"! {sentence}" if trouble else sentence)


def _held_words(held: Sequence[Knife]) -> str:
    """A line with the knives that nothing moves, and one with those that only the yes to the count moves, by w."""
    apart = ", ".join(knife.tag for knife in held if knife.apart)
    others = ", ".join(knife.tag for knife in held if not knife.apart)
    waits = f"\nnot moved, waiting or declined: {others}" if others else ""
    return f"{waits}\nnot moved, beyond the note (w asks for the yes to the count): {apart}" if apart else waits
