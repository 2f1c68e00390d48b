"""A shop file made today, for programs that look at the machine's own clock."""

from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from queueboard.seedfiles import seed_text
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.opening import close_shop, start_shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox, NewKnife, NewLabel, NewPromise
from queueboard.words import CameBy, Column, Edge, GoesBy, LabelOwner, LabelState, PromiseKind
from tests.terminal.pty import Terminal

Start = Callable[[Path], Terminal]


@pytest.fixture
def shop_file(tmp_path: Path) -> Path:
    """Box 417 of Maren Tallis, three ready knives, a roll and a sheath, by parcel; box 418 of Ola Hale, two to do."""
    now = datetime.now(UTC)
    actor = Actor(initials="MB", now=now)
    path = tmp_path / "shop" / "shop.qb"
    shop = start_shop(path, actor, seed_text("settings.toml"))
    soon = now.date() + timedelta(days=10)
    knife = NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200)

    def by_hand() -> Actor:
        return Actor(initials="MB", now=now)

    tallis = add_customer(shop, by_hand(), name="Maren Tallis", phone="0555 014 417", town="Osterby")
    receive_box(
        shop,
        by_hand(),
        NewBox(
            customer_id=tallis,
            came_by=CameBy.MAIL,
            goes_by=GoesBy.PARCEL,
            counted=3,
            knives=(knife, knife, knife),
            things=("roll", "sheath"),
            number=417,
            carrier_days=2,
            promise=NewPromise(kind=PromiseKind.DAY, day=soon),
            label=NewLabel(owner=LabelOwner.CUSTOMER, state=LabelState.HERE, expires_on=soon, name_on="Maren Tallis"),
        ),
    )
    hale = add_customer(shop, by_hand(), name="Ola Hale")
    receive_box(
        shop,
        by_hand(),
        NewBox(
            customer_id=hale,
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=2,
            knives=(knife, knife),
            number=418,
            promise=NewPromise(kind=PromiseKind.DAY, day=soon),
        ),
    )
    box = look(shop, now).box(417)
    assert box is not None
    move_knives(shop, by_hand(), box.knives, Column.READY)
    close_shop(shop)
    return path


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
