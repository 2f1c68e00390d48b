"""The app that asks a new shop for its first numbers while its file is being made."""

from queueboard.board.app import QueueboardApp
from queueboard.board.desk import Desk
from queueboard.board.screens.first import FirstScreen


class MakingDesk(Desk):
    """The desk of a shop whose file has no name yet: it cannot have been taken away."""

    def insist_on_file(self) -> None:
        """Nothing is missing."""


class StartingApp(QueueboardApp):
    """Shows the first screen, and nothing else of the board."""

    desk: MakingDesk
    what_is_kept = "no shop was made"
    answered = False
    """True once the numbers are written."""
    initials = ""
    """Whose they are taken to be until they are typed."""
    place = ("", "")
    """The time zone and country of the machine."""

    def ask_first(self) -> None:
        """Ask for the numbers, and leave either way."""
        self.push_screen(FirstScreen(self.desk, self.initials, *self.place), self._leave)

    def _leave(self, answered: bool | None) -> None:
        self.answered = bool(answered)
        self.exit()

    def action_ring(self) -> None:
        """Nobody can be taken in yet."""
