"""Swap sets, rounds, what is missing and what was checked, read with fixed SQL."""

from collections import defaultdict
from datetime import date

from queueboard.records.cells import instant_or_none, whole, whole_or_none
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.swap import MissingKnife, SetCheck, SwapRound, SwapSet

OF_CUSTOMER = "IN (SELECT id FROM swap_set WHERE customer_id = ?)"
"""The sets of one kitchen."""


def sets_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[SwapSet, ...]:
    """The sets that meet a fixed condition on s, by name; kinds in the order in which they were typed."""
    kinds: defaultdict[int, dict[str, int]] = defaultdict(dict)
    for row in database.rows(
        f"SELECT k.set_id, k.kind, k.knives FROM swap_kind k JOIN swap_set s ON s.id = k.set_id WHERE {where} "
        "ORDER BY k.id",
        values,
    ):
        kinds[whole(row[0])][str(row[1])] = whole(row[2])
    rows = database.rows(
        f"SELECT s.id, s.row_version, s.customer_id, s.name, s.every_days FROM swap_set s WHERE {where} "
        "ORDER BY s.name, s.id",
        values,
    )
    return tuple(
        SwapSet(
            id=whole(r[0]),
            version=whole(r[1]),
            customer_id=whole(r[2]),
            name=str(r[3]),
            every_days=whole(r[4]),
            whole=kinds[whole(r[0])],
        )
        for r in rows
    )


def kind_rows(database: ShopDatabase, set_id: int) -> tuple[int, ...]:
    """Ids of the rows that say what is in a set."""
    return tuple(whole(r[0]) for r in database.rows("SELECT id FROM swap_kind WHERE set_id = ? ORDER BY id", (set_id,)))


def rounds_of(database: ShopDatabase, customer_id: int) -> tuple[SwapRound, ...]:
    """The visits to a kitchen, the oldest first."""
    rows = database.rows(
        "SELECT id, sharp_set_id, dull_set_id, box_id, noted_us, noted_by FROM swap_round "
        f"WHERE sharp_set_id {OF_CUSTOMER} OR dull_set_id {OF_CUSTOMER} ORDER BY noted_us, id",
        (customer_id, customer_id),
    )
    return tuple(
        SwapRound(
            id=whole(r[0]),
            sharp_set_id=whole_or_none(r[1]),
            dull_set_id=whole_or_none(r[2]),
            box_id=whole_or_none(r[3]),
            noted_at=from_us(whole(r[4])),
            noted_by=str(r[5]),
        )
        for r in rows
    )


def missing_knives(database: ShopDatabase, where: str, *values: Cell) -> tuple[MissingKnife, ...]:
    """The knives once missed that meet a fixed condition on m, the oldest first; a struck charge is none."""
    rows = database.rows(
        "SELECT m.id, m.row_version, m.set_id, m.kind, m.missed_us, m.found_us, c.cents, c.id, c.box_id "
        f"FROM swap_missing m LEFT JOIN charge c ON c.id = m.charge_id WHERE {where} ORDER BY m.missed_us, m.id",
        values,
    )
    return tuple(
        MissingKnife(
            id=whole(r[0]),
            version=whole(r[1]),
            set_id=whole(r[2]),
            kind=str(r[3]),
            missed_at=from_us(whole(r[4])),
            found_at=instant_or_none(r[5]),
            charged_cents=whole_or_none(r[6]),
            charge_id=whole_or_none(r[7]),
            charged_box_id=whole_or_none(r[8]),
        )
        for r in rows
    )


def newest_check(database: ShopDatabase, set_id: int, for_day: date) -> SetCheck | None:
    """The newest look through a set for a day; None where there was none."""
    rows = database.rows(
        "SELECT set_id, for_day, missing, not_clean, checked_us, checked_by FROM swap_check "
        "WHERE set_id = ? AND for_day = ? ORDER BY checked_us DESC, id DESC LIMIT 1",
        (set_id, for_day.isoformat()),
    )
    return next(
        (
            SetCheck(
                set_id=whole(r[0]),
                for_day=date.fromisoformat(str(r[1])),
                missing=whole(r[2]),
                not_clean=whole(r[3]),
                checked_at=from_us(whole(r[4])),
                checked_by=str(r[5]),
            )
            for r in rows
        ),
        None,
    )
