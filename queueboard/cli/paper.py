"""What the commands that print papers share: as text or as a page for a browser, to the terminal or to a file."""

import argparse
import os
from collections.abc import Callable, Sequence
from pathlib import Path

from queueboard.cli.common import FINE, file_of, say, trouble
from queueboard.errors import FileError, TypedError
from queueboard.words import PaperSize

SHEETS = (PaperSize.A4, PaperSize.LETTER)


def add_paper_options(parser: argparse.ArgumentParser, sizes: Sequence[PaperSize] = tuple(PaperSize)) -> None:
    """The options of every paper."""
    names = [size.value for size in sizes]
    parser.add_argument("--html", action="store_true", help="as a page to print from a browser")
    parser.add_argument("--paper", choices=names, help="what the page is printed on; else as in the shop's settings")
    parser.add_argument("--open", action="store_true", help="open the page in the browser")
    parser.add_argument("--write", metavar="FILE", help="write it to this new file")


def put_out(
    args: argparse.Namespace, name: str, usual: PaperSize, text: Callable[[], str], html: Callable[[PaperSize], str]
) -> int:
    """Print the paper, or write it where --write says; a page is opened where --open says so.

    name: what a page is called in the folder of papers, where nobody gave it a place.
    """
    from queueboard.papers.folder import write_into
    from queueboard.papers.opening import open_page

    as_page = args.html or args.open
    if args.paper and not as_page:
        raise TypedError("--paper is for a page: add --html or --open.")
    paper = html(PaperSize(args.paper) if args.paper else usual) if as_page else text()
    if not args.write and not args.open:
        return say(paper)
    path = _written(Path(args.write), paper) if args.write else write_into(folder_of(args), f"{name}.html", paper)
    if args.open and not open_page(path):
        return trouble(f"There is no browser with a window here. The page is in {path}: open it from there.", FINE)
    return say(f"Written to {path}.\n")


def _written(path: Path, paper: str) -> Path:
    """A new file, readable by the owner only, since it may hold names; FileError when it cannot be written.

    Nothing that is there is written over: it could be the shop's own file, a copy of it, or a pipe nobody reads.
    """
    try:
        with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as file:
            file.write(paper)
    except FileExistsError:
        raise FileError(f"{path} is there already and is kept as it is; name a new file.") from None
    except OSError as error:
        raise FileError(f"{path} could not be written: {error.strerror}. Nothing else was lost.") from error
    return path


def folder_of(args: argparse.Namespace) -> Path:
    """The folder of papers beside the shop file."""
    return file_of(args).parent / "papers"
