"""The tables of knives that left their box without leaving the shop, as peewee sees them."""

from peewee import BigIntegerField, IntegerField, TextField

from queueboard.records.row import Row


class MovedKnifeRow(Row):
    """A knife that was put from one box into another."""

    personal = frozenset({"why"})
    knife_id = IntegerField()
    from_box_id = IntegerField()
    from_number = IntegerField()
    to_box_id = IntegerField()
    why = TextField()
    moved_us = BigIntegerField()
    moved_by = TextField()


class FoundKnifeRow(Row):
    """A knife that belongs to no box that is known."""

    personal = frozenset({"mark", "place", "settled_how"})
    kind = TextField()
    length_mm = IntegerField(null=True)
    mark = TextField()
    place = TextField()
    from_box_id = IntegerField(null=True)
    found_us = BigIntegerField()
    found_by = TextField()
    settled_us = BigIntegerField(null=True)
    settled_how = TextField(default="")


class StruckKnifeRow(Row):
    """Knives that were counted and taken off again, since they were typed by mistake."""

    box_id = IntegerField()
    knives = IntegerField()


ROWS: tuple[type[Row], ...] = (MovedKnifeRow, FoundKnifeRow, StruckKnifeRow)
