"""The bell: from any screen to a walk-in and back to the very place; the person's own run stands still meanwhile."""

from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType

from queueboard.board.base import ShopScreen, show_everywhere
from queueboard.board.desk import Desk
from queueboard.board.noticing import NoticeApp
from queueboard.errors import QueueboardError
from queueboard.values.measured import BenchRun

if TYPE_CHECKING:
    from queueboard.board.screens.walk_in import WalkInScreen

BELL = "0"
"""The key of the numeric pad: no box and no tag begins with it, so where a number would begin it is free."""

READ_SECONDS = 10
"""How long what is said on the way back stands over the place."""


class BellApp(NoticeApp):
    """What is done lies beneath as it is: fields, cursor, focus and marks are those of its own screen, not touched."""

    BINDING_GROUP_TITLE = "From anywhere"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "f4",
            "ring",
            "the bell: a walk-in, and back",
            False,
            tooltip="Take in who stands at the counter; once more leads back to the very place.",
            id="app.bell",
            priority=True,
        )
    ]
    desk: Desk
    _walk_in: "WalkInScreen | None" = None
    """The walk-in while it is open."""

    def action_ring(self) -> None:
        """Open a walk-in over everything; pressed there it leads back. Not before somebody has said who acts."""
        top = self.screen
        if not isinstance(top, ShopScreen) or not self.desk.initials:
            return
        if self._walk_in is None:
            self._open()
        elif top is self._walk_in:
            self._walk_in.action_park()
        else:
            top.dismiss(None)

    def _open(self) -> None:
        from queueboard.board.screens.walk_in import WalkInScreen

        stopped, said = self._stop_clock()
        walk_in = self._walk_in = WalkInScreen(self.desk, said)

        def back(number: int | None) -> None:
            self._walk_in = None
            self._come_back(walk_in, stopped, number)

        self.push_screen(walk_in, back)

    def _stop_clock(self) -> tuple[BenchRun | None, str]:
        """Pause the person's own run, if its clock goes; the run, and what is to be said."""
        from queueboard.phrases.bell import paused_words
        from queueboard.shop.running import pause_run

        own = [r for r in self.desk.picture.runs if r.started_by == self.desk.initials and r.paused_at is None]
        if not own:
            return None, ""
        try:
            self.desk.do(pause_run, own[0])
            self.desk.look()
        except QueueboardError as error:
            return None, str(error)
        show_everywhere(self)
        return own[0], paused_words(own[0])

    def _come_back(self, walk_in: "WalkInScreen", stopped: BenchRun | None, number: int | None) -> None:
        """Let the clock go on, and say over the place what became of the bell."""
        from queueboard.phrases.bell import KEPT, taken_in_words

        box = None if number is None else self.desk.picture.box(number)
        kept = KEPT if number is None and walk_in.parked else ""
        told = kept if box is None else taken_in_words(box, self.desk.picture.now)
        said = "\n".join(filter(None, (told, "" if stopped is None else self._start_clock(stopped))))
        self.clear_notifications()
        if said:
            self.notify(said, timeout=READ_SECONDS, markup=False)

    def _start_clock(self, stopped: BenchRun) -> str:
        from queueboard.phrases.bell import ended_meanwhile_words, goes_on_words
        from queueboard.shop.running import go_on_run

        paused = next((run for run in self.desk.picture.runs if run.id == stopped.id), None)
        if paused is None or paused.paused_at is None:
            return ended_meanwhile_words(stopped)
        try:
            self.desk.do(go_on_run, paused)
            self.desk.look()
        except QueueboardError as error:
            return str(error)
        show_everywhere(self)
        return goes_on_words(paused, self.desk.picture.now)
