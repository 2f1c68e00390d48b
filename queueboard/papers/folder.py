"""Papers in files beside the shop file, from where any printer takes them."""

import os
from contextlib import suppress
from pathlib import Path

from queueboard.errors import FileError


def write_into(folder: Path, name: str, text: str) -> Path:
    """Write a paper, readable by the owner only, over an older one of the same name; FileError when it cannot be.

    It is whole or not there: a power cut leaves no half of it.
    """
    path, half = folder / name, folder / f".{name}.half"
    try:
        folder.mkdir(mode=0o700, exist_ok=True)
        half.unlink(missing_ok=True)
        with os.fdopen(os.open(half, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        half.replace(path)
    except OSError as error:
        with suppress(OSError):
            half.unlink()  # it may hold names and addresses
        raise FileError(f"{path} could not be written: {error.strerror}. Nothing else was lost.") from error
    return path
