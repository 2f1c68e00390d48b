"""The line at the foot: the keys that can work now, as many as fit, the last place kept for the key that shows all."""

from rich.cells import cell_len
from textual.app import RenderResult
from textual.content import Content
from textual.widget import Widget

from queueboard.board.key_names import key_name

ALL_KEYS = "? all keys"


class KeyLineView(Widget):
    """Keys with their labels, from the bindings themselves."""

    def on_mount(self) -> None:
        self.screen.bindings_updated_signal.subscribe(self, lambda _: self.refresh())

    def render(self) -> RenderResult:
        parts: list[Content] = []
        left = self.size.width - cell_len(ALL_KEYS) - 3
        for key, label in self._offered():
            left -= cell_len(key) + cell_len(label) + 4
            if left < 0:
                break
            parts.append(Content.assemble((key, "$text-primary"), f" {label}"))
        parts.append(Content.assemble(("?", "$text-primary"), ALL_KEYS[1:]))
        return Content("   ").join(parts)

    def _offered(self) -> list[tuple[str, str]]:
        """The shown bindings by action, in their order; the first key of an action stands for it."""
        offered: dict[str, tuple[str, str]] = {}
        for active in self.screen.active_bindings.values():
            binding = active.binding
            if binding.show and active.enabled and binding.description and binding.action != "app.help_quit":
                offered.setdefault(binding.action, (key_name(binding.key), binding.description))
        offered.pop("keys", None)
        return list(offered.values())
