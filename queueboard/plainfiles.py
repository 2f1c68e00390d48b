"""What may be opened and read to its end: a plain file, and nothing else that can lie under a name."""

import stat
from pathlib import Path

from queueboard.errors import FileError


def insist_on_plain_file(path: Path, wanted: str, remedy: str) -> None:
    """Refuse a folder, a pipe or a device: opening a pipe waits for a writer for ever, and a device may never end.

    *wanted* and *remedy* go into the FileError: “a shop file”, and what to do instead. OSError where the system finds
    nothing there to look at.
    """
    mode = path.stat().st_mode
    if not stat.S_ISREG(mode):
        what = "folder" if stat.S_ISDIR(mode) else "device or a pipe"
        raise FileError(f"{path} is a {what}, not {wanted}. {remedy}")
