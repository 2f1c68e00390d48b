"""The tables of notices and call-backs, as peewee sees them."""

from peewee import BigIntegerField, IntegerField, TextField

from queueboard.records.row import Row


class NoticeRow(Row):
    """What a customer was told of a box, and how."""

    personal = frozenset({"text"})
    box_id = IntegerField()
    sort = TextField()
    way = TextField()
    text = TextField()
    told_us = BigIntegerField()
    told_by = TextField()


class CallBackRow(Row):
    """A box that came back, linked to the one that had gone."""

    personal = frozenset({"why"})
    box_id = IntegerField()
    old_box_id = IntegerField()
    free = IntegerField()
    days = IntegerField()
    why = TextField()
    noted_us = BigIntegerField()
    noted_by = TextField()


class CallBackKnifeRow(Row):
    """A knife that came back, linked to itself as it had gone."""

    call_back_id = IntegerField()
    knife_id = IntegerField()
    old_knife_id = IntegerField()


ROWS: tuple[type[Row], ...] = (NoticeRow, CallBackRow, CallBackKnifeRow)
