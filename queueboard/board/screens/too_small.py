"""What is said when the window is too small to show anything of use."""

from textual.app import ComposeResult
from textual.binding import Binding
from textual.screen import ModalScreen
from textual.widgets import Static


class TooSmallScreen(ModalScreen[None]):
    """One sentence; everything below waits as it is."""

    BINDING_GROUP_TITLE = "In a window too small"
    BINDINGS = [Binding("q", "app.quit", "quit", tooltip="Leave the board; everything is stored.", id="small.quit")]

    def __init__(self, smallest: tuple[int, int]) -> None:
        super().__init__()
        self.smallest = smallest

    def compose(self) -> ComposeResult:
        width, height = self.smallest
        yield Static(f"This window is too small. Make it {width} x {height} or larger; q quits.", markup=False)
