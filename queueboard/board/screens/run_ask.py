"""One question before a run that is somebody else's, or of several boxes, leaves the bench."""

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.widgets import Digits, Static

from queueboard.board.base import ShopModal
from queueboard.board.desk import Desk
from queueboard.phrases import helping
from queueboard.phrases.dates import many
from queueboard.values.knife import Knife
from queueboard.words import Column


class RunDialog(ShopModal[bool]):
    """Leaves with True when the run shall move, None when it stays. It moves nothing itself."""

    DEFAULT_CSS = """
    RunDialog { align: center bottom; background: $background 40%; }
    RunDialog > #run { width: 100%; height: auto; background: $panel; padding: 0 1; border-top: solid $primary; }
    RunDialog #run-top { height: 3; }
    RunDialog #run-count { width: auto; min-width: 6; margin-right: 2; color: $text-primary; text-style: bold; }
    RunDialog #run-what { width: 1fr; height: auto; text-style: bold; }
    RunDialog #run-tags, RunDialog #run-keys { height: auto; margin-top: 1; }
    RunDialog #run-keys { color: $text-muted; }
    """
    HELP = helping.RUN
    BINDING_GROUP_TITLE = "Before a run of several boxes moves"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter,plus", "go", "go", tooltip="Move all knives of the run.", id="run.go"),
        Binding("minus,escape,q", "leave", "no", tooltip="Leave everything where it is.", id="run.leave"),
    ]
    AUTO_FOCUS = ""

    def __init__(self, desk: Desk, knives: Sequence[Knife], to: Column, whose: str = "") -> None:
        super().__init__(desk)
        self.knives = tuple(knives)
        self.to = to
        self.whose = whose
        """Initials of whose run it is; empty for one without a clock."""

    def compose(self) -> ComposeResult:
        count, boxes = len(self.knives), len({knife.box_id for knife in self.knives})
        whose = f"{self.whose} has this run. " if self.whose else ""
        said = f"{whose}{many(count, 'knife')} of {many(boxes, 'box')}: {Column.ON_BENCH.value} → {self.to.value}"
        with Vertical(id="run"):
            with Horizontal(id="run-top"):
                yield Digits(str(count), id="run-count")
                yield Static(Content(said), id="run-what")
            yield Static(Content(", ".join(knife.tag for knife in self.knives)), id="run-tags")
            yield Static("Enter go · - no", id="run-keys")

    def action_go(self) -> None:
        self.dismiss(True)

    def action_leave(self) -> None:
        self.dismiss(None)
