"""The tables of swap sets and market days, as peewee sees them."""

from peewee import BigIntegerField, IntegerField, TextField

from queueboard.records.row import Row


class SwapSetRow(Row):
    """A set of knives that belongs to a kitchen's rounds."""

    personal = frozenset({"name"})
    customer_id = IntegerField()
    name = TextField()


class SwapKindRow(Row):
    """How many knives of one kind a set has, and where they are."""

    set_id = IntegerField()
    kind = TextField()
    owned = IntegerField()
    kitchen = IntegerField()
    here = IntegerField()
    missing = IntegerField()


class SwapRoundRow(Row):
    """A visit at a kitchen: which set was brought, which was taken."""

    customer_id = IntegerField()
    brought_id = IntegerField(null=True)
    taken_id = IntegerField(null=True)
    box_id = IntegerField(null=True)
    at_us = BigIntegerField()


class SwapMissingRow(Row):
    """Knives of a set that did not come back."""

    kind_id = IntegerField()
    knives = IntegerField()
    since_us = BigIntegerField()
    charged = IntegerField()


class PrintedTagsRow(Row):
    """Tags printed for a market day."""

    market_on = TextField()
    first = IntegerField()
    last = IntegerField()


class MarketEntryRow(Row):
    """A box of a market day, by the tag that was given out for it."""

    printed_id = IntegerField()
    tag = IntegerField()
    box_id = IntegerField()


ROWS: tuple[type[Row], ...] = (
    SwapSetRow,
    SwapKindRow,
    SwapRoundRow,
    SwapMissingRow,
    PrintedTagsRow,
    MarketEntryRow,
)
