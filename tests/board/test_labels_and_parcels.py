"""Labels and parcels through the screens: what differs is asked, what is too heavy is asked, ways out are one key."""

from dataclasses import replace
from datetime import date

import pytest

from queueboard.board.desk import Desk
from queueboard.board.screens import dialogs
from queueboard.board.screens.close_out import CloseOutScreen
from queueboard.board.screens.labels import LabelsScreen
from queueboard.shop.correcting import correct_customer
from queueboard.shop.labelling import set_label
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop
from queueboard.values.box import ReturnLabel
from queueboard.values.new import NewLabel
from queueboard.words import CloseStep, Column, LabelOwner, LabelState
from tests.board.closing import host, ready, step, type_in
from tests.board.dump import dump
from tests.board.host import LARGE, Host
from tests.board.typing import fill
from tests.shop.place import NOW, box, by, parcel

TODAY = NOW.date()

LABEL = NewLabel(
    owner=LabelOwner.CUSTOMER,
    state=LabelState.HERE,
    expires_on=date(2026, 11, 20),
    name_on="R. Tallis",
    address_on="21 Harbour Street, Dunmere",
    limit_g=800,
)


def labelled(shop: Shop, label: NewLabel = LABEL, *, knives: int = 2) -> int:
    """A parcel whose customer lives at 12 Harbour St, with this label on it; its number."""
    made = parcel(shop, knives=knives)
    correct_customer(shop, by(), made.customer, address="12 Harbour St.")
    set_label(shop, by(), box(shop, made.box.number).box, label)
    return made.box.number


def label_of(shop: Shop, number: int) -> ReturnLabel:
    """The label of a box as it is stored."""
    found = box(shop, number).label
    assert found is not None
    return found


async def test_another_house_number_is_asked_about_before_the_names_are_the_same(shop: Shop) -> None:
    """The close-out names the part that differs with both sides; one plus is asked back, a second one goes on."""
    number = ready(shop, box(shop, labelled(shop)))
    app = host(shop, number)

    async with app.run_test(size=LARGE) as pilot:
        await type_in(pilot, "2")
        assert "HOUSE NUMBER differs: 12 on file, 21 on the label" in dump(app)
        await type_in(pilot, "+")
        assert step(shop, number) is CloseStep.NAMES
        assert "The house number differs" in dump(app)
        await type_in(pilot, "+")
        assert step(shop, number) is CloseStep.LABEL


async def test_a_parcel_too_heavy_for_its_label_is_asked_about(shop: Shop) -> None:
    """The label step takes scale and size on its own line, warns above the limit, and goes on when insisted upon."""
    number = ready(shop, box(shop, labelled(shop, replace(LABEL, address_on=""))))
    app = host(shop, number)

    async with app.run_test(size=LARGE) as pilot:
        await type_in(pilot, "2", "+", "850 g")
        assert box(shop, number).box.packed_g == 850
        assert "weighs 850 g (1.87 lb) on the scale" in dump(app)
        await type_in(pilot, "10x4x2")
        assert box(shop, number).box.parcel_mm == (254, 102, 51)
        assert "ABOVE THE LABEL'S LIMIT: 850 g (1.87 lb) on the scale, the label takes 800 g" in dump(app)
        await type_in(pilot, "+")
        assert step(shop, number) is CloseStep.LABEL
        await type_in(pilot, "+")
        assert step(shop, number) is CloseStep.MONEY


@pytest.mark.parametrize("typed", ["0 kg", "2", "2 stone", "1x2", "0x0x0"])
async def test_a_weight_of_nonsense_stays_on_the_line(shop: Shop, typed: str) -> None:
    """A sentence comes under the question, what was typed stays, and nothing is stored."""
    number = ready(shop, box(shop, labelled(shop, replace(LABEL, address_on=""))))
    app = host(shop, number)

    async with app.run_test(size=LARGE) as pilot:
        await type_in(pilot, "2", "+", typed)

        assert "! " in dump(app)
        assert typed in dump(app)
        assert box(shop, number).box.packed_g is None
        assert step(shop, number) is CloseStep.LABEL


@pytest.mark.parametrize(
    ("answers", "sentence"),
    [
        (("<3>", "2025-12-12"), "was good until 12 December 2025"),
        (("<3>", "+9", "", "", "x" * 2000), "2000 characters; at most 500 fit"),
        (("<3>", "+9", "", "", "", "0 g"), "outside 1 g to 200 kg"),
        (("<3>", "+9", "", "", "", "-1"), "“-1” is no weight"),
        (("<3>", "+9", "", "", "", "heavy"), "“heavy” is no weight"),
        (("<3>", "+9", "", "", "", "", "-3"), "“-3” is no amount"),
    ],
)
async def test_what_no_label_says_stays_in_the_dialog(shop: Shop, answers: tuple[str, ...], sentence: str) -> None:
    """A sentence stands beside what was typed, and the label stays as it was."""
    number = labelled(shop, replace(LABEL, expires_on=None, name_on="", address_on="", limit_g=None))
    before = label_of(shop, number)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.LabelDialog(desk, box(shop, number).box.id))

    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, *answers)

        assert sentence in " ".join(dump(app).replace("│", " ").split())
        assert not app.left
    assert label_of(shop, number) == before


async def test_the_dialog_says_what_differs_while_it_is_typed(shop: Shop) -> None:
    """The comparison stands below the fields and is asked back once before it is stored."""
    number = labelled(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.LabelDialog(desk, box(shop, number).box.id))

    async with app.run_test(size=LARGE) as pilot:
        assert "HOUSE NUMBER differs: 12 on file, 21 on the label" in dump(app)
        await fill(pilot, "<3>", "<enter>", "Gull Post", *("<enter>",) * 5, "12 Harbour St, Dunmere")
        assert "The house number differs" in dump(app)
        assert not app.left
        await fill(pilot, "<enter>")
        assert app.left
    assert (label_of(shop, number).carrier, label_of(shop, number).note_address) == (
        "Gull Post",
        "12 Harbour St, Dunmere",
    )


async def test_scale_and_size_are_typed_at_the_box(shop: Shop) -> None:
    """The dialog stores both, shows what counts, and an emptied field takes its figure back."""
    number = labelled(shop)
    desk = Desk(shop, "MB", lambda: NOW)
    app = Host(desk, lambda: dialogs.WeighDialog(desk, box(shop, number).box.id))
    async with app.run_test(size=LARGE) as pilot:
        assert "should weigh" in dump(app)
        await fill(pilot, "1.2 kg", "14x16x16")
        assert app.left
    assert (box(shop, number).box.packed_g, box(shop, number).box.parcel_mm) == (1200, (356, 406, 406))

    again = Desk(shop, "MB", lambda: NOW)
    app = Host(again, lambda: dialogs.WeighDialog(again, box(shop, number).box.id))
    async with app.run_test(size=LARGE) as pilot:
        await fill(pilot, "", "<enter>")
        assert app.left
    assert (box(shop, number).box.packed_g, box(shop, number).box.parcel_mm) == (None, (356, 406, 406))


def labels_host(shop: Shop) -> Host:
    """An app that shows the labels."""
    desk = Desk(shop, "MB", lambda: NOW)
    return Host(desk, lambda: LabelsScreen(desk))


async def test_a_dying_label_shows_what_else_can_be_done(shop: Shop) -> None:
    """Part today with its count, a new label, the shop's at its price; each key does it, and the list says so."""
    number = labelled(shop, replace(LABEL, expires_on=TODAY, address_on="", limit_g=None))
    move_knives(shop, by(), box(shop, number).knives[:1], Column.READY)
    app = labels_host(shop)

    async with app.run_test(size=LARGE) as pilot:
        await pilot.pause()
        assert "c part today, 1 of 2 ready · a ask for a new label · s shop label, about 12.00 USD" in dump(app)
        await pilot.press("c")
        await pilot.pause()
        assert isinstance(app.screen, CloseOutScreen)
        await pilot.press("escape", "s")
        await pilot.pause()
        found = label_of(shop, number)
        assert (found.owner, found.state, found.price_cents) == (LabelOwner.SHOP, LabelState.TO_BUY, 1200)
        assert "the shop buys a label at about 12.00 USD" in dump(app)
        await pilot.press("a")
        await pilot.pause()
        assert "This label needs no other way" in dump(app)


async def test_a_new_label_is_asked_for(shop: Shop) -> None:
    """The customer's label becomes one to come, and the screen says whom to ring."""
    number = labelled(shop, replace(LABEL, expires_on=TODAY))
    app = labels_host(shop)

    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("a")
        await pilot.pause()
        assert "Ask R. Tallis, 555 0142" in dump(app)
    assert (label_of(shop, number).owner, label_of(shop, number).state) == (LabelOwner.CUSTOMER, LabelState.TO_BUY)


async def test_a_label_that_is_good_needs_no_way_out(shop: Shop) -> None:
    """Nothing is offered, and its keys change nothing; too heavy a parcel is named on the list all the same."""
    number = labelled(shop)
    before = label_of(shop, number)
    app = labels_host(shop)

    async with app.run_test(size=LARGE) as pilot:
        await pilot.press("a", "s")
        await pilot.pause()
        assert "This label needs no other way" in dump(app)
        assert "1 ABOVE THE LIMIT" in dump(app)
        assert "ABOVE THE LABEL'S LIMIT" in dump(app)
    assert label_of(shop, number) == before
