"""What a key costs on a real terminal: from the key to the frame that shows what it did.

Letters are pressed in two ways, in the bare app as on the board: behind a rest, and right behind the frame of the key
before, as in quick typing. A letter in Textual's input is drawn at once in the first way and two frames later in the
second, whatever else the program has to do; a time of the one way says nothing when it is held against the other.
"""

import re
import statistics
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, closing
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.picture import BoxPicture
from queueboard.values.knife import Knife
from queueboard.words import Column
from tests.bench.speed_pty import Program
from tests.bench.speed_shops import FEW, MANY, Shops, morning_of
from tests.bench.speed_start import STILL, cards_are_there
from tests.bench.speed_table import Figure

TRAY = 40
"""Knives marked and moved together."""

HEAD = re.compile(r"received \D*(\d+) +on bench \D*(\d+)")
"""The counts over the first two columns."""

ASKED_TAG = "Enter there"
ENTER, ESCAPE, HOME = "\r", "\x1b", "\x1b[H"
QUICKLY = "behind a frame"
SORTS = ("boxes, late, will be late, tight", "boxes, leaves today")
"""What stands over the columns behind the first and the second /."""

NAME, FOUND = "hou", "is marked"
"""What is typed letter by letter to find somebody among 6,000, and what stands over the boxes that fit."""


@dataclass
class Board:
    """The board of one shop on a terminal, and what its keys took."""

    program: Program
    times: Path
    """Where the board writes how long its actions waited for the disk."""
    to_move: list[Knife]
    """Knives that nothing keeps from going to the bench, in the order of the board."""
    tray: str
    """The keys that mark so many of the last of them."""
    took: dict[str, list[float]] = field(default_factory=dict)
    waited: dict[str, list[float]] = field(default_factory=dict)

    def note(self, what: str, milliseconds: float, *, stored: bool = False) -> None:
        """Keep a time; without the wait for the disk where the key has stored something."""
        wait = self._waited() if stored else 0.0
        self.took.setdefault(what, []).append(milliseconds - wait)
        self.waited.setdefault(what, []).append(wait)

    def runs(self, what: str) -> tuple[float, ...]:
        """What a key took, but for the first turn."""
        return tuple(self.took[what][1:])

    def wait(self, what: str) -> float:
        """The middle wait for the disk of a key."""
        return statistics.median(self.waited[what])

    def _waited(self) -> float:
        """What the newest action waited for the disk."""
        return float(self.times.read_text(encoding="ascii").splitlines()[-1].split()[1])

    def counts(self) -> tuple[int, int]:
        """How many knives the heads of the first two columns say."""
        found = HEAD.search(self.program.text())
        assert found is not None, self.program.text()
        return int(found[1]), int(found[2])

    def moves(self, what: str, tags: int) -> None:
        """Move what is typed or marked to the bench, and clock it: both heads count it, and it is said."""
        left, there = self.counts()
        want = re.compile(rf"received \D*{left - tags} +on bench \D*{there + tags}\b")
        self.note(
            what,
            self.program.press("+", lambda text: bool(want.search(text)) and "moved to on bench" in text),
            stored=True,
        )


def opened(path: Path, folder: Path) -> Board:
    """The board of a shop at rest, and what can be moved on it."""
    shop = open_shop(path)
    try:
        picture = look(shop, morning_of(path))
    finally:
        close_shop(shop)
    free = [
        knife
        for box in picture.boxes
        if box.box.waiting_for is None
        for knife in box.in_column(Column.RECEIVED)
        if knife.waiting_for is None and knife.declined is None and not knife.looking_for
    ]
    times = folder / f"{path.parent.name}.times"
    program = Program("-m", "tests.bench.speed_board", str(times), "--file", str(path), "--as", "MB")
    program.first(cards_are_there)
    return Board(program, times, free, _tray(picture.boxes, free))


def one_knife(board: Board, turn: int) -> None:
    """Jump to a tag, each key behind a rest; again, quickly; then move it."""
    program, knife = board.program, board.to_move[turn]
    head, last = knife.tag[:-1], knife.tag[-1]
    here = re.compile(rf"▸[ *]*-{knife.number} ")

    def typed(text: str) -> bool:
        return f"{knife.tag} " in text

    def there(text: str) -> bool:
        return ASKED_TAG not in text and bool(here.search(text))

    program.press(head, lambda text: ASKED_TAG in text)
    board.note("digit", program.press(last, typed))
    board.note("jump", program.press(ENTER, there))
    program.press(HOME, lambda text: not here.search(text))
    board.note(f"digit {QUICKLY}", program.press(last, typed, behind=head))
    program.press(ESCAPE, lambda text: ASKED_TAG not in text)
    program.press(head, lambda text: ASKED_TAG in text)
    board.note(f"jump {QUICKLY}", program.press(ENTER, there, behind=last))
    board.moves("move", 1)


def whole_tray(board: Board, turn: int) -> None:
    """Mark so many knives, move them, take it back."""
    program = board.program
    program.press(board.tray, lambda text: f"{TRAY} knives marked" in text)
    board.moves("tray", TRAY)
    program.press("u", lambda text: "Enter undo" in text)
    program.press(ENTER, lambda text: "Undone:" in text)
    program.press(ESCAPE, lambda text: HEAD.search(text) is not None)


def _tray(boxes: Sequence[BoxPicture], free: Sequence[Knife]) -> str:
    """The keys that mark TRAY of the free knives: * on the heading of a box marks all of it, on a knife that one."""
    ids = {knife.id for knife in free}
    keys, left, taken = "", TRAY, set[int]()
    for box in boxes[::-1]:
        if 0 < len(box.on_hand) <= left and ids.issuperset(knife.id for knife in box.on_hand):
            keys += f"{box.box.number}{ENTER}*"
            left -= len(box.on_hand)
            taken.add(box.box.id)
    rest = [knife for knife in free[::-1] if knife.box_id not in taken]
    return keys + "".join(f"{knife.tag}{ENTER}*" for knife in rest[:left])


def looking(board: Board, turn: int) -> None:
    """Show only what is late, then only what leaves today; find a name letter by letter."""
    program = board.program
    late, today = SORTS
    board.note("only", program.press("/", lambda text: late in text))
    program.press(ESCAPE, lambda text: late not in text)
    board.note(f"only {QUICKLY}", program.press("/", lambda text: today in text, behind="/"))
    program.press(ESCAPE, lambda text: today not in text)
    for already, behind in (("", ""), ("h", ""), ("ho", ""), ("", "h"), ("h", "o")):
        _letter(board, already, behind)


def _letter(board: Board, already: str, behind: str) -> None:
    """Clock the letter of NAME that follows these; the second is the one that reads who has left."""
    program, asked = board.program, "words in any order"
    program.press("f", lambda text: asked in text)
    if already:
        program.press(already, partial(_is_found, f"\n {already}\n"))
    place = len(already + behind)
    what = "letter that reads" if place == 1 else "letter"
    seen = partial(_is_found, f"\n {NAME[: place + 1]}\n")
    took = program.press_to_the_end(NAME[place], seen, behind=behind)
    board.note(f"{what} {QUICKLY}" if behind else what, took)
    program.press(ESCAPE, lambda text: asked not in text)


def _is_found(typed: str, text: str) -> bool:
    """What was typed stands there, and the boxes that fit it."""
    return typed in text and FOUND in text


def keys(shops: Shops, runs: int) -> Iterator[Figure]:
    """Every key by turns: the bases, the board of a busy shop, the board of one that drowns."""
    with ExitStack() as stack:
        still = stack.enter_context(closing(Program(*STILL)))
        typing = stack.enter_context(closing(Program(*STILL[:-1], "typing")))
        still.first(lambda text: "pressed 0 times" in text)
        typing.first(lambda text: "nothing typed" in text)
        busy, full = (opened(path, shops.folder) for path in (shops.ten, shops.ten_full))
        for board in (busy, full):
            stack.enter_context(closing(board.program))
        bare = Bare()
        for turn in range(runs + 1):
            for part in PARTS:
                bare.press(still, typing)
                for board in (busy, full):
                    part(board, turn)
    yield from _figures(bare, busy, full)


def _says(words: str, text: str) -> bool:
    return words in text


@dataclass
class Bare:
    """What the keys of the bare apps took."""

    action: list[float] = field(default_factory=list)
    typed: list[float] = field(default_factory=list)
    quickly: list[float] = field(default_factory=list)
    """A letter right behind the frame of the one before."""

    def press(self, still: Program, typing: Program) -> None:
        """Some of each."""
        self.action.append(still.press("m", partial(_says, f"pressed {len(self.action) + 1} times")))
        written = len(self.typed) + 2 * len(self.quickly) + 1
        self.typed.append(typing.press("x", partial(_says, "x" * written)))
        self.quickly.append(typing.press("x", partial(_says, "x" * (written + 2)), behind="x"))


PARTS = (one_knife, looking, whole_tray)

ASKED = (
    ("move", "a moved knife shown", 10, 6.0),
    ("tray", f"{TRAY} marked knives moved, shown", 20, None),
    ("only", "show only: the next sort (/)", 2, None),
    ("letter", "find: a letter", 2, None),
    ("letter that reads", "find: the letter that reads who has left", 2, None),
    ("digit", "a tag: its last figure", 2, None),
    ("jump", "a tag: the jump (Enter)", 2, None),
)
"""By what was noted: its words, how many times the base it may be, how many are wished."""


def _figures(bare: Bare, busy: Board, full: Board) -> Iterator[Figure]:
    """Against the bare apps, then 2,000 open knives against 400; the first turn only warmed."""
    action, typed, quickly = (took[len(PARTS) :] for took in (bare.action, bare.typed, bare.quickly))
    for what, name, most, wished in ASKED:
        if what in {"move", "tray"}:
            yield Figure(
                name=name,
                base="a bare app's key that changes its line",
                base_runs=tuple(action),
                our_runs=busy.runs(what),
                most=most,
                wished=wished,
                beside=f"without the wait for the disk, {busy.wait(what):.1f} ms",
            )
        else:
            base_ms, ours_ms = statistics.median(typed), statistics.median(busy.runs(what))
            yield Figure(
                name=name,
                base="a letter typed in a bare app's input, each right behind a frame",
                base_runs=tuple(quickly),
                our_runs=busy.runs(f"{what} {QUICKLY}"),
                most=most,
                beside=f"behind a rest {base_ms:.1f} and {ours_ms:.1f}, {ours_ms / base_ms:.1f} times",
            )
    for what, name, _, _ in ASKED:
        yield Figure(
            name=f"{name}, {MANY:,} open",
            base=f"the same at {FEW} open knives",
            base_runs=busy.runs(what),
            our_runs=full.runs(what),
            most=1.5,
        )
