"""The sections about the shelf, the evening and the papers."""

from queueboard.phrases.number_sections_money import LAW, MINUTES, one
from queueboard.phrases.number_sorts import DAYS, MONEY, TEXT, counted, one_of
from queueboard.phrases.own_numbers import Section, numbers
from queueboard.words import PaperSize

_SHEETS = {size.value: size.value for size in (PaperSize.A4, PaperSize.LETTER)}
_SLIPS = {size.value: size.value for size in PaperSize}

EVENING_SECTIONS: tuple[Section, ...] = (
    Section(
        name="shelf",
        title="the shelf and call-backs",
        tables=("shelf",),
        parts=(
            numbers(
                "",
                one(("shelf", "notice_days"), "notices due after", DAYS, "7, 21, 42 days"),
                one(("shelf", "long_days"), "too long on the shelf after", counted("day"), "60 days"),
                one(("shelf", "redo_days"), "a call-back is free within", counted("day"), "14 days"),
            ),
        ),
        counts="It counts for notices that are due from now on; what was told stays.",
        caution=LAW,
        checked=("shelf", "last_checked"),
    ),
    Section(
        name="evening",
        title="the end of the day",
        tables=("evening",),
        parts=(
            numbers(
                "",
                one(("evening", "second_look_minutes"), "dust tray looked at again after", MINUTES, "20 minutes"),
                one(("evening", "change_in_till"), "change in the till", MONEY, "none"),
            ),
        ),
        counts="It counts from the next look and the next count on.",
        caution="A second look at the dust is no all-clear.",
    ),
    Section(
        name="papers",
        title="papers: sizes, phone on the stub",
        tables=("papers",),
        parts=(
            numbers(
                "",
                one(("papers", "size"), "slip, card and day sheet on", one_of(_SHEETS), "A4"),
                one(("papers", "slips"), "tags and stub on", one_of(_SLIPS), "A4"),
                one(("papers", "phone"), "the shop's phone on the stub", TEXT, "none"),
            ),
        ),
        counts="It counts for what is printed from now on.",
    ),
)
