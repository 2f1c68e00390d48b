"""Story 7, power cut at close-out: Friday 17:42, box 360, eleven of twelve ticked, the plug pulled. Invented."""

import subprocess
import sys
from collections.abc import Iterator
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from queueboard.papers.day_sheet import day_sheet
from queueboard.shop.looking import look
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import close_shop, open_shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.receiving import receive_box
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox, NewCustomer, NewLabel, NewPromise
from queueboard.words import CameBy, CloseStep, Column, GoesBy, LabelOwner, LabelState, PromiseKind
from tests.shop.place import cash, chef, small_shop, state
from tests.terminal.pty import ROOT, Terminal

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals of this kind are not there")

CUT = datetime.fromisoformat("2026-11-13T17:42:00-05:00")
AGAIN = CUT + timedelta(minutes=18)


def by() -> Actor:
    """MB, a minute before the cut."""
    return Actor(initials="MB", now=CUT - timedelta(minutes=1))


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A shop with box 360: twelve knives ready, a label that is here, 20.00 paid."""
    shop = small_shop(tmp_path)
    box = NewBox(
        new_customer=NewCustomer(name="R. Tallis"),
        came_by=CameBy.MAIL,
        goes_by=GoesBy.PARCEL,
        counted=12,
        knives=tuple(chef(mark=f"nick {place}") for place in range(1, 13)),
        number=360,
        carrier_days=2,
        promise=NewPromise(kind=PromiseKind.SHIPS_BY, day=date(2026, 11, 13)),
        label=NewLabel(owner=LabelOwner.CUSTOMER, state=LabelState.HERE, name_on="R. Tallis"),
    )
    receive_box(shop, Actor(initials="MB", now=CUT - timedelta(days=4)), box)
    here = look(shop, CUT).box(360)
    assert here is not None
    move_knives(shop, by(), here.knives, Column.READY)
    take_payment(shop, by(), here.box, cash(2000))
    close_shop(shop)
    return shop.path


@pytest.fixture
def terminals() -> Iterator[list[Terminal]]:
    """Boards in terminals, ended when the test is over."""
    begun: list[Terminal] = []
    yield begun
    for terminal in begun:
        if terminal.process.isalive():
            terminal.kill()
        terminal.process.close(force=True)


def stored(file: Path) -> tuple[Picture, BoxPicture]:
    """What the shop file holds of 360 after the cut."""
    shop = open_shop(file)
    try:
        picture = look(shop, AGAIN)
    finally:
        close_shop(shop)
    box = picture.box(360)
    assert box is not None
    return picture, box


def test_the_plug_is_pulled_at_eleven_of_twelve(file: Path, terminals: list[Terminal]) -> None:
    """The real board is killed while the twelfth tag is typed; again opened it goes on at eleven, names the twelfth."""
    board = Terminal(file, program=("tests.stories.board_at", str(file), CUT.isoformat()))
    terminals.append(board)
    board.shows("R. Tallis")
    board.type("360/")
    board.shows("Count what lies in front of you")
    board.type("11\r")
    for number in range(1, 12):
        board.type(f"360-{number}\r")
    board.shows("11 knives ticked")
    board.type("360-12")
    board.kill()

    picture, box = stored(file)
    assert box.close_out is not None
    assert len(box.close_out.ticked) == 11
    (unticked,) = [knife for knife in box.knives if knife.id not in box.close_out.ticked]
    assert unticked.tag == "360-12"
    assert picture.saved_at == CUT
    assert [payment.cents for payment in box.payments] == [2000]
    assert box.label is not None
    assert len(box.on_hand) == 12
    (leaves,) = [line for line in day_sheet(picture).splitlines() if "360 by 15:45, 12 of 12 ready" in line]
    assert leaves.endswith("R. Tallis")

    again = Terminal(file, program=("tests.stories.board_at", str(file), AGAIN.isoformat()))
    terminals.append(again)
    again.shows("Saved 17:42:00")
    again.type("360/")
    again.shows("11 knives ticked")
    again.type("\r")
    named = again.settled(lambda text: "360-12 last seen" in text and "360-11 " not in text)
    assert "Gone without, they stay on the board" in " ".join(named.split())
    again.kill()
    _, after = stored(file)
    assert after.close_check is not None
    assert (after.close_check.step, after.close_check.missing) == (CloseStep.MISSING, (unticked.id,))
    assert [payment.cents for payment in after.payments] == [2000]


def test_the_plug_is_pulled_within_a_payment(file: Path) -> None:
    """Killed between writing and finishing, a payment was never made; the same one goes through afterwards, once."""
    shop = open_shop(file)
    before = state(shop)
    close_shop(shop)
    half = subprocess.Popen(
        [sys.executable, "-m", "tests.stories.half_a_payment", str(file), CUT.isoformat(), "360"],
        cwd=ROOT,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    with half:
        assert half.stdout is not None
        assert half.stdout.readline() == "written\n"
        half.kill()

    shop = open_shop(file)
    assert state(shop) == before
    here = look(shop, AGAIN).box(360)
    assert here is not None
    take_payment(shop, Actor(initials="MB", now=AGAIN), here.box, cash(100, paid_before=2000))
    paid = look(shop, AGAIN).box(360)
    assert paid is not None
    assert [payment.cents for payment in paid.payments] == [2000, 100]
    close_shop(shop)
