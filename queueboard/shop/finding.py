"""Finding a box by surname, first name, tag, town or the last figures of the phone; open ones, and those gone."""

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from types import MappingProxyType

from queueboard.clean import folded
from queueboard.money.bill import Bill, totals
from queueboard.records.charges import charges_of_boxes
from queueboard.records.database import ShopDatabase
from queueboard.records.erasing import erased_customers
from queueboard.records.reading import boxes_of, by_box, customers_among, knives_of, labels_of, payments_of
from queueboard.records.shelf import GoneBox, gone_boxes, how_they_left
from queueboard.shop import rows
from queueboard.shop.known_customers import KnownCustomers, Whose, known_customers
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.shelf import GoneSeen
from queueboard.words import GoesBy, Settling

MOST_GONE = 12
"""So many boxes that are gone are shown, the newest."""
MOST_STANDING, MOST_ASKED = 300, 100
"""Up to so often the rarest word may stand in names and phones, and so many customers may fit, for their boxes to be
asked for; else boxes are looked through, for then it is not far to the next that fits."""
FIRST_PAGE = 16
"""Boxes that are looked through first; then four times as many."""
NOTHING_READ: Mapping[int, GoneSeen] = MappingProxyType({})
_NUMBER = re.compile("[1-9][0-9]{0,8}", re.ASCII)


def find(picture: Picture, text: str) -> tuple[BoxPicture, ...]:
    """The open boxes that fit what was typed, accents and case aside; the same surnames stand side by side.

    Each word must fit, in any order: figures a box number or the end of a phone, a tag its box, other words name and
    town. A phone may be typed with its blanks.
    """
    wanted = folded(text)
    if not wanted:
        return ()
    return _by_surname(
        box for box in picture.boxes if _are_numbers(Whose.of(box.customer).left_of(wanted), box.box.number)
    )


def find_gone(
    shop: Shop, text: str, limit: int = MOST_GONE, read: Mapping[int, GoneSeen] = NOTHING_READ
) -> tuple[GoneSeen, ...]:
    """The boxes that are gone and fit, the newest first, at most *limit*; erased customers are not found.

    read: boxes that were found before, by their ids, and of which nothing has changed since: letter by letter the same
    are found again.
    """
    wanted = folded(text)
    if not wanted:
        return ()
    with shop.reading() as database:
        known = known_customers(shop, database)
        ids = known.fitting(wanted, MOST_STANDING)
        if ids is None or len(ids) > MOST_ASKED:
            found = _newest(database, known, wanted, limit)
        else:
            found = _of_some(database, known, wanted, ids, limit)
        new = {one.box.id: one for one in _seen(database, [box for box in found if box.id not in read])}
        return tuple(one for box in found if (one := read.get(box.id) or new.get(box.id)) is not None)


def _of_some(
    database: ShopDatabase, known: KnownCustomers, wanted: str, ids: Collection[int], limit: int
) -> list[GoneBox]:
    """The boxes of the customers whom every word fits, and those whose number is one of the words."""
    marks = ", ".join("?" * len(ids)) or "NULL"
    theirs = gone_boxes(database, f"customer_id IN ({marks})", *ids, limit=limit)
    numbers = {int(box) for box, _, _ in (word.partition("-") for word in wanted.split()) if _NUMBER.fullmatch(box)}
    named = (box for number in numbers for box in _newest(database, known, wanted, limit, "number = ?", number))
    found = {box.id: box for box in (*theirs, *named)}
    return sorted(found.values(), key=lambda box: (box.closed_us, box.id), reverse=True)[:limit]


def _newest(
    database: ShopDatabase, known: KnownCustomers, wanted: str, limit: int, where: str = "TRUE", *values: int
) -> list[GoneBox]:
    """The newest boxes that meet a fixed condition and fit: looked through, newest first, until there are enough."""
    found: list[GoneBox] = []
    before, last, page = "", tuple[int, ...](), FIRST_PAGE
    while len(found) < limit:
        boxes = gone_boxes(database, f"{where}{before}", *values, *last, limit=page)
        found += (box for box in boxes if _fits(known, wanted, box))
        if len(boxes) < page:
            break
        before, last, page = " AND (closed_us, id) < (?, ?)", (boxes[-1].closed_us, boxes[-1].id), 4 * page
    return found[:limit]


def _fits(known: KnownCustomers, wanted: str, box: GoneBox) -> bool:
    whose = known.whose.get(box.customer_id)
    return whose is not None and _are_numbers(whose.left_of(wanted), box.number)


def _seen(database: ShopDatabase, found: Sequence[GoneBox]) -> tuple[GoneSeen, ...]:
    """What is shown of boxes that are gone, in their order."""
    if not found:
        return ()
    which, values = ", ".join("?" * len(found)), tuple(box.id for box in found)
    boxes = {box.id: box for box in boxes_of(database, f"id IN ({which})", *values)}
    customers = {one.id: one for one in customers_among(database, {box.customer_id for box in found})}
    knives = by_box(knives_of(database, f"k.box_id IN ({which})", *values), lambda knife: knife.box_id)
    charges = by_box(charges_of_boxes(database, which, *values), lambda charge: charge.box_id)
    payments = by_box(payments_of(database, f"box_id IN ({which})", *values), lambda payment: payment.box_id)
    labels = {label.box_id: label for label in labels_of(database, f"box_id IN ({which})", *values)}
    left = how_they_left(database, which, *values)
    zone = settings_in(database).zone

    def seen(box: Box, customer: Customer) -> GoneSeen:
        by_parcel = box.goes_by is GoesBy.PARCEL
        whom, settled = left.get(box.id, ("", None))
        bill = Bill(
            knives=knives.get(box.id, ()),
            charges=charges.get(box.id, ()),
            payments=payments.get(box.id, ()),
            rounding=box.rounding,
        )
        return GoneSeen(
            box=box,
            customer=customer,
            knives=bill.knives,
            left_at=(box.closed_at or box.received_at).astimezone(zone),
            handed_to="" if by_parcel else whom,
            carrier=labels[box.id].carrier if box.id in labels and by_parcel else "",
            settled=None if settled is None else Settling(settled),
            owed_cents=totals(bill).owed_cents,
        )

    return tuple(seen(boxes[one.id], customers[one.customer_id]) for one in found if one.customer_id in customers)


def gone_box(shop: Shop, box_id: int) -> GoneSeen | None:
    """One box that is gone; None while it is open, or when its customer was erased."""
    with shop.reading() as database:
        rows.box_now(database, box_id)
        return _one(database, gone_boxes(database, "id = ?", box_id, limit=1))


def _one(database: ShopDatabase, found: Sequence[GoneBox]) -> GoneSeen | None:
    erased = erased_customers(database)
    return next(iter(_seen(database, [box for box in found if box.customer_id not in erased])), None)


def newest_gone(shop: Shop, number: int) -> GoneSeen | None:
    """The box with this number that has left last; None when none has."""
    with shop.reading() as database:
        return _one(database, gone_boxes(database, "number = ?", number, limit=1))


def gone_of_customer(shop: Shop, customer_id: int) -> tuple[GoneSeen, ...]:
    """The boxes of one customer that are gone, the newest first."""
    with shop.reading() as database:
        return _seen(database, gone_boxes(database, "customer_id = ?", customer_id, limit=MOST_GONE))


def surname(name: str) -> str:
    """The surname in a name as it is compared: what stands before a comma, else the last word."""
    before, comma, _ = folded(name).partition(",")
    words = before.split()
    return before.strip() if comma else (words[-1] if words else "")


def _by_surname(boxes: Iterable[BoxPicture]) -> tuple[BoxPicture, ...]:
    """The boxes in their order, but for those of a surname seen before, which stand behind it."""
    groups: dict[str, list[BoxPicture]] = {}
    for box in boxes:
        groups.setdefault(surname(box.customer.name), []).append(box)
    return tuple(box for group in groups.values() for box in group)


def _are_numbers(words: tuple[str, ...], number: int) -> bool:
    """True where each word is the number of a box, or a tag of it; for no words too."""
    for word in words:
        box, _, knife = word.partition("-")
        if box != str(number) or (knife and not knife.isdigit()):
            return False
    return True
