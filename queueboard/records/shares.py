"""Whether a folder lies on another machine, where the locks that keep two windows apart are not reliable."""

import os
import re
from pathlib import Path

MOUNTS = Path("/proc/self/mountinfo")
"""Where Linux lists what is mounted where (proc(5)); other systems have none."""

SHARED = frozenset({"9p", "afs", "ceph", "cifs", "fuse.sshfs", "ncpfs", "nfs", "nfs4", "smb3", "smbfs"})
"""Kinds of file system that reach over a network, by the kernel's names."""


def share_of(folder: Path, mounts: str | None = None) -> str:
    """The kind of network file system that a folder lies on; empty for a disk of this machine, or where none can tell.

    mounts: the text of mountinfo, read here when it is not given.
    """
    place = os.path.realpath(folder)
    if place.startswith("\\\\"):
        return "network share"
    if mounts is None:
        try:
            mounts = MOUNTS.read_text(encoding="utf-8", errors="surrogateescape")
        except OSError:
            return ""
    found = [(len(point), kind) for point, kind in map(_mount, mounts.splitlines()) if _inside(place, point)]
    kind = max(found, default=(0, ""), key=lambda one: one[0])[1]
    return kind if kind in SHARED else ""


def _mount(line: str) -> tuple[str, str]:
    """Where something is mounted, and of which kind it is."""
    before, _, after = line.partition(" - ")
    fields = before.split(" ")
    point = fields[4] if len(fields) > 4 else ""
    return re.sub(r"\\([0-7]{3})", lambda octal: chr(int(octal[1], 8)), point), after.split(" ")[0]


def _inside(place: str, point: str) -> bool:
    return bool(point) and (place == point or place.startswith(point.rstrip("/") + "/"))
