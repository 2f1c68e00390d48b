"""Sets of belts: what is asked about them."""

import pytest

from queueboard.abrasives.grit import Scale, grits_meant
from queueboard.abrasives.order import Trouble, doubts


def test_a_set_in_order_is_silent() -> None:
    """P240, P400, 16 um."""
    assert doubts([("P240", 58.5), ("P400", 35.0), ("16 um", 16.0), ("diamond 9 um", 9.0)]) == ()


@pytest.mark.parametrize(
    ("belts", "trouble"),
    [
        ([("P400", 35.0), ("P240", 58.5)], Trouble.COARSER),
        ([("16 um", 16.0), ("16 um", 16.0)], Trouble.COARSER),
        ([("800", 21.8)], Trouble.NO_SCALE),
        ([("P800", 30.0)], Trouble.OTHER_SIZE),
    ],
)
def test_what_is_doubtful_is_named(belts: list[tuple[str, float]], trouble: Trouble) -> None:
    """Coarser after finer, a number without its scale, a size that its label does not have."""
    assert [doubt.trouble for doubt in doubts(belts)] == [trouble]


@pytest.mark.parametrize(
    ("label", "sizes"),
    [("P240", {58.5}), ("p 240", {58.5}), ("#1000", {18.3, 10.3, 11.5}), ("J1000", {11.5}), ("0,5 µm", {0.5})],
)
def test_labels_as_they_are_written(label: str, sizes: set[float]) -> None:
    """Letters large or small, with a cross, a space or a decimal comma."""
    assert {grit.size_um for grit in grits_meant(label)} == sizes


@pytest.mark.parametrize("label", ["", "felt", "P1", "P241", "99999", "16", "um", "²40"])
def test_what_is_no_grit(label: str) -> None:
    """No size is guessed; 16 alone is a P, a CAMI and no JIS grade."""
    assert {grit.scale for grit in grits_meant(label)} <= {Scale.P}
