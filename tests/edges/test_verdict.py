"""Verdicts on knives: OK, not OK, too close to call, look again."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.edges.verdict import Line, Verdict, judge

LINE = Line(most_gf=250, most_apart_gf=100)


@pytest.mark.parametrize(
    ("spots", "wobble_gf", "verdict"),
    [
        ({"heel": [180], "middle": [170], "tip": [210]}, 15.0, Verdict.OK),
        ({"heel": [180], "middle": [170], "tip": [220]}, 15.0, Verdict.TOO_CLOSE),
        ({"heel": [180], "middle": [170], "tip": [280]}, 15.0, Verdict.TOO_CLOSE),
        ({"heel": [180], "middle": [170], "tip": [281]}, 15.0, Verdict.NOT_OK),
        ({"heel": [250]}, 0.0, Verdict.OK),
        ({"heel": [251]}, 0.0, Verdict.NOT_OK),
        ({"heel": [90], "tip": [191]}, 15.0, Verdict.LOOK_AGAIN),
        ({"heel": [90], "tip": [190]}, 15.0, Verdict.OK),
    ],
)
def test_the_line_and_the_wobble(spots: dict[str, list[int]], wobble_gf: float, verdict: Verdict) -> None:
    """Within two wobbles of the line nothing is claimed; an uneven edge is looked at again."""
    judged = judge(spots, LINE, wobble_gf)

    assert judged is not None
    assert judged.verdict is verdict


def test_a_burr_that_read_well_once() -> None:
    """The second reading at the worst spot counts when it is higher."""
    judged = judge({"heel": [180], "tip": [190, 320]}, LINE, 15.0)

    assert judged is not None
    assert (judged.verdict, judged.worst, judged.worst_gf, judged.apart_gf) == (Verdict.NOT_OK, "tip", 320, 140)


@pytest.mark.parametrize("spots", [{}, {"heel": []}])
def test_nothing_read_is_no_verdict(spots: dict[str, list[int]]) -> None:
    """Without a reading nothing is said."""
    assert judge(spots, LINE, 15.0) is None


@given(st.dictionaries(st.text(), st.lists(st.integers(1, 2000), min_size=1), min_size=1), st.floats(0, 100), st.data())
def test_one_more_reading_never_betters_a_verdict(
    spots: dict[str, list[int]], wobble_gf: float, data: st.DataObject
) -> None:
    """Not OK stays not OK whatever is read besides: no knife is read until it passes."""
    before = judge(spots, LINE, wobble_gf)
    again = data.draw(st.sampled_from(sorted(spots)))
    after = judge({**spots, again: [*spots[again], data.draw(st.integers(1, 2000))]}, LINE, wobble_gf)

    assert before is not None
    assert after is not None
    assert after.worst_gf >= before.worst_gf
    assert after.verdict is Verdict.NOT_OK or before.verdict is not Verdict.NOT_OK
