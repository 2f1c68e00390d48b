"""The line at the foot: the keys that can work now, as many as fit, the last place kept for the key that shows all."""

from rich.cells import cell_len
from textual.app import RenderResult
from textual.content import Content
from textual.widget import Widget

from queueboard.board.key_names import key_name

ALL_KEYS = "? all keys"
PAD = frozenset({"+", "-", "*", "/", ".", "Enter"})
"""The keys of the numeric pad stand first."""

WIDE = 98
"""From so many cells on the keys stand wider apart."""


class KeyLineView(Widget):
    """Keys with their labels, from the bindings themselves."""

    def __init__(self, *, id: str) -> None:
        super().__init__(id=id)
        self._shown: list[tuple[str, str]] = []

    def on_mount(self) -> None:
        self.screen.bindings_updated_signal.subscribe(self, lambda _: self.call_after_refresh(self._look))

    def _look(self) -> None:
        """Show other keys, where others can work now; what they are about is drawn before."""
        if self._offered() != self._shown:
            self.refresh()

    def render(self) -> RenderResult:
        self._shown = self._offered()
        parts: list[Content] = []
        gap = 3 if self.size.width >= WIDE else 2
        left = self.size.width - cell_len(ALL_KEYS) - gap
        for key, label in self._shown:
            left -= cell_len(key) + cell_len(label) + 1 + gap
            if left < 0:
                break
            parts.append(Content.assemble((key, "$text-primary"), f" {label}"))
        parts.append(Content.assemble(("?", "$text-primary"), ALL_KEYS[1:]))
        return Content(" " * gap).join(parts)

    def _offered(self) -> list[tuple[str, str]]:
        """The shown bindings by action, in their order; the first key of an action stands for it."""
        offered: dict[str, tuple[str, str]] = {}
        for active in self.screen.active_bindings.values():
            binding = active.binding
            if binding.show and active.enabled and binding.description:
                offered.setdefault(binding.action, (key_name(binding.key), binding.description))
        offered.pop("keys", None)
        return sorted(offered.values(), key=lambda pair: pair[0] not in PAD)
