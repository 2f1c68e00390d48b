"""All customers as one is looked for among them: read once, kept, and read on where history names one of them."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from itertools import accumulate

from queueboard.clean import figures, folded
from queueboard.records.cells import whole
from queueboard.records.database import ShopDatabase
from queueboard.records.erasing import erased_customers
from queueboard.records.reading import customers_among, customers_of
from queueboard.records.telling import newest_line
from queueboard.shop.opening import Shop
from queueboard.slotted import dataclass
from queueboard.values.customer import Customer

FEWEST_FIGURES = 3
"""From so many figures on they may be the end of a phone number."""

MOST_LINES = 500
"""From so many lines of history on all customers are read anew."""

_PHONE_SIGNS = frozenset("0123456789 +-/().")


@dataclass(frozen=True, slots=True)
class Whose:
    """A customer as one is looked for."""

    customer: Customer
    known: str
    phone: str

    @classmethod
    def of(cls, customer: Customer) -> "Whose":
        """Folded once, since it is compared with each letter."""
        return cls(customer, folded(f"{customer.name} {customer.town}"), figures(customer.phone))

    def left_of(self, wanted: str) -> tuple[str, ...]:
        """The words that fit neither name, town nor phone: only the number of a box can be meant by them."""
        if _ends(self.phone, _blank_phone(wanted)):
            return ()
        return tuple(word for word in wanted.split() if word not in self.known and not _ends(self.phone, word))


def _blank_phone(wanted: str) -> str:
    """The figures of a phone that was typed with blanks, more than would fit by chance; empty for anything else."""
    typed = figures(wanted) if " " in wanted and _PHONE_SIGNS.issuperset(wanted) else ""
    return typed if len(typed) > FEWEST_FIGURES else ""


def _ends(phone: str, word: str) -> bool:
    """True for the last figures of a phone."""
    return len(word) >= FEWEST_FIGURES and word.isdigit() and phone.endswith(word)


class Lines:
    """Many short texts as one, which is searched as fast as the machine can."""

    def __init__(self, texts: Iterable[str]) -> None:
        lines = [f"{text}\n" for text in texts]
        self._text = "".join(lines)
        self._starts = [0, *accumulate(map(len, lines))]

    def count(self, part: str) -> int:
        """How often a part stands in all of them."""
        return self._text.count(part)

    def places(self, part: str) -> Iterator[int]:
        """The places of the texts with this part, each once; one that ends in a line break is their end."""
        at = self._text.find(part)
        while at >= 0:
            place = bisect_right(self._starts, at) - 1
            yield place
            at = self._text.find(part, self._starts[place + 1])


class KnownCustomers:
    """The customers at one line of history, those who were erased left out."""

    def __init__(self, line: int, erased: frozenset[int], customers: Iterable[Whose]) -> None:
        self.line = line
        self.erased = erased
        self.whose = whose = {one.customer.id: one for one in customers if one.customer.id not in erased}
        """By the id of the customer."""
        self._ids = tuple(whose)
        self._lines = Lines(f"{one.known}\t{one.phone}" for one in whose.values())

    def at(self, line: int) -> "KnownCustomers":
        """The same, at a later line that names none of them."""
        self.line = line
        return self

    def fitting(self, wanted: str, most: int) -> frozenset[int] | None:
        """The ids of those whom every word fits; None where even the rarest word stands more often than that."""
        often, rarest = min((self._lines.count(word), word) for word in wanted.split())
        if often > most:
            return None
        phone = _blank_phone(wanted)
        places = {*self._lines.places(rarest), *(self._lines.places(f"{phone}\n") if phone else ())}
        ids = (self._ids[place] for place in places)
        return frozenset(one for one in ids if not self.whose[one].left_of(wanted))


def known_customers(shop: Shop, database: ShopDatabase) -> KnownCustomers:
    """All customers as they stand in a reading of the shop."""
    newest = newest_line(database)
    line = 0 if newest is None else newest[0]
    kept = shop.customers_cache
    if kept is None or kept.line != line:
        erased = erased_customers(database)
        same = kept is not None and kept.erased == erased
        kept = (_read_on(database, kept, line) if kept and same else None) or _read_anew(database, erased, line)
        shop.customers_cache = kept
    return kept


def _read_anew(database: ShopDatabase, erased: frozenset[int], line: int) -> KnownCustomers:
    return KnownCustomers(line, erased, map(Whose.of, customers_of(database)))


def _read_on(database: ShopDatabase, kept: KnownCustomers, line: int) -> KnownCustomers | None:
    """The customers at a later line; None where too much has happened since."""
    lines = database.rows(
        "SELECT entity, entity_id FROM history WHERE id > ? ORDER BY id LIMIT ?", (kept.line, MOST_LINES)
    )
    if len(lines) == MOST_LINES:
        return None
    touched = {whole(row_id) for entity, row_id in lines if entity == "customer"}
    if not touched:
        return kept.at(line)
    there = map(Whose.of, customers_among(database, touched))
    others = (one for customer_id, one in kept.whose.items() if customer_id not in touched)
    return KnownCustomers(line, kept.erased, (*others, *there))
