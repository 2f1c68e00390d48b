"""All customers as one is looked for among them: read once, kept, and read on where history names one of them."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from itertools import accumulate, islice

from queueboard.clean import figures, folded
from queueboard.records.cells import whole
from queueboard.records.database import ShopDatabase
from queueboard.records.erasing import erased_customers
from queueboard.records.reading import customers_among, customers_of
from queueboard.records.telling import lines_after, newest_line
from queueboard.shop.opening import Shop
from queueboard.slotted import dataclass
from queueboard.values.customer import Customer

FEWEST_FIGURES = 3
"""From so many figures on they may be the end of a phone number."""

FEW = 20
"""Of so many customers each is looked at, rather than another word for all."""

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

    def __init__(self) -> None:
        self._text = ""
        self._starts = [0]

    def add(self, texts: Iterable[str]) -> None:
        """Put texts behind those that are there; the first has the place 0."""
        lines = [f"{text}\n" for text in texts]
        self._starts += [*accumulate(map(len, lines), initial=self._starts[-1])][1:]
        self._text += "".join(lines)

    def places(self, part: str) -> Iterator[int]:
        """The places of the texts with this part, each once; one that ends in a line break is their end."""
        at = self._text.find(part)
        while at >= 0:
            place = bisect_right(self._starts, at) - 1
            yield place
            at = self._text.find(part, self._starts[place + 1])


class KnownCustomers:
    """The customers at one line of history, those who were erased left out."""

    def __init__(self, line: int, erased: frozenset[int]) -> None:
        self.line = line
        self.erased = erased
        self.whose: dict[int, Whose] = {}
        """By the id of the customer."""
        self._lines = Lines()
        self._ids: list[int | None] = []
        """Whose each of the lines is; None for one that holds no more."""

    def take(self, customers: Iterable[Customer]) -> None:
        """Know these, in place of what was known of them before."""
        new = [Whose.of(one) for one in customers if one.id not in self.erased]
        self.forget({one.customer.id for one in new} & self.whose.keys())
        self.whose.update({one.customer.id: one for one in new})
        self._ids += [one.customer.id for one in new]
        self._lines.add(f"{one.known}\t{one.phone}" for one in new)

    def forget(self, customer_ids: Iterable[int]) -> None:
        """Find them no more."""
        for customer_id in customer_ids:
            if self.whose.pop(customer_id, None) is not None:
                self._ids[self._ids.index(customer_id)] = None

    def fitting(self, wanted: str, most: int) -> frozenset[int] | None:
        """The ids of those whom every word fits; None where each word stands with more than so many customers."""
        fewest: list[int] | None = None
        for word in sorted(wanted.split(), key=_promise, reverse=True):
            places = list(islice(self._lines.places(word), most + 1))
            fewest = places if fewest is None or len(places) < len(fewest) else fewest
            if len(fewest) <= FEW:
                break
        if fewest is None or len(fewest) > most:
            return None
        phone = _blank_phone(wanted)
        ids = (self._ids[place] for place in {*fewest, *(self._lines.places(f"{phone}\n") if phone else ())})
        return frozenset(one for one in ids if one is not None and not self.whose[one].left_of(wanted))


def _promise(word: str) -> tuple[bool, int]:
    """More for a word that few customers may have: one with figures, then a long one."""
    return any(map(str.isdigit, word)), len(word)


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
    known = KnownCustomers(line, erased)
    known.take(customers_of(database))
    return known


def _read_on(database: ShopDatabase, kept: KnownCustomers, line: int) -> KnownCustomers | None:
    """The customers at a later line; None where too much has happened since."""
    lines = lines_after(database, kept.line)
    if lines is None:
        return None
    touched = {whole(row_id) for entity, row_id, *_ in lines if entity == "customer"}
    kept.forget(touched)
    kept.take(customers_among(database, touched) if touched else ())
    kept.line = line
    return kept
