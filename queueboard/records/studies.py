"""Studies of the tester's wobble, read with fixed SQL."""

from collections import defaultdict

from queueboard.records.cells import instant_or_none, whole
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.study import Study


def studies(database: ShopDatabase) -> tuple[Study, ...]:
    """Every study, the newest first."""
    read: defaultdict[int, defaultdict[int, list[int]]] = defaultdict(lambda: defaultdict(list))
    ids: defaultdict[int, list[int]] = defaultdict(list)
    for row in database.rows("SELECT id, study_id, knife, force_gf FROM study_reading ORDER BY knife, number"):
        ids[whole(row[1])].append(whole(row[0]))
        read[whole(row[1])][whole(row[2])].append(whole(row[3]))
    return tuple(
        Study(
            id=whole(row[0]),
            version=whole(row[1]),
            changed=str(row[2]),
            knives=whole(row[3]),
            begun_at=from_us(whole(row[4])),
            begun_by=str(row[5]),
            finished_at=instant_or_none(row[6]),
            readings_gf=tuple(tuple(forces) for _, forces in sorted(read[whole(row[0])].items())),
            reading_ids=tuple(ids[whole(row[0])]),
        )
        for row in database.rows(
            "SELECT id, row_version, changed, knives, begun_us, begun_by, finished_us FROM study ORDER BY id DESC"
        )
    )
