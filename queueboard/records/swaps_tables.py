"""The tables of swap sets and market days, as peewee sees them."""

from queueboard.records.row import Row

ROWS: tuple[type[Row], ...] = ()
