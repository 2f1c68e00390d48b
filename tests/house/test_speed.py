"""The table of speed tells slow from fast, and DEVELOPERS.md shows what was printed; nothing is clocked here."""

from dataclasses import replace

from tests.bench.speed import DEVELOPERS, KEPT, with_table
from tests.bench.speed_table import Figure, by_turns, for_developers, table


def figure(ours: tuple[float, ...], most: float = 2.0) -> Figure:
    """Held against a base of ten milliseconds."""
    return Figure(name="a key", base="a bare key", base_runs=(9, 10, 10, 10, 30), our_runs=ours, most=most)


def test_a_program_slowed_down_is_missed() -> None:
    """The control: what takes three times the base misses twice the base, however quick its quickest run was."""
    slow, quick = figure((8, 30, 30, 31, 30)), figure((15, 15, 90, 15, 14))

    assert not slow.is_met
    assert "MISSED" in table([slow])
    assert quick.is_met
    assert quick.ratio == 1.5


def test_what_is_printed_is_what_is_judged() -> None:
    """A ratio that is printed as the limit keeps it."""
    assert figure((20.04,) * 5).is_met
    assert not figure((20.1,) * 5).is_met


def test_base_and_ours_are_measured_by_turns() -> None:
    """Base, ours, base, ours; the first of each is not counted."""
    called = list[str]()

    def run(what: str) -> float:
        called.append(what)
        return len(called)

    assert by_turns(lambda: run("base"), lambda: run("ours"), 2) == ([3, 5], [4, 6])
    assert called == ["base", "ours"] * 3


def test_every_line_printed_comes_into_the_table() -> None:
    """Name, base, ratio, limit and word of each figure stand in the table for developers."""
    wished = replace(figure((85.2,) * 5), name="a key pressed", most=2.2, wished=2.0)
    printed = table([figure((30,) * 5), figure((10.0,) * 5), wished])

    assert for_developers(printed).splitlines()[2:] == [
        "| a key | a bare key | 3.00 | 2 | MISSED |",
        "| a key | a bare key | 1.00 | 2 | met |",
        "| a key pressed | a bare key | 8.52 | 2.2, wished 2.0 | MISSED |",
    ]


def test_developers_shows_what_was_printed() -> None:
    """The table in DEVELOPERS.md is made from what the script has printed; `python -m tests.bench.speed --table`."""
    text = DEVELOPERS.read_text(encoding="utf-8")

    assert with_table(text, KEPT.read_text(encoding="utf-8")) == text
    assert text.count("| met |") + text.count("| MISSED |") > 30
