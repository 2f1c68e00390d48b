"""The tables as peewee sees them, bound to no database: a query names its own. A test holds them against the schema."""

from peewee import AutoField, BigIntegerField, IntegerField, TextField

from queueboard.records import edge_tables, evening_tables, keeping_tables, moved_tables, shelf_tables, swaps_tables
from queueboard.records.charge_table import ChargeRow
from queueboard.records.row import Named, Row, name_of


class ShopRow(Named):
    """The one row about the file itself."""

    id = AutoField()
    salt = TextField()
    created_us = BigIntegerField()


class SettingsRow(Row):
    """One text of settings as it was taken in; the newest holds."""

    personal = frozenset({"text"})
    text = TextField()
    taken_us = BigIntegerField()


class ClosedDayRow(Row):
    """A public holiday, filled in when settings were taken in."""

    settings_id = IntegerField()
    day = TextField()
    name = TextField()


class CustomerRow(Row):
    """A customer."""

    personal = frozenset({"name", "phone", "town", "address", "notes"})
    name = TextField()
    phone = TextField()
    town = TextField()
    address = TextField()
    notes = TextField()
    merged_into = IntegerField(null=True)
    proof_card = IntegerField(default=0)


class BoxRow(Row):
    """A box."""

    personal = frozenset({"note", "place"})
    told = frozenset({"waiting_for"})
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
    announced_us = BigIntegerField(null=True)
    expected_on = TextField(null=True)
    expected_knives = IntegerField(null=True)
    complaint = IntegerField(default=0)
    not_above_cents = IntegerField(null=True)
    packed_g = IntegerField(null=True)
    parcel_mm = TextField(default="")
    rounding = TextField(default="half up")
    place = TextField(default="")


class KnifeRow(Row):
    """A knife; place is its column on the board (column is a word of SQL)."""

    personal = frozenset({"mark", "wish", "note"})
    told = frozenset({"place", "declined", "waiting_for", "looking_for"})
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
    gauge = TextField(null=True)
    chips = IntegerField(null=True)
    chip_um = IntegerField(null=True)
    tip_um = IntegerField(null=True)
    findings = TextField(default="")
    apart = IntegerField(default=0)
    added_us = BigIntegerField(null=True)
    tax_ppm = IntegerField(default=0)


class ThingRow(Row):
    """Something that came with a box."""

    personal = frozenset({"name"})
    box_id = IntegerField()
    name = TextField()
    state = TextField()


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
    reckoned = TextField(default="")


class LabelRow(Row):
    """A return label."""

    personal = frozenset({"carrier", "name_on", "address_on", "note_name", "note_address"})
    box_id = IntegerField()
    owner = TextField()
    state = TextField()
    carrier = TextField()
    expires_on = TextField(null=True)
    name_on = TextField()
    address_on = TextField(default="")
    limit_g = IntegerField(null=True)
    value_cents = IntegerField(null=True)
    price_cents = IntegerField(null=True)
    note_name = TextField(default="")
    note_address = TextField(default="")


class PaymentRow(Row):
    """Money taken."""

    box_id = IntegerField()
    cents = IntegerField()
    way = TextField()
    at_us = BigIntegerField()
    by = TextField()
    sort = TextField(default="payment")


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


class TickRow(Row):
    """A knife or a thing in hand at a close-out."""

    close_out_id = IntegerField()
    knife_id = IntegerField(null=True)
    thing_id = IntegerField(null=True)


class DayOrderRow(Row):
    """The order of the day list as it was fixed."""

    day = TextField()
    knife_ids = TextField()


class BenchRunRow(Row):
    """Knives of one process that somebody works together, under way or finished."""

    process = TextField()
    started_us = BigIntegerField()
    started_by = TextField()
    nominal_seconds = IntegerField()
    planned_seconds = IntegerField()
    set_up_seconds = IntegerField()
    paused_us = BigIntegerField(null=True)
    paused_total_us = BigIntegerField()
    finished_us = BigIntegerField(null=True)
    timed = IntegerField()


class RunKnifeRow(Row):
    """A knife of a run."""

    run_id = IntegerField()
    knife_id = IntegerField()
    nominal_seconds = IntegerField()


class SaidRow(Row):
    """What was said of a box at a day's first look."""

    day = TextField()
    box_id = IntegerField()
    due_us = BigIntegerField()
    late_permille = IntegerField()


class HistoryRow(Named):
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


class PersonalRow(Named):
    """A person's own text behind a digest in history; can be emptied without breaking the chain."""

    id = AutoField()
    history_id = IntegerField()
    side = TextField()
    field = TextField()
    text = TextField()


_STATE: tuple[type[Row], ...] = (
    SettingsRow,
    ClosedDayRow,
    CustomerRow,
    BoxRow,
    KnifeRow,
    ThingRow,
    PromiseRow,
    LabelRow,
    PaymentRow,
    CloseOutRow,
    TickRow,
    DayOrderRow,
    BenchRunRow,
    RunKnifeRow,
    SaidRow,
    ChargeRow,
    *moved_tables.ROWS,
    *edge_tables.ROWS,
    *keeping_tables.ROWS,
    *shelf_tables.ROWS,
    *evening_tables.ROWS,
    *swaps_tables.ROWS,
)
STATE: dict[str, type[Row]] = {name_of(row): row for row in _STATE}
"""Every table of state by its name in history."""
