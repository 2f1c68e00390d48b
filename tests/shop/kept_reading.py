"""What a handle keeps of a shop from reading to reading, held against the file read anew."""

from collections import Counter

from queueboard.records.belts import fitted_belts
from queueboard.records.benched import benched
from queueboard.records.database import ShopDatabase
from queueboard.records.erasing import erased_customers
from queueboard.records.reading import customers_of, read_open_work
from queueboard.shop.belt_counts import idle_processes, knives_done
from queueboard.shop.known_customers import known_customers
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in


def hold_what_is_kept(shop: Shop) -> None:
    """All that is read on is as it is read anew."""
    with shop.reading() as database:
        _is_read_on_as_it_is_read_anew(shop)
        _is_counted_on_as_it_is_counted_anew(database)
        _is_known_as_it_is_read_anew(shop, database)


def _is_read_on_as_it_is_read_anew(shop: Shop) -> None:
    """What a look keeps of the one before, and reads on from there, is what stands in the file."""
    assert shop.work_cache is not None
    assert shop.work_cache[1] == read_open_work(shop.database)


def _is_counted_on_as_it_is_counted_anew(database: ShopDatabase) -> None:
    """Knives that came to the bench, and belts that have done nothing: what is kept of them is what stands there."""
    settings = settings_in(database)
    counted = Counter(str(row[0]) for row in database.rows("SELECT kind FROM knife WHERE place <> 'received'"))
    assert {kind: count for kind, count in benched(database).items() if count} == counted
    belts = fitted_belts(database)
    done = knives_done(database, settings, belts)
    assert idle_processes(database, settings) == {belt.process for belt in belts if not done[belt.id]}


def _is_known_as_it_is_read_anew(shop: Shop, database: ShopDatabase) -> None:
    """The customers that searches keep are those that stand in the file now."""
    kept = {one: whose.customer for one, whose in known_customers(shop, database).whose.items()}
    erased = erased_customers(database)
    assert kept == {one.id: one for one in customers_of(database) if one.id not in erased}
