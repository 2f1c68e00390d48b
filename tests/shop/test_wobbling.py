"""The study of the tester, reading by reading, and the figure that it leaves."""

import pytest

from queueboard.errors import RuleError, TypedError
from queueboard.shop.opening import Shop
from queueboard.shop.wobbling import (
    NextReading,
    begin_study,
    begin_study_over,
    finish_study,
    next_reading,
    read_study,
    study_now,
    wobble_now,
)
from tests.shop.place import by
from tests.shop.undo_edges import only_study


def studied(shop: Shop, *forces: int, changed: str = "", knives: int = 5) -> None:
    """A finished study: each of the knives reads these forces."""
    begin_study(shop, by(), changed, knives)
    for _ in range(knives):
        for force in forces:
            study = study_now(shop)
            assert study is not None
            read_study(shop, by(), study, force)
    study = study_now(shop)
    assert study is not None
    finish_study(shop, by(minutes=5), study)


def test_until_a_study_the_figure_is_from_memory(shop: Shop) -> None:
    """It is 15 gf and says that nobody has studied it."""
    now = wobble_now(shop)

    assert (now.gf, now.studied_at, now.interval, now.changed) == (15.0, None, None, "")


def test_a_study_asks_for_one_reading_after_the_other(shop: Shop) -> None:
    """Three of the first knife, then the second; when all are there it asks for none, and takes none."""
    begin_study(shop, by(), "", 5)
    asked = []
    while (wanted := next_reading(only_study(shop))) is not None:
        asked.append(wanted)
        read_study(shop, by(), only_study(shop), 180)

    assert asked[:4] == [NextReading(1, 1), NextReading(1, 2), NextReading(1, 3), NextReading(2, 1)]
    assert len(asked) == 15
    with pytest.raises(RuleError, match="finish it"):
        read_study(shop, by(), only_study(shop), 180)


def test_every_later_figure_uses_the_newest_finished_study(shop: Shop) -> None:
    """Readings 10 apart have a deviation of 10; a newer study takes the place of the older."""
    studied(shop, 170, 180, 190)
    assert wobble_now(shop).gf == pytest.approx(10)

    studied(shop, 160, 180, 200)
    now = wobble_now(shop)
    assert now.gf == pytest.approx(20)
    assert now.interval is not None
    assert now.interval.holds(20)
    assert now.studied_at == by(minutes=5).now


def test_a_changed_filament_is_said_until_it_was_studied(shop: Shop) -> None:
    """The old figure goes on being used, and is said to be one."""
    studied(shop, 170, 180, 190)
    begin_study(shop, by(minutes=9), "new filament")

    assert wobble_now(shop).gf == pytest.approx(10)
    assert wobble_now(shop).changed == "new filament"
    open_one = study_now(shop)
    assert open_one is not None
    begin_study_over(shop, by(minutes=10), open_one)
    assert wobble_now(shop).changed == "new filament"


@pytest.mark.parametrize("force", [0, -1, 20_000])
def test_a_force_that_no_tester_shows_is_refused(shop: Shop, force: int) -> None:
    """The sentence names it, and the study stays where it was."""
    begin_study(shop, by())

    with pytest.raises(TypedError, match=f"{force} gf"):
        read_study(shop, by(), only_study(shop), force)

    assert only_study(shop).readings_gf == ()


def test_a_study_is_not_finished_early_and_not_begun_twice(shop: Shop) -> None:
    """Nothing is learned from half a study; the missing reading is named."""
    begin_study(shop, by())
    read_study(shop, by(), only_study(shop), 180)

    with pytest.raises(RuleError, match="Reading 2 of knife 1"):
        finish_study(shop, by(), only_study(shop))
    with pytest.raises(RuleError, match="under way already"):
        begin_study(shop, by())
    assert wobble_now(shop).studied_at is None


def test_two_windows_do_not_mix_their_readings(shop: Shop) -> None:
    """A reading typed over an older view of the study is refused: it belongs to another knife."""
    begin_study(shop, by())
    seen = only_study(shop)
    read_study(shop, by(), seen, 180)

    with pytest.raises(RuleError, match="Somebody has just typed"):
        read_study(shop, by("K"), seen, 181)


@pytest.mark.parametrize("knives", [0, 4, 31])
def test_a_study_has_five_to_thirty_knives(shop: Shop, knives: int) -> None:
    """Fewer say too little about a tester, more nobody reads."""
    with pytest.raises(TypedError, match="5 to 30"):
        begin_study(shop, by(), "", knives)
