"""A folder on another machine is known by what the system says is mounted there."""

from pathlib import Path

import pytest

from queueboard.records.shares import share_of

MOUNTS = """\
22 1 254:1 / / rw,relatime shared:1 - ext4 /dev/vda1 rw
40 22 0:45 / /mnt rw,nosuid shared:9 - nfs4 server:/export rw,vers=4.2
41 40 8:17 / /mnt/stick rw - vfat /dev/sdb1 rw
42 22 0:46 / /srv/the\\040shop rw - cifs //server/shop rw
43 22 0:47 / /home rw - fuse.sshfs me@server: rw
"""
"""In the form of proc(5)."""


@pytest.mark.parametrize(
    ("folder", "kind"),
    [
        ("/work/shop", ""),
        ("/mnt", "nfs4"),
        ("/mnt/shop", "nfs4"),
        ("/mnt/stick/shop", ""),
        ("/mntx", ""),
        ("/srv/the shop", "cifs"),
        ("/home/mb", "fuse.sshfs"),
    ],
)
def test_the_innermost_mount_decides(folder: str, kind: str) -> None:
    """A stick that is plugged in below a share is no share; a name that only begins alike is not on it."""
    assert share_of(Path(folder), MOUNTS) == kind


@pytest.mark.parametrize("mounts", ["", "nonsense", "1 2 3\n - nfs\n"])
def test_a_list_that_says_nothing_accuses_nobody(mounts: str) -> None:
    """Where the system does not tell, the folder is taken for one of this machine."""
    assert share_of(Path("/mnt"), mounts) == ""
