"""How a day is closed, read from its table, which may be missing."""

from queueboard.settings.fields import Table
from queueboard.settings.shapes import Evening


def read_evening(whole: Table) -> Evening:
    """The shop's choices; what is not written is as in Evening."""
    if not whole.has("evening"):
        return Evening()
    table, usual = whole.table("evening"), Evening()
    table.only("second_look_minutes", "change_in_till")
    minutes, change = usual.second_look_minutes, usual.change_cents
    return Evening(
        second_look_minutes=(
            table.whole("second_look_minutes", 5, 240, "minutes") if table.has("second_look_minutes") else minutes
        ),
        change_cents=table.cents("change_in_till") if table.has("change_in_till") else change,
    )
