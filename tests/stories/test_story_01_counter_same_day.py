"""Story 1: four knives over the counter, one chipped, done and paid the same day. Names and numbers are invented."""

from datetime import date, time

from queueboard.board.desk import Desk
from queueboard.board.screens.board import BoardScreen
from queueboard.board.screens.summary import SummaryScreen
from queueboard.intake.lines import read_line
from queueboard.papers.day_sheet import day_sheet
from queueboard.papers.proof_card import card_text
from queueboard.papers.slips import stub
from queueboard.phrases.phone import phone_sentence
from queueboard.priced_words import ChargeSort
from queueboard.shop import moving
from queueboard.shop.gauging import mark_spots, read_spot, usual_spots
from queueboard.shop.looking import look
from queueboard.shop.money import take_payment
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.proof import card_of
from queueboard.shop.receiving import customers, receive_box
from queueboard.shop.testing import judge_edge
from queueboard.values.knife import Knife
from queueboard.values.new import NewBox, NewCustomer, NewKnife, NewPromise
from queueboard.words import CameBy, Column, Condition, Edge, GoesBy, PromiseKind, Stage
from tests.board.dump import dump
from tests.board.host import SMALL, Host
from tests.shop.place import by, cash

TUESDAY_0920 = 24 * 60 + 20
"""Minutes after the Monday morning on which the tests' shop opens: Tue 10 Nov, 09:20."""
CHEF = NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200)
CHIPPED = NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200, condition=Condition.BIG_CHIPS, chips=1, chip_um=2000)
PARING = NewKnife(kind="paring", edge=Edge.PLAIN)
BREAD = NewKnife(kind="bread", edge=Edge.SERRATED)
BEFORE = {"heel": 1180, "middle": 940, "tip": 1320}
AFTER = {"heel": 165, "middle": 150, "tip": 180}


def received(shop: Shop) -> int:
    """Ms Verrin's box 214, promised for 16:00."""
    new = NewBox(
        new_customer=NewCustomer(name="Ms Verrin", town="Port Ansel"),
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=4,
        knives=(CHIPPED, CHEF, PARING, BREAD),
        number=214,
        promise=NewPromise(kind=PromiseKind.BY_TIME, day=date(2026, 11, 10), at=time(16)),
    )
    return receive_box(shop, by(minutes=TUESDAY_0920), new)


def seen(shop: Shop, minutes: int = TUESDAY_0920) -> Picture:
    """The shop so many minutes after Monday morning."""
    return look(shop, by(minutes=minutes).now)


def box(shop: Shop) -> BoxPicture:
    """Box 214 as it stands."""
    found = seen(shop).box(214)
    assert found is not None
    return found


def knives(shop: Shop) -> tuple[Knife, ...]:
    """The knives of box 214 as they stand."""
    return box(shop).knives


def worked(shop: Shop) -> None:
    """All four knives worked and tested; the chipped one read before and after."""
    first = knives(shop)[0]
    mark_spots(shop, by(minutes=TUESDAY_0920 + 5), first, usual_spots(first))
    for spot, force in BEFORE.items():
        read_spot(shop, by(minutes=TUESDAY_0920 + 6), knives(shop)[0], spot, force, Stage.BEFORE)
    moving.move_knives(shop, by(minutes=TUESDAY_0920 + 10), knives(shop), Column.ON_BENCH)
    moving.move_knives(shop, by(minutes=TUESDAY_0920 + 45), knives(shop), Column.TESTING)
    for spot, force in AFTER.items():
        read_spot(shop, by(minutes=TUESDAY_0920 + 50), knives(shop)[0], spot, force)
    judge_edge(shop, by(minutes=TUESDAY_0920 + 51), knives(shop)[0], ok=True)
    moving.move_knives(shop, by(minutes=TUESDAY_0920 + 52), knives(shop)[1:], Column.READY)


def test_it_is_priced_and_promised(shop: Shop) -> None:
    """Knives 9 + 9 + 5 + 12 are 35.00, the chip 2 x 3 is 6.00, together 41.00; minutes 6 + 15 + 4 + 6 are 31."""
    assert received(shop) == 214

    made = box(shop)

    assert [knife.price_cents for knife in made.knives] == [900, 900, 500, 1200]
    assert [(one.sort, one.cents, one.knife_id) for one in made.charges] == [(ChargeSort.CHIPS, 600, made.knives[0].id)]
    assert (made.totals.knives_cents, made.totals.add_ons_cents, made.owed_cents) == (3500, 600, 4100)
    settings = seen(shop).settings
    lines = [read_line(line, settings) for line in ("1 chef 20cm dull", "1 chef 20cm big chips", "paring", "bread")]
    assert [line.minutes for line in lines] == [6, 15, 4, 6]
    assert "Tue 10 Nov" in stub(made, seen(shop))
    assert "16:00" in stub(made, seen(shop))


def test_every_paper_and_sentence_says_the_same_sum(shop: Shop) -> None:
    """Stub and phone say 41.00, and today's sheet shows 214 by 16:00."""
    received(shop)

    assert "knives 35.00, add-ons 6.00 = 41.00 USD" in " ".join(stub(box(shop), seen(shop)).split())
    assert "41.00 USD to pay" in phone_sentence(box(shop), seen(shop))
    sheet = day_sheet(seen(shop))
    assert "214" in sheet
    assert "16:00" in sheet


def test_the_card_shows_before_and_after(shop: Shop) -> None:
    """The chipped knife read 1180, 940 and 1320 before, 165, 150 and 180 after; the proof card says so."""
    received(shop)
    worked(shop)

    card = card_of(shop, 214)
    assert card is not None
    text = card_text(card)

    assert all(str(force) in text for force in (*BEFORE.values(), *AFTER.values()))


async def test_it_leaves_in_under_six_keys(shop: Shop) -> None:
    """Paid 41.00 in cash; after 214 and / five keys close it: four in, four out."""
    received(shop)
    worked(shop)
    take_payment(shop, by(minutes=TUESDAY_0920 + 60), box(shop).box, cash(4100))
    desk = Desk(shop, "MB", lambda: by(minutes=TUESDAY_0920 + 61).now)
    app = Host(desk, lambda: BoardScreen(desk))
    async with app.run_test(size=SMALL) as pilot:
        await pilot.press("2", "1", "4", "slash")
        await pilot.press("4", "enter", "plus", "enter", "enter")
        await pilot.pause()
        assert isinstance(app.screen, SummaryScreen), dump(app)
        said = dump(app)

    assert "41.00 USD" in said
    assert "4 knives (four)" in said
    assert seen(shop).box(214) is None
    assert [customer.name for customer in customers(shop)] == ["Ms Verrin"]
