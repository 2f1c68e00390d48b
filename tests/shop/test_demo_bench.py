"""The demo's bench can be looked at: belts that have worked, spares, and a studied tester."""

from pathlib import Path

from queueboard.shop.belt_counts import belt_places
from queueboard.shop.opening import close_shop
from queueboard.shop.wobbling import wobble_now
from tests.shop.place import MORNING, demo_shop


def test_the_demo_s_bench_has_something_to_show(tmp_path: Path) -> None:
    """Belts are up and have done knives, one label is to be ordered, and the wobble comes from a study."""
    shop = demo_shop(tmp_path / "demo.qb", MORNING)
    places = belt_places(shop)
    wobble = wobble_now(shop)
    close_shop(shop)

    assert sum(place.belt is not None for place in places) == 5
    assert any(place.done > 0 for place in places)
    assert any(place.to_order for place in places)
    assert wobble.studied_at is not None
    assert wobble.interval is not None
    assert wobble.interval.holds(12)
