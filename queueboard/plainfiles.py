"""Plain files: what may be opened and read to its end, and text that is whole on the disk or not there."""

import os
import stat
from contextlib import suppress
from pathlib import Path

from queueboard.errors import FileError

LONGEST_READ = 1_000_000
"""Characters that a file of settings or of orders may have at most; one more is read, to see that it has more."""


def insist_on_plain_file(path: Path, wanted: str, remedy: str) -> None:
    """Refuse a folder, a pipe or a device: opening a pipe waits for a writer for ever, and a device may never end.

    *wanted* and *remedy* go into the FileError: “a shop file”, and what to do instead. OSError where the system finds
    nothing there to look at.
    """
    mode = path.stat().st_mode
    if not stat.S_ISREG(mode):
        what = "folder" if stat.S_ISDIR(mode) else "device or a pipe"
        raise FileError(f"{path} is a {what}, not {wanted}. {remedy}")


def read_text(path: Path, wanted: str) -> str:
    """The text of a file named by the person, its line ends as they are; FileError when it cannot be read as text.

    wanted: what it should be. No more is read than shows that it is too long for that.
    """
    try:
        insist_on_plain_file(path, wanted, "Name a file that holds them.")
        with path.open(encoding="utf-8-sig", newline="") as file:
            return file.read(LONGEST_READ + 1)
    except OSError as error:
        raise FileError(f"{path} cannot be read: {error.strerror}.") from None
    except UnicodeDecodeError:
        raise FileError(f"{path} is no UTF-8 text.") from None


def write_whole(path: Path, text: str) -> None:
    """Write a text, readable by the owner only, over an older one; its folder is made where there is none.

    It is whole or not there: a power cut leaves no half of it. OSError when the disk does not take it.
    """
    half = path.with_name(f".{path.name}.half")
    path.parent.mkdir(mode=0o700, exist_ok=True)
    try:
        half.unlink(missing_ok=True)
        with os.fdopen(os.open(half, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        half.replace(path)
    except OSError:
        with suppress(OSError):
            half.unlink()  # it may hold names and addresses
        raise
