"""What is written when the program fails: enough to mend it, nothing of anybody's."""

import os
import platform
import sys
import traceback
from pathlib import Path

NAME = "queueboard-report.txt"
PROGRAMS = ("queueboard", "textual", "rich", "peewee")


def report_text(error: BaseException, when: str) -> str:
    """Kind of error, versions, and the places in the program; no values and no words of any error.

    The words of an error may hold what a customer is called; they stay out, and so do all local values.
    """
    lines = [f"queueboard failed on {when}", "", f"python {platform.python_version()} on {sys.platform}"]
    lines += [f"{name} {_version(name)}" for name in PROGRAMS]
    seen: set[int] = set()
    while id(error) not in seen:
        seen.add(id(error))
        lines += ["", f"{type(error).__module__}.{type(error).__qualname__}"]
        lines += [f"  {_place(frame)}" for frame in traceback.extract_tb(error.__traceback__)]
        error = error.__cause__ or error.__context__ or error
    return "\n".join(lines) + "\n"


def _place(frame: traceback.FrameSummary) -> str:
    """Package and file, line and function; not the folder, which may hold a person's name."""
    return f"{'/'.join(Path(frame.filename).parts[-3:])}:{frame.lineno} {frame.name}"


def _version(name: str) -> str:
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version(name)
    except PackageNotFoundError:
        return "of this folder"


def write_report(error: BaseException, folder: Path, when: str) -> Path | None:
    """Write the report, readable by the owner only, over an older one; None when it cannot be written."""
    path = folder / NAME
    try:
        path.unlink(missing_ok=True)
        with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as file:
            file.write(report_text(error, when))
    except OSError:
        return None
    return path
