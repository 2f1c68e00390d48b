"""A figure of speed: ours against a base measured in the same run, and whether it keeps what was asked of it. Pure."""

import re
import statistics
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from time import process_time

MEASURED = re.compile(
    r"^(?P<name>\S.*?) {2,}.* (?P<ratio>\d+\.\d\d) +(?P<most>\d[\d.]*)(?: +(?P<wished>\d+\.\d))? +(?P<word>met|MISSED)$"
)
"""A line of the table that holds a figure."""

BASE = re.compile(r"^ +in (?P<unit>[^,]+), base: (?P<base>.+)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One sentence of the table: two things measured by turns, run for run."""

    name: str
    base: str
    """What it is held against."""
    base_runs: tuple[float, ...]
    our_runs: tuple[float, ...]
    most: float
    """Ours may be so many times the base."""
    wished: float | None = None
    """So many times would be better still."""
    unit: str = "ms"
    beside: str = ""
    """What belongs to the figure and is not in it."""

    @property
    def ratio(self) -> float:
        """The median of ours to the median of the base."""
        return statistics.median(self.our_runs) / statistics.median(self.base_runs)

    @property
    def is_met(self) -> bool:
        """True when the ratio, as it is printed, is no more than was asked for."""
        return round(self.ratio, 2) <= self.most


def by_turns(base: Callable[[], float], ours: Callable[[], float], runs: int) -> tuple[list[float], list[float]]:
    """Base, ours, base, ours and so on, so that what else the machine does falls on both alike.

    One run of each goes before and is not counted: it warms what a second run finds warm.
    """
    pairs = [(base(), ours()) for _ in range(runs + 1)][1:]
    return [first for first, _ in pairs], [second for _, second in pairs]


def processor_ms(work: Callable[[], object]) -> float:
    """What the processor did for it: waiting for the disk or for others is not in it."""
    started = process_time()
    work()
    return (process_time() - started) * 1000


def worked_by_turns(
    base: Callable[[], object], ours: Callable[[], object], runs: int
) -> tuple[list[float], list[float]]:
    """As by_turns, clocked by what the processor did for each."""
    return by_turns(lambda: processor_ms(base), lambda: processor_ms(ours), runs)


def table(figures: Iterable[Figure]) -> str:
    """The figures, one a line, what belongs beside a figure below it."""
    head = f"{'':<45}{'base':>18}{'ours':>18}{'ratio':>8}{'asked':>7}{'wished':>8}"
    return "\n".join([head, *(line for figure in figures for line in _lines(figure))])


def _lines(figure: Figure) -> list[str]:
    wished = "" if figure.wished is None else f"{figure.wished:.1f}"
    ours, base = (_spread(runs) for runs in (figure.our_runs, figure.base_runs))
    most = f"{figure.most:.2g}"
    word = "met" if figure.is_met else "MISSED"
    first = f"{figure.name:<45}{base:>18}{ours:>18}{figure.ratio:>8.2f}{most:>7}{wished:>8}  {word}"
    below = (f"    in {figure.unit}, base: {figure.base}", *([f"    {figure.beside}"] if figure.beside else []))
    return [first, *below]


def for_developers(printed: str) -> str:
    """The figures of a printed table as they stand in DEVELOPERS.md: without times, which mean nothing elsewhere."""
    rows = ["| what | held against | times it | asked | |", "|---|---|---|---|---|"]
    lines = printed.splitlines()
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        found, base = MEASURED.match(line), BASE.match(below)
        if found and base:
            wished = f", wished {found['wished']}" if found["wished"] else ""
            rows.append(
                f"| {found['name']} | {base['base']} | {found['ratio']} | {found['most']}{wished} | {found['word']} |"
            )
    return "\n".join(rows)


def _spread(runs: Sequence[float]) -> str:
    """The median, and how far the middle half reaches to either side."""
    low, middle, high = statistics.quantiles(runs, n=4, method="inclusive") if len(runs) > 1 else (runs[0],) * 3
    return f"{_short(middle)} {_short(low)}–{_short(high)}"


def _short(value: float) -> str:
    """Three figures of a number."""
    return f"{value:.0f}" if value >= 100 else f"{value:.3g}"
