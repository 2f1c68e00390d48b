"""Every section of the shop's own numbers, in the order of the screen.

A new table of the settings needs a section here, or a part in one; a test says so.
"""

from queueboard.phrases.number_parts import (
    BELT_ROWS,
    CARRIER_ROWS,
    CLOSURE_ROWS,
    KIND_ROWS,
    MARKET_ROWS,
    PROCESS_ROWS,
    edge_names,
    kind_names,
    last_days,
)
from queueboard.phrases.number_sections_evening import EVENING_SECTIONS
from queueboard.phrases.number_sections_market import MARKET
from queueboard.phrases.number_sections_money import (
    BOXES,
    GF,
    LAW,
    MINUTES,
    MONEY_SECTIONS,
    PERCENT,
    PLAN_MOVES,
    RULES,
    one,
)
from queueboard.phrases.number_sections_swaps import SWAPS
from queueboard.phrases.number_sorts import (
    CLOCK,
    COLLECTION,
    NAMES,
    SPANS,
    TEXT,
    YES,
    counted,
    one_of,
    whole,
)
from queueboard.phrases.own_numbers import Number, Section, each, listed, numbers
from queueboard.phrases.typed import WEEKDAYS
from queueboard.settings.reading_hours import WEEKDAYS as SHORT_DAYS
from queueboard.words import PlanOrder


def _days(table: str) -> tuple[Number, ...]:
    return tuple(one((table, short), day, SPANS, "closed") for short, day in zip(SHORT_DAYS, WEEKDAYS, strict=True))


def _handling() -> tuple[Number, ...]:
    told = {
        "intake_per_knife": "taking in, each knife",
        "intake_per_box": "taking in, each box",
        "test_per_knife": "testing, each knife",
        "wrap_per_knife": "wrapping, each knife",
        "pack_per_parcel": "packing, each parcel",
        "counter_per_box": "at the counter, each box",
    }
    return tuple(one(("handling", key), words, MINUTES, needed=True) for key, words in told.items())


SECTIONS: tuple[Section, ...] = (
    Section(
        name="shop",
        title="the shop: name, currency, units, country",
        tables=("shop", "last_checked"),
        parts=(
            numbers(
                "",
                one(("shop", "name"), "name", TEXT, needed=True),
                one(("shop", "currency"), "currency", TEXT, needed=True),
                one(("shop", "length_unit"), "lengths in", one_of({"cm": "cm", "in": "in"}), needed=True),
                one(("shop", "zone"), "clock on the wall", TEXT, needed=True),
                one(("shop", "country"), "country, two letters", TEXT, "none: no public holidays"),
                one(("shop", "region"), "state or province", TEXT, "none"),
                one(("last_checked", "after_days"), "checked is old after", counted("day"), "365 days"),
            ),
        ),
        counts="The currency stays once there is a box; lengths are kept in millimetres.",
    ),
    Section(
        name="hours",
        title="opening hours",
        tables=("hours",),
        parts=(numbers("", *_days("hours"), one(("shop", "ready_by"), "ready at the counter by", CLOCK, needed=True)),),
        counts=PLAN_MOVES,
    ),
    Section(
        name="closed",
        title="closed days, market days, holidays",
        tables=("closures", "markets"),
        parts=(
            listed("Closed", CLOSURE_ROWS),
            listed("Market days: nobody at the bench or the counter", MARKET_ROWS),
            numbers(
                "Public holidays", one(("shop", "open_on_holidays"), "open all the same on", NAMES, "none of them")
            ),
        ),
        counts=PLAN_MOVES,
        caution="Public holidays come from a list by country and region; it may be wrong for your town.",
    ),
    Section(
        name="bench",
        title="people and bench hours",
        tables=("bench",),
        parts=(
            numbers("", *_days("bench"), one(("planning", "people"), "at the bench at once", counted("person"), "1")),
        ),
        counts=PLAN_MOVES,
    ),
    Section(
        name="processes",
        title="processes and belts",
        tables=("processes", "belts", "edges"),
        parts=(
            listed("Processes: belts in order, finish", PROCESS_ROWS),
            numbers(
                "Setting up", one(("belts", "change_seconds"), "one change of belt", whole("seconds"), needed=True)
            ),
            each(
                "Process of an edge that its kind does not usually have",
                edge_names,
                Number(path=("edges",), words="", sort=TEXT, unset="as its kind"),
            ),
            listed("Belts by what stands on their back", BELT_ROWS),
        ),
        counts=PLAN_MOVES,
    ),
    Section(
        name="kinds",
        title="kinds with minutes and prices",
        tables=("kinds",),
        parts=(listed("Kinds: price · minutes tired, dull, chips to 1 mm, chips 2-3 mm", KIND_ROWS),),
        counts="Minutes move the plan only, and promises told are kept; prices count for knives taken in from now on.",
    ),
    Section(
        name="lines",
        title="lines: what an edge may read",
        tables=("gauge.lines", "gauge.edges"),
        parts=(
            each("By kind, the most any spot may need", kind_names, one(("gauge", "lines"), "", GF, "by its edge")),
            each("By edge, for all others", edge_names, one(("gauge", "edges"), "", GF, "250 plain, 400 serrated")),
        ),
        counts="It counts for verdicts from now on; readings stay as they were read.",
        caution="Lower is sharper. Bench readings are the shop's own; they are not the laboratory test of ISO 8442-5.",
    ),
    Section(
        name="gauge",
        title="the gauge: when an edge is read",
        tables=("gauge",),
        parts=(
            numbers(
                "",
                one(("gauge", "every"), "one of so many of a kind", counted("knife"), "10 knives"),
                one(("gauge", "fresh_belt"), "the first on a fresh belt", YES, "yes"),
                one(("gauge", "proof_card"), "of customers with proof cards", YES, "yes"),
                one(("gauge", "complaint"), "after a complaint", YES, "yes"),
                one(("gauge", "always"), "kinds always read", NAMES, "none"),
                one(("gauge", "by_cutting"), "kinds tested by cutting", NAMES, "none"),
                one(("gauge", "wobble_gf"), "wobble until a study shows it", GF, "15 gf"),
                one(("gauge", "most_apart_gf"), "heel and tip apart: look again", GF, "100 gf"),
            ),
        ),
        counts="It counts for knives that come to the bench from now on.",
    ),
    *MONEY_SECTIONS,
    Section(
        name="carriers",
        title="carriers and labels",
        tables=("parcels", "carriers"),
        parts=(
            numbers(
                "As usual",
                one(("parcels", "carrier_days"), "on the way", whole("working days"), needed=True),
                one(("parcels", "collection"), "collected on", COLLECTION, needed=True),
                one(("parcels", "cut_off"), "wrapped and labelled by", CLOCK, needed=True),
            ),
            listed("Carriers by name, where they differ", CARRIER_ROWS),
            last_days,
        ),
        counts=PLAN_MOVES,
        caution=RULES,
        checked=("parcels", "last_checked"),
    ),
    BOXES,
    Section(
        name="handling",
        title="minutes off the bench",
        tables=("handling",),
        parts=(numbers("", *_handling()),),
        counts=PLAN_MOVES,
    ),
    Section(
        name="planning",
        title="planning and buffers",
        tables=("planning",),
        parts=(
            numbers(
                "",
                one(("planning", "order"), "order", one_of({x.value: x.value for x in PlanOrder}), "fewest late"),
                one(("planning", "saved_percent"), "of a set-up, saved by a like run", PERCENT, "100 percent"),
                one(("planning", "sure_percent"), "how sure a told day is", PERCENT, "97 percent"),
                one(("planning", "safety_days"), "on top of every told day", counted("working day"), "0 working days"),
                one(("planning", "walk_in_minutes"), "kept a day for walk-ins", MINUTES, "30 minutes"),
                one(("planning", "tight_percent"), "tight from a chance of", PERCENT, "20 percent"),
                one(("planning", "announced_minutes"), "each knife not opened yet", MINUTES, "7 minutes"),
            ),
        ),
        counts=PLAN_MOVES,
    ),
    Section(
        name="keeping",
        title="copies, second folder, erasing",
        tables=("keeping",),
        parts=(
            numbers(
                "",
                one(("keeping", "second_folder"), "second folder, full path", TEXT, "none"),
                one(("keeping", "erase_after_days"), "may be erased after", counted("day"), "730 days"),
            ),
        ),
        counts="It counts from the next copy on.",
        caution="How long names and addresses must or may be kept is local law. " + LAW,
    ),
    *EVENING_SECTIONS,
    SWAPS,
    MARKET,
)


def section_with(name: str) -> Section:
    """The section with this name; KeyError when there is none."""
    return {section.name: section for section in SECTIONS}[name]
