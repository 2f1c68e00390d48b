"""A small shop in a folder of its own, and the ways tests look into it."""

import os
import resource
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, date, datetime, time, timedelta
from functools import cache
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from zoneinfo import ZoneInfo

from queueboard.records.line_file import write_lines
from queueboard.records.tables import STATE
from queueboard.seedfiles import seed_text
from queueboard.shop.demo import MORNING_ZONES, make_demo_shop
from queueboard.shop.looking import at_first_sight, look
from queueboard.shop.opening import Shop, address_in, close_shop, open_shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.shop.starting import start_shop
from queueboard.values.actor import Actor
from queueboard.values.new import NewBox, NewKnife, NewLabel, NewPayment, NewPromise
from queueboard.words import CameBy, Edge, GoesBy, LabelOwner, LabelState, PayWay, PromiseKind
from tests import engines, lending

NOW = datetime(2026, 11, 9, 14, 0, tzinfo=UTC)
"""A Monday morning in the shop."""

MORNING = datetime(2026, 11, 25, 13, 30, tzinfo=UTC)
"""A Wednesday at half past eight in the invented shop, where no other day is wanted: each is made anew, in a second."""

Table = list[dict[str, object]]


def by(initials: str = "J", *, minutes: float = 0) -> Actor:
    """Somebody who acts so many minutes after NOW."""
    return Actor(initials=initials, now=NOW + timedelta(minutes=minutes))


@cache
def _content(make: Callable[[Path], Shop]) -> bytes:
    """A shop file made once for all tests of a process: reading the settings alone takes most of a small one's time."""
    with TemporaryDirectory() as folder:
        shop = make(Path(folder) / "a file on any engine")
        close_shop(shop)
        return shop.path.read_bytes()


@cache
def _demo_content(now: datetime) -> bytes:
    """The invented shop's file, whose thousand operations take a second, made once for all processes of a run."""
    kept = engines.shared() / f"demo {now.timestamp():.0f}.qb"
    with suppress(FileNotFoundError):
        return kept.read_bytes()
    content, fresh = _content(_demo_at(now)), kept.with_suffix(f".{os.getpid()}")
    with suppress(FileNotFoundError):  # the first process that ends takes the folder along
        fresh.write_bytes(content)
        fresh.replace(kept)  # another process that made it meanwhile made the same shop
    return content


def another(make: Callable[[Path], Shop], path: Path) -> Shop:
    """A shop at *path*, opened, that is as *make* makes it: made once in a process, and copied."""
    if engines.on_server():
        lending.copy_of(make, path)
        return open_shop(path)
    return shop_of(_content(make), path)


def started(path: Path) -> Shop:
    """A shop with the starter settings and nothing in it."""
    return start_shop(path, by(), seed_text("settings.toml"))


def small_shop(folder: Path) -> Shop:
    """A shop with the starter settings and nothing in it."""
    return another(started, own_path(folder))


def two_boxes(path: Path) -> Shop:
    """As two_boxes_shop, made anew."""
    shop = another(started, path)
    parcel(shop)
    counter(shop)
    return shop


def two_boxes_shop(folder: Path) -> Shop:
    """A shop with a parcel from R. Tallis (100, three knives) and a counter box from Ms Verrin (101, two knives)."""
    return another(two_boxes, own_path(folder))


def own_path(folder: Path) -> Path:
    """Where a shop lies in a folder: in one of its own, that nobody else may look into."""
    path = folder / "shop" / "test.qb"
    path.parent.mkdir(mode=0o700, parents=True)
    return path


@cache
def _demo_at(now: datetime) -> Callable[[Path], Shop]:
    """How the invented shop is made; on a server, too, it is made in a file and brought there."""

    def demo(path: Path) -> Shop:
        address = address_in(path)
        if address is None:
            return make_demo_shop(path, now)
        from queueboard.shop.on_server import new_on_server

        with new_on_server(path, address) as made:
            made.write_bytes(_demo_content(now))
        return open_shop(path)

    demo.__name__ = f"demo at {now}"
    return demo


def demo_shop(path: Path, now: datetime) -> Shop:
    """The invented shop as it stands at now, in a file of the test's own."""
    return another(_demo_at(now), path) if engines.on_server() else shop_of(_demo_content(now), path)


def half_past_eight(day: date) -> datetime:
    """In the invented shop's home; whoever looks at it on one of test_demo's days need not have it made anew."""
    return datetime.combine(day, time(8, 30), tzinfo=ZoneInfo(MORNING_ZONES[0]))


def shop_of(content: bytes, path: Path) -> Shop:
    """A shop file with this content, opened; a test does not wait for the disk."""
    path.write_bytes(content)
    path.chmod(0o600)
    shop = open_shop(path)
    shop.database.rows("PRAGMA synchronous = OFF")
    return shop


def everything(shop: Shop) -> bytes:
    """Every byte of a shop file; of a shop on a server all that is written out of it, the freed corners left out."""
    if not shop.on_server:
        return shop.path.read_bytes()
    out = BytesIO()
    with shop.reading() as database:
        write_lines(database.raw(), out)
    return out.getvalue()


def of_file(shop: Shop) -> sqlite3.Connection:
    """The plain connection to a shop that is a file."""
    raw = shop.database.raw()
    assert isinstance(raw, sqlite3.Connection)
    return raw


@contextmanager
def small_disk() -> Iterator[None]:
    """No file may grow past two pages, as on a disk that is full."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (8192, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def chef(*, mark: str = "", length_mm: int | None = 200) -> NewKnife:
    """A dull chef's knife."""
    return NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=length_mm, mark=mark)


def cash(cents: int, *, paid_before: int = 0) -> NewPayment:
    """So much money in cash."""
    return NewPayment(cents=cents, way=PayWay.CASH, paid_before_cents=paid_before)


def parcel(shop: Shop, *, knives: int = 3, name: str = "R. Tallis", things: tuple[str, ...] = ()) -> BoxPicture:
    """A mailed box with a prepaid label, promised for Friday."""
    customer = add_customer(shop, by(), name=name, phone="555 0142", town="Dunmere")
    number = receive_box(
        shop,
        by(),
        NewBox(
            customer_id=customer,
            came_by=CameBy.MAIL,
            goes_by=GoesBy.PARCEL,
            counted=knives,
            knives=tuple(chef(mark=f"nick {i}") for i in range(knives)),
            things=things,
            carrier_days=2,
            promise=NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 13), told_to=name),
            label=NewLabel(
                owner=LabelOwner.CUSTOMER, state=LabelState.HERE, expires_on=date(2026, 11, 20), name_on=name
            ),
        ),
    )
    return box(shop, number)


def counter(shop: Shop, *, knives: int = 2, name: str = "Ms Verrin", things: tuple[str, ...] = ()) -> BoxPicture:
    """A box over the counter, to be picked up on Tuesday."""
    customer = add_customer(shop, by(), name=name, phone="555 0199", town="Port Ansel")
    number = receive_box(
        shop,
        by(),
        NewBox(
            customer_id=customer,
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=knives,
            knives=tuple(chef() for _ in range(knives)),
            things=things,
            promise=NewPromise(kind=PromiseKind.DAY, day=date(2026, 11, 10), told_to=name),
        ),
    )
    return box(shop, number)


def picture(shop: Shop, *, minutes: int = 0) -> Picture:
    """The shop's picture so many minutes after NOW."""
    return look(shop, NOW + timedelta(minutes=minutes))


def box(shop: Shop, number: int) -> BoxPicture:
    """An open box by its number, with nothing of the plan, which takes most of a look: see planned_box."""
    found = at_first_sight(shop, NOW, 0).box(number)
    assert found is not None, f"box {number} is not on the board"
    return found


def planned_box(shop: Shop, number: int) -> BoxPicture:
    """An open box by its number, with what the plan says: its forecast, its honest day, and when its label is due."""
    found = picture(shop).box(number)
    assert found is not None, f"box {number} is not on the board"
    return found


def state(shop: Shop) -> dict[str, Table]:
    """Every row of state but its version: what undo must bring back."""
    return {name: _rows(shop, name) for name in STATE}


def _rows(shop: Shop, table: str) -> Table:
    found = shop.database.raw().execute(f"SELECT * FROM {table} ORDER BY id")
    names = [column[0] for column in found.description]
    return [{name: cell for name, cell in zip(names, row, strict=True) if name != "row_version"} for row in found]
