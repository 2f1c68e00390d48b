"""One edge as it stands in the shop file: its spots, readings and tests, read with fixed SQL."""

from collections.abc import Collection

from queueboard.records.cells import whole, whole_or_none
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import from_us
from queueboard.values.edge import EdgeTest, KnifeEdge, Reading, SecondLookTaken, Spot, StruckReading
from queueboard.words import EdgeTestWay, SecondLook, Stage

_READING = """SELECT r.id, r.row_version, r.spot_id, r.stage, r.belt, r.deburred, r.force_gf, r.read_us, r.read_by
FROM reading r JOIN spot s ON s.id = r.spot_id"""


def edge_of(database: ShopDatabase, knife_id: int) -> KnifeEdge:
    """All that is known of the edge of a knife."""
    return KnifeEdge(
        spots=spots_of(database, knife_id),
        readings=readings_of(database, knife_id),
        tests=tests_of(database, knife_id),
        looks=second_looks_of(database, knife_id),
        not_ok=not_ok_of(database, knife_id),
    )


def spots_of(database: ShopDatabase, knife_id: int) -> tuple[Spot, ...]:
    """The marked spots of a knife, heel first."""
    rows = database.rows(
        "SELECT id, name, from_heel_mm, tooth FROM spot WHERE knife_id = ? ORDER BY place", (knife_id,)
    )
    return tuple(
        Spot(id=whole(r[0]), name=str(r[1]), from_heel_mm=whole_or_none(r[2]), tooth=whole_or_none(r[3])) for r in rows
    )


def readings_of(database: ShopDatabase, knife_id: int) -> tuple[Reading, ...]:
    """What was read of a knife, oldest first; struck readings are left out."""
    where = "s.knife_id = ? AND r.struck_us IS NULL"
    rows = database.rows(f"{_READING} WHERE {where} ORDER BY r.read_us, r.id", (knife_id,))
    return tuple(
        Reading(
            id=whole(row[0]),
            version=whole(row[1]),
            spot_id=whole(row[2]),
            stage=Stage(str(row[3])),
            belt=str(row[4]),
            deburred=bool(row[5]),
            force_gf=whole(row[6]),
            read_at=from_us(whole(row[7])),
            read_by=str(row[8]),
        )
        for row in rows
    )


def struck_of(database: ShopDatabase, knife_id: int) -> tuple[StruckReading, ...]:
    """The readings of a knife that were struck, with the reason, oldest first."""
    rows = database.rows(
        "SELECT r.spot_id, r.stage, r.force_gf, r.read_us, r.read_by, r.struck_us, r.struck_why FROM reading r "
        "JOIN spot s ON s.id = r.spot_id WHERE s.knife_id = ? AND r.struck_us IS NOT NULL ORDER BY r.id",
        (knife_id,),
    )
    return tuple(
        StruckReading(
            spot_id=whole(row[0]),
            stage=Stage(str(row[1])),
            force_gf=whole(row[2]),
            read_at=from_us(whole(row[3])),
            read_by=str(row[4]),
            struck_at=from_us(whole(row[5])),
            why=str(row[6]),
        )
        for row in rows
    )


def tests_of(database: ShopDatabase, knife_id: int) -> tuple[EdgeTest, ...]:
    """The tests of a knife, oldest first."""
    rows = database.rows(
        "SELECT way, ok, belt, tested_us, tested_by FROM edge_test WHERE knife_id = ? ORDER BY id", (knife_id,)
    )
    return tuple(
        EdgeTest(
            way=EdgeTestWay(str(row[0])),
            ok=bool(row[1]),
            belt=str(row[2]),
            tested_at=from_us(whole(row[3])),
            tested_by=str(row[4]),
        )
        for row in rows
    )


def not_ok_of(database: ShopDatabase, knife_id: int) -> int:
    """How often a knife was not OK since the last second look at it."""
    return whole(
        database.one(
            "SELECT count(*) FROM edge_test WHERE knife_id = ? AND ok = 0 AND tested_us > "
            "(SELECT coalesce(max(chosen_us), 0) FROM second_look WHERE knife_id = ?)",
            (knife_id, knife_id),
        )
    )


def second_looks_of(database: ShopDatabase, knife_id: int) -> tuple[SecondLookTaken, ...]:
    """The second looks at a knife, oldest first."""
    rows = database.rows(
        "SELECT choice, why, chosen_us, chosen_by FROM second_look WHERE knife_id = ? ORDER BY id", (knife_id,)
    )
    return tuple(
        SecondLookTaken(
            choice=SecondLook(str(row[0])), why=str(row[1]), chosen_at=from_us(whole(row[2])), chosen_by=str(row[3])
        )
        for row in rows
    )


def with_proof_card(database: ShopDatabase, box_ids: Collection[int]) -> frozenset[int]:
    """Those of these boxes whose customer gets a proof card, by their ids."""
    rows = database.rows(
        "SELECT b.id FROM box b JOIN customer c ON c.id = b.customer_id "
        f"WHERE c.proof_card = 1 AND b.id IN ({', '.join('?' * len(box_ids)) or 'NULL'})",
        tuple(box_ids),
    )
    return frozenset(whole(row[0]) for row in rows)


def rows_of_edge(database: ShopDatabase, knife_id: int) -> dict[str, tuple[int, ...]]:
    """Ids of all rows about the edge of a knife, struck readings included, by table."""
    about = {
        "reading": "SELECT r.id FROM reading r JOIN spot s ON s.id = r.spot_id WHERE s.knife_id = ?",
        "spot": "SELECT id FROM spot WHERE knife_id = ?",
        "edge_test": "SELECT id FROM edge_test WHERE knife_id = ?",
        "second_look": "SELECT id FROM second_look WHERE knife_id = ?",
    }
    return {name: tuple(whole(row[0]) for row in database.rows(sql, (knife_id,))) for name, sql in about.items()}
