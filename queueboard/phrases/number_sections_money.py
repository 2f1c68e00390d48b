"""The sections about money and parcels, and the words that several sections share."""

from queueboard.phrases.number_parts import (
    BOX_ROWS,
    LENGTH_COLUMNS,
    SHIPPING_ROWS,
    STEP,
    edge_names,
    kind_names,
)
from queueboard.phrases.number_sorts import (
    GRAMS,
    HANDLE,
    MONEY,
    NAMES,
    TEXT,
    Sort,
    counted,
    number,
    one_of,
    whole,
)
from queueboard.phrases.own_numbers import Number, Section, each, listed, numbers, together
from queueboard.settings.parcel_shapes import SideRounding, WeightRounding
from queueboard.words import Rounding, Taxed

NOT_ASKED = "not asked for"
TOLD_STAYS = "It counts for what is told from now on; open and gone boxes keep what was quoted."
PLAN_MOVES = "The plan is made anew; prices and days told stay as they were told."
LAW = "Check local law; nothing of it is built in."
RULES = "Check the carrier's current rules for knives, and local law on age checks; nothing of them is built in."
MINUTES, PERCENT, GF = whole("minutes"), whole("percent"), whole("gf")


def one(path: tuple[str, ...], words: str, sort: Sort, unset: str = "not written", *, needed: bool = False) -> Number:
    """One number of a section; a text or a list that is emptied stays written, as empty."""
    emptied = {TEXT: '""', NAMES: "[]"}.get(sort, "")
    return Number(path=path, words=words, sort=sort, unset=unset, needed=needed, emptied=emptied)


MONEY_SECTIONS: tuple[Section, ...] = (
    Section(
        name="prices",
        title="prices, add-ons, rush",
        tables=("prices",),
        parts=(
            numbers(
                "What is added",
                one(("prices", "chip_mm"), "each mm of the deepest chip", MONEY, NOT_ASKED),
                one(("prices", "tip"), "broken tip", MONEY, NOT_ASKED),
                one(("prices", "rust"), "rust", MONEY, NOT_ASKED),
                one(("prices", "thinning"), "thinning", MONEY, NOT_ASKED),
                one(("prices", "bolster"), "bolster", MONEY, NOT_ASKED),
                one(("prices", "straightening"), "straightening", MONEY, NOT_ASKED),
                one(("prices", "handle"), "loose handle or rivet", MONEY, NOT_ASKED),
                one(("prices", "rush_percent"), "rush, on the work", PERCENT, NOT_ASKED),
            ),
            numbers(
                "The bill",
                one(("prices", "minimum"), "work of a box at least", MONEY, NOT_ASKED),
                one(("prices", "mail_minimum"), "of a box by mail at least", MONEY, "as any box"),
                one(("prices", "rounding"), "parts of a cent", one_of({x.value: x.value for x in Rounding}), "half up"),
                one(("prices", "hold_after_days"), "account on hold after", counted("day"), "never"),
            ),
            each(
                "An edge that its kind does not usually have, of the price",
                edge_names,
                one(("prices", "edges"), "", PERCENT, "100 percent"),
            ),
            numbers("By length", one(("prices", "length_step"), "lengths count up to the next", STEP, "1")),
            together("By length, in place of the flat price", kind_names, ("prices", "by_length"), *LENGTH_COLUMNS),
        ),
        counts=TOLD_STAYS,
    ),
    Section(
        name="shipping",
        title="shipping: what the way back costs",
        tables=("prices.shipping",),
        parts=(
            listed("Bands, the fewest first", SHIPPING_ROWS),
            numbers("", one(("prices", "free_shipping_from"), "free from work of", MONEY, "never free")),
        ),
        counts=TOLD_STAYS,
    ),
    Section(
        name="tax",
        title="tax",
        tables=("prices.tax",),
        parts=(
            numbers(
                "Put on top",
                *(
                    one(("prices", "tax", sort.name.lower()), f"on {sort.value}", number("percent"), "no tax")
                    for sort in Taxed
                ),
            ),
        ),
        counts=TOLD_STAYS,
        caution="Whether sharpening, repairs or carriage are taxed, and how, is your local law's matter. " + LAW,
    ),
)

BOXES = Section(
    name="boxes",
    title="boxes to pack in, weights, size",
    tables=("parcels.boxes", "parcels.volume", "parcels.weights"),
    parts=(
        listed("Boxes, the smallest first", BOX_ROWS),
        numbers(
            "What the size of a parcel counts as",
            one(("parcels", "volume", "divisor"), "divided by", whole(""), "size counts for nothing"),
            one(("parcels", "volume", "unit"), "cubic", one_of({"in": "in", "cm": "cm"})),
            one(
                ("parcels", "volume", "sides"),
                "each side",
                one_of({x.value: x.value for x in SideRounding}),
                "half up",
            ),
            one(
                ("parcels", "volume", "weight"),
                "the weight",
                one_of({x.value: x.value for x in WeightRounding}),
                "up to whole",
            ),
        ),
        numbers(
            "What a parcel weighs",
            one(("parcels", "weights", "guard_and_wrap_g"), "guard and wrap, each knife", GRAMS, "25 g"),
            one(("parcels", "weights", "thing_g"), "a sheath, a roll", GRAMS, "150 g"),
            one(("parcels", "weights", "other_g"), "a knife of another kind", GRAMS, "180 g"),
            one(("parcels", "weights", "handle_mm"), "a handle, on top of the edge", HANDLE, "130 mm"),
        ),
        each("By kind", kind_names, one(("parcels", "weights", "kinds"), "", GRAMS, "as another kind")),
    ),
    counts="It counts for the weights worked out from now on; what was weighed stays.",
    caution=RULES,
)
