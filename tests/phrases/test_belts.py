"""Doubtful belts in words."""

from dataclasses import replace

import pytest

from queueboard.phrases.belts import belt_words
from queueboard.settings.shapes import Belt, Process
from queueboard.shop.belts import belts_to_ask
from tests.shop_settings import settings

COARSER = (
    "process plain, belt 2, P240: 58.5 um comes after P400 with 35 um; each belt is finer than the one before. "
    "Worn and demoted on purpose? Then it may stay."
)
OTHER_SIZE = "process plain, belt 1, P400: is 35 um by its label, 53 um by its number. One of them is wrong."
NO_SCALE = (
    "process plain, belt 1, 1500: may be P1500 (12.6 um) or JIS 1500 (8 um): not the same grit. "
    "Write which; 12.6 um is reckoned with."
)


@pytest.mark.parametrize(
    ("belts", "said"),
    [
        ([("P240", 58.5), ("P400", 35.0)], []),
        ([("P400", 35.0), ("P240", 58.5)], [COARSER]),
        ([("P400", 53.0)], [OTHER_SIZE]),
        ([("1500", 12.6)], [NO_SCALE]),
    ],
)
def test_what_is_asked_of_a_set(belts: list[tuple[str, float]], said: list[str]) -> None:
    """Coarser after finer, a size that its label does not have, and a number that names several grits."""
    belts_now = tuple(Belt(label=label, grit_um=size) for label, size in belts)
    process = Process(name="plain", belts=belts_now, finish="felt wheel", set_up_seconds=60, run_size=10)
    now = replace(settings(), processes=(process,))

    assert [belt_words(asked) for asked in belts_to_ask(None, now)] == said
    assert belts_to_ask(now, now) == ()
