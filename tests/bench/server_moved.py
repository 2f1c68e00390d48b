"""How long a shop takes to a server and back, by the commands of README: python -m tests.bench.server_moved FILE.

A copy of the file is written out, taken to an empty database on a server, written out there, taken into a new file and
written out once more; all three must be the same to the byte. Each command runs in a terminal, as a person starts it;
told is how long it took, for how long at most nothing moved on the terminal, and since when. Beside other work a year
took four minutes in all, ten years three quarters of an hour. The control is an export with one letter changed, which
must be refused.
"""

import filecmp
import os
import select
import shutil
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory, gettempdir

from ptyprocess import PtyProcess

from queueboard.shop.opening import close_shop, open_shop
from tests import engines, lending
from tests.bench.machine import heading
from tests.bench.speed_pty import kept_environment
from tests.bench.speed_shops import size_mb
from tests.house.tree import ROOT


def run(said: str, *words: object) -> bool:
    """Run the program in a terminal and print how long it took; True when it said that all went well."""
    environment = {**kept_environment(), "TERM": "xterm-256color", "LANG": "C.UTF-8"}
    program = PtyProcess.spawn(
        [sys.executable, "-m", "queueboard", *map(str, words)], cwd=str(ROOT), env=environment, dimensions=(24, 80)
    )
    began = moved = time.perf_counter()
    still, since, shown = 0.0, 0.0, b""
    while part := _next(program.fd):
        now = time.perf_counter()
        if now - moved > still:
            still, since = now - moved, moved - began
        moved, shown = now, part
    program.wait()
    took = time.perf_counter() - began
    print(f"{said:<50}{took:>8.1f}{still:>8.1f}{since:>8.1f}", flush=True)
    if program.exitstatus:
        print(shown.decode(errors="replace").strip().replace(gettempdir(), "…"), flush=True)
    return bool(program.exitstatus == 0)


def _next(terminal: int) -> bytes:
    """What comes next from a terminal; nothing once its program has ended."""
    select.select([terminal], [], [])
    try:
        return os.read(terminal, 65536)
    except OSError:
        return b""


def there_and_back(file: Path, there: Path, folder: Path) -> bool:
    """The five commands; True when all went well and the three exports are the same."""
    first, second, third = (folder / f"{name}.jsonl" for name in ("first", "second", "third"))
    back = folder / "back" / "shop.qb"
    steps = (
        ("export from the file", file, "export", first),
        ("take to the server", there, "take", first),
        ("export from the server", there, "export", second),
        ("take back into a file", back, "take", second),
        ("export from that file", back, "export", third),
    )
    if not all(run(said, "--file", path, *words) for said, path, *words in steps):
        return False
    same = all(filecmp.cmp(first, other, shallow=False) for other in (second, third))
    print(f"the three exports, {size_mb(first)} MB each, are {'the same to the byte' if same else 'NOT THE SAME'}")
    return same


def changed(export: Path, folder: Path) -> Path:
    """The export with one letter changed in its middle."""
    other = folder / "changed.jsonl"
    shutil.copyfile(export, other)
    with other.open("r+b") as lines:
        lines.seek(other.stat().st_size // 2)
        (letter,) = lines.read(1)
        lines.seek(-1, os.SEEK_CUR)
        lines.write(bytes([letter ^ 1]))
    return other


def main() -> int:
    """Print the table."""
    given = Path(sys.argv[1])
    os.environ[engines.ENGINE] = "postgresql"
    with engines.measured(), TemporaryDirectory() as name:
        folder = Path(name)
        file, there, elsewhere = (folder / one / "shop.qb" for one in ("file", "there", "elsewhere"))
        for path in (file, there, elsewhere):
            path.parent.mkdir(mode=0o700)
        shutil.copyfile(given, file)
        close_shop(open_shop(file))  # an older layout is led on to today's
        for path in (there, elsewhere):
            lending.new_database(path)
        print(f"{heading('tests.bench.server_moved', 0)} · file of {size_mb(given)} MB")
        print(f"{'':<50}{'seconds':>8}{'still':>8}{'since':>8}")
        held = there_and_back(file, there, folder)
        wrong = changed(folder / "first.jsonl", folder)
        taken = run("control: one letter of it changed, to the server", "--file", elsewhere, "take", wrong)
        print(f"control: the changed one is {'TAKEN' if taken else 'refused'}")
    return 0 if held and not taken else 1


if __name__ == "__main__":
    sys.exit(main())
