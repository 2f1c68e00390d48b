"""A view that lies ready before it is drawn for the first time."""

from textual.geometry import Size
from textual.scroll_view import ScrollView


class EarlyView(ScrollView):
    """Lays its content out as soon as it has a new size: the message of it comes behind the drawing, which is in vain.

    Textual has no public place for this; a test looks at the first drawing of a column.
    """

    def lay_out(self) -> None:
        """Put the content into lines of the width that there is now."""

    def _size_updated(
        self,
        size: Size,
        virtual_size: Size,
        container_size: Size,
        layout: bool = True,  # noqa: FBT002  # Textual's own shape
    ) -> bool:
        changed = super()._size_updated(size, virtual_size, container_size, layout)
        if changed:
            self.lay_out()
        return changed
