"""What the shop knows of its belts by the text on their back: how long they last, what they cost, when to order."""

from queueboard.settings.fields import Table, written
from queueboard.settings.shapes import BeltKind


def read_belt_kinds(whole: Table) -> tuple[BeltKind, ...]:
    """The [[belts.kinds]], each label once; a shop may write none."""
    tables = whole.table("belts").tables("kinds")
    taken: set[str] = set()
    for table in tables:
        table.only("label", "life_knives", "cost", "reorder_at")
        label = table.text("label", longest=20)
        if label.casefold() in taken:
            raise table.wrong(f"{written(label)} stands in two [[belts.kinds]]; write each label once", "label")
        taken.add(label.casefold())
    return tuple(map(_belt_kind, tables))


def _belt_kind(table: Table) -> BeltKind:
    return BeltKind(
        label=table.text("label", longest=20),
        life_knives=table.whole("life_knives", 1, 100_000, "knives"),
        cost_cents=table.cents("cost"),
        reorder_at=table.whole("reorder_at", 0, 999, "spares"),
    )
