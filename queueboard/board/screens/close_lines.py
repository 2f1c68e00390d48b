"""What a close-out may tell once the count is typed: look-alikes elsewhere, what goes, what stays."""

from queueboard.money.bill import totals
from queueboard.phrases.closing import going_words
from queueboard.phrases.knives import last_seen_words
from queueboard.phrases.money import box_money_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.box import CloseCheck, CloseOut
from queueboard.values.knife import Knife, Thing
from queueboard.words import GoesBy, Settling, ThingState


def things_here(box: BoxPicture) -> tuple[Thing, ...]:
    """What came with the box and is still here, in the order of its line numbers."""
    return tuple(thing for thing in box.things if thing.state is ThingState.HERE)


def look_alike_lines(knife: Knife, picture: Picture) -> list[str]:
    """Where a knife of the same kind and length lies in another box: that tray is looked at first."""
    return [
        f"    looks like {other.tag}, {last_seen_words(other, picture.now)}: {box.customer.name}"
        for box in picture.boxes
        for other in box.on_hand
        if box.box.id != knife.box_id and other.kind == knife.kind and other.length_mm == knife.length_mm
    ]


def collector(box: BoxPicture, close: CloseOut) -> str:
    """Who takes it out of the shop."""
    if box.box.goes_by is GoesBy.PICK_UP:
        return close.handed_to
    carrier = box.label.carrier if box.label is not None else ""
    return f"the carrier, {carrier}" if carrier else "the carrier"


def cost_of_going(box: BoxPicture, check: CloseCheck) -> int:
    """What the knives that would leave now come to by themselves, in cents, with all that concerns the whole box."""
    return totals(box.bill.only(check.going)).total_cents


def going_lines(box: BoxPicture, close: CloseOut, picture: Picture) -> tuple[str, ...]:
    """Knives, things and money at the last step, a line each."""
    here = things_here(box)
    along = [thing.name for thing in here if thing.id in close.ticked_things]
    left = [thing.name for thing in here if thing.id not in close.ticked_things]
    going = box.without_missing
    settled = close.settled or Settling.PAID
    why = f", because {close.settled_why}" if close.settled_why else ""
    lines = (
        going_words(box),
        f"With it go: {', '.join(along)}" if along else "",
        f"Not with it: {', '.join(left)}" if left else "",
        f"Without, because: {close.missing_reason}" if close.missing_reason else "",
        f"Money: {box_money_words(going, picture.settings)}"
        + (f" ({settled.value}{why})" if going.owed_cents > 0 else ""),
    )
    return tuple(line for line in lines if line)
