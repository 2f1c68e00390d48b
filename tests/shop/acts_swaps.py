"""The operations of swap sets as acts; see acts.py."""

from collections.abc import Callable

from queueboard.records.swaps import missing_knives, sets_of
from queueboard.shop import swapping
from queueboard.values.swap import NewRound
from tests.shop.moment import Moment


def _sets(m: Moment) -> list[int]:
    return [one.id for one in sets_of(m.shop.database, "TRUE")]


def _round(m: Moment) -> object:
    ids = _sets(m)
    dull = m.pick(("2 chef", "1 chef, 1 paring", "3 chef tip", "no such kind", ""))
    return swapping.note_round(
        m.shop, m.by, NewRound(sharp_set_id=m.pick((None, *ids)), dull_set_id=m.pick((None, *ids)), dull=dull)
    )


SWAP_ACTS: dict[str, Callable[[Moment], object]] = {
    "define_set": lambda m: swapping.define_set(
        m.shop, m.by, m.customer.id, m.pick(("A", "B", m.text)), m.pick(("2 chef, 1 paring", "x")), m.pick((7, 14, 0))
    ),
    "note_round": _round,
    "found_again": lambda m: swapping.found_again(m.shop, m.by, m.pick(missing_knives(m.shop.database, "TRUE"))),
    "charge_missing": lambda m: swapping.charge_missing(
        m.shop, m.by, m.pick(missing_knives(m.shop.database, "TRUE")), m.box, m.pick((2400, 0))
    ),
    "check_set": lambda m: swapping.check_set(m.shop, m.by, m.pick(_sets(m))),
}
