"""The tables as peewee sees them; a test holds them against the migrated schema.

They are bound to no database: every query names the one it runs on, so that two shop files can be open at once.
"""

from typing import ClassVar

from peewee import AutoField, BigIntegerField, IntegerField, Model, TextField


class Row(Model):
    """A row of state: an id, and a version that rises with each change."""

    personal: ClassVar[frozenset[str]] = frozenset()
    """Columns that hold a person's own text; history keeps only a salted digest of them."""

    id = AutoField()
    row_version = IntegerField()


class ShopRow(Model):
    """The one row about the file itself."""

    id = AutoField()
    salt = TextField()
    created_us = BigIntegerField()

    class Meta:
        table_name = "shop"


class SettingsRow(Row):
    """One text of settings as it was taken in; the newest holds."""

    personal = frozenset({"text"})
    text = TextField()
    taken_us = BigIntegerField()

    class Meta:
        table_name = "settings"


class ClosedDayRow(Row):
    """A public holiday, filled in when settings were taken in."""

    settings_id = IntegerField()
    day = TextField()
    name = TextField()

    class Meta:
        table_name = "closed_day"


class CustomerRow(Row):
    """A customer."""

    personal = frozenset({"name", "phone", "town", "address", "notes"})
    name = TextField()
    phone = TextField()
    town = TextField()
    address = TextField()
    notes = TextField()
    merged_into = IntegerField(null=True)

    class Meta:
        table_name = "customer"


class BoxRow(Row):
    """A box."""

    personal = frozenset({"note"})
    number = IntegerField()
    customer_id = IntegerField()
    came_by = TextField()
    goes_by = TextField()
    counted = IntegerField()
    note_says = IntegerField(null=True)
    received_us = BigIntegerField()
    opened = IntegerField()
    packing = TextField(null=True)
    carrier_days = IntegerField()
    rush = IntegerField()
    this_next = IntegerField()
    never_slip = IntegerField()
    waiting_for = TextField(null=True)
    waiting_since_us = BigIntegerField(null=True)
    note = TextField()
    closed_us = BigIntegerField(null=True)

    class Meta:
        table_name = "box"


class KnifeRow(Row):
    """A knife; place is its column on the board (column is a word of SQL)."""

    personal = frozenset({"mark", "wish", "note"})
    box_id = IntegerField()
    number = IntegerField()
    kind = TextField()
    edge = TextField()
    length_mm = IntegerField(null=True)
    condition = TextField()
    place = TextField()
    mark = TextField()
    wish = TextField()
    note = TextField()
    rework = IntegerField()
    declined = TextField(null=True)
    waiting_for = TextField(null=True)
    waiting_since_us = BigIntegerField(null=True)
    price_cents = IntegerField()
    looking_for = IntegerField()
    moved_us = BigIntegerField()
    moved_by = TextField()

    class Meta:
        table_name = "knife"


class ThingRow(Row):
    """Something that came with a box."""

    personal = frozenset({"name"})
    box_id = IntegerField()
    name = TextField()
    state = TextField()

    class Meta:
        table_name = "thing"


class PromiseRow(Row):
    """A date told to the customer."""

    personal = frozenset({"told_to", "reason"})
    box_id = IntegerField()
    kind = TextField()
    day = TextField()
    at = TextField(null=True)
    told_to = TextField()
    told_us = BigIntegerField()
    told_by = TextField()
    reason = TextField()

    class Meta:
        table_name = "promise"


class LabelRow(Row):
    """A return label."""

    personal = frozenset({"carrier", "name_on"})
    box_id = IntegerField()
    owner = TextField()
    state = TextField()
    carrier = TextField()
    expires_on = TextField(null=True)
    name_on = TextField()

    class Meta:
        table_name = "label"


class PaymentRow(Row):
    """Money taken."""

    box_id = IntegerField()
    cents = IntegerField()
    way = TextField()
    at_us = BigIntegerField()
    by = TextField()

    class Meta:
        table_name = "payment"


class CloseOutRow(Row):
    """A close-out under way or finished."""

    personal = frozenset({"missing_reason", "handed_to", "settled_why"})
    box_id = IntegerField()
    started_us = BigIntegerField()
    counted = IntegerField(null=True)
    ticking = IntegerField()
    ticks_done = IntegerField()
    things_done = IntegerField()
    missing_reason = TextField()
    names_ok = IntegerField()
    label_ok = IntegerField()
    handed_to = TextField()
    settled = TextField(null=True)
    settled_why = TextField()
    finished_us = BigIntegerField(null=True)

    class Meta:
        table_name = "close_out"


class TickRow(Row):
    """A knife or a thing in hand at a close-out."""

    close_out_id = IntegerField()
    knife_id = IntegerField(null=True)
    thing_id = IntegerField(null=True)

    class Meta:
        table_name = "tick"


class DayOrderRow(Row):
    """The order of the day list as it was fixed."""

    day = TextField()
    knife_ids = TextField()

    class Meta:
        table_name = "day_order"


class HistoryRow(Model):
    """One line of history: only ever added to, each line chained to the one before."""

    id = AutoField()
    group_id = TextField()
    line = IntegerField()
    at_us = BigIntegerField()
    by = TextField()
    operation = TextField()
    about = TextField(null=True)
    undoes = TextField(null=True)
    reason = TextField(null=True)
    entity = TextField()
    entity_id = IntegerField()
    before = TextField(null=True)
    after = TextField(null=True)
    previous = TextField()
    hash = TextField()

    class Meta:
        table_name = "history"


class PersonalRow(Model):
    """A person's own text behind a digest in history; can be emptied without breaking the chain."""

    id = AutoField()
    history_id = IntegerField()
    side = TextField()
    field = TextField()
    text = TextField()

    class Meta:
        table_name = "personal"


STATE: dict[str, type[Row]] = {
    "settings": SettingsRow,
    "closed_day": ClosedDayRow,
    "customer": CustomerRow,
    "box": BoxRow,
    "knife": KnifeRow,
    "thing": ThingRow,
    "promise": PromiseRow,
    "label": LabelRow,
    "payment": PaymentRow,
    "close_out": CloseOutRow,
    "tick": TickRow,
    "day_order": DayOrderRow,
}
"""Every table of state by its name in history."""
