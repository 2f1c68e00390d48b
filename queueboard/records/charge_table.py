"""The table of what is charged beside the prices of knives."""

from peewee import IntegerField, TextField

from queueboard.records.row import Row


class ChargeRow(Row):
    """What is charged beside the price of a knife."""

    personal = frozenset({"text"})
    box_id = IntegerField()
    knife_id = IntegerField(null=True)
    sort = TextField()
    text = TextField()
    cents = IntegerField()
    ppm = IntegerField(null=True)
    tax_ppm = IntegerField()
