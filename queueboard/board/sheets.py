"""The order of a day sheet that was written to be printed, kept beside it, so that the sheet can be typed back."""

from queueboard.board.desk import Desk
from queueboard.board.screens.paper_out import write_paper
from queueboard.errors import TypedError
from queueboard.phrases.typed import parse_tag
from queueboard.phrases.typed_back import sheet_tags


def keep_order(desk: Desk) -> None:
    """Keep the tags of the sheet that is written now, a line each; FileError when the disk does not take them."""
    picture = desk.picture
    tags = "".join(f"{tag}\n" for tag in sheet_tags(picture))
    write_paper(desk, f"day-{picture.now.date().isoformat()}.tags", tags)


def written_sheet(desk: Desk) -> tuple[str, tuple[str, ...]]:
    """The day of the newest sheet that was written, and its tags in order; neither where none was."""
    for path in sorted((desk.shop.path.parent / "papers").glob("day-*.tags"), reverse=True):
        try:
            tags = tuple(str(parse_tag(line)) for line in path.read_text(encoding="utf-8").split("\n") if line)
        except (OSError, ValueError, TypedError):
            continue
        if tags:
            return path.stem.removeprefix("day-"), tags
    return "", ()
