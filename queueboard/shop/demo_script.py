"""The script of the demo, read: who there is, what came in, and what happened to it, each at its time before now."""

import tomllib
from collections.abc import Callable, Iterator
from datetime import datetime, time, timedelta

from queueboard.intake.lines import read_line
from queueboard.settings.fields import Table
from queueboard.settings.locate import lines_of
from queueboard.settings.shapes import Settings
from queueboard.shop.announcing import announce_box
from queueboard.shop.correcting import correct_customer
from queueboard.shop.demo_steps import Hand, Step, day_of, label_of, promise_of
from queueboard.shop.looking import look
from queueboard.shop.numbers import fix_day_list
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import add_customer, customers, receive_box
from queueboard.slotted import dataclass
from queueboard.values.new import NewAnnounced, NewBox, NewKnife
from queueboard.words import CameBy, GoesBy

CUSTOMERS_DAYS_AGO = 35


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something that happened in the demo shop."""

    planned: datetime
    """As written; events happen in this order."""
    at: datetime
    """Never after now."""
    by: str
    act: Callable[[Hand], None]

    def happen(self, shop: Shop) -> None:
        """Let it happen, at its time and by its person's hand."""
        self.act(Hand(shop=shop, by=self.by, at=self.at))


def read_script(text: str, settings: Settings, now: datetime) -> tuple[Event, ...]:
    """All events of the script in the order of their times; now is in the shop's zone, and no event is later."""
    script = Table(values=tomllib.loads(text), path=(), lines=lambda: lines_of(text))
    people: dict[str, int] = {}
    events = [_customer(table, people, now) for table in script.tables("customers")]
    for table in script.tables("boxes"):
        events.extend(_box(table, settings, people, now))
    events.append(_event(script, "day_list", now, _fix_day_list))
    return tuple(sorted(events, key=lambda event: event.planned))


def _event(table: Table, key: str, now: datetime, act: Callable[[Hand], None]) -> Event:
    """An event at the time under the key: -2 09:40 is two days ago; what has not come yet today is a minute ago."""
    days, clock = table.text(key, longest=20).split()
    planned = datetime.combine(now.date() + timedelta(days=int(days)), time.fromisoformat(clock), tzinfo=now.tzinfo)
    return Event(planned=planned, at=min(planned, now - timedelta(minutes=1)), by=_by(table), act=act)


def _fix_day_list(hand: Hand) -> None:
    picture = look(hand.shop, hand.at)
    order = [run.knife_ids for run in picture.plan.runs]
    fix_day_list(hand.shop, hand.actor(), picture.now.date(), order)


def _by(table: Table) -> str:
    return table.text("by", longest=8) if table.has("by") else "MB"


def _text(table: Table, key: str) -> str:
    return table.text(key, longest=300, shortest=0) if table.has(key) else ""


def _customer(table: Table, people: dict[str, int], now: datetime) -> Event:
    table.only("key", "name", "phone", "town", "address", "notes", "proof_card")
    key = table.text("key", longest=20)

    def act(hand: Hand) -> None:
        fields = {name: _text(table, name) for name in ("name", "phone", "town", "address", "notes")}
        people[key] = add_customer(hand.shop, hand.actor(), **fields)
        if table.has("proof_card"):
            made = next(one for one in customers(hand.shop) if one.id == people[key])
            correct_customer(hand.shop, hand.actor(), made, proof_card=table.yes("proof_card"))

    at = now - timedelta(days=CUSTOMERS_DAYS_AGO)
    return Event(planned=at, at=at, by="MB", act=act)


def _box(table: Table, settings: Settings, people: dict[str, int], now: datetime) -> Iterator[Event]:
    number = table.whole("number", 1, 9999, "a box")

    def receive(hand: Hand) -> None:
        customer_id = people[table.text("customer", longest=20)]
        if table.has("expected_in"):
            announce_box(hand.shop, hand.actor(), _announced(table, settings, customer_id, now))
        else:
            receive_box(hand.shop, hand.actor(), _new_box(table, settings, customer_id, now))

    yield _event(table, "at", now, receive)
    for step in table.tables("steps"):
        yield _event(step, "at", now, Step(table=step, number=number, today=now.date()).do)


def _new_box(table: Table, settings: Settings, customer_id: int, now: datetime) -> NewBox:
    """The box as it came in; one without knives was not opened."""
    knives = _knives(table, settings) if table.has("knives") else ()
    goes_by = GoesBy(table.text("goes", longest=10))
    return NewBox(
        customer_id=customer_id,
        came_by=CameBy(table.text("came", longest=10)),
        goes_by=goes_by,
        counted=len(knives),
        knives=knives,
        things=table.texts("things", longest=60) if table.has("things") else (),
        note_says=table.whole("note_says", 0, 999, "knives") if table.has("note_says") else None,
        number=table.whole("number", 1, 9999, "a box"),
        carrier_days=settings.parcels.carrier_days if goes_by is GoesBy.PARCEL else 0,
        promise=promise_of(table.table("promise"), now.date()) if table.has("promise") else None,
        label=label_of(table.table("label"), now.date()) if table.has("label") else None,
        opened=table.has("knives"),
        note=_text(table, "note"),
    )


def _announced(table: Table, settings: Settings, customer_id: int, now: datetime) -> NewAnnounced:
    """A box that somebody has said will come, so many days from today; its parcel goes back to them."""
    return NewAnnounced(
        customer_id=customer_id,
        expected_knives=table.whole("expected_knives", 1, 999, "knives"),
        expected_on=day_of(table, "expected_in", now.date()),
        number=table.whole("number", 1, 9999, "a box"),
        carrier_days=settings.parcels.carrier_days,
        promise=promise_of(table.table("promise"), now.date()) if table.has("promise") else None,
        note=_text(table, "note"),
    )


def _knives(table: Table, settings: Settings) -> tuple[NewKnife, ...]:
    """The knives, typed in the shop's own shorthand."""
    lines = (read_line(text, settings) for text in table.texts("knives", longest=200))
    return tuple(line.knife for line in lines for _ in range(line.count))
