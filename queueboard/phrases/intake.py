"""What was typed at receiving, in plain words: the echo of a line, the sum of all lines."""

from collections.abc import Sequence

from queueboard.intake.lines import KnifeLine
from queueboard.phrases.bill import sums_words
from queueboard.phrases.dates import many
from queueboard.phrases.knives import found_words, length_words
from queueboard.phrases.money import money
from queueboard.settings.shapes import Settings
from queueboard.values.totals import Totals


def line_words(line: KnifeLine, settings: Settings) -> str:
    """One typed line as it was understood, with minutes and price; a wish stands in capitals.

    The person's own words come last, for a literal place only.
    """
    knife = line.knife
    each = " each" if line.count > 1 else ""
    parts = [
        f"{line.count} {knife.kind}",
        length_words(knife.length_mm, settings.length_unit) or "not measured",
        knife.edge.value,
        knife.condition.value,
        *filter(None, (found_words(knife), "PRICED APART" if knife.apart else "")),
        f"{line.minutes} min{each}" if line.minutes is not None else "NOT IN THE SHOP'S LIST, decline it",
        f"{money(line.price_cents, settings)}{each}",
    ]
    return " · ".join([*parts, *(text for text in (knife.mark, knife.wish.upper()) if text)])


def lines_sum(
    lines: Sequence[KnifeLine],
    counted: int | None,
    settings: Settings,
    note_says: int | None = None,
    sums: Totals | None = None,
) -> str:
    """All lines together: 12 of 13 typed · 96 min · 125.00 EUR; without a count, 12 knives typed.

    Where the note says another number than was counted, that is told, and which knives are priced apart.
    sums: what the whole box would come to, shipping and all; None for the lines alone.
    """
    typed = sum(line.count for line in lines)
    minutes = sum(line.count * (line.minutes or 0) for line in lines)
    cents = sum(line.count * line.price_cents for line in lines)
    how_many = f"{many(typed, 'knife')} typed" if counted is None else f"{typed} of {counted} typed"
    price = money(cents, settings) if sums is None else sums_words(sums, settings) or money(sums.total_cents, settings)
    return f"{how_many} · {minutes} min · {price}{_differs(lines, counted, note_says)}"


def _differs(lines: Sequence[KnifeLine], counted: int | None, note_says: int | None) -> str:
    if counted is None or note_says is None or counted == note_says:
        return ""
    if counted < note_says:
        return f" · the note says {note_says}: it waits for the yes to the count"
    said = any(line.knife.apart for line in lines)
    which = "those typed apart" if said else f"the last {counted - note_says}"
    return f" · the note says {note_says}: {which} priced apart until the yes"
