"""The tables of what happened to the file itself, as peewee sees them."""

from peewee import BigIntegerField, IntegerField, TextField

from queueboard.records.row import Row


class RestoredRow(Row):
    """A copy that was put in the place of the file."""

    personal = frozenset({"from_file", "aside"})
    from_file = TextField()
    aside = TextField()
    lines_kept = IntegerField()
    lines_beyond = IntegerField(null=True)
    restored_us = BigIntegerField()
    restored_by = TextField()


class ErasedCustomerRow(Row):
    """A customer whose words were erased; the row without words stays, for counts and money."""

    customer_id = IntegerField()
    erased_us = BigIntegerField()


ROWS: tuple[type[Row], ...] = (RestoredRow, ErasedCustomerRow)
