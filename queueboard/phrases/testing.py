"""The test of one edge in words: where its spots are, what was read there, and what that says."""

from collections.abc import Iterator
from datetime import datetime

from queueboard.edges.verdict import Judged, Line, Verdict
from queueboard.phrases.dates import when_words
from queueboard.shop.edge_now import EdgeNow
from queueboard.values.edge import EdgeTest, Spot
from queueboard.words import EdgeTestWay, SecondLook, Stage

_KEYS = """digits Enter: write · / before, after, between · b belt · d burr · ↑↓ spot
+ OK · - not OK · * by eye · n next · s spots · e wrong · u undo · . back"""
_CUTTING_KEYS = "+ OK · - not OK · b belt it goes back to · n next · u undo · . back"
LEAST_USUAL_GF, MOST_USUAL_GF = 20, 2000
"""Readings outside are asked back; a razor blade needs about 50 gf, a butter knife about 2000 (common practice)."""


def keys_words(*, by_cutting: bool) -> str:
    """The keys of the test that do something for this knife."""
    return _CUTTING_KEYS if by_cutting else _KEYS


def odd_force_words(force_gf: int) -> str:
    """What is asked back before an unusual reading is written down: 5 gf: a razor blade needs about 50; else empty."""
    if LEAST_USUAL_GF <= force_gf <= MOST_USUAL_GF:
        return ""
    likeness = "a razor blade needs about 50" if force_gf < LEAST_USUAL_GF else "even a butter knife needs about 2000"
    return f"{force_gf} gf: {likeness}. Enter once more writes it down."


def half_read_words(seen: EdgeNow, key: str, does: str) -> str:
    """What is asked back where some spots are read and some are not: The middle is not read yet; else empty."""
    found = seen.edge.finished_gf()
    unread = [name for name, forces in found.items() if not forces]
    if not unread or len(unread) == len(found):
        return ""
    are = "is" if len(unread) == 1 else "are"
    return f"The {', '.join(unread)} {are} not read yet: {key} once more {does}."


def over_words(seen: EdgeNow) -> str:
    """What is asked back before a knife that is not OK goes by eye, with figure and line; else empty."""
    if seen.judged is None or seen.line is None or seen.judged.verdict is not Verdict.NOT_OK:
        return ""
    return f"{_verdict(seen.judged, seen.line, seen.wobble.gf)} * once more lets it go by eye."


def spot_place(spot: Spot) -> str:
    """Where a spot is: 25 mm; tooth 3; empty when it was not measured."""
    if spot.tooth is not None:
        return f"tooth {spot.tooth}"
    return "" if spot.from_heel_mm is None else f"{spot.from_heel_mm} mm"


def readings_words(seen: EdgeNow, spot: Spot, stage: Stage) -> str:
    """What a spot needed at a stage: (310), 170, in brackets what was worked again; between belts with the belt."""
    words = []
    for one in seen.edge.at(spot, stage):
        if stage is Stage.BETWEEN:
            words.append(f"{one.belt} {one.force_gf}{'' if one.deburred else ' with the burr'}")
        else:
            over = stage is Stage.AFTER and not seen.edge.counts(one)
            words.append(f"({one.force_gf})" if over else str(one.force_gf))
    return ", ".join(words)


def both_sets_lines(seen: EdgeNow) -> Iterator[str]:
    """Every reading of a knife that is not OK again, by spot and reader: heel: before 1450 J; after (310) K gf."""
    for spot in seen.spots:
        said = []
        for stage in (Stage.BEFORE, Stage.AFTER):
            forces = [
                f"({one.force_gf}) {one.read_by}"
                if stage is Stage.AFTER and not seen.edge.counts(one)
                else f"{one.force_gf} {one.read_by}"
                for one in seen.edge.at(spot, stage)
            ]
            said += [f"{stage.value} {', '.join(forces)}"] if forces else []
        if said:
            yield f"{spot.name}: {'; '.join(said)} gf"


def line_words(seen: EdgeNow) -> str:
    """What the edge is held against, and how surely: line 250 gf · the tester wobbles by 12 gf."""
    if seen.line is None:
        return "tested by cutting the real material, to the very tip; no gauge"
    learned = ", from memory" if seen.wobble.studied_at is None else ""
    changed = f", SINCE CHANGED ({seen.wobble.changed})" if seen.wobble.changed else ""
    return f"line {seen.line.most_gf} gf · the tester wobbles by {seen.wobble.gf:.0f} gf{learned}{changed}"


def verdict_lines(seen: EdgeNow) -> Iterator[str]:
    """The verdict at once, as far as it is read, and what to do for a surer one."""
    if seen.line is None:
        return
    if seen.judged is None:
        yield "Not read yet after the work, deburred."
        return
    yield ("" if seen.whole else "So far: ") + _verdict(seen.judged, seen.line, seen.wobble.gf)
    once = len(seen.edge.finished_gf()[seen.judged.worst]) == 1
    if seen.whole and once and seen.judged.verdict is not Verdict.NOT_OK:
        yield f"Once more at the {seen.judged.worst}, after a light cut in wood or cork: a burr reads well only once."


def _verdict(judged: Judged, line: Line, wobble_gf: float) -> str:
    needs = f"the {judged.worst} needs {judged.worst_gf} gf, the line is {line.most_gf}"
    match judged.verdict:
        case Verdict.OK:
            return f"OK: {needs}."
        case Verdict.NOT_OK:
            return f"NOT OK: {needs}."
        case Verdict.TOO_CLOSE:
            return f"TOO CLOSE TO CALL: {needs}, and the tester wobbles by {wobble_gf:.0f}. You decide."
        case Verdict.LOOK_AGAIN:
            return f"LOOK AGAIN: the spots are {judged.apart_gf} gf apart, more than {line.most_apart_gf}."


def test_words(test: EdgeTest, now: datetime) -> str:
    """One test that was made: not OK by feel, back to 16 um, today 10:20 J."""
    ok = "OK" if test.ok else "not OK"
    if test.way is EdgeTestWay.EYE:
        ok = "let go"
    way = f"by the {test.way.value}" if test.way is EdgeTestWay.GAUGE else test.way.value
    back = f", back to {test.belt}" if test.belt else ""
    return f"{ok} {way}{back}, {when_words(test.tested_at.astimezone(now.tzinfo), now)} {test.tested_by}"


def choice_words(choice: SecondLook) -> str:
    """What a second look can come to, with where the knife then stands."""
    stands = {
        SecondLook.ONE_MORE: "back on the bench",
        SecondLook.LOWER: "ready; say what to tell",
        SecondLook.DECLINE: "ready, unsharpened, costs nothing",
    }
    return f"{choice.value}: {stands[choice]}"
