"""The close-outs under way, read with fixed SQL."""

from collections import defaultdict

from queueboard.records.cells import whole, whole_or_none
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.box import CloseOut
from queueboard.words import Settling


def close_outs_of(database: ShopDatabase) -> tuple[CloseOut, ...]:
    """The close-outs under way, with their ticks."""
    ticks: defaultdict[int, set[int]] = defaultdict(set)
    ticked_things: defaultdict[int, set[int]] = defaultdict(set)
    for row in database.rows(
        "SELECT close_out_id, knife_id, thing_id FROM tick WHERE close_out_id IN "
        "(SELECT id FROM close_out WHERE finished_us IS NULL)"
    ):
        if row[1] is not None:
            ticks[whole(row[0])].add(whole(row[1]))
        else:
            ticked_things[whole(row[0])].add(whole(row[2]))
    rows = database.rows(
        "SELECT id, row_version, box_id, started_us, counted, ticking, ticks_done, things_done, missing_reason, "
        "names_ok, label_ok, handed_to, settled, settled_why FROM close_out WHERE finished_us IS NULL"
    )
    return tuple(
        CloseOut(
            id=whole(r[0]),
            version=whole(r[1]),
            box_id=whole(r[2]),
            started_at=from_us(whole(r[3])),
            counted=whole_or_none(r[4]),
            ticking=bool(r[5]),
            ticked=frozenset(ticks[whole(r[0])]),
            ticked_things=frozenset(ticked_things[whole(r[0])]),
            ticks_done=bool(r[6]),
            things_done=bool(r[7]),
            missing_reason=str(r[8]),
            names_ok=bool(r[9]),
            label_ok=bool(r[10]),
            handed_to=str(r[11]),
            settled=None if r[12] is None else Settling(str(r[12])),
            settled_why=str(r[13]),
        )
        for r in rows
    )
