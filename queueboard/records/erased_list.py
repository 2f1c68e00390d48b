"""The list of erased customers beside a shop file, so that a copy from before cannot bring them back.

It holds hashes of lines of history, which name a customer in every copy and tell nothing of them.
"""

import re
from pathlib import Path

from queueboard.records.copies import stem_of
from queueboard.records.making import to_disk


def list_in(folder: Path, path: Path) -> Path:
    """Where the list of a shop file lies in a folder: shop-erased.txt for shop.qb."""
    return folder / f"{stem_of(path)}-erased.txt"


def listed(*lists: Path) -> frozenset[str]:
    """All that stands in some lists; one that is not there, or whose lines are none of ours, adds nothing."""
    texts = [one.read_text(encoding="ascii", errors="replace") for one in lists if one.is_file()]
    return frozenset(line for text in texts for line in text.split() if re.fullmatch("[0-9a-f]{64}", line))


def bring(path: Path, folder: Path) -> None:
    """Have the list of a shop file in another folder too, beside the copies there."""
    add_to(list_in(folder, path), listed(list_in(path.parent, path)))


def add_to(target: Path, hashes: frozenset[str]) -> None:
    """Add to a list what is not in it; it appears whole or stays as it was, for its owner alone."""
    known = listed(target)
    if hashes <= known:
        return
    passing = target.with_name(target.name + ".part")
    passing.touch(mode=0o600)
    passing.write_text("".join(f"{one}\n" for one in sorted(known | hashes)), encoding="ascii")
    to_disk(passing)
    passing.replace(target)
    to_disk(target.parent)
