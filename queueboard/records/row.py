"""What every table has in common, as peewee sees it."""

import re
from typing import ClassVar

from peewee import AutoField, IntegerField, Model


def name_of(model: type[Model]) -> str:
    """The table of a class: CloseOutRow holds the rows of close_out."""
    return re.sub(r"\B(?=[A-Z])", "_", model.__name__.removesuffix("Row")).lower()


class Named(Model):
    """What gives every class its table's name."""

    class Meta:
        table_function = name_of


class Row(Named):
    """A row of state: an id, and a version that rises with each change."""

    personal: ClassVar[frozenset[str]] = frozenset()
    """Columns that hold a person's own text; history keeps only a salted digest of them."""

    told: ClassVar[frozenset[str]] = frozenset()
    """Columns that stand in every line of history about a row: questions about the past read them there."""

    id = AutoField()
    row_version = IntegerField()
