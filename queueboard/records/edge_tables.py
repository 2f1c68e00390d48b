"""The tables of tests, readings, belts and trials as peewee sees them."""

from peewee import BigIntegerField, IntegerField, TextField

from queueboard.records.row import Row


class SpotRow(Row):
    """A marked place on an edge."""

    personal = frozenset({"name"})
    knife_id = IntegerField()
    place = IntegerField()
    name = TextField()
    from_heel_mm = IntegerField(null=True)
    tooth = IntegerField(null=True)


class ReadingRow(Row):
    """A push that an edge needed at a spot; struck when it was wrong."""

    personal = frozenset({"struck_why"})
    spot_id = IntegerField()
    stage = TextField()
    belt = TextField()
    deburred = IntegerField()
    force_gf = IntegerField()
    read_us = BigIntegerField()
    read_by = TextField()
    struck_us = BigIntegerField(null=True)
    struck_why = TextField()


class EdgeTestRow(Row):
    """OK or not OK, and how that was found."""

    knife_id = IntegerField()
    way = TextField()
    ok = IntegerField()
    belt = TextField()
    tested_us = BigIntegerField()
    tested_by = TextField()


class SecondLookRow(Row):
    """What was chosen for a knife that was twice not OK."""

    personal = frozenset({"why"})
    knife_id = IntegerField()
    choice = TextField()
    why = TextField()
    chosen_us = BigIntegerField()
    chosen_by = TextField()


class StudyRow(Row):
    """Repeated readings that show the tester's wobble."""

    personal = frozenset({"changed"})
    changed = TextField()
    knives = IntegerField(default=10)
    begun_us = BigIntegerField()
    begun_by = TextField()
    finished_us = BigIntegerField(null=True)


class StudyReadingRow(Row):
    """One of a study's readings."""

    study_id = IntegerField()
    knife = IntegerField()
    number = IntegerField()
    force_gf = IntegerField()


class BeltRow(Row):
    """A belt on the machine, from the day it was fitted to the day it was taken off."""

    personal = frozenset({"removed_why"})
    process = TextField()
    label = TextField()
    step = TextField(default="")
    was_belt_id = IntegerField(null=True)
    fitted_us = BigIntegerField()
    fitted_by = TextField()
    removed_us = BigIntegerField(null=True)
    removed_for = TextField(null=True)
    removed_why = TextField()


class BeltSparesRow(Row):
    """How many new belts of a label lie in the drawer."""

    label = TextField()
    spares = IntegerField()


class StablePeriodRow(Row):
    """When the shop found the work of a process good; the limits of its chart come from then."""

    process = TextField()
    first_us = BigIntegerField()
    last_us = BigIntegerField()


class TrialRow(Row):
    """A belt trial with its rule, written down before the first knife."""

    kind = TextField()
    process = TextField()
    belt = TextField()
    fall_tenths = IntegerField()
    or_halves_not_ok = IntegerField()
    each = IntegerField()
    draw = TextField()
    seed = IntegerField()
    begun_us = BigIntegerField()
    begun_by = TextField()
    ended_us = BigIntegerField(null=True)


class TrialKnifeRow(Row):
    """A knife of a trial and the half it was put into."""

    trial_id = IntegerField()
    knife_id = IntegerField()
    place = IntegerField()
    half = TextField()


ROWS: tuple[type[Row], ...] = (
    SpotRow,
    ReadingRow,
    EdgeTestRow,
    SecondLookRow,
    StudyRow,
    StudyReadingRow,
    BeltRow,
    BeltSparesRow,
    StablePeriodRow,
    TrialRow,
    TrialKnifeRow,
)
