"""How the work is planned, read from its table, which may be missing."""

from queueboard.settings.fields import Table, meant, written
from queueboard.settings.shapes import Planning
from queueboard.words import PlanOrder

_RANGES = {
    "people": (1, 3, "people"),
    "saved_percent": (0, 100, "percent"),
    "sure_percent": (50, 99, "percent"),
    "safety_days": (0, 10, "working days"),
    "walk_in_minutes": (0, 600, "minutes"),
    "tight_percent": (1, 99, "percent"),
    "announced_minutes": (1, 120, "minutes"),
}
"""Lowest, highest and unit of each number."""


def read_planning(whole: Table) -> Planning:
    """The shop's choices; what is not written is as in Planning."""
    if not whole.has("planning"):
        return Planning()
    table = whole.table("planning")
    table.only("order", *_RANGES)
    numbers = {name: table.whole(name, *ends) for name, ends in _RANGES.items() if table.has(name)}
    return Planning(**numbers, order=_order(table) if table.has("order") else Planning().order)


def _order(table: Table) -> PlanOrder:
    name = table.text("order", longest=30)
    if name not in list(PlanOrder):
        hint = meant(name, list(PlanOrder), f"write one of {', '.join(PlanOrder)}")
        raise table.wrong(f"{written(name)} is no order of work; {hint}", "order")
    return PlanOrder(name)
