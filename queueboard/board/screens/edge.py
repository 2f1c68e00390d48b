"""The test of one knife: a number typed for each spot, the verdict at once, and on to the next knife."""

from typing import ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.base import Answer, ShopScreen
from queueboard.board.screens.edge_lines import next_place
from queueboard.board.screens.edge_view import EdgeView
from queueboard.errors import QueueboardError, TypedError
from queueboard.phrases import helping
from queueboard.phrases.testing import half_read_words, odd_force_words, over_words
from queueboard.phrases.typed_bench import parse_force
from queueboard.shop.gauging import lacks_teeth, read_spot
from queueboard.shop.picture import BoxPicture
from queueboard.shop.testing import judge_edge, let_go_by_eye
from queueboard.values.knife import Knife
from queueboard.values.step import Step
from queueboard.words import Column, Stage


class EdgeScreen(EdgeView):
    """Leaves with what is to be said on the board, or None."""

    CSS_PATH = "edge.tcss"
    HELP = helping.EDGE
    BINDING_GROUP_TITLE = "The test of an edge"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "write", "write the reading down", id="edge.write"),
        Binding(
            "plus", "judge(True)", "it is OK, to ready", tooltip="Say that it is OK; it goes to ready.", id="edge.ok"
        ),
        Binding(
            "minus",
            "judge(False)",
            "it is not OK, back to the bench",
            tooltip="Say that it is not OK; it goes back to the bench.",
            id="edge.not-ok",
        ),
        Binding("asterisk", "by_eye", "let it go by eye", id="edge.eye"),
        Binding("n", "next", "next knife", id="edge.next"),
        Binding("s", "ask('spots')", "mark the spots", id="edge.spots"),
        Binding(
            "e",
            "ask('wrong')",
            "the newest reading here was wrong",
            tooltip="Say that the newest reading here was wrong.",
            id="edge.wrong",
        ),
        Binding("u", "undo", "undo", id="edge.undo"),
        Binding("escape,full_stop,comma,q", "leave", "back to the board", id="edge.leave"),
    ]

    def action_write(self) -> None:
        """Write what is typed down and go to the spot that comes next; without a number only go there."""
        if not self.typed:
            self.action_spot(1)
            return
        try:
            force = parse_force(self.typed)
            if odd := odd_force_words(force):
                self.insist((self._read_so_far(), self.spot.name, self.stage, force), odd)
        except TypedError as error:
            self.say(str(error), trouble=True)
            return
        if lacks_teeth(self.seen.knife, self.seen.spots) and not self.seen.edge.readings:
            self.say(f"At which tooth is each spot? Then {self.typed} can be written down.", trouble=True)
            self.action_ask("spots")
            return
        spot, behind = self.spot.name, self.belt_label if self.stage is Stage.BETWEEN else ""
        clean = self.stage is not Stage.BETWEEN or not self.burr
        knife, stage = self.seen.knife, self.stage
        if self.attempt(read_spot, knife, spot, force, stage, belt=behind, deburred=clean) is not None:
            self.typed = ""
            self.place = next_place(self.seen, self.stage, self.place)
            self.say(f"{spot} {force} gf written down.")

    def _read_so_far(self) -> tuple[int, tuple[int, ...]]:
        """What a question was about: with another reading or another knife it is asked anew."""
        return self.seen.knife.id, tuple(one.id for one in self.seen.edge.readings)

    def _asked_back(self, key: str, question: str) -> bool:
        """Ask a question once; True when the key is to do nothing yet."""
        try:
            if question:
                self.insist((key, self._read_so_far()), question)
        except TypedError as error:
            self.say(str(error), trouble=True)
            return True
        return False

    def action_judge(self, ok: bool) -> None:
        """OK or not OK; the second not OK asks what becomes of the knife."""
        knife = self.seen.knife
        key, does = ("+", "makes it ready") if ok else ("-", "sends it back")
        if self._half_typed() or self._asked_back(key, half_read_words(self.seen, key, does)):
            return
        if not ok and self.seen.edge.not_ok and knife.at_work:
            self.action_ask("twice")
        elif self.attempt(judge_edge, knife, ok=ok, belt="" if ok else self.belt_label) is not None:
            self._over(f"{knife.tag} is {'OK: ready' if ok else f'not OK: back to {self.belt_label}'}.")

    def action_by_eye(self) -> None:
        knife = self.seen.knife
        question = over_words(self.seen) or half_read_words(self.seen, "*", "lets it go by eye")
        if self._half_typed() or self._asked_back("*", question):
            return
        if self.attempt(let_go_by_eye, knife) is not None:
            self._over(f"{knife.tag} let go by eye, by {self.desk.initials}.")

    def _over(self, sentence: str) -> None:
        """On to the next knife that waits for the gauge; with none the board says what was done."""
        knife = self.seen.knife
        waiting = [k for box in self.desk.picture.boxes for k in box.on_hand if _waits(k) and k.id != knife.id]
        if not waiting:
            self.dismiss(f"{sentence}   u takes it back")
            return
        self.begin(waiting[0])
        self.comes_next = True
        self.say(f"{sentence} Next: {waiting[0].tag}.   u takes it back")

    def action_next(self) -> None:
        """The next knife that waits for the gauge, else the next of the same box."""
        knife, picture = self.seen.knife, self.desk.picture
        waiting = [k for box in picture.boxes for k in box.on_hand if _waits(k)]
        own = next((box.on_hand for box in picture.boxes if box.box.id == knife.box_id), ())
        row = waiting if any(k.id != knife.id for k in waiting) else own
        after = next((place for place, k in enumerate(row, 1) if k.id == knife.id), 0)
        if row and not self._half_typed():
            self.begin(row[after % len(row)])
            self.comes_next = False
            self.say("")

    def action_ask(self, what: str) -> None:
        """Ask about spots, a wrong reading, or the second look."""
        from queueboard.board.screens.dialogs.edge import SecondLookDialog, edge_dialog

        try:
            dialog = edge_dialog(what, self.desk, self.seen, self.spot, self.stage)
        except QueueboardError as error:
            self.say(str(error), trouble=True)
            return
        if not isinstance(dialog, SecondLookDialog):
            self.app.push_screen(dialog, lambda done: self.say("") if done else None)
            return

        def chosen(done: bool | None) -> None:
            if done:
                self._over(f"{self.seen.knife.tag}: {dialog.choice.value.value}.")

        self.app.push_screen(dialog, chosen)

    def action_undo(self) -> None:
        from queueboard.board.screens.undo import UndoScreen

        def undone(step: Step | None) -> None:
            """Back to the knife whose step was undone: its test may have led to another one."""
            tags = () if step is None else step.about.tags
            knife = self.desk.picture.knife(tags[0]) if len(tags) == 1 else None
            if knife is not None:
                self.begin(knife)
                self.comes_next = False
                self.say(f"Undone: {knife.tag} is here again.")

        self.app.push_screen(UndoScreen(self.desk, once=True), undone)

    def action_leave(self) -> None:
        if self.typed:
            self.typed = ""
            self.say("What was typed is dropped; once more leaves.")
        else:
            self.dismiss(None)


def _waits(knife: Knife) -> bool:
    """True for a knife that stands at the test until it is read."""
    return knife.gauge is not None and knife.column is Column.TESTING and knife.declined is None


def open_test(screen: ShopScreen[Answer], box: BoxPicture, knife: Knife | None) -> None:
    """Test a knife; without one the likeliest of its box, first of all one that waits for the gauge."""
    likeliest = sorted(
        box.on_hand, key=lambda k: (not _waits(k), k.column is not Column.TESTING, not k.at_work, k.number)
    )
    if knife is None and not likeliest:
        screen.say(f"{box.box.number} has no knives yet that could be tested.", trouble=True)
    else:
        screen.app.push_screen(EdgeScreen(screen.desk, knife or likeliest[0]), screen.say_if_any)
