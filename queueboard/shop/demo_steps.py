"""What can happen to a box in the demo's script, each by the operation a person would use."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime, timedelta

from queueboard.records import asking
from queueboard.records.reading import BOX, box_of
from queueboard.records.runs import open_runs
from queueboard.settings.fields import Table
from queueboard.settings.rules import knife_process
from queueboard.shop import closing, demo_readings, labelling, money, moving, noting, promising, rows, running, waiting
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_of
from queueboard.slotted import dataclass
from queueboard.values.actor import Actor
from queueboard.values.box import Box, CloseOut
from queueboard.values.knife import Knife
from queueboard.values.new import NewLabel, NewPayment, NewPromise
from queueboard.words import (
    Column,
    DeclineReason,
    LabelOwner,
    LabelState,
    Packing,
    PayWay,
    PromiseKind,
    Settling,
    ThingState,
    WaitingFor,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Hand:
    """Whose hand does something, in which shop and when; it sees everything as it is stored at that moment."""

    shop: Shop
    by: str
    at: datetime

    def actor(self) -> Actor:
        """A fresh action of this person."""
        return Actor(initials=self.by, now=self.at)

    def box(self, number: int) -> Box:
        """The newest box with this number."""
        with self.shop.reading() as database:
            return box_of(database.rows(f"{BOX} WHERE number = ? ORDER BY id DESC LIMIT 1", (number,))[0])

    def knives(self, number: int, named: str = "all") -> tuple[Knife, ...]:
        """Knives of a box: "all", or numbers and ranges like "1-3 5"."""
        box = self.box(number)
        with self.shop.reading() as database:
            knives = rows.knives_of_box(database, box.id)
        wanted = {n for part in named.split() for n in _range(part)} if named != "all" else {k.number for k in knives}
        return tuple(knife for knife in knives if knife.number in wanted)

    def close_out(self, box: Box) -> CloseOut:
        """The close-out of a box as it stands."""
        with self.shop.reading() as database:
            close = rows.close_out_now(database, box.id)
        if close is None:
            raise LookupError(f"Box {box.number} has no close-out under way.")
        return close


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A step of the script, for one box, seen from one day."""

    table: Table
    number: int
    today: date

    def text(self, key: str) -> str:
        """A text of the step, empty when it is not written."""
        return _text(self.table, key)

    def do(self, hand: Hand) -> None:
        """Let it be done by this hand."""
        verb = next(verb for verb in VERBS if self.table.has(verb))
        VERBS[verb](hand, self)


def promise_of(table: Table, today: date) -> NewPromise:
    """A promise for so many days from today."""
    return NewPromise(
        kind=PromiseKind(table.text("kind", longest=20)),
        day=day_of(table, "in_days", today),
        at=table.clock("clock") if table.has("clock") else None,
        told_to=_text(table, "told_to"),
        reason=_text(table, "reason"),
    )


def label_of(table: Table, today: date) -> NewLabel:
    """A return label that is good for so many days from today."""
    return NewLabel(
        owner=LabelOwner(table.text("owner", longest=20)),
        state=LabelState(table.text("state", longest=20)),
        carrier=_text(table, "carrier"),
        expires_on=day_of(table, "expires_in", today) if table.has("expires_in") else None,
        name_on=_text(table, "name_on"),
    )


def _range(part: str) -> Sequence[int]:
    first, _, last = part.partition("-")
    return range(int(first), int(last or first) + 1)


def day_of(table: Table, key: str, today: date) -> date:
    """The day that lies so many days from today."""
    return today + timedelta(days=table.whole(key, -60, 400, "days"))


def _text(table: Table, key: str) -> str:
    return table.text(key, longest=300, shortest=0) if table.has(key) else ""


def _move(hand: Hand, step: Step) -> None:
    knives, to = hand.knives(step.number, step.text("move")), Column(step.text("to"))
    asked = [knife for knife in knives if knife.gauge is not None and to is Column.READY]
    for knife in asked:
        demo_readings.test_by_gauge(hand.shop, hand.by, hand.at, knife, step.today)
    if rest := [knife for knife in knives if knife not in asked]:
        moving.move_knives(hand.shop, hand.actor(), rest, to)
    for knife in hand.knives(step.number, step.text("move")):
        if knife.gauge is not None and to is Column.ON_BENCH:
            demo_readings.read_dull(hand.shop, hand.by, hand.at, knife)


def _begin(hand: Hand, step: Step) -> None:
    knives = hand.knives(step.number, step.text("begin"))
    with hand.shop.reading() as database:
        _, settings = settings_of(database)
    process = knife_process(settings, knives[0])
    running.start_run(hand.shop, hand.actor(), process.name, knives, process.set_up_seconds)


def _bell(hand: Hand, step: Step) -> None:
    knives = hand.knives(step.number, step.text("bell"))
    with hand.shop.reading() as database:
        run = next(run for run in open_runs(database) if knives[0].id in run.knife_ids)
    running.pause_run(hand.shop, hand.actor(), run)


def _wait(hand: Hand, step: Step) -> None:
    reason = WaitingFor(step.text("wait"))
    if step.table.has("knives"):
        waiting.knives_wait(hand.shop, hand.actor(), hand.knives(step.number, step.text("knives")), reason)
    else:
        waiting.box_waits(hand.shop, hand.actor(), hand.box(step.number), reason)


def _decline(hand: Hand, step: Step) -> None:
    reason = DeclineReason(step.text("why"))
    for knife in hand.knives(step.number, step.text("decline")):
        noting.decline_knife(hand.shop, hand.actor(), knife, reason, step.text("note"))


def _note(hand: Hand, step: Step) -> None:
    if step.table.has("knives"):
        for knife in hand.knives(step.number, step.text("knives")):
            noting.note_knife(hand.shop, hand.actor(), knife, step.text("note"))
    else:
        noting.note_box(hand.shop, hand.actor(), hand.box(step.number), step.text("note"))


def _flags(hand: Hand, step: Step) -> None:
    flags = dict.fromkeys(step.table.texts("flags", longest=20), True)
    promising.set_flags(
        hand.shop,
        hand.actor(),
        hand.box(step.number),
        rush=flags.get("rush"),
        this_next=flags.get("this next"),
        never_slip=flags.get("never slip"),
    )


def _pack(hand: Hand, step: Step) -> None:
    moving.pack_box(hand.shop, hand.actor(), hand.box(step.number), Packing(step.text("pack")))


def _promise(hand: Hand, step: Step) -> None:
    promising.promise(
        hand.shop, hand.actor(), hand.box(step.number), promise_of(step.table.table("promise"), step.today)
    )


def _pay(hand: Hand, step: Step) -> None:
    cents = step.table.whole("pay", 1, 1_000_000, "cents")
    box = hand.box(step.number)
    with hand.shop.reading() as database:
        paid = asking.paid_cents(database, box.id)
    payment = NewPayment(cents=cents, way=PayWay(step.text("way")), paid_before_cents=paid)
    money.take_payment(hand.shop, hand.actor(), box, payment)


def _price(hand: Hand, step: Step) -> None:
    for knife in hand.knives(step.number, step.text("knives")):
        money.set_price(hand.shop, hand.actor(), knife, step.table.whole("price", 0, 1_000_000, "cents"))


def _label(hand: Hand, step: Step) -> None:
    labelling.set_label(hand.shop, hand.actor(), hand.box(step.number), label_of(step.table.table("label"), step.today))


def _count(hand: Hand, step: Step) -> None:
    """Begin a close-out: the blind count, and the tags that were ticked after it."""
    box = hand.box(step.number)
    closing.begin_close_out(hand.shop, hand.actor(), box)
    closing.count(hand.shop, hand.actor(), hand.close_out(box), step.table.whole("count", 0, 999, "knives"))
    if step.table.has("tick"):
        for knife in hand.knives(step.number, step.text("tick")):
            closing.tick(hand.shop, hand.actor(), hand.close_out(box), knife.id)


def _goes(hand: Hand, step: Step) -> None:
    """Go through a close-out to its end; what was counted and ticked before goes."""
    box = hand.box(step.number)
    _count(hand, step)
    if step.table.has("missing"):
        closing.ticks_done(hand.shop, hand.actor(), hand.close_out(box))
        closing.why_missing(hand.shop, hand.actor(), hand.close_out(box), step.text("missing"))
    _tick_things(hand, step, box)
    closing.confirm_names(hand.shop, hand.actor(), hand.close_out(box))
    closing.confirm_label(hand.shop, hand.actor(), hand.close_out(box), step.text("goes"))
    if step.table.has("settled"):
        settled, why = Settling(step.text("settled")), step.text("why")
        closing.settle(hand.shop, hand.actor(), hand.close_out(box), settled, why)
    closing.send_off(hand.shop, hand.actor(), hand.close_out(box))


def _tick_things(hand: Hand, step: Step, box: Box) -> None:
    """Tick what is here of the things, but for the one that cannot be found."""
    with hand.shop.reading() as database:
        things = [t for t in rows.things_of_box(database, box.id) if t.state is ThingState.HERE]
    for thing in things:
        if thing.name != step.text("without"):
            closing.tick_thing(hand.shop, hand.actor(), hand.close_out(box), thing.id)
    if things:
        closing.things_done(hand.shop, hand.actor(), hand.close_out(box))


VERBS: Mapping[str, Callable[[Hand, Step], None]] = {
    "goes": _goes,
    "count": _count,
    "move": _move,
    "begin": _begin,
    "bell": _bell,
    "wait": _wait,
    "decline": _decline,
    "flags": _flags,
    "pack": _pack,
    "promise": _promise,
    "pay": _pay,
    "price": _price,
    "label": _label,
    "note": _note,
}
"""The first of these that a step has is what it does; the rest of the step says how."""
