"""Papers in files beside the shop file, from where any printer takes them."""

from pathlib import Path

from queueboard.errors import FileError
from queueboard.plainfiles import write_whole


def write_into(folder: Path, name: str, text: str) -> Path:
    """Write a paper, readable by the owner only, over an older one of the same name; FileError when it cannot be.

    It is whole or not there: a power cut leaves no half of it.
    """
    path = folder / name
    try:
        write_whole(path, text)
    except OSError as error:
        raise FileError(f"{path} could not be written: {error.strerror}. Nothing else was lost.") from error
    return path
