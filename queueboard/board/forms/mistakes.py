"""Which field a mistake in the settings is about: the sentence without the line that nobody sees in a form."""

import re
from collections.abc import Sequence

from queueboard.board.forms.fields import Field
from queueboard.errors import QueueboardError, SettingsError
from queueboard.settings.locate import Path, lines_of


def mistake_in(
    error: QueueboardError, text: str, asked: Sequence[tuple[Path, Field]]
) -> tuple[str, Field | None] | None:
    """The sentence of a mistake in a text of settings and its field; None for an error of another kind.

    Of the fields on its line it is the one that the sentence names, else one that was typed in, else the first. Where
    no field is on its line the sentence says which line of all numbers it is.
    """
    found = re.match(r"line (\d+): (.*)", str(error), re.DOTALL) if isinstance(error, SettingsError) else None
    if found is None:
        return None
    line, sentence = int(found[1]), found[2]
    lines = lines_of(text)
    here = [(path, field) for path, field in asked if lines.get(path) == line]
    named = [field for path, field in here if sentence.startswith(f"{path[-1]} ")]
    touched = [field for _, field in here if field.touched]
    field = next(iter((*named, *touched, *(field for _, field in here))), None)
    said = sentence[:1].upper() + sentence[1:]
    if field is None:
        where = text.split("\n")[line - 1].strip()
        return f"{said}. That is line {line} of all numbers, {where}", None
    return f"{said}.", field
