"""A disk that forgets what was not synced when the power goes: a virtual file system for SQLite, kept in memory.

It writes down every write, sync, truncation and entry of the folder that SQLite asks of it. At a cut each write since
the last sync of its file is kept, dropped, or kept in part (whole sectors from its front), each by itself, so that they
also come in another order; the same goes for entries of the folder that were not synced. What was synced stays. A
file's entry is synced with the first sync of the file, as SQLite's own Unix layer does it, and by a removal that asks
for it.
"""

# ruff: noqa: N802  # SQLite's own names for what it asks

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import apsw

SECTOR_BYTES = 512
"""What a disk writes whole or not at all."""

Draw = random.Random


@dataclass(frozen=True, slots=True)
class Write:
    """Bytes at an offset of a file."""

    file: int
    offset: int
    data: bytes


@dataclass(frozen=True, slots=True)
class Truncate:
    """A file cut to a size."""

    file: int
    size: int


@dataclass(frozen=True, slots=True)
class Sync:
    """All of a file, and its entry in the folder."""

    file: int


@dataclass(frozen=True, slots=True)
class Entry:
    """A name that stands for a file from now on, or for none; synced or not."""

    name: str
    file: int | None
    synced: bool = False


@dataclass(frozen=True, slots=True)
class Said:
    """The person was told that all this is stored: so many lines of history."""

    lines: int


Step = Write | Truncate | Sync | Entry | Said


def apply(content: bytearray, step: Write | Truncate) -> None:
    """Do to a file what was asked; what lies between its end and a write is zero."""
    if isinstance(step, Truncate):
        del content[step.size :]
        content.extend(bytes(step.size - len(content)))
        return
    content.extend(bytes(max(0, step.offset - len(content))))
    content[step.offset : step.offset + len(step.data)] = step.data


class OpenFile:
    """One open file, as SQLite asks it."""

    def __init__(self, disk: "Disk", number: int, name: str, *, passing: bool) -> None:
        self.disk, self.number, self.name, self.passing = disk, number, name, passing

    @property
    def content(self) -> bytearray:
        """What a program reads, synced or not."""
        return self.disk.contents[self.number]

    def _do(self, step: Write | Truncate) -> None:
        apply(self.content, step)
        self.disk.steps.append(step)

    def xRead(self, amount: int, offset: int) -> bytes:
        return bytes(self.content[offset : offset + amount])

    def xWrite(self, data: bytes, offset: int) -> None:
        self._do(Write(self.number, offset, bytes(data)))

    def xTruncate(self, size: int) -> None:
        self._do(Truncate(self.number, size))

    def xSync(self, flags: int) -> None:
        self.disk.steps.append(Sync(self.number))

    def xFileSize(self) -> int:
        return len(self.content)

    def xLock(self, level: int) -> None:
        """One connection, so nobody to keep out."""

    def xUnlock(self, level: int) -> None:
        """As xLock."""

    def xCheckReservedLock(self) -> bool:
        return False

    def xSectorSize(self) -> int:
        return 4096

    def xDeviceCharacteristics(self) -> int:
        return int(apsw.SQLITE_IOCAP_POWERSAFE_OVERWRITE)

    def xFileControl(self, op: int, ptr: int) -> bool:
        return False

    def xClose(self) -> None:
        if self.passing:
            self.disk.names.pop(self.name, None)


class Disk(apsw.VFS):
    """One folder in memory; everything asked of it stands in steps."""

    def __init__(self, name: str, files: dict[str, bytes]) -> None:
        self.name = name
        self.contents: list[bytearray] = []
        self.names: dict[str, int] = {}
        self.steps: list[Step] = []
        for file, content in files.items():
            self.names[file] = len(self.contents)
            self.contents.append(bytearray(content))
        self.before = {file: bytes(self.contents[number]) for file, number in self.names.items()}
        super().__init__(name, "")

    def xFullPathname(self, name: str) -> str:
        return name

    def xOpen(self, name: str | apsw.URIFilename | None, flags: list[int]) -> OpenFile:  # type: ignore[override]  # any object with these methods will do
        given = name.filename() if isinstance(name, apsw.URIFilename) else name
        called = given or f"passing-{len(self.contents)}"
        if called not in self.names:
            self.names[called] = len(self.contents)
            self.contents.append(bytearray())
            if name is not None:
                self.steps.append(Entry(called, self.names[called]))
        flags[1] = flags[0]
        return OpenFile(self, self.names[called], called, passing=name is None)

    def xDelete(self, filename: str, syncdir: bool) -> None:  # SQLite hands it over so
        if self.names.pop(filename, None) is None:
            raise apsw.IOError
        self.steps.append(Entry(filename, None, synced=syncdir))

    def xAccess(self, pathname: str, flags: int) -> bool:
        return pathname in self.names


@dataclass
class Platter:
    """What a disk would hold after a cut, followed step by step."""

    files: dict[int, bytearray]
    entries: dict[str, int]
    waiting: dict[int, list[Write | Truncate]] = field(default_factory=dict)
    """By file, in order: what was not synced yet."""
    moves: list[Entry] = field(default_factory=list)
    """Entries of the folder that were not synced yet."""
    said: int = 0

    def take(self, step: Step) -> None:
        """One step more."""
        match step:
            case Write() | Truncate():
                self.waiting.setdefault(step.file, []).append(step)
            case Sync():
                for done in self.waiting.pop(step.file, []):
                    apply(self.files.setdefault(step.file, bytearray()), done)
                if any(move.file == step.file for move in self.moves):
                    self._sync_folder()
            case Entry():
                self.moves.append(step)
                if step.synced:
                    self._sync_folder()
            case Said():
                self.said = step.lines

    def _sync_folder(self) -> None:
        for move in self.moves:
            _enter(self.entries, move)
        self.moves.clear()

    def cut(self, draw: Draw) -> dict[str, bytes]:
        """The files of the folder when the power goes now."""
        share = draw.choice((0.0, 0.3, 0.7, 1.0))
        entries = dict(self.entries)
        for move in self.moves:
            if draw.random() < share:
                _enter(entries, move)
        left = {}
        for name, number in entries.items():
            content = bytearray(self.files.get(number, b""))
            for step in self.waiting.get(number, ()):
                _perhaps(content, step, draw, share)
            left[name] = bytes(content)
        return left


def _enter(entries: dict[str, int], move: Entry) -> None:
    if move.file is None:
        entries.pop(move.name, None)
    else:
        entries[move.name] = move.file


def _perhaps(content: bytearray, step: Write | Truncate, draw: Draw, share: float) -> None:
    """Keep a step that was not synced, drop it, or keep the first sectors of it."""
    if draw.random() >= share:
        return
    if isinstance(step, Write) and draw.random() < 0.2:
        sectors = draw.randrange(len(step.data) // SECTOR_BYTES + 1)
        apply(content, Write(step.file, step.offset, step.data[: sectors * SECTOR_BYTES]))
    else:
        apply(content, step)


def cuts(disk: Disk, wanted: int, draw: Draw) -> Iterator[tuple[int, dict[str, bytes]]]:
    """So many cuts anywhere in what was asked of a disk: how many lines were said to be stored, and what is left."""
    numbers = {name: number for number, name in enumerate(disk.before)}
    platter = Platter({numbers[name]: bytearray(content) for name, content in disk.before.items()}, numbers)
    at: Sequence[int] = sorted(draw.randrange(len(disk.steps)) for _ in range(wanted))
    place = 0
    for cut in at:
        while place <= cut:
            platter.take(disk.steps[place])
            place += 1
        yield platter.said, platter.cut(draw)
