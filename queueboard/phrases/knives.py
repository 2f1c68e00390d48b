"""One knife in words: its line, the words that mark its state, where it is."""

from collections.abc import Iterable
from datetime import datetime
from decimal import ROUND_HALF_UP, Decimal

from queueboard.phrases.dates import age_words, when_words
from queueboard.priced_words import Finding
from queueboard.settings.shapes import Settings
from queueboard.values.knife import Knife
from queueboard.values.new import NewKnife
from queueboard.words import Column, Edge

REDO = "REDO"
DECLINED = "DECLINED"
WAIT = "WAIT"
GAUGE = "GAUGE"
LOOKING = "LOOKED FOR"
APART = "APART"

_PLACES = {
    Column.RECEIVED: "not begun",
    Column.ON_BENCH: "on the bench",
    Column.TESTING: "in testing",
    Column.READY: "ready",
    Column.GONE: "gone",
}


def place_words(column: Column) -> str:
    """Where a knife is, inside a sentence: not begun, on the bench, in testing, ready, gone."""
    return _PLACES[column]


def length_words(length_mm: int | None, unit: str) -> str:
    """20 cm, 20.5 cm, 8 in (to half an inch's tenth); empty when it was not measured."""
    if length_mm is None:
        return ""
    per_unit = Decimal("25.4") if unit == "in" else Decimal(10)
    number = (Decimal(length_mm) / per_unit).quantize(Decimal("0.1"), rounding=ROUND_HALF_UP)
    return f"{number:f} {unit}".replace(".0 ", " ")


def knife_signs(knife: Knife) -> tuple[str, ...]:
    """The words that mark a knife beyond its column: DECLINED, LOOKED FOR, WAIT, APART, GAUGE, REDO (REDO x2)."""
    redo = f"{REDO} x{knife.rework}" if knife.rework > 1 else REDO
    signs = (
        (DECLINED, knife.declined is not None),
        (LOOKING, knife.looking_for),
        (WAIT, knife.waiting_for is not None),
        (APART, knife.apart),
        (GAUGE, knife.gauge is not None and knife.column in {Column.ON_BENCH, Column.TESTING}),
        (redo, knife.rework > 0 and knife.column in {Column.ON_BENCH, Column.TESTING}),
    )
    return tuple(sign for sign, holds in signs if holds)


def knife_name(knife: Knife, settings: Settings) -> str:
    """What it is: chef 20 cm, bread 23 cm serrated, black handle. A person's text comes last."""
    kind = settings.kind(knife.kind)
    edge = "" if knife.edge is (kind.edge if kind else Edge.PLAIN) else knife.edge.value
    words = " ".join(filter(None, (knife.kind, length_words(knife.length_mm, settings.length_unit), edge)))
    return f"{words}, {knife.mark}" if knife.mark else words


def wish_in_capitals(knife: Knife) -> str:
    """What the customer wished, so that nobody at the bench overlooks it: WISH: KEEP THE PATINA; empty without one."""
    return f"WISH: {knife.wish.upper()}" if knife.wish else ""


def wishes_words(knives: Iterable[Knife]) -> str:
    """What was wished of several knives, each with its tag: WISH 417-3: KEEP THE PATINA · WISH 417-5: NO POLISH."""
    return " · ".join(f"WISH {knife.tag}: {knife.wish.upper()}" for knife in knives if knife.wish)


def knife_line(knife: Knife, settings: Settings) -> str:
    """The knife in one line: 417-3 REDO chef 20 cm, black handle."""
    return f"{knife.tag} {signed_name(knife, settings)}"


def signed_name(knife: Knife, settings: Settings) -> str:
    """The same beside its tag: REDO chef 20 cm, black handle."""
    return " ".join((*knife_signs(knife), knife_name(knife, settings)))


def found_words(knife: Knife | NewKnife) -> str:
    """What the inspection found: 2 chips, deepest 1 mm; tip broken, 3 mm missing; rust freckles. Empty for nothing."""
    chips = "" if knife.chip_um is None else _chips_words(knife.chips, knife.chip_um)
    tip = "" if knife.tip_um is None else f", {_mm(knife.tip_um)} missing"
    words = (f"{finding.value}{tip if finding is Finding.TIP_BROKEN else ''}" for finding in knife.findings)
    return "; ".join(filter(None, (chips, *words)))


def _chips_words(number: int | None, depth_um: int) -> str:
    if number == 1:
        return f"1 chip, {_mm(depth_um)}"
    return f"{'chips' if number is None else f'{number} chips'}, deepest {_mm(depth_um)}"


def _mm(size_um: int) -> str:
    """2 mm, 0.5 mm."""
    return f"{(Decimal(size_um) / 1000).normalize():f} mm"


def last_seen_words(knife: Knife, now: datetime) -> str:
    """Where a missing knife was last seen: on the bench, yesterday 16:20, MB."""
    return f"{place_words(knife.column)}, {when_words(knife.moved_at.astimezone(now.tzinfo), now)}, {knife.moved_by}"


def wait_words(knife: Knife, now: datetime) -> str:
    """What a knife waits for and for how long: yes to the estimate, 3 days; empty when it does not wait."""
    if knife.waiting_for is None:
        return ""
    since = f", {age_words(knife.waiting_since, now)}" if knife.waiting_since is not None else ""
    return f"{knife.waiting_for.value}{since}"
