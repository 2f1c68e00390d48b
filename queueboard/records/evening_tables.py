"""The tables of the evening, as peewee sees them."""

from peewee import BigIntegerField, IntegerField, TextField

from queueboard.records.row import Row


class DayCloseRow(Row):
    """A day that somebody has closed."""

    personal = frozenset({"note"})
    day = TextField()
    not_done = IntegerField()
    note = TextField()
    closed_us = BigIntegerField()
    closed_by = TextField()


class TillCountRow(Row):
    """Money of one way, counted in the evening."""

    day = TextField()
    way = TextField()
    should_cents = IntegerField()
    counted_cents = IntegerField()
    counted_us = BigIntegerField()
    counted_by = TextField()


class DustLookRow(Row):
    """The dust tray emptied or wetted, or the second look at it."""

    day = TextField()
    after_id = IntegerField(null=True)
    looked_us = BigIntegerField()
    looked_by = TextField()


ROWS: tuple[type[Row], ...] = (DayCloseRow, TillCountRow, DustLookRow)
