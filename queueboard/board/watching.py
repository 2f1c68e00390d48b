"""Looking at the shop from time to time: what another window has written, the minute, a plan that is still to come."""

from queueboard.board.base import show_everywhere
from queueboard.board.desk import Desk
from queueboard.board.themed import ThemedApp
from queueboard.errors import LostError, QueueboardError

LOOK_SECONDS = 0.25


class WatchingApp(ThemedApp):
    """Keeps every screen at what is true now."""

    desk: Desk
    keys_are_quiet = True
    """False when a key was pressed since the last look."""
    _said = ""
    _away = False

    def watch_the_shop(self) -> None:
        """Look a few times a second from now on."""
        self.set_interval(LOOK_SECONDS, self.look_around)

    def look_around(self) -> None:
        """Take a new picture when another window has written, a new minute has begun, or the plan is still to come.

        The plan comes when no key was pressed since the last time round, so that none has to wait for it.

        A screen still being put together takes the newest picture by itself; one that is taken apart needs none.
        """
        if not self.is_running or not self.screen_stack or not self.screen.is_mounted:
            return
        quiet, self.keys_are_quiet = self.keys_are_quiet, True
        try:
            if self.desk.is_stale() or (quiet and self.desk.seen.plan_follows):
                before = self.desk.seen.now.date()
                if self.desk.look().now.date() != before:
                    self.desk.say_first_look()
                show_everywhere(self)
            if self._away:
                self._tell("The shop's server answers again.")
            self._said, self._away = "", False
        except QueueboardError as error:
            self._away = isinstance(error, LostError)
            self._say_once(str(error))

    def _say_once(self, sentence: str) -> None:
        """Say what stands in the way of looking, but not four times a second."""
        if sentence != self._said:
            self._said = sentence
            self._tell(sentence, trouble=True)
