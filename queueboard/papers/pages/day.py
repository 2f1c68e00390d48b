"""The day sheet as a page: two pages at most, a rule behind each line, so that it can be written on and typed back."""

from collections.abc import Iterable
from dataclasses import replace

from rich.cells import cell_len

from queueboard.clean import cell_text
from queueboard.papers.day_sheet import (
    AT_THE_BENCH,
    EMPTY_BOARD,
    LEAVES,
    NO_WORK,
    WEEK_AHEAD,
    WORK,
    Part,
    day_head,
    day_parts,
)
from queueboard.papers.pages.making import made_page
from queueboard.papers.text import cut_to
from queueboard.phrases.bench import run_head_words
from queueboard.phrases.cautions import BENCH_SHORT, NO_ADVICE
from queueboard.phrases.dates import many
from queueboard.phrases.day import belts_words, knife_by_id, run_knife_words, run_minutes_words, runs_today
from queueboard.phrases.knives import wish_in_capitals
from queueboard.shop.picture import Picture
from queueboard.slotted import dataclass
from queueboard.values.knife import Knife
from queueboard.words import PaperSize

ROOM = 104
"""Lines that two pages of letter paper, the lower of the two sheets, hold beside the head and the least rules."""
LEAST_RULES, MOST_RULES = 6, 14
"""Empty lines for what comes while the power is out: a walk-in, a payment."""
CELLS, CELLS_OF_WORK = 100, 76
"""Letters that fit on one line of a part, and on one of the work, with room to spare."""
MOST_CELLS = 2 * CELLS
"""As much is printed of one line; whole wishes stand on the tags and on the screen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkLine:
    """One line of the work: a run's heading, or a knife to be ticked."""

    says: str
    tag: str = ""
    """Empty for the heading of a run."""


def day_page(picture: Picture, paper: PaperSize) -> str:
    """The day on paper; what two pages have no room for is counted, and stands on the screen."""
    work, parts, rules = _fitted(tuple(_work(picture)), day_parts(picture))
    return made_page(
        "day",
        paper,
        {
            "title": f"Day sheet, {picture.now.date().isoformat()}",
            "head": [cell_text(line) for line in day_head(picture)],
            "empty": "" if picture.boxes else EMPTY_BOARD,
            "heading": WORK,
            "nothing": NO_WORK,
            "work": work,
            "changed": parts[0],
            "parts": parts[1:],
            "leaves": LEAVES,
            "no_advice": NO_ADVICE,
            "rules": rules,
        },
    )


def _work(picture: Picture) -> Iterable[WorkLine]:
    """Today's runs in the order of the screen, each with its knives."""
    knives = knife_by_id(picture)
    for place, run in enumerate(runs_today(picture), start=1):
        belts = "; ".join(filter(None, (belts_words(run.process, picture.settings), run_minutes_words(run))))
        yield WorkLine(says=_cut(f"{place}. {run_head_words(run, picture)}; {belts}"))
        for knife_id in run.knife_ids:
            if knife_id in knives:
                yield _knife_line(knives[knife_id], picture)


def _knife_line(knife: Knife, picture: Picture) -> WorkLine:
    """A long mark may be cut, but never so that it hides the wish behind it."""
    wish = wish_in_capitals(knife)
    what = run_knife_words(knife, picture).removeprefix(knife.tag).removesuffix(wish).strip()
    return WorkLine(tag=knife.tag, says=" ".join(filter(None, (_cut(what), _cut(wish)))))


def _cut(text: str) -> str:
    return cut_to(cell_text(text), MOST_CELLS)


def _fitted(work: tuple[WorkLine, ...], parts: tuple[Part, ...]) -> tuple[tuple[WorkLine, ...], tuple[Part, ...], int]:
    """As much as two pages hold: first the week goes, then the long cautions, then the ends of the longest lists."""
    parts = tuple(replace(part, lines=tuple(map(_cut, part.lines))) for part in parts)
    for shorter in (_without_week, _short_cautions):
        if _lines_of(work) + sum(map(_height, parts)) > ROOM:
            parts = shorter(parts)
    parts = _at_most(parts, max(ROOM - _lines_of(work), ROOM // 2))
    left = ROOM - sum(map(_height, parts))
    work = _first(work, left)
    return work, parts, min(MOST_RULES, LEAST_RULES + (left - _lines_of(work)) // 2)


def _without_week(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    return tuple(part for part in parts if part.heading != WEEK_AHEAD)


def _short_cautions(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    return tuple(replace(p, lines=(BENCH_SHORT,)) if p.heading == AT_THE_BENCH else p for p in parts)


def _at_most(parts: tuple[Part, ...], room: int) -> tuple[Part, ...]:
    """The parts with at most so many lines each that all fit; how many more there are is said."""
    for most in range(ROOM, 0, -1):
        cut = tuple(replace(part, lines=_up_to(part.lines, most)) for part in parts)
        if sum(map(_height, cut)) <= room:
            break
    return cut


def _up_to(lines: tuple[str, ...], most: int) -> tuple[str, ...]:
    return lines if len(lines) <= most else (*lines[:most], f"and {len(lines) - most} more, on the screen")


def _first(work: tuple[WorkLine, ...], room: int) -> tuple[WorkLine, ...]:
    """As much of the work as fits; how many knives more there are is said."""
    if _lines_of(work) <= room:
        return work
    place = max(n for n in range(len(work)) if n == 0 or _lines_of(work[:n]) < room)
    more = sum(bool(line.tag) for line in work[place:])
    return (*work[:place], WorkLine(says=f"and {many(more, 'knife')} more, on the screen"))


def _lines_of(work: tuple[WorkLine, ...]) -> int:
    return sum(1 + cell_len(line.says) // (CELLS_OF_WORK if line.tag else CELLS) for line in work)


def _height(part: Part) -> int:
    lines = sum(1 + cell_len(line) // CELLS for line in part.lines)
    return 2 + lines if part.lines or part.nothing else 0
