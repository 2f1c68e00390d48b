"""The closed lists of words that the shop speaks; each value is the text shown on a screen."""

from enum import StrEnum


class Column(StrEnum):
    """Where a knife stands. The first four are the columns of the board; gone knives have left it."""

    RECEIVED = "received"
    ON_BENCH = "on bench"
    TESTING = "testing"
    READY = "ready"
    GONE = "gone"


ON_BOARD: tuple[Column, ...] = (Column.RECEIVED, Column.ON_BENCH, Column.TESTING, Column.READY)
"""The four columns, in the order of work, left to right."""


class CameBy(StrEnum):
    """How a box came in."""

    COUNTER = "counter"
    MAIL = "mail"


class GoesBy(StrEnum):
    """How a box goes back."""

    PICK_UP = "pick-up"
    PARCEL = "parcel"


class Edge(StrEnum):
    """The edge as it must be kept."""

    PLAIN = "plain"
    SERRATED = "serrated"
    SCALLOPED = "scalloped"
    SINGLE_RIGHT = "single bevel right"
    SINGLE_LEFT = "single bevel left"


class Condition(StrEnum):
    """How the edge came in; with the kind it decides the hands-on minutes."""

    TIRED = "tired"
    DULL = "dull"
    SMALL_CHIPS = "chips to 1 mm"
    BIG_CHIPS = "chips 2-3 mm"


class WaitingFor(StrEnum):
    """What must arrive before the work can go on (common practice, no source)."""

    ESTIMATE = "yes to the estimate"
    COUNT = "yes to the count"
    MONEY = "money asked for"
    BELTS = "belts"
    LABEL = "return label"
    GLUE = "glue drying"
    PART = "a part"


class Packing(StrEnum):
    """How far a ready box is packed."""

    WRAPPED = "wrapped"
    BOXED = "boxed"
    LABEL_ON = "label on"
    ON_SHELF = "on the shelf"


class PromiseKind(StrEnum):
    """What kind of date was told to the customer."""

    DAY = "in hand by"
    """A day: for a parcel the day it is in the customer's hands, for a pick-up the day it is ready."""
    BY_TIME = "ready by"
    """A day and a time of day at the counter."""
    SHIPS_BY = "ships by"
    """The day the parcel leaves the shop; the carrier's days are the carrier's business."""
    WAITS = "while they wait, by"
    """The customer stays in the shop until a time of day."""
    NEXT_ROUND = "on the round of"
    """The day on which the shop's own van or stall brings it back."""

    @property
    def has_time(self) -> bool:
        """True for a promise to the minute."""
        return self in {PromiseKind.BY_TIME, PromiseKind.WAITS}


class LabelOwner(StrEnum):
    """Whose return label it is."""

    CUSTOMER = "customer's"
    SHOP = "shop's"


class LabelState(StrEnum):
    """Where the return label stands."""

    TO_BUY = "to buy"
    HERE = "here"
    USED = "used"


class PayWay(StrEnum):
    """How money came in."""

    CASH = "cash"
    CARD = "card"
    TRANSFER = "transfer"


class Rounding(StrEnum):
    """How an amount with parts of a cent becomes whole cents."""

    HALF_UP = "half up"
    HALF_EVEN = "half even"
    DOWN = "down"
    UP = "up"
    FIVE = "5 cents"
    """Half up, and what a box comes to goes to the nearest five cents."""


class Taxed(StrEnum):
    """What a rate of tax is typed for."""

    KNIVES = "knives"
    ADD_ONS = "add-ons"
    SHIPPING = "return shipping"


class Settling(StrEnum):
    """How a box's money stood when it left."""

    PAID = "paid"
    ON_ACCOUNT = "on account"
    UNPAID = "gone unpaid"


class DeclineReason(StrEnum):
    """Why a knife goes back unsharpened (common practice, no source)."""

    CRACKED = "cracked"
    TOO_THIN = "too thin to hold an edge"
    LOOSE_TANG = "loose tang"
    CERAMIC_CHIP = "ceramic chip"
    THROWAWAY = "throwaway serrated"
    UNSAFE_LOCK = "unsafe lock"
    NOT_LEGAL = "not legal to handle here"
    PRICE = "price not accepted"
    NO_EDGE = "takes no edge"


class BeltEnd(StrEnum):
    """Why a belt was taken off (common practice, no source)."""

    WORN = "worn out"
    GLAZED = "glazed"
    TORN = "torn"
    JOINT = "joint thump"
    GOUGED = "gouged"


class Lateness(StrEnum):
    """How a box stands against its ship-by."""

    LATE = "LATE"
    WILL_BE_LATE = "WILL BE LATE"
    TIGHT = "TIGHT"
    ON_TIME = ""


class PlanOrder(StrEnum):
    """What decides the order of work when not everybody can be helped."""

    FEWEST_LATE = "fewest late"
    """As few boxes as possible are late; those that are may wait long."""
    EARLIEST_DUE = "earliest due first"
    """Nobody is passed over; the pain is shared."""


class WhyNot(StrEnum):
    """Why a box cannot be told the day that is wished for; the last four are about other boxes, which are named."""

    OVER = "that time is over"
    SHUT = "the shop is shut"
    TOO_MUCH = "it is not sure to be done by then, even as the first of all"
    MAKES_LATE = "it would make"
    PRESSES = "too little would be left free before the promise of box"
    PRESSED = "too little is free already before the promise of box"
    BEHIND_LATE = "nothing can go before a box that is late already: box"


class StaysOut(StrEnum):
    """Why a measured run teaches nothing: its length, held against what the plan gave it, or its person said so."""

    THROWN_AWAY = "thrown away"
    TOO_LONG = "over twice"
    TOO_SHORT = "under a fifth of"


class RunReason(StrEnum):
    """Why a run stands where it does in the day list; the reasons of knives strongest first, then the planner's own."""

    BEGUN = "on the bench"
    THIS_NEXT = "this next"
    DUE_TODAY = "due by today"
    LABEL_TODAY = "label dies today"
    LABEL_TOMORROW = "label dies tomorrow"
    RUSH = "rush"
    REWORK = "rework"
    SHIP_BY = "by ship-by"
    NO_PROMISE = "no promise"
    SAVES_SET_UP = "saves a set-up"
    LATE_EITHER_WAY = "late either way"


class OrderWord(StrEnum):
    """What changed for a knife since the day list was fixed."""

    NEW = "new, at the end"
    LAST_CHANCE = "last chance, moved up"


class LabelWord(StrEnum):
    """How a return label stands against the last day on which using it still works."""

    TOO_LATE = "CANNOT BE USED IN TIME"
    DIES_TODAY = "DIES TODAY"
    DIES_TOMORROW = "DIES TOMORROW"
    BUY = "BUY"
    BUY_TODAY = "BUY TODAY"
    GOOD = "good"


class ThingState(StrEnum):
    """Where a thing that came with the box stands (sheath, roll, towel)."""

    HERE = "here"
    GONE = "gone"
    LOOKING = "looking for it"


class CloseStep(StrEnum):
    """The steps of a close-out, in order."""

    COUNT = "count"
    TICK = "tick the tags in hand"
    MISSING = "say why it goes without them"
    COMES_WITH = "comes with"
    NAMES = "names"
    LABEL = "label"
    MONEY = "money"
    GO = "go"


class WhyRead(StrEnum):
    """Why the gauge is asked for."""

    ALWAYS = "always read"
    COMPLAINT = "after a complaint"
    TRIAL = "in a belt trial"
    PROOF_CARD = "proof card"
    FRESH_BELT = "first on a fresh belt"
    NTH = "every so many"


class EdgeTestWay(StrEnum):
    """How it was found that an edge is OK or not."""

    FEEL = "by feel"
    """Paper, tomato or thumb: the daily test."""
    GAUGE = "gauge"
    EYE = "by eye"
    """The gauge was asked for and a person let the knife go without it."""
    MATERIAL = "on the real material"
    """Scissors and tools cut what they are made for."""


class Stage(StrEnum):
    """When a spot was read."""

    BEFORE = "before"
    AFTER = "after"
    """Deburred: the only readings that a verdict counts."""
    BETWEEN = "between belts"


class SecondLook(StrEnum):
    """What can be chosen for a knife that was twice not OK."""

    ONE_MORE = "one more try"
    LOWER = "lower the claim and tell"
    DECLINE = "decline without charge"


class Standing(StrEnum):
    """How one thing about the shop file stands."""

    GOOD = "good"
    LOOK = "look"
    """Nothing is damaged, but somebody should see to it."""
    DAMAGED = "damaged"


class PaperSize(StrEnum):
    """What a paper is printed on."""

    A4 = "A4"
    LETTER = "letter"
    LABEL = "label"
    """100 x 150 mm, as label printers have it."""
