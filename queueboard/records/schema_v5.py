"""Schema version 5: the shelf and the phone, the evening, swap sets and market days, each in a file of its own."""

from queueboard.records import schema_v5_evening, schema_v5_shelf, schema_v5_swaps

SQL = schema_v5_shelf.SQL + schema_v5_evening.SQL + schema_v5_swaps.SQL
