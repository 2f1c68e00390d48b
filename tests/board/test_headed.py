"""Names of sections in sheets of text."""

from queueboard.board.headed import HEAD, headed


def test_the_name_of_a_section_stands_out_and_no_sign_is_lost() -> None:
    """A line at the margin above an indented one is such a name; what a person typed stays text."""
    sheet = "[red]Oake[/]\n\nFIGURES\n  knives ready  4\n  [b]x[/b]\n\nwhat counts\nis said here\n"
    shown = headed(sheet)

    assert shown.plain == sheet.rstrip("\n")
    assert [(shown.plain[span.start : span.end], span.style) for span in shown.spans] == [("FIGURES", HEAD)]
