"""When the power goes, all that was said to be stored is there in the morning, whole."""

from pathlib import Path

import pytest

from tests.bench.power import MODES, cut_off, worked

pytestmark = pytest.mark.sqlite_file

CUTS = 40
"""For each way to run; `python -m tests.bench.power` does a thousand."""


@pytest.mark.parametrize("log", [False, True], ids=["journal", "log"])
def test_the_power_goes_in_the_middle_of_the_work(log: bool, tmp_path: Path) -> None:
    """As the program runs nothing is lost or torn, with either kind of journal; each control loses some."""
    work = worked(tmp_path, log=log)
    for mode in (mode for mode in MODES if mode.log is log):
        tally = cut_off(work, mode, CUTS, 7, tmp_path)

        assert tally.cuts == CUTS
        assert (tally.lost + tally.corrupt == 0) is mode.holds, mode.name
