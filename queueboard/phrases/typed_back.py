"""The day sheet typed back after a power cut: its lines in their order, and what is typed for one of them."""

import re
from collections.abc import Iterable

from queueboard.clean import shown
from queueboard.errors import TypedError
from queueboard.phrases.dates import when_words
from queueboard.phrases.day import knife_by_id, leave_words, leaves_today, runs_today
from queueboard.phrases.knives import place_words, signed_name
from queueboard.phrases.money import money, owed_words
from queueboard.phrases.typed import parse_cents, parse_tag
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.slotted import dataclass
from queueboard.values.box import Payment
from queueboard.words import PayWay

WAYS = {"1": PayWay.CASH, "2": PayWay.CARD, "3": PayWay.TRANSFER}
"""As in a close-out."""
WAY_TAKEN = {PayWay.CASH: "in cash", PayWay.CARD: "by card", PayWay.TRANSFER: "by transfer"}
_LINE = re.compile(
    r"(?:([0-9]{1,6}-[0-9]{1,3}(?=[\s+*-]|$)|[0-9]{1,6}(?=[\s+-]|$))\s*)?([+-])?\s*(?:([0-9])?\*\s*([0-9.,]+))?"
)
HOW = (
    "+ done · - not done · *41.00 paid in cash, 2*41.00 by card, 3*41.00 by transfer · +*41.00 both · a tag goes there"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedLine:
    """What was typed for one line of the sheet."""

    tag: str = ""
    """The line it is about; empty for the one that is due."""
    done: bool | None = None
    """None where nothing was said of it."""
    cents: int = 0
    """What was paid; 0 for nothing."""
    way: PayWay = PayWay.CASH

    @property
    def goes_there(self) -> bool:
        """True for a tag alone, which leads to its line and says nothing of it."""
        return bool(self.tag) and self.done is None and not self.cents


def read_typed_line(text: str) -> TypedLine:
    """Read `+`, `-`, `*41.00`, `+2*41.00`, with or without a tag before it; a tag alone; or nothing at all."""
    match = _LINE.fullmatch(text.strip())
    if match is None:
        raise TypedError(f"“{shown(text)}” is not understood. Type + or -, and *41.00 for what was paid.")
    tag, done, way, paid = match.groups()
    if way is not None and way not in WAYS:
        raise TypedError(f"There is no way {way} to pay: 1 cash, 2 card, 3 transfer, such as 2*41.00.")
    return TypedLine(
        tag=tag or "",
        done=None if done is None else done == "+",
        cents=parse_cents(paid) if paid else 0,
        way=WAYS[way or "1"],
    )


def sheet_tags(picture: Picture) -> tuple[str, ...]:
    """The lines of the day sheet that can be typed back, in its order: today's knives, then the boxes that leave."""
    knives = knife_by_id(picture)
    worked = (knives[k].tag for run in runs_today(picture) for k in run.knife_ids if k in knives)
    return (*worked, *(str(box.box.number) for box in leaves_today(picture)))


def sheet_order(picture: Picture) -> str:
    """The same, a line each: what is kept beside a sheet that is written, so that it can be typed back."""
    return "".join(f"{tag}\n" for tag in sheet_tags(picture))


def sheet_line_words(tag: str, picture: Picture) -> str:
    """One line as the board has it now: in testing, 41.00 USD to pay: chef 20 cm, Maren Tallis."""
    box = picture.box(int(tag.partition("-")[0]))
    if box is None:
        return f"{tag} has left the board"
    owed = owed_words(box.owed_cents, picture.settings)
    if "-" not in tag:
        paid = f", {money(box.paid_cents, picture.settings)} paid" if box.paid_cents else ""
        return f"{owed}{paid}: {leave_words(box)}"
    knife = next((one for one in box.knives if one.tag == tag), None)
    if knife is None:
        return f"{tag} is not in its box any more"
    return f"{place_words(knife.column)}, {owed}: {signed_name(knife, picture.settings)}, {box.customer.name}"


def cut_off_words(tag: str, meanwhile: Iterable[Payment], picture: Picture) -> str:
    """What is said of a line that a power cut has cut off and that is not stored, and of others' money since."""
    again = f"Typed for {tag} when the power went: Enter takes in what of it is not stored yet."
    number = parse_tag(tag).box
    came = "".join(
        f" Meanwhile {money(one.in_cents, picture.settings)} came in for box {number} by {shown(one.by)}."
        for one in meanwhile
    )
    return again + came


def paid_already_words(line: TypedLine, earlier: TypedLine, box: BoxPicture, picture: Picture) -> str:
    """What is asked before money is taken that may be stored already; empty where nothing speaks for it.

    The same sum in the same way was taken for the box, by whomever, or the sum typed before for this very line was.
    """
    sums = {(one.cents, one.way) for one in (line, earlier) if one.cents}
    known = next((p for p in reversed(box.payments) if (p.in_cents, p.way) in sums), None) if line.cents else None
    if known is None:
        return ""
    when = when_words(known.at.astimezone(picture.now.tzinfo), picture.now)
    taken = f"{money(known.cents, picture.settings)} {WAY_TAKEN[known.way]} was taken for box {box.box.number}"
    return (
        f"{taken} {when} by {shown(known.by)}. Is this other money? "
        f"Enter once more takes {money(line.cents, picture.settings)} besides."
    )
