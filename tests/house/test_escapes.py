"""Where the types may be loose, and where not."""

from tests.house.escapes import escapes
from tests.house.tree import PURE_ROOMS, sources


def test_pure_rooms_have_no_loose_types() -> None:
    """No Any, cast or type: ignore stands in a room that only computes."""
    offenders = [
        f"{source.where}:{line} {kind}"
        for source in sources("queueboard")
        if source.room in PURE_ROOMS
        for line, kind in escapes(source)
    ]

    assert not offenders, "\n".join(offenders)


def test_every_ignore_says_which_and_why() -> None:
    """Each type: ignore names its error, and a second comment gives the reason."""
    offenders = []
    for source in sources("queueboard", "tests"):
        lines = source.text.splitlines()
        for line, kind in escapes(source):
            comment = lines[line - 1].partition("# type: ignore[")[2]
            if kind == "type: ignore" and "]  # " not in comment:
                offenders.append(f"{source.where}:{line}")

    assert not offenders, "\n".join(offenders)
