"""Finding a box by surname, first name, tag, town or the last figures of the phone; open ones, and those gone."""

from collections.abc import Iterable
from datetime import tzinfo
from itertools import islice

from queueboard.clean import figures, folded
from queueboard.money.bill import totals
from queueboard.records.database import ShopDatabase
from queueboard.records.erasing import erased_customers
from queueboard.records.reading import customer_by_id, customers_of
from queueboard.records.shelf import gone_numbers, how_it_left
from queueboard.shop import rows
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.settings_now import settings_in
from queueboard.slotted import dataclass
from queueboard.values.customer import Customer
from queueboard.values.shelf import GoneSeen
from queueboard.words import GoesBy, Settling

MOST_GONE = 12
"""So many boxes that are gone are shown, the newest."""
_PHONE_SIGNS = frozenset("0123456789 +-/().")
FEWEST_FIGURES = 3
"""From so many figures on they may be the end of a phone number."""


def find(picture: Picture, text: str) -> tuple[BoxPicture, ...]:
    """The open boxes that fit what was typed, accents and case aside; the same surnames stand side by side.

    Each word must fit, in any order: figures a box number or the end of a phone, a tag its box, other words name and
    town. A phone may be typed with its blanks.
    """
    wanted = folded(text)
    if not wanted:
        return ()
    return _by_surname(
        box for box in picture.boxes if _are_numbers(_Whose.of(box.customer).left_of(wanted), box.box.number)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class GoneIndex:
    """Whom and what of boxes that are gone is looked through, as it stood when it was read."""

    whose: dict[int, "_Whose"]
    numbers: tuple[tuple[int, int, int], ...]
    """Id, number and customer of each box, the newest gone first."""


def gone_index(shop: Shop) -> GoneIndex:
    """Read once what several searches look through; erased customers are not in it."""
    with shop.reading() as database:
        erased = erased_customers(database)
        whose = {one.id: _Whose.of(one) for one in customers_of(database) if one.id not in erased}
        return GoneIndex(whose=whose, numbers=gone_numbers(database))


def find_gone(shop: Shop, text: str, limit: int = MOST_GONE, index: GoneIndex | None = None) -> tuple[GoneSeen, ...]:
    """The boxes that are gone and fit, the newest first, at most *limit*; erased customers are not found."""
    wanted = folded(text)
    if not wanted:
        return ()
    there = gone_index(shop) if index is None else index
    left = {customer_id: one.left_of(wanted) for customer_id, one in there.whose.items()}
    fitting = (
        (box_id, there.whose[whose].customer)
        for box_id, number, whose in there.numbers
        if whose in left and _are_numbers(left[whose], number)
    )
    with shop.reading() as database:
        zone = settings_in(database).zone
        return tuple(_gone(database, box_id, whose, zone) for box_id, whose in islice(fitting, limit))


def gone_box(shop: Shop, box_id: int) -> GoneSeen | None:
    """One box that is gone; None while it is open, or when its customer was erased."""
    with shop.reading() as database:
        box = rows.box_now(database, box_id)
        if box.closed_at is None or box.customer_id in erased_customers(database):
            return None
        customer = customer_by_id(database, box.customer_id)
        return None if customer is None else _gone(database, box_id, customer, settings_in(database).zone)


def newest_gone(shop: Shop, number: int) -> GoneSeen | None:
    """The box with this number that has left last; None when none has."""
    with shop.reading() as database:
        same = gone_numbers(database, "number = ?", number)
    return gone_box(shop, same[0][0]) if same else None


def gone_of_customer(shop: Shop, customer_id: int) -> tuple[GoneSeen, ...]:
    """The boxes of one customer that are gone, the newest first."""
    with shop.reading() as database:
        customer = customer_by_id(database, customer_id)
        zone = settings_in(database).zone
        theirs = [box_id for box_id, _, _ in gone_numbers(database, "customer_id = ?", customer_id)][:MOST_GONE]
        return () if customer is None else tuple(_gone(database, box_id, customer, zone) for box_id in theirs)


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


def _gone(database: ShopDatabase, box_id: int, customer: Customer, zone: tzinfo) -> GoneSeen:
    box = rows.box_now(database, box_id)
    left = how_it_left(database, box_id)
    label = rows.newest_label(database, box_id)
    by_parcel = box.goes_by is GoesBy.PARCEL
    return GoneSeen(
        box=box,
        customer=customer,
        knives=rows.knives_of_box(database, box_id),
        left_at=(box.closed_at or box.received_at).astimezone(zone),
        handed_to="" if left is None or by_parcel else left[0],
        carrier=label.carrier if label is not None and by_parcel else "",
        settled=None if left is None else Settling(left[1]),
        owed_cents=totals(rows.bill_of(database, box_id)).owed_cents,
    )


@dataclass(frozen=True, slots=True)
class _Whose:
    """A customer as one is looked for."""

    customer: Customer
    known: str
    phone: str

    @classmethod
    def of(cls, customer: Customer) -> "_Whose":
        return cls(customer, folded(f"{customer.name} {customer.town}"), figures(customer.phone))

    def left_of(self, wanted: str) -> tuple[str, ...]:
        """The words that fit neither name, town nor phone: only the number of a box can be meant by them."""
        if " " in wanted and _PHONE_SIGNS.issuperset(wanted):
            typed = figures(wanted)
            if len(typed) > FEWEST_FIGURES and self.phone.endswith(typed):
                return ()
        return tuple(word for word in wanted.split() if word not in self.known and not _ends(self.phone, word))


def _ends(phone: str, word: str) -> bool:
    """True for the last figures of a phone."""
    return len(word) >= FEWEST_FIGURES and word.isdigit() and phone.endswith(word)


def _are_numbers(words: tuple[str, ...], number: int) -> bool:
    """True where each word is the number of a box, or a tag of it; for no words too."""
    for word in words:
        box, _, knife = word.partition("-")
        if box != str(number) or (knife and not knife.isdigit()):
            return False
    return True
