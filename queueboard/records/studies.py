"""Studies of the tester's wobble, read with fixed SQL."""

from collections import defaultdict

from queueboard.records.cells import instant_or_none, whole
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.study import TIMES, Study


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


def under_way(database: ShopDatabase) -> int:
    """How many studies are not finished; never more than one when an action ends."""
    return whole(database.one("SELECT count(*) FROM study WHERE finished_us IS NULL"))


def has_gaps(database: ShopDatabase) -> bool:
    """True when a reading of a study is missing before a later one."""
    before = "EXISTS (SELECT 1 FROM study_reading b WHERE b.study_id = r.study_id AND"
    return bool(
        database.one(
            f"SELECT EXISTS (SELECT 1 FROM study_reading r WHERE "
            f"(r.number > 1 AND NOT {before} b.knife = r.knife AND b.number = r.number - 1)) OR "
            f"(r.number = 1 AND r.knife > 1 AND NOT {before} b.knife = r.knife - 1 AND b.number = ?)))",
            (TIMES,),
        )
    )


def is_cut_short(database: ShopDatabase) -> bool:
    """True when a reading of a finished study is missing."""
    return bool(
        database.one(
            "SELECT EXISTS (SELECT 1 FROM study s WHERE s.finished_us IS NOT NULL AND s.knives * ? > "
            "(SELECT count(*) FROM study_reading r WHERE r.study_id = s.id))",
            (TIMES,),
        )
    )
