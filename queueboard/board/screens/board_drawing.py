"""What spares the board drawing: of a screen full of columns most keys change a few lines."""

from textual.widget import Widget

from queueboard.board.base import ShopScreen


class BoardDrawing(ShopScreen[None]):
    """A screen whose parts draw themselves."""

    BLANK = True  # nothing of it shows between its parts; line by line it would be drawn beneath all of them

    def set_focus(
        self,
        widget: Widget | None,
        scroll_visible: bool = True,  # noqa: FBT002  # Textual's own shape
        from_app_focus: bool = False,  # noqa: FBT002  # as above
    ) -> None:
        """As Textual does it, but the whole screen is not drawn anew for it: a column draws its own cursor."""
        asked = self._repaint_required
        super().set_focus(widget, scroll_visible, from_app_focus)
        self._repaint_required = asked
