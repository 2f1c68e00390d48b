"""The tables of notices and call-backs, as peewee sees them."""

from queueboard.records.row import Row

ROWS: tuple[type[Row], ...] = ()
