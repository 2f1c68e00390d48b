"""How the name of a section looks on every screen, and sheets of text with their sections' names looking so."""

from textual.content import Content

HEAD = "bold $text-primary"
"""The one accent; where there are no colours it is bold."""


def headed(sheet: str) -> Content:
    """A sheet as it would be printed; a line at the margin above an indented one is the name of a section."""
    lines = sheet.rstrip("\n").split("\n")
    return Content("\n").join(
        Content.styled(line, HEAD) if line[:1].strip() and below.startswith("  ") else Content(line)
        for line, below in zip(lines, (*lines[1:], ""), strict=True)
    )
