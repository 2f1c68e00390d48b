"""The section about swap sets of kitchens."""

from queueboard.phrases.number_sections_money import one
from queueboard.phrases.number_sorts import YES, counted, number
from queueboard.phrases.own_numbers import Section, numbers

SWAPS = Section(
    name="swaps",
    title="swap sets of kitchens",
    tables=("swaps",),
    parts=(
        numbers(
            "",
            one(("swaps", "on"), "kitchens with swap sets", YES, "no"),
            one(("swaps", "waiting_days"), "missing goes on the statement after", counted("day"), "7 days"),
            one(("swaps", "free_nick_mm"), "a nick is free up to", number("mm"), "1 mm"),
        ),
    ),
    counts="It counts for the next round; what was charged stays.",
)
