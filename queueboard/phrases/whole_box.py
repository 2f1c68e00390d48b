"""Everything of one box for its own screen: facts in lines, one knife in a row and in full."""

from datetime import datetime

from queueboard.phrases.announced import NOT_HERE
from queueboard.phrases.bill import add_on_words, bill_lines, payment_words, price_words
from queueboard.phrases.boxes import batch_totals, twin_words, unopened_words
from queueboard.phrases.call_backs import call_back_lines
from queueboard.phrases.carriers import carrier_words
from queueboard.phrases.counts import box_sum_words, moved_lines
from queueboard.phrases.dates import told_words, when_words
from queueboard.phrases.knives import (
    found_words,
    knife_signs,
    last_seen_words,
    length_words,
    wait_words,
    wish_in_capitals,
)
from queueboard.phrases.labels import label_over_words
from queueboard.phrases.offers import offer_words
from queueboard.phrases.parcels import weight_lines
from queueboard.settings.shapes import Settings
from queueboard.shop.offering import label_offers
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.weight_seen import parcel_weight
from queueboard.values.knife import Knife
from queueboard.values.offer import OfferKind
from queueboard.words import ThingState

BOX_KEYS = {OfferKind.ALL_TODAY: "c", OfferKind.PART_TODAY: "c", OfferKind.ASK_NEW: "l", OfferKind.SHOP_LABEL: "l"}
"""The keys of the box's own screen: l asks which label it is to be."""

HEADS = ("tag", "where", "knife", "price", "mark and WISH")


def knife_cells(knife: Knife, box: BoxPicture, settings: Settings) -> tuple[str, ...]:
    """One knife as a row under HEADS; mark and wish are people's text, the wish in capitals."""
    what = " ".join(filter(None, (knife.kind, length_words(knife.length_mm, settings.length_unit))))
    words = " · ".join(filter(None, (knife.mark, knife.wish.upper(), found_words(knife))))
    return (
        knife.tag,
        " ".join((knife.column.value, *knife_signs(knife))),
        what,
        price_words(knife, box, settings),
        words,
    )


def whole_box_cells(box: BoxPicture) -> tuple[str, ...]:
    """The box itself as the first row under HEADS; last what it waits for and its note."""
    waits = "" if box.box.waiting_for is None else f"WAITS for {box.box.waiting_for.value}"
    words = " · ".join(filter(None, (waits, box.box.note)))
    if box.box.opened:
        return str(box.box.number), "", "the whole box", "", words
    opens = "+ here, o more" if box.box.announced else "o opens it"
    return str(box.box.number), unopened_words(box), opens, "", words


def knife_facts(knife: Knife, box: BoxPicture, picture: Picture) -> str:
    """The knife in full, people's text last."""
    waits = wait_words(knife, picture.now)
    parts = (
        knife.tag,
        " ".join(filter(None, (knife.kind, length_words(knife.length_mm, picture.settings.length_unit)))),
        f"{knife.edge.value} edge",
        f"came in {knife.condition.value}",
        found_words(knife),
        f"added {when_words(knife.added_at.astimezone(picture.now.tzinfo), picture.now)}" if knife.added_at else "",
        "BEYOND THE NOTE, apart until the yes" if knife.apart else "",
        last_seen_words(knife, picture.now),
        f"DECLINED: {knife.declined.value}" if knife.declined is not None else "",
        "LOOKED FOR" if knife.looking_for else "",
        f"WAITS for {waits}" if waits else "",
        f"came back from testing {knife.rework} x" if knife.rework else "",
        add_on_words(knife, box),
        twin_words(knife, picture) if knife.id in box.look_alikes else "",
        knife.mark,
        wish_in_capitals(knife),
        f"note: {knife.note}" if knife.note else "",
    )
    return " · ".join(part for part in parts if part)


def told_lines(box: BoxPicture, now: datetime) -> tuple[str, ...]:
    """Each date told, oldest first, and behind it the sum that stood beside it then."""
    lines: list[str] = []
    for promise in box.promises:
        lines.append(told_words(promise, now, box.box.goes_by))
        lines += [f"  reckoned: {promise.reckoned}"] if promise.reckoned else []
    return tuple(lines)


def box_facts(box: BoxPicture, picture: Picture) -> tuple[str, ...]:
    """How it came and goes, its totals, what was told, paid and noted; a line each."""
    own, now = box.box, picture.now
    came = when_words(own.received_at.astimezone(now.tzinfo), now)
    days = f", {own.carrier_days} carrier days" if own.carrier_days else ""
    paid = (payment_words(payment, picture) for payment in box.payments)
    gone = [f"{thing.name} ({thing.state.value})" for thing in box.things if thing.state is not ThingState.HERE]
    by = own.came_by.value
    comes = f"announced {came}, comes by {by}" if own.announced else f"came by {by} {came}"
    return (
        f"{comes}, goes back by {own.goes_by.value}{days}; {_counted(box)}",
        *batch_totals(box, picture.settings, now),
        *label_warnings(box, picture),
        *((f"stands at {own.place}",) if own.place else ()),
        *call_back_lines(box),
        *(() if box.sum.plain else (box_sum_words(box.sum),)),
        *moved_lines(box, now),
        *((f"of these: {', '.join(gone)}",) if gone else ()),
        *(line if line.startswith(" ") else f"told: {line}" for line in told_lines(box, now)),
        *bill_lines(box),
        *paid,
        *((f"note: {own.note}",) if own.note else ()),
        " · ".join(filter(None, (box.customer.phone, box.customer.town, box.customer.address, box.customer.notes))),
        *parcel_facts(box, picture),
    )


def label_warnings(box: BoxPicture, picture: Picture) -> tuple[str, ...]:
    """That the parcel is too heavy for its label, and what can be done where that dies; a line each."""
    offers = label_offers(box, picture)
    ways = " · ".join(f"{BOX_KEYS[offer.kind]} {offer_words(offer, picture.settings)}" for offer in offers)
    return tuple(filter(None, (label_over_words(box, picture), f"instead of this label: {ways}" if ways else "")))


def parcel_facts(box: BoxPicture, picture: Picture) -> tuple[str, ...]:
    """What its parcel weighs, and what its carrier asks for; a line each."""
    settings = picture.settings
    weight = parcel_weight(box, settings)
    if weight is None:
        return ()
    return (*weight_lines(weight, settings), carrier_words(settings.parcels, box.label, picture.now.date()))


def _counted(box: BoxPicture) -> str:
    if not box.box.opened:
        return NOT_HERE if box.box.announced else "not opened, not counted"
    note = "" if box.box.note_says is None else f", the note says {box.box.note_says}"
    return f"counted {box.box.counted}{note}"
