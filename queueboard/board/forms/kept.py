"""What was typed into a form, kept in a file from Enter to Enter, so that a power cut loses half a line at most.

The file lies beside the shop file, readable by the owner only, and goes when the form is done or left on purpose.
"""

import json
from pathlib import Path

from queueboard.board.desk import Desk
from queueboard.plainfiles import write_whole


class Kept:
    """The kept parts of one form of one person, apart from those of another shop file in the same folder."""

    def __init__(self, desk: Desk, form: str) -> None:
        initials = "".join(sign for sign in desk.initials if sign.isalnum())
        self.path: Path = desk.shop.path.parent / "typed" / f"{desk.shop.path.stem}-{form}-{initials}.json"

    def write(self, parts: list[str]) -> None:
        """Keep these parts over older ones; OSError when the disk does not take them."""
        write_whole(self.path, json.dumps(parts))

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
