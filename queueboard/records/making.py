"""New files: made whole out of sight, brought to the disk, and only then given their name."""

import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from queueboard.errors import FileError

CHOOSE = "Choose another place with --file."


@contextmanager
def making(path: Path, remedy: str = CHOOSE) -> Iterator[Path]:
    """A place to make a new file in, on the same disk; at the end the file gets its name, or nothing of it stays.

    Only the owner may enter the place, and read the file. FileError when there is such a file already, also when
    another window was faster; *remedy* says what to do then.
    """
    import shutil
    import tempfile

    fresh = not path.parent.exists()
    make_private_folder(path.parent)
    try:
        with _cannot_be_made(path, remedy):
            workshop = Path(tempfile.mkdtemp(prefix=".queueboard-", dir=path.parent))
        try:
            yield workshop / "made.qb"
            with _cannot_be_made(path, remedy):
                _give_name(workshop / "made.qb", path, remedy)
        finally:
            shutil.rmtree(workshop, ignore_errors=True)
    finally:
        if fresh and not path.exists():
            with suppress(OSError):
                path.parent.rmdir()


def _give_name(made: Path, path: Path, remedy: str) -> None:
    """Let a finished file appear under its name, never over another."""
    made.chmod(stat.S_IRUSR | stat.S_IWUSR)
    to_disk(made)
    try:
        os.link(made, path)
    except FileExistsError:
        raise there_already(path, remedy) from None
    except OSError:
        # Some sticks know no second name for a file; there the look and the step are two.
        if path.exists():
            raise there_already(path, remedy) from None
        made.rename(path)
    to_disk(path.parent)


@contextmanager
def _cannot_be_made(path: Path, remedy: str) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise FileError(f"{path} cannot be made: {error.strerror}. {remedy}") from None


def there_already(path: Path, remedy: str = CHOOSE) -> FileError:
    """The sentence for a file that would have to be written over."""
    return FileError(f"{path} is there already; nothing was changed. {remedy}")


def make_private_folder(folder: Path) -> None:
    """Make a folder that only its owner may enter; one that is there already is left as it is."""
    if folder.exists():
        return
    try:
        folder.mkdir(mode=0o700, parents=True)
    except OSError as error:
        raise FileError(f"The folder {folder} cannot be made: {error.strerror}. Choose another with --file.") from None


def to_disk(path: Path) -> None:
    """Have the system write a file or a folder's entries to the disk now, where it lets itself be asked."""
    if os.name == "nt":
        return
    number = os.open(path, os.O_RDONLY)
    try:
        os.fsync(number)
    finally:
        os.close(number)
