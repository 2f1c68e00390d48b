"""The tables of swap sets, as peewee sees them."""

from peewee import BigIntegerField, IntegerField, TextField

from queueboard.records.row import Row


class SwapSetRow(Row):
    """A set of knives that goes round between a kitchen and the shop."""

    personal = frozenset({"name"})
    customer_id = IntegerField()
    name = TextField()
    every_days = IntegerField()


class SwapKindRow(Row):
    """How many of one kind are in a set."""

    set_id = IntegerField()
    kind = TextField()
    knives = IntegerField()


class SwapRoundRow(Row):
    """One visit: the set that was brought sharp, the set that was taken along dull."""

    sharp_set_id = IntegerField(null=True)
    dull_set_id = IntegerField(null=True)
    box_id = IntegerField(null=True)
    noted_us = BigIntegerField()
    noted_by = TextField()


class SwapMissingRow(Row):
    """A knife that was not in a set that came back."""

    round_id = IntegerField()
    set_id = IntegerField()
    kind = TextField()
    missed_us = BigIntegerField()
    found_us = BigIntegerField(null=True)
    charge_id = IntegerField(null=True)


class SwapCheckRow(Row):
    """A set looked through before it goes out again."""

    set_id = IntegerField()
    for_day = TextField()
    missing = IntegerField()
    not_clean = IntegerField()
    checked_us = BigIntegerField()
    checked_by = TextField()


ROWS: tuple[type[Row], ...] = (SwapSetRow, SwapKindRow, SwapRoundRow, SwapMissingRow, SwapCheckRow)
