"""The tables of the evening, as peewee sees them."""

from queueboard.records.row import Row

ROWS: tuple[type[Row], ...] = ()
