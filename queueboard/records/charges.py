"""What is charged beside the prices of knives, read with fixed SQL."""

from queueboard.priced_words import ChargeSort
from queueboard.records.cells import whole, whole_or_none
from queueboard.records.database import Cell, ShopDatabase
from queueboard.values.box import Charge

CHARGED_BOX = "coalesce(k.box_id, c.box_id)"
"""The box that pays a charge: what belongs to a knife goes with the knife."""

_CHARGE = f"""SELECT c.id, c.row_version, {CHARGED_BOX}, c.knife_id, c.sort, c.text, c.cents, c.ppm, c.tax_ppm
FROM charge c LEFT JOIN knife k ON k.id = c.knife_id"""


def charges_of(database: ShopDatabase, where: str, *values: Cell) -> tuple[Charge, ...]:
    """The charges that meet a fixed condition, oldest first."""
    return tuple(
        Charge(
            id=whole(row[0]),
            version=whole(row[1]),
            box_id=whole(row[2]),
            knife_id=whole_or_none(row[3]),
            sort=ChargeSort(str(row[4])),
            text=str(row[5]),
            cents=whole(row[6]),
            ppm=whole_or_none(row[7]),
            tax_ppm=whole(row[8]),
        )
        for row in database.rows(f"{_CHARGE} WHERE {where} ORDER BY c.id", values)
    )


def charges_of_boxes(database: ShopDatabase, which: str, *values: Cell) -> tuple[Charge, ...]:
    """The charges that some boxes pay, oldest first; which: fixed SQL for the ids of the boxes."""
    own = f"SELECT o.id FROM charge o WHERE o.knife_id IS NULL AND o.box_id IN ({which})"
    of_knives = f"SELECT o.id FROM charge o JOIN knife w ON w.id = o.knife_id WHERE w.box_id IN ({which})"
    return charges_of(database, f"c.id IN ({own} UNION ALL {of_knives})", *values, *values)
