"""The section about market stalls."""

from queueboard.phrases.number_sections_money import one
from queueboard.phrases.number_sorts import TEXT, YES, whole
from queueboard.phrases.own_numbers import Section, numbers

MARKET = Section(
    name="market",
    title="market stall",
    tables=("market",),
    parts=(
        numbers(
            "",
            one(("market", "on"), "the shop has a market stall", YES, "no"),
            one(("market", "first_tag"), "first printed tag", whole(""), "500"),
            one(("market", "last_tag"), "last printed tag", whole(""), "560"),
            one(("market", "kind"), "kind of a knife only counted", TEXT, "the first kind"),
        ),
    ),
    counts="It counts for what is typed in from now on; boxes that are in keep what was quoted.",
)
"""On which days the stall stands is written with the closed days."""
