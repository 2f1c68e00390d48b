"""Counts in words: where the knives of a box are, which stand beyond the note, and the knives found."""

from datetime import datetime

from queueboard.intake.adding_up import BoxSum
from queueboard.phrases.dates import age_words, many, when_words
from queueboard.phrases.knives import knife_name, length_words
from queueboard.phrases.money import amount, money
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture
from queueboard.values.found import FoundKnife
from queueboard.values.knife import Knife

_ONES = (
    *("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"),
    *("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


def box_sum_words(total: BoxSum) -> str:
    """5 counted in + 1 added = 1 gone + 5 on hand; what is none is left out. It says so where it does not add up."""
    came = ((total.added, "added"), (total.moved_in, "moved in"))
    went = (
        (total.gone, "gone"),
        (total.moved_out, "moved out"),
        (total.struck, "struck off"),
        (total.found, "not theirs"),
    )
    left = " + ".join((f"{total.counted} counted in", *(f"{count} {what}" for count, what in came if count)))
    right = " + ".join((*(f"{count} {what}" for count, what in went if count), f"{total.on_hand} on hand"))
    return f"{left} = {right}" if total.adds_up else f"DOES NOT ADD UP: {left}, but {right}"


def note_words(box: BoxPicture, settings: Settings) -> str:
    """The knives beyond the note with their price, apart until the yes; then the total before it. Else empty."""
    if box.apart:
        tags = ", ".join(f"{knife.tag} {knife_name(knife, settings)}" for knife in box.apart)
        cents = sum(knife.price_cents for knife in box.apart)
        return f"beyond the note, apart until the yes: {money(cents, settings)}, {tags}"
    if box.agreed:
        before = box.before_the_yes.total_cents
        tags = ", ".join(knife.tag for knife in box.agreed)
        return f"yes to {tags}: {money(box.price_cents, settings)}, {amount(before)} before"
    return ""


def moved_lines(box: BoxPicture, now: datetime) -> tuple[str, ...]:
    """Each knife that went to another box or came from one, with the reason; people's text last."""
    return tuple(
        f"{move.from_tag} moved to box {move.to_box_number} "
        f"{when_words(move.moved_at.astimezone(now.tzinfo), now)}, {move.moved_by}: {move.why}"
        for move in box.moves
    )


def looks_like_words(twins: tuple[Knife, ...]) -> str:
    """The knives that one just typed could be taken for, with their marks, and that it wants one; people's text."""
    named = ", ".join(f"{twin.tag} ({twin.mark or 'no mark'})" for twin in twins[:3])
    more = f" and {len(twins) - 3} more" if len(twins) > 3 else ""
    return f"≈ looks like {named}{more}. Type a mark behind a comma; Enter once more takes it without."


def found_knife_words(found: FoundKnife, settings: Settings) -> str:
    """What a found knife is: chef 20 cm, red dot. A person's text comes last."""
    what = " ".join(filter(None, (found.kind, length_words(found.length_mm, settings.length_unit))))
    return ", ".join(filter(None, (what, found.mark)))


def found_where_words(found: FoundKnife, now: datetime) -> str:
    """Where a found knife lies, since when, noted by whom, and which box it came out of; a person's text first."""
    at = when_words(found.found_at.astimezone(now.tzinfo), now)
    out_of = f", out of box {found.from_box_number}" if found.from_box_number is not None else ""
    return f"lies: {found.place} · {at}, {found.found_by}{out_of} · {age_words(found.found_at, now)}"


def found_count_words(count: int) -> str:
    """How many knives are found and nobody's: 2 knives found, in no box."""
    return f"{many(count, 'knife')} found, in no box"


def count_in_words(count: int) -> str:
    """A count spelled out, 0 to 999: thirteen, twenty-one, four hundred seventeen."""
    if count < 20:
        return _ONES[count]
    if count < 100:
        return _TENS[count // 10] + (f"-{_ONES[count % 10]}" if count % 10 else "")
    rest = f" {count_in_words(count % 100)}" if count % 100 else ""
    return f"{_ONES[count // 100]} hundred{rest}"
