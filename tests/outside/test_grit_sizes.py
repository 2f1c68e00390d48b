"""Grit sizes against published tables of ISO 6344 (P), CAMI, FEPA F and JIS; values/grit.json names each source."""

import json
from itertools import pairwise
from pathlib import Path

import pytest

from queueboard.abrasives.grit import SIZES_UM, Grit, Scale, grits_meant, nearest_label

VALUES = json.loads((Path(__file__).parent / "values" / "grit.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("label", "size_um"), VALUES["P_grade"]["mean"].items())
def test_p_grades(label: str, size_um: float) -> None:
    """Each printed P grade."""
    assert grits_meant(label) == (Grit(Scale.P, size_um),)


@pytest.mark.parametrize(("number", "size_um"), VALUES["CAMI"]["mean"].items())
def test_cami(number: str, size_um: float) -> None:
    """Each printed CAMI grade."""
    assert grits_meant(f"CAMI {number}") == (Grit(Scale.CAMI, size_um),)


@pytest.mark.parametrize(("label", "size"), VALUES["FEPA_F_micro"]["ds50"].items())
def test_f_grades(label: str, size: tuple[float, float]) -> None:
    """Each F grade from memory."""
    assert grits_meant(label) == (Grit(Scale.F, size[0]),)


@pytest.mark.parametrize(("number", "size"), VALUES["JIS_micro"]["d50"].items())
def test_jis(number: str, size: tuple[float, float]) -> None:
    """Each JIS grade."""
    assert grits_meant(f"JIS {number}") == (Grit(Scale.JIS, size[0]),)


@pytest.mark.parametrize("scale", SIZES_UM)
def test_a_higher_number_is_finer_on_every_scale(scale: Scale) -> None:
    """Sizes fall strictly as the numbers rise."""
    assert all(finer < coarser for coarser, finer in pairwise(SIZES_UM[scale].values()))
    assert list(SIZES_UM[scale]) == sorted(SIZES_UM[scale])


def test_p800_and_800_are_not_the_same_grit() -> None:
    """P800 lies near CAMI 400, P1200 near CAMI 600; a bare number is asked about."""
    assert nearest_label(SIZES_UM[Scale.P][800], Scale.CAMI) == "CAMI 400"
    assert nearest_label(SIZES_UM[Scale.P][1200], Scale.CAMI) == "CAMI 600"
    assert {grit.scale for grit in grits_meant("800")} == {Scale.P, Scale.CAMI, Scale.JIS}
