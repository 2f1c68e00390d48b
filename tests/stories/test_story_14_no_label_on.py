"""Story 14, its label: twelve knives in, eleven packed; the label is not on before it is said why it goes so.

Who lies in whose tray is told in the story's other test. All of it is invented.
"""

import pytest

from queueboard.errors import ReasonNeededError, RuleError
from queueboard.shop import closing, moving
from queueboard.shop.opening import Shop
from queueboard.values.box import CloseCheck, CloseOut
from queueboard.words import CloseStep, Column, Packing
from tests.board.closing import host, type_in
from tests.board.dump import dump
from tests.board.host import LARGE
from tests.shop.place import box, by, parcel


def close_of(shop: Shop, number: int) -> CloseOut:
    """The close-out under way."""
    found = box(shop, number).close_out
    assert found is not None
    return found


def check_of(shop: Shop, number: int) -> CloseCheck:
    """Where it stands."""
    found = box(shop, number).close_check
    assert found is not None
    return found


def eleven_of_twelve(shop: Shop) -> int:
    """A box of twelve ready knives with a sheath, whose close-out has counted eleven."""
    made = parcel(shop, knives=12, things=("sheath",))
    number = made.box.number
    moving.move_knives(shop, by(), made.knives, Column.READY)
    closing.begin_close_out(shop, by(), box(shop, number).box)
    closing.count(shop, by(), close_of(shop, number), 11)
    return number


def test_label_on_cannot_be_reached_while_it_does_not_add_up(shop: Shop) -> None:
    """Neither names nor label can be confirmed, nor can the box be packed "label on", nor can it go."""
    number = eleven_of_twelve(shop)
    for _ in range(2):
        with pytest.raises(RuleError, match="does not add up yet"):
            closing.confirm_names(shop, by(), close_of(shop, number))
        with pytest.raises(RuleError, match="does not add up yet"):
            closing.confirm_label(shop, by(), close_of(shop, number))
        with pytest.raises(RuleError, match="does not add up yet"):
            moving.pack_box(shop, by(), box(shop, number).box, Packing.LABEL_ON)
        with pytest.raises(RuleError, match="not done yet"):
            closing.send_off(shop, by(), close_of(shop, number))
        if check_of(shop, number).step is CloseStep.MISSING:
            break
        for knife in box(shop, number).knives[:11]:
            closing.tick(shop, by(), close_of(shop, number), knife.id)
        closing.ticks_done(shop, by(), close_of(shop, number))

    assert check_of(shop, number).step is CloseStep.MISSING
    moving.pack_box(shop, by(), box(shop, number).box, Packing.BOXED)


def test_it_goes_without_only_for_a_typed_reason(shop: Shop) -> None:
    """No reason, no label; with one the eleven go with their label, the twelfth and the sheath are looked for."""
    number = eleven_of_twelve(shop)
    for knife in box(shop, number).knives[:11]:
        closing.tick(shop, by(), close_of(shop, number), knife.id)
    closing.ticks_done(shop, by(), close_of(shop, number))
    with pytest.raises(ReasonNeededError):
        closing.why_missing(shop, by(), close_of(shop, number), "  ")
    closing.why_missing(shop, by(), close_of(shop, number), "customer told 16:10, we look on")
    closing.things_done(shop, by(), close_of(shop, number))
    closing.confirm_names(shop, by(), close_of(shop, number))
    moving.pack_box(shop, by(), box(shop, number).box, Packing.LABEL_ON)
    closing.confirm_label(shop, by(), close_of(shop, number))

    assert check_of(shop, number).step is CloseStep.MONEY
    assert len(check_of(shop, number).going) == 11
    assert check_of(shop, number).missing == (box(shop, number).knives[11].id,)


async def test_the_screen_asks_for_the_reason_before_the_label(shop: Shop) -> None:
    """After the count of eleven plus alone does not lead on; the reason does, then the names, then the label."""
    number = eleven_of_twelve(shop)
    for knife in box(shop, number).knives[:11]:
        closing.tick(shop, by(), close_of(shop, number), knife.id)
    closing.ticks_done(shop, by(), close_of(shop, number))
    app = host(shop, number)

    async with app.run_test(size=LARGE) as pilot:
        await type_in(pilot, "+")
        assert check_of(shop, number).step is CloseStep.MISSING
        assert "Is this label on the box?" not in dump(app)
        await type_in(pilot, "customer told, we look on", "1", "")
        assert check_of(shop, number).step is CloseStep.NAMES
        await type_in(pilot, "+")
        assert "Is this label on the box?" in dump(app)
        assert "Check the carrier's current knife rules and local age-check law" in dump(app)
