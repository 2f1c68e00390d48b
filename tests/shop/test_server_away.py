"""A shop whose server is away, whose machine does not answer, or whose connection dies without a word."""

from threading import Event

import pytest

from queueboard.errors import LostError
from queueboard.records.lost import AWAY
from queueboard.records.pointing import point
from queueboard.shop import noting
from queueboard.shop.opening import Shop, close_shop, open_shop
from tests import engines, lending
from tests.shop.place import box, by, parcel, picture
from tests.shop.test_on_server import groups
from tests.wire import Wire

pytestmark = pytest.mark.server


def test_a_connection_lost_between_two_actions_is_made_anew(shop: Shop) -> None:
    """A server that was started anew while nobody did anything is not even noticed."""
    made = parcel(shop)
    lending.cut(shop.path)
    noting.note_box(shop, by(), made.box, "still here")
    lending.cut(shop.path)

    assert picture(shop).boxes[0].box.note == "still here"


def test_a_server_that_is_away_is_told_in_one_sentence(shop: Shop) -> None:
    """Looks and actions say the same sentence for as long as it lasts; afterwards all goes on."""
    made = parcel(shop)
    before = len(groups(shop))
    with lending.away(shop.path):
        for _ in range(2):
            with pytest.raises(LostError) as told:
                noting.note_box(shop, by(), made.box, "typed meanwhile")
            assert str(told.value) == AWAY
            with pytest.raises(LostError) as told:
                picture(shop)
            assert str(told.value) == AWAY
    shop.database.left_alone_until = 0.0  # type: ignore[attr-defined]  # nobody waits in a test

    noting.note_box(shop, by(), made.box, "typed meanwhile")
    assert len(groups(shop)) == before + 1


def test_a_machine_that_does_not_answer_holds_no_key_up(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """While a try to reach it goes on, each action is refused at once; what the try came to is used afterwards."""
    from queueboard.records.server import ServerDatabase

    made, reach, answers = parcel(shop), ServerDatabase._reach, Event()

    def late(database: ServerDatabase) -> object:
        answers.wait(30)
        return reach(database)

    assert isinstance(shop.database, ServerDatabase)
    shop.database.patience_ms = 1
    monkeypatch.setattr(ServerDatabase, "_reach", late)
    lending.cut(shop.path)
    for _ in range(3):
        with pytest.raises(LostError):
            noting.note_box(shop, by(), made.box, "typed meanwhile")
    going_on = shop.database.trying
    assert going_on is not None
    answers.set()
    assert going_on.over_within(30)

    noting.note_box(shop, by(), made.box, "typed meanwhile")
    assert picture(shop).boxes[0].box.note == "typed meanwhile"


def test_a_connection_that_dies_without_a_word_holds_no_key_up(shop: Shop) -> None:
    """Nothing comes back and nobody says so: it is told as a server that is away, and all is done once afterwards."""
    made = parcel(shop)
    before = len(groups(shop))
    with Wire() as wire:
        path = shop.path.with_name("wired.qb")
        point(path, wire.address(engines.named(shop.path)))
        window = open_shop(path)
        noting.note_box(window, by(), made.box, "before")
        made = box(window, 100)
        with wire.silent():
            for _ in range(3):
                with pytest.raises(LostError) as told:
                    noting.note_box(window, by(), made.box, "typed meanwhile")
                assert str(told.value) == AWAY
            going_on = window.database.trying  # type: ignore[attr-defined]  # only a shop on a server has one
        assert going_on.over_within(30)

        noting.note_box(window, by(), made.box, "typed meanwhile")
        close_shop(window)
    assert picture(shop).boxes[0].box.note == "typed meanwhile"
    assert len(groups(shop)) == before + 2
