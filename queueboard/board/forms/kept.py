"""What was typed into a form, kept in a file from Enter to Enter, so that a power cut loses half a line at most.

The file lies beside the shop file, readable by the owner only, and goes when the form is done or left on purpose.
"""

import json
import os
from pathlib import Path

from queueboard.board.desk import Desk


class Kept:
    """The kept parts of one form of one person, apart from those of another shop file in the same folder."""

    def __init__(self, desk: Desk, form: str) -> None:
        initials = "".join(sign for sign in desk.initials if sign.isalnum())
        self.path: Path = desk.shop.path.parent / "typed" / f"{desk.shop.path.stem}-{form}-{initials}.json"

    def write(self, parts: list[str]) -> None:
        """Keep these parts over older ones; OSError when the disk does not take them."""
        self.path.parent.mkdir(mode=0o700, exist_ok=True)
        half = self.path.with_suffix(".half")
        half.unlink(missing_ok=True)
        with os.fdopen(os.open(half, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as file:
            json.dump(parts, file)
            file.flush()
            os.fsync(file.fileno())
        half.replace(self.path)

    def read(self) -> list[str]:
        """The kept parts; empty when there are none or they cannot be read."""
        try:
            parsed: object = json.loads(self.path.read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return []
        parts = parsed if isinstance(parsed, list) else []
        return [part for part in parts if isinstance(part, str)]

    def forget(self) -> None:
        """Let go of what was kept."""
        self.path.unlink(missing_ok=True)
