"""Every screen in each state of a shop: empty, one box, many, and names made to break it; one after the other."""

from collections import deque
from collections.abc import AsyncIterator, Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from datetime import timedelta
from functools import cache
from operator import itemgetter
from pathlib import Path

from textual.pilot import Pilot

from queueboard.board.base import ShopScreen
from queueboard.board.desk import Desk
from queueboard.board.screens.market import MarketScreen
from queueboard.shop import numbers
from queueboard.shop.looking import last_line
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import note_box, note_knife
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.values.new import NewBox, NewPromise
from queueboard.words import CameBy, Column, GoesBy, PromiseKind
from tests import lending
from tests.board.all_screens import SCREENS, Make
from tests.board.answering import COUNTER
from tests.board.host import AnyScreen, Home, Host
from tests.quick_screens import dealt_with
from tests.shop.place import NOW, another, box, by, chef, counter, parcel, small_shop, started, two_boxes
from tests.shop.undo_market import MARKET_ON

OfAShop = tuple[Callable[[Path], Shop], type[AnyScreen], Make]
"""A screen and how it is made, behind how its shop is."""

SIGNS = "[red]x[/] [/] [@click=app.quit]x[/] \x1b[31mred\x1b[0m\x1b]0;title\x07 \u05d0\u05d1 \u202eleft\u202c"
"""Markup of two kinds, sequences that command a terminal, and letters from right to left."""
SURNAMES = (
    *("Abel", "Brant", "Corso", "Dunn", "Elver", "Fenn", "Gault", "Hask", "Ilva", "Jory", "Kemp", "Lund"),
    *("Marl", "Nock", "Orme", "Pell", "Quist", "Rudd", "Sorn", "Thale", "Ulm", "Vane", "Wick", "Yarl"),
)
EMPTY = (
    *("AnnounceScreen", "BenchScreen", "BoxesScreen", "DayScreen", "EveningScreen", "FindScreen"),
    *("FoundScreen", "HelpScreen", "InitialsScreen", "LabelsScreen", "LateScreen", "LooseScreen"),
    *("MarketScreen", "MonthScreen", "NumbersScreen", "OwingScreen", "ReceiveScreen", "SaidScreen"),
    *("SectionScreen", "ShelfScreen", "SwapsScreen", "TypeBackScreen", "UndoScreen", "WalkInScreen"),
    *("WallScreen", "WeekScreen", "DefineSetDialog", "NoteFoundDialog", "OrdersDialog", "TakeInDialog"),
    *("TrialDialog", "NumberDialog", "TakeOutDialog"),
)
"""What can be opened in a shop with nothing in it."""


def _market(desk: Desk) -> MarketScreen:
    numbers.take_settings(desk.shop, by(), MARKET_ON)
    desk.look()
    return MarketScreen(desk)


def empty_screens() -> Mapping[type[AnyScreen], Make]:
    """The screens of an empty shop; those that the other states open over something are opened over nothing."""
    kinds = {kind.__name__: kind for kind in SCREENS}
    nothing: dict[str, Make] = {"MarketScreen": _market}
    nothing.update((name, kinds[name]) for name in ("ShelfScreen", "SwapsScreen"))
    return {kinds[name]: nothing.get(name, SCREENS[kinds[name]]) for name in EMPTY}


def _one(shop: Shop) -> None:
    """One box with one knife."""
    counter(shop, knives=1)


def _one_each(shop: Shop) -> None:
    """For screens that are opened over a certain box: one of either kind; of the second a knife may be left out."""
    parcel(shop, knives=1)
    counter(shop, knives=2)


def _many(shop: Shop) -> None:
    """A busy shop: long boxes, names with several, all columns, dates gone by and to come."""
    parcel(shop, knives=13, things=("roll", "two sheaths"))
    counter(shop, knives=9)
    for place, name in enumerate(SURNAMES):
        customer = add_customer(shop, by(), name=name, phone=f"555 02{place:02}", town="Dunmere")
        by_mail, count = place % 3 == 0, 1 + place * 5 % 7
        told = NewPromise(kind=PromiseKind.DAY, day=(NOW + timedelta(days=place % 11 - 2)).date(), told_to=name)
        new = NewBox(
            customer_id=customer,
            came_by=CameBy.MAIL if by_mail else CameBy.COUNTER,
            goes_by=GoesBy.PARCEL if by_mail else GoesBy.PICK_UP,
            counted=count,
            knives=tuple(chef(mark=f"nick {i}", length_mm=150 + 10 * i) for i in range(count)),
            carrier_days=2 if by_mail else 0,
            promise=told if place % 5 else None,
        )
        made = box(shop, receive_box(shop, by(), new))
        on = (Column.RECEIVED, Column.ON_BENCH, Column.TESTING, Column.READY)[place % 4]
        if on is not Column.RECEIVED:
            move_knives(shop, by(), made.knives[: 1 + place % 3], on)


def _hostile(shop: Shop) -> None:
    """Two boxes that carry the text wherever a person can write."""
    hostile_boxes(shop, SIGNS)


def hostile_boxes(shop: Shop, text: str) -> None:
    """A parcel and a counter box of which every text is this one."""
    parcel(shop, name=text, things=(text[:40],))
    counter(shop, name=text)
    note_box(shop, by(), box(shop, COUNTER).box, text)
    note_knife(shop, by(), box(shop, COUNTER).knives[0], text)


STATES: Mapping[str, Callable[[Shop], None]] = {
    "empty": lambda _: None,
    "one": _one,
    "one each": _one_each,
    "many": _many,
    "hostile": _hostile,
}
WALKED = ("empty", "one", "many", "hostile")
"""The states that all screens are walked through in; those opened over a certain box find one of each for one."""


def screens_in(state: str) -> Iterator[tuple[str, type[AnyScreen], Make]]:
    """The screens of a state, each with the state of its own shop and how it is made."""
    nothing = empty_screens()
    for kind, make in (nothing if state == "empty" else SCREENS).items():
        over_a_box = state == "one" and nothing.get(kind) is not make
        yield "one each" if over_a_box else state, kind, make


@cache
def _in_state(state: str) -> Callable[[Path], Shop]:
    """How a shop in this state is made; it is made once for all screens."""

    def made(path: Path) -> Shop:
        shop = another(started, path)
        STATES[state](shop)
        return shop

    made.__name__ = f"in the state {state}"
    return made


@contextmanager
def desk_of(make: Callable[[Path], Shop], path: Path) -> Iterator[Desk]:
    """A desk over a shop of its own: some screens do something to their shop before they open."""
    shop = another(make, path)
    yield Desk(shop, "MB", lambda: NOW)
    close_shop(shop)
    lending.finished(path)


def _at_desks(folder: Path, screens: Iterable[OfAShop]) -> Iterator[tuple[type[AnyScreen], Make, Desk]]:
    """Every screen, what makes it, and a desk over its shop; a desk at which nothing was done is the next one's too."""
    waiting = deque(screens)
    while waiting:
        made, first, _ = waiting[0]
        with desk_of(made, folder / f"{first.__name__}.qb") as desk:
            untouched = _all_of(desk)
            while waiting and waiting[0][0] is made and _all_of(desk) == untouched:
                _, kind, make = waiting.popleft()
                yield kind, make, desk


def _all_of(desk: Desk) -> tuple[object, ...]:
    """What a screen could have changed: the shop, what the desk holds, and what is kept in files."""
    files = {path: path.stat().st_mtime_ns for path in desk.shop.path.parent.rglob("*")}
    return last_line(desk.shop), {**vars(desk)}, files


async def walk(state: str, folder: Path, pilot: Pilot[int]) -> AsyncIterator[AnyScreen]:
    """Open one screen after the other over the app's own, each with a shop in this state."""
    in_order = sorted(screens_in(state), key=itemgetter(0))
    for _, make, desk in _at_desks(folder, ((_in_state(of), kind, make) for of, kind, make in in_order)):
        yield await opened(make(desk), pilot)
        await pilot.app.pop_screen()


async def screens_over(made: Callable[[Path], Shop], folder: Path, pilot: Pilot[int]) -> AsyncIterator[AnyScreen]:
    """The same, each with a shop that is made so and has the two boxes."""
    for _, make, desk in _at_desks(folder, ((made, kind, make) for kind, make in SCREENS.items())):
        yield await opened(make(desk), pilot)
        await pilot.app.pop_screen()


async def desks(
    folder: Path, pilot: Pilot[int], screens: Mapping[type[AnyScreen], Make] = SCREENS
) -> AsyncIterator[tuple[type[AnyScreen], Make, Desk]]:
    """Every screen with what makes it, each time with the app and its home at a desk over the two boxes and no more.

    What was opened is closed before the next, so a test of all screens costs one app and not one for each of them.
    """
    app = pilot.app
    assert isinstance(app, Host)
    home = app.screen
    for kind, make, desk in _at_desks(folder, ((two_boxes, kind, make) for kind, make in screens.items())):
        app.desk = desk
        for screen in app.screen_stack:
            assert isinstance(screen, ShopScreen)
            screen.desk = desk
        yield kind, make, desk
        while app.screen is not home:
            await app.pop_screen()
        await dealt_with()


async def opened(screen: AnyScreen, pilot: Pilot[int]) -> AnyScreen:
    """The screen, once it stands over the app's own."""
    await pilot.app.push_screen(screen)
    await pilot.pause()
    return screen


class _WithItsShop(Host):
    """An app that closes the shop it began with when it ends, whatever it was led to since."""

    began_with: Shop

    def on_unmount(self) -> None:
        close_shop(self.began_with)


def over_home(folder: Path, *, plain: bool = False) -> Host:
    """An app to open screens in, over an empty one; plain: without colours."""
    desk = Desk(small_shop(folder), "MB", lambda: NOW)
    app = _WithItsShop(desk, lambda: Home(desk), plain=plain)
    app.began_with = desk.shop
    return app
