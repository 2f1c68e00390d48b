"""Everything of one box for its own screen: facts in lines, one knife in a row and in full."""

from queueboard.phrases.announced import NOT_HERE
from queueboard.phrases.boxes import batch_totals, unopened_words
from queueboard.phrases.dates import told_words, when_words
from queueboard.phrases.knives import knife_signs, last_seen_words, length_words, wait_words
from queueboard.phrases.money import money
from queueboard.settings.shapes import Settings
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife
from queueboard.words import ThingState

HEADS = ("tag", "where", "knife", "price", "mark and WISH")


def knife_cells(knife: Knife, settings: Settings) -> tuple[str, ...]:
    """One knife as a row under HEADS; mark and wish are people's text, the wish in capitals."""
    what = " ".join(filter(None, (knife.kind, length_words(knife.length_mm, settings.length_unit))))
    words = " · ".join(filter(None, (knife.mark, knife.wish.upper())))
    return (
        knife.tag,
        " ".join((knife.column.value, *knife_signs(knife))),
        what,
        "free" if knife.declined is not None else money(knife.price_cents, settings),
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
        last_seen_words(knife, picture.now),
        f"DECLINED: {knife.declined.value}" if knife.declined is not None else "",
        "LOOKED FOR" if knife.looking_for else "",
        f"WAITS for {waits}" if waits else "",
        f"came back from testing {knife.rework} x" if knife.rework else "",
        twin_words(knife, picture) if knife.id in box.look_alikes else "",
        knife.mark,
        f"WISH: {knife.wish.upper()}" if knife.wish else "",
        f"note: {knife.note}" if knife.note else "",
    )
    return " · ".join(part for part in parts if part)


def twin_words(knife: Knife, picture: Picture) -> str:
    """Which knives of other boxes it could be taken for: ≈ looks like 423-1, 431-2."""
    twins = [
        other.tag
        for box in picture.boxes
        for other in box.on_hand
        if other.id in box.look_alikes
        and other.box_id != knife.box_id
        and (other.kind, other.length_mm) == (knife.kind, knife.length_mm)
    ]
    return f"≈ looks like {', '.join(twins)}: see its tag" if twins else ""


def box_facts(box: BoxPicture, picture: Picture) -> tuple[str, ...]:
    """How it came and goes, its totals, what was told, paid and noted; a line each."""
    own, now = box.box, picture.now
    came = when_words(own.received_at.astimezone(now.tzinfo), now)
    days = f", {own.carrier_days} carrier days" if own.carrier_days else ""
    told = (told_words(promise, now, own.goes_by) for promise in box.promises)
    paid = (
        f"paid {money(p.cents, picture.settings)} {p.way.value}, {when_words(p.at.astimezone(now.tzinfo), now)}, {p.by}"
        for p in box.payments
    )
    gone = [f"{thing.name} ({thing.state.value})" for thing in box.things if thing.state is not ThingState.HERE]
    by = own.came_by.value
    comes = f"announced {came}, comes by {by}" if own.announced else f"came by {by} {came}"
    return (
        f"{comes}, goes back by {own.goes_by.value}{days}; {_counted(box)}",
        *batch_totals(box, picture.settings, now),
        *((f"of these: {', '.join(gone)}",) if gone else ()),
        *(f"told: {line}" for line in told),
        *paid,
        *((f"note: {own.note}",) if own.note else ()),
        " · ".join(filter(None, (box.customer.phone, box.customer.town, box.customer.address, box.customer.notes))),
    )


def _counted(box: BoxPicture) -> str:
    if not box.box.opened:
        return NOT_HERE if box.box.announced else "not opened, not counted"
    note = "" if box.box.note_says is None else f", the note says {box.box.note_says}"
    return f"counted {box.box.counted}{note}"
