"""A shop file made today, for programs that look at the machine's own clock."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from queueboard.seedfiles import seed_text
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.starting import start_shop
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox, NewKnife, NewLabel, NewPromise
from queueboard.words import CameBy, Column, Edge, GoesBy, LabelOwner, LabelState, PromiseKind
from tests.shop.place import another, own_path
from tests.terminal.pty import Terminal

Start = Callable[[Path], Terminal]


KNIFE = NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200)


def two_boxes(soon: date) -> Iterator[tuple[str, NewBox]]:
    """Box 417 by parcel with a roll and a sheath, box 418 to be picked up; their customers' names before them."""
    promise = NewPromise(kind=PromiseKind.DAY, day=soon)
    yield (
        "Maren Tallis",
        NewBox(
            customer_id=0,
            came_by=CameBy.MAIL,
            goes_by=GoesBy.PARCEL,
            counted=3,
            knives=(KNIFE, KNIFE, KNIFE),
            things=("roll", "sheath"),
            number=417,
            carrier_days=2,
            promise=promise,
            label=NewLabel(owner=LabelOwner.CUSTOMER, state=LabelState.HERE, expires_on=soon, name_on="Maren Tallis"),
        ),
    )
    yield (
        "Ola Hale",
        NewBox(
            customer_id=0,
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=2,
            knives=(KNIFE, KNIFE),
            number=418,
            promise=promise,
        ),
    )


@pytest.fixture
def shop_file(tmp_path: Path) -> Path:
    """A shop with two boxes; the knives of the parcel are ready."""
    shop = another(_ready, own_path(tmp_path))
    close_shop(shop)
    return shop.path


def _ready(path: Path) -> Shop:
    now = datetime.now(UTC)

    def by_hand() -> Actor:
        return Actor(initials="MB", now=now)

    shop = start_shop(path, by_hand(), seed_text("settings.toml"))
    for name, box in two_boxes(now.date() + timedelta(days=10)):
        customer = add_customer(shop, by_hand(), name=name)
        receive_box(shop, by_hand(), replace(box, customer_id=customer))
    parcel = look(shop, now).box(417)
    assert parcel is not None
    move_knives(shop, by_hand(), parcel.knives, Column.READY)
    return shop


@pytest.fixture
def start() -> Iterator[Start]:
    """Starts programs, and ends those that a failed test has left."""
    begun: list[Terminal] = []

    def begin(path: Path) -> Terminal:
        begun.append(Terminal(path))
        return begun[-1]

    yield begin
    for terminal in begun:
        if terminal.process.isalive():
            terminal.kill()
        terminal.process.close(force=True)
