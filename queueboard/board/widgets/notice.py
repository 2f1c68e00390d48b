"""A notice on a line of its own at the foot: what is above makes room, so that it covers no card, field or answer."""

from textual.content import Content
from textual.widgets import Static


class Notice(Static):
    """One sentence that goes by itself."""

    DEFAULT_CSS = """
    Notice { dock: bottom; height: auto; max-height: 5; padding: 0 1; background: $panel; text-style: bold; }
    Notice.-trouble { color: $text-error; }
    """

    def __init__(self, sentence: str, *, trouble: bool, seconds: float) -> None:
        super().__init__(Content(f"! {sentence}" if trouble else sentence), classes="-trouble" if trouble else "")
        self.seconds = seconds

    def on_mount(self) -> None:
        self.set_timer(self.seconds, self.remove)
