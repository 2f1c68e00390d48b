"""Boxes that are hard on paper: thirteen knives with all that can be said of them, a hostile name, a busy day."""

from queueboard.shop.gauging import read_spot
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import decline_knife
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer, receive_box
from queueboard.values.new import NewBox, NewKnife, NewPromise
from queueboard.words import CameBy, Column, Condition, DeclineReason, Edge, GoesBy, PromiseKind, Stage
from tests.shop.place import NOW, box, by

HOSTILE = "<script>alert(1)</script> & \"q\" 'q' {{ 7*7 }} [red]x[/] 🔪 שלום " + "N" * 200
PHONE, ADDRESS = "0555 014 417", "9 Quay Lane, Osterby"


def made(shop: Shop, knives: tuple[NewKnife, ...], *, name: str, things: tuple[str, ...] = ()) -> int:
    """The number of a new parcel, promised for tomorrow; its customer has a phone and an address."""
    customer = add_customer(shop, by(), name=name, phone=PHONE, address=ADDRESS, town="Osterby")
    new = NewBox(
        customer_id=customer,
        came_by=CameBy.MAIL,
        goes_by=GoesBy.PARCEL,
        counted=len(knives),
        knives=knives,
        things=things,
        promise=NewPromise(kind=PromiseKind.SHIPS_BY, day=NOW.date()),
    )
    return receive_box(shop, by(), new)


def thirteen(shop: Shop) -> int:
    """The number of a box of thirteen, most of them read before and after and ready, one declined, one not begun."""
    kinds = ("chef", "chef", "paring", "utility", "bread", "boning", "chef", "paring", "slicer", "chef", "chef")
    knives = tuple(
        NewKnife(
            kind=kind,
            edge=Edge.SERRATED if kind == "bread" else Edge.PLAIN,
            length_mm=200,
            condition=Condition.DULL,
            mark=f"handle {place}",
            wish="keep the patina" if place == 3 else "",
            price_cents=900,
        )
        for place, kind in enumerate((*kinds, "steak", "chef"), 1)
    )
    number = made(shop, knives, name="Maren Tallis", things=("knife roll", "towel"))
    for knife in box(shop, number).knives[:4]:
        read(shop, number, knife.number, Stage.BEFORE, (1180, 940, 1320))
    move_knives(shop, by(minutes=3), box(shop, number).knives[:12], Column.ON_BENCH)
    move_knives(shop, by(minutes=4), box(shop, number).knives[:12], Column.TESTING)
    for knife in box(shop, number).knives[:4]:
        read(shop, number, knife.number, Stage.AFTER, (165, 150, 180))
    decline_knife(shop, by(minutes=6), box(shop, number).knives[8], DeclineReason.CRACKED)
    going = tuple(k for k in box(shop, number).knives[:12] if k.declined is None and k.gauge is None)
    move_knives(shop, by(minutes=7), going, Column.READY)
    return number


def read(shop: Shop, number: int, knife: int, stage: Stage, forces: tuple[int, int, int]) -> None:
    """Read heel, middle and tip of a knife."""
    for spot, force in zip(("heel", "middle", "tip"), forces, strict=True):
        read_spot(shop, by(minutes=5), box(shop, number).knives[knife - 1], spot, force, stage=stage)


def hostile_box(shop: Shop) -> int:
    """The number of a box with a name, marks, wishes and things that are hostile to a page."""
    knives = tuple(
        NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200, mark=HOSTILE[:190], wish=HOSTILE[:190], price_cents=900)
        for _ in range(3)
    )
    return made(shop, knives, name=HOSTILE[:290], things=(HOSTILE[:60],))


def busy_shop(shop: Shop) -> None:
    """Twenty boxes more that are due today: more than one bench does in a day."""
    for place in range(20):
        knives = tuple(NewKnife(kind="paring", edge=Edge.PLAIN, length_mm=90, price_cents=500) for _ in range(3))
        made(shop, knives, name=f"Customer {place}")
