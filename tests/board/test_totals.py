"""What stands under the cursor at the foot of the board."""

from dataclasses import replace

from queueboard.board.widgets.totals import knife_contents
from queueboard.edges.trial import Half
from queueboard.records.trials import DrawnKnife
from queueboard.words import Column
from tests.pictures import box_picture, knives, picture


def test_a_knife_of_a_trial_says_how_it_is_worked() -> None:
    """Its half of a belt trial stands with it, as on the day list; a knife in none says nothing of one."""
    one, other = knives(417, Column.ON_BENCH, Column.ON_BENCH)
    box = box_picture(417, knives_=(one, other))
    drawn = DrawnKnife(trial_id=1, knife_id=one.id, place=0, process="plain", belt="16 um", half=Half.WITHOUT)
    seen = replace(picture(box), halves=(drawn,))

    assert "TRIAL: without 16 um" in [line.plain for line in knife_contents(one, box, seen)]
    assert not any("TRIAL" in line.plain for line in knife_contents(other, box, seen))
