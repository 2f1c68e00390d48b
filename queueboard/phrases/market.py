"""A market day as it is typed in: its lines read, held against the printed tags, and all of it in words.

Names are people's text, for a literal place only.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import date

from queueboard.errors import TypedError
from queueboard.intake.printed_tags import TagsUsed, hold_against
from queueboard.phrases.dates import date_words, many
from queueboard.phrases.money import amount, money
from queueboard.phrases.typed_market import read_market_line
from queueboard.settings.shapes import Settings
from queueboard.shop.market import known_as, line_cents, paid_cents
from queueboard.shop.market_pad import SOMEBODY_NEW, Pad, PadLine
from queueboard.shop.picture import BoxPicture
from queueboard.slotted import dataclass
from queueboard.values.customer import Customer
from queueboard.values.market import MarketBox, MarketLine
from queueboard.words import PayWay

SWITCHED_OFF = "The market stall is off: write on = true under [market] in the shop's own numbers (N on the board)."
NOTHING_TYPED = "Nothing is typed from the stall yet."
NOTHING_TO_BRING = "Nothing is promised for a market."
BRING, TWICE, NOT_USED, NOT_PRINTED = "BRING TO MARKET", "TWICE", "printed, never used", "not printed"
TAGS_NAMED = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenLine:
    """A line as it stands now."""

    kept: PadLine
    line: MarketLine | None
    """None where it cannot be read any more, since the shop's numbers have changed."""
    trouble: str = ""
    """Why it cannot be read."""
    alike: tuple[Customer, ...] = ()
    """Known customers who may be meant."""
    customer: Customer | None = None
    """The known customer it is taken for; None for somebody new."""
    cents: int = 0
    """What the list says."""
    paid_cents: int = 0

    @property
    def owed_cents(self) -> int:
        """What is still to pay; negative where more was paid."""
        return self.cents - self.paid_cents


@dataclass(frozen=True, slots=True, kw_only=True)
class MarketDay:
    """A pad read: its lines in the order in which they were typed, and the printed tags."""

    pad: Pad
    lines: tuple[SeenLine, ...]
    first: int
    last: int
    tags: TagsUsed
    open_numbers: frozenset[int]
    """Tags of these lines that are the numbers of boxes on the board."""

    @property
    def read(self) -> tuple[MarketLine, ...]:
        """The lines that can be read."""
        return tuple(seen.line for seen in self.lines if seen.line is not None)

    @property
    def boxes(self) -> tuple[MarketBox, ...]:
        """What is taken in."""
        return tuple(
            MarketBox(line=seen.line, customer_id=None if seen.customer is None else seen.customer.id)
            for seen in self.lines
            if seen.line is not None
        )

    @property
    def knives(self) -> int:
        """How many were counted in all."""
        return sum(len(line.knives) for line in self.read)

    @property
    def stays(self) -> int:
        """How many of them are brought to the next market."""
        return sum(line.stays for line in self.read)

    @property
    def unpaid(self) -> tuple[SeenLine, ...]:
        """Lines of which something was given back and less was paid than that comes to."""
        return tuple(one for one in self.lines if one.line is not None and one.line.gone and one.owed_cents > 0)

    @property
    def next_tag(self) -> int | None:
        """The tag behind that of the newest line; the first one on an empty pad, None behind the last."""
        newest = next((line.tag for line in reversed(self.read) if line.tag is not None), self.first - 1)
        return newest + 1 if self.first <= newest + 1 <= self.last else None


def market_day(pad: Pad, settings: Settings, customers: Sequence[Customer], open_numbers: frozenset[int]) -> MarketDay:
    """Read a pad with the shop's numbers and customers as they are now."""
    lines = tuple(_seen(kept, settings, customers) for kept in pad.lines)
    first, last = pad.tags or (settings.market.first_tag, settings.market.last_tag)
    typed = [seen.line.tag for seen in lines if seen.line is not None and seen.line.tag is not None]
    return MarketDay(
        pad=pad,
        lines=lines,
        first=first,
        last=last,
        tags=hold_against(first, last, typed),
        open_numbers=open_numbers & frozenset(typed),
    )


def _seen(kept: PadLine, settings: Settings, customers: Sequence[Customer]) -> SeenLine:
    try:
        line = read_market_line(kept.text, settings, next_tag=None)
    except TypedError as error:
        return SeenLine(kept=kept, line=None, trouble=str(error))
    alike, sure = known_as(customers, line.name, line.phone)
    if kept.whose:
        sure = next((one for one in alike if str(one.id) == kept.whose), None)
    return SeenLine(
        kept=kept,
        line=line,
        alike=alike,
        customer=sure,
        cents=line_cents(settings, line.knives),
        paid_cents=paid_cents(settings, line),
    )


def next_whose(seen: SeenLine) -> str:
    """Whose a line is said to be after one press more: each who may be meant, then somebody new, then again."""
    ids = [str(one.id) for one in seen.alike]
    now = str(seen.customer.id) if seen.customer is not None else SOMEBODY_NEW
    order = [*ids, SOMEBODY_NEW]
    return order[(order.index(now) + 1) % len(order)]


def line_words(seen: SeenLine, day: MarketDay) -> str:
    """What one line says behind its name: TWICE; 3 chef, 1 bread; 41.00 paid; known: Ms Verrin, Port Ansel."""
    line = seen.line
    if line is None:
        return f"{seen.kept.text}  NOT READ: {seen.trouble}"
    parts = (
        _tag_trouble(line, day),
        f"{knives_words(line)}; {_money_words(seen)}",
        "" if not line.stays else f"{line.stays if line.gone else 'all'} for the next market",
        whose_words(seen),
    )
    return "; ".join(filter(None, parts))


def who_words(line: MarketLine) -> str:
    """Verrin, 555 0123."""
    return ", ".join(filter(None, (line.name, line.phone)))


def knives_words(line: MarketLine) -> str:
    """3 chef, 1 bread."""
    return ", ".join(f"{count} {kind}" for kind, count in Counter(knife.kind for knife in line.knives).items())


def whose_words(seen: SeenLine) -> str:
    """Known: Ms Verrin, Port Ansel; or who may be meant as well."""
    if seen.customer is not None:
        one = seen.customer
        return "known: " + ", ".join(filter(None, (one.name, one.town, one.phone)))
    return f"new, though {many(len(seen.alike), 'customer')} may be meant" if seen.alike else ""


def _money_words(seen: SeenLine) -> str:
    if seen.line is not None and seen.paid_cents and seen.line.way is not PayWay.CASH:
        way = f" by {seen.line.way.value}"
    else:
        way = ""
    paid = f"{amount(seen.paid_cents)} paid{way}" if seen.paid_cents else ""
    if seen.owed_cents < 0:
        return f"{paid}, {amount(-seen.owed_cents)} more than it comes to"
    gone = seen.line is not None and seen.line.gone
    owed = f"{amount(seen.owed_cents)} {'UNPAID' if gone else 'to pay then'}" if seen.owed_cents else ""
    return ", ".join(filter(None, (paid, owed)))


def _tag_trouble(line: MarketLine, day: MarketDay) -> str:
    if line.tag is None:
        return "no tag, gets a number"
    if line.tag in day.tags.duplicates:
        return TWICE
    if line.tag in day.open_numbers:
        return f"BOX {line.tag} IS ON THE BOARD"
    return NOT_PRINTED if line.tag in day.tags.not_printed else ""


def sums_words(day: MarketDay, settings: Settings) -> str:
    """31 customers, 112 knives, 9 for the next market · cash 812.00, card 40.00 EUR · 21.00 UNPAID."""
    ways = Counter[PayWay]()
    for seen in day.lines:
        if seen.line is not None:
            ways[seen.line.way] += seen.paid_cents
    paid = ", ".join(f"{way.value} {amount(cents)}" for way, cents in ways.items() if cents)
    unpaid = sum(seen.owed_cents for seen in day.unpaid)
    people = f"{many(len(day.read), 'customer')}, {many(day.knives, 'knife')}"
    parts = (
        people + (f", {day.stays} for the next market" if day.stays else ""),
        f"{paid} {settings.currency}" if paid else "nothing paid",
        f"{amount(unpaid)} UNPAID" if unpaid else "",
    )
    return " · ".join(filter(None, parts))


def tags_words(day: MarketDay) -> tuple[str, ...]:
    """What is wrong with the tags, a line each: GAPS 533 · TWICE 512 · not printed 650; and what is left."""
    tags = day.tags
    said = (
        (f"GAPS, {NOT_USED}", tags.gaps),
        (f"{TWICE}, typed for two", tags.duplicates),
        (f"NOT PRINTED for this day ({day.first}-{day.last})", tags.not_printed),
    )
    troubles = tuple(f"{words}: {numbers_words(numbers)}" for words, numbers in said if numbers)
    used = f"tags {day.first}-{day.last}: {len(tags.used)} used, {len(tags.left)} left on the pad"
    return (*troubles, used if troubles else f"{used}, no gaps, none twice")


def numbers_words(numbers: Sequence[int]) -> str:
    """Tags one by one, runs of them as 533-535; many are cut short with their count."""
    runs = list(_runs(numbers))
    named = ", ".join(f"{first}" if first == last else f"{first}-{last}" for first, last in runs[:TAGS_NAMED])
    return named if len(runs) <= TAGS_NAMED else f"{named} ... {len(numbers)} in all"


def _runs(numbers: Sequence[int]) -> Iterator[tuple[int, int]]:
    """First and last of each run of rising numbers without a hole."""
    first = last = None
    for number in numbers:
        if last is not None and first is not None and number != last + 1:
            yield first, last
            first = None
        first, last = (number if first is None else first), number
    if first is not None and last is not None:
        yield first, last


def ask_first(day: MarketDay, settings: Settings) -> str:
    """What is asked once before the lines are taken in; empty where all is right."""
    gaps = f"{NOT_USED}: {numbers_words(day.tags.gaps)}" if day.tags.gaps else ""
    strange = f"{NOT_PRINTED}: {numbers_words(day.tags.not_printed)}" if day.tags.not_printed else ""
    owed = sum(seen.owed_cents for seen in day.unpaid)
    unpaid = f"{many(len(day.unpaid), 'customer')} gone unpaid, {money(owed, settings)}" if owed else ""
    said = "; ".join(filter(None, (gaps, strange, unpaid)))
    return f"{said[0].upper()}{said[1:]}. + once more takes all in as it is." if said else ""


def stops_taking_in(day: MarketDay) -> str:
    """Why the lines cannot be taken in yet; empty where they can."""
    if not day.lines:
        return NOTHING_TYPED
    unread = next((seen for seen in day.lines if seen.line is None), None)
    if unread is not None:
        return f"“{unread.kept.text}” is not read: {unread.trouble}"
    if day.tags.duplicates:
        return f"Tag {day.tags.duplicates[0]} stands in two lines: mend one; - in place of the tag gets its own number."
    if day.open_numbers:
        number = min(day.open_numbers)
        return f"Box {number} is on the board: another tag, or - in place of it, in the line of {number}."
    return ""


def bring_words(box: BoxPicture, today: date) -> str:
    """512  Sat 21 Nov: 2 of 4 ready, Ms Verrin, 555 0123."""
    day = "" if box.promise is None else date_words(box.promise.day, today)
    who = ", ".join(filter(None, (box.customer.name, box.customer.phone)))
    owed = f", {amount(box.owed_cents)} to pay" if box.owed_cents > 0 else ", paid"
    return f"{box.box.number}  {day}: {box.ready_count} of {len(box.on_hand)} ready{owed}, {who}"
