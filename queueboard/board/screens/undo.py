"""Undo in words: the newest step first; a reason where a parcel, a payment or a told date is concerned."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.content import Content
from textual.events import DescendantFocus
from textual.widgets import OptionList, Static

from queueboard.board.base import ShopModal
from queueboard.board.desk import Desk
from queueboard.board.widgets.one_line import OneLine
from queueboard.board.widgets.signed_list import SignedList
from queueboard.phrases import helping
from queueboard.phrases.moves import history_words, step_words, undo_words, undone_words
from queueboard.shop.picture import Picture
from queueboard.shop.undoing import last_undo, steps, undo
from queueboard.values.step import Step


class UndoScreen(ShopModal[Step]):
    """What you did, the newest first; leaves with the step undone when it is opened for one step, else with None."""

    HELP = helping.UNDO
    BINDING_GROUP_TITLE = "Undo"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "enter,plus",
            "undo",
            "undo this",
            tooltip="Take back the step under the cursor.",
            id="undo.go",
            priority=True,
        ),
        Binding("asterisk,r", "again", "do it again", tooltip="Do again what was undone last.", id="undo.again"),
        Binding("escape,minus,q,u,full_stop", "leave", "back", tooltip="Back to the board.", id="undo.leave"),
    ]
    AUTO_FOCUS = "OptionList"

    def __init__(self, desk: Desk, *, once: bool = False) -> None:
        super().__init__(desk)
        self.once = once
        self.steps: tuple[Step, ...] = ()

    def compose(self) -> ComposeResult:
        with Vertical(id="undo"):
            yield Static("Undo puts the record right, not what has happened in the shop", id="heading", markup=False)
            yield SignedList(id="steps", markup=False)
            yield Static(id="will", markup=False)
            yield OneLine(hint="why is it taken back?", select=True, most=300, id="reason")
            yield Static(id="sentence", markup=False)
            yield Static(id="keys", markup=False)

    def on_mount(self) -> None:
        self._read()

    def show(self, picture: Picture) -> None:
        """Read the steps again: another window may have taken one back."""
        if self.query("#keys"):
            self._read()

    def _read(self) -> None:
        """Keep the cursor on the step that was chosen, or on none when it is gone: Enter must not undo another."""
        chosen, found = self.current(), steps(self.desk.shop, self.desk.initials)
        if found != self.steps or not found:
            first = not self.steps
            self.steps = found
            options, now = self.query_one(SignedList), self.desk.picture.now
            options.offer([Content(history_words(step, now)) for step in found])
            places = {step.group_id: place for place, step in enumerate(found)}
            kept = places.get(chosen.group_id) if chosen is not None else None
            options.highlighted = self._place(0) if first else kept
            if chosen is not None and kept is None:
                gone = f"{step_words(chosen)} was undone meanwhile, in another window."
                self.say(f"{gone} Tab, then ↑ ↓ for another step.", trouble=True)
        self._paint()

    def _place(self, wanted: int) -> int | None:
        """That place in the list or the last one before it; None when there is no step."""
        return min(wanted, len(self.steps) - 1) if self.steps else None

    def current(self) -> Step | None:
        """The step under the cursor; None when there is nothing to undo."""
        place = self.query_one(OptionList).highlighted
        return self.steps[place] if place is not None and place < len(self.steps) else None

    @on(OptionList.OptionHighlighted)
    def _paint(self) -> None:
        step = self.current()
        if step is None and self.steps:
            will = "No step is chosen."
        elif step is None:
            will = f"{self.desk.initials} has done nothing that can be undone."
        else:
            will = f"Enter: {undo_words(step)}."
        self.query_one("#will", Static).update(Content.styled(will, "bold"))
        self._paint_keys()

    def _paint_keys(self) -> None:
        """The keys that do something where the cursor is: in the line for the reason the letters are none."""
        again = last_undo(self.desk.shop, self.desk.initials)
        redo = f" · * {undo_words(again)}" if again is not None else ""
        steps, why = f"Enter undo · ↑ ↓ another step · Esc back{redo}", "Enter undo · Tab another step · Esc back"
        self.query_one("#keys", Static).update(why if self.query_one("#reason").display else steps)

    @on(DescendantFocus, "#steps")
    def among_steps(self) -> None:
        """The line for the reason is shown only while it gets the letters; among the steps they are keys."""
        self.query_one("#reason").display = False
        self._paint_keys()

    def action_undo(self) -> None:
        step = self.current()
        if step is not None:
            self._undo(step)

    def action_again(self) -> None:
        again = last_undo(self.desk.shop, self.desk.initials)
        if again is not None:
            self._undo(again)

    def _undo(self, step: Step) -> None:
        line = self.query_one("#reason", OneLine)
        if step.needs_reason and not (line.display and line.value.strip()):
            line.display = True
            line.focus()
            self._paint_keys()
            self.say("A parcel, a payment or a told date is concerned: type why, then Enter.", trouble=True)
            return
        options = self.query_one(OptionList)
        place = options.highlighted or 0
        if self.attempt(undo, step.group_id, line.value if step.needs_reason else "") is not None:
            if step.needs_reason:
                line.clear()
            options.highlighted = self._place(place)
            options.focus()
            self.say(undone_words(step))
            if self.once:
                self.dismiss(step)

    def action_leave(self) -> None:
        self.dismiss(None)

    def put(self, sentence: str, *, trouble: bool) -> None:
        """Say it under the steps."""
        place = self.query_one("#sentence", Static)
        place.update(Content(f"! {sentence}" if trouble else sentence))
        place.set_class(trouble, "-trouble")
        place.display = bool(sentence)
