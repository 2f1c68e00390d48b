"""What stands on the screen as plain text, and its comparison with a text kept in tests/screens."""

from textual.app import App

from tests.kept import UPDATE, kept


def dump(app: App[int]) -> str:
    """The whole screen, each line without the blanks at its end; modal screens are drawn over what they cover."""
    width, height = app.size
    strips = app.screen._compositor.render_strips()
    lines = [strip.text.rstrip() for strip in strips[:height]]
    assert all(strip.cell_length <= width for strip in strips), "a line is wider than the screen"
    return "\n".join(lines) + "\n"


def assert_screen(app: App[int], name: str) -> None:
    """The screen is what tests/screens/NAME.txt holds."""
    now = dump(app)
    assert now == kept(name, now), f"{UPDATE}=1 keeps this one as {name}:\n{now}"
