"""Swap sets of kitchens in words; names of kitchens and sets are people's text, for a literal place only."""

from collections.abc import Iterator, Mapping
from datetime import date

from queueboard.phrases.dates import date_words, day_words
from queueboard.phrases.money import amount
from queueboard.phrases.owing import hold_words
from queueboard.settings.shapes import Settings
from queueboard.shop.swaps_seen import Kitchen, MissingSeen, SetSeen

NO_KITCHENS = "No kitchen has swap sets yet: W on the board, then +, describes the first set."
SWITCHED_OFF = "Swap sets are off: write on = true under [swaps] in the shop's own numbers (N on the board)."

CLEAN, DULL, THERE, MISSING = "CLEAN TRAY, here", "DULL, here", "WITH THE KITCHEN", "MISSING"
DAMAGE, CHEF = "DAMAGE OF THE LAST ROUND", "FOR THE CHEF"


def kitchen_words(kitchen: Kitchen, today: date) -> str:
    """What is to know at a glance: next round Tue 17 Nov with set B, CHECK IT TODAY, 1 missing, HOLD."""
    lost = sum(one.knife.found_at is None for one in kitchen.missing)
    said = (
        next_words(kitchen, today),
        f"{lost} missing" if lost else "nothing missing",
        "HOLD" if kitchen.hold is not None else "",
    )
    return ", ".join(filter(None, said))


def next_words(kitchen: Kitchen, today: date) -> str:
    """Next round Tue 17 Nov with set B, checked complete; and CHECK IT where that is due."""
    if kitchen.next_round is None:
        return "no round yet"
    day = f"next round {date_words(kitchen.next_round, today)}"
    if kitchen.next_set is None:
        return f"{day}, no set is here"
    said = f"{day} with set {kitchen.next_set.name}"
    check = kitchen.check
    if check is not None and check.complete:
        return f"{said}, checked complete ({check.checked_by})"
    if check is not None:
        said += f", checked ({check.checked_by}): {check.missing} missing, {check.not_clean} not clean"
    return f"{said}, CHECK IT" if kitchen.check_due else said


def sheet_parts(kitchen: Kitchen, settings: Settings, today: date) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Headings with their lines: the clean tray above, the dull one below, then what is missing and what is charged."""
    yield CLEAN, _trays(kitchen, "clean_here") or ("nothing",)
    yield DULL, _trays(kitchen, "dull_here") or ("nothing",)
    yield THERE, _trays(kitchen, "with_kitchen") or ("nothing",)
    yield MISSING, tuple(missing_words(one, today) for one in kitchen.missing) or ("nothing",)
    if kitchen.damage:
        yield (
            DAMAGE,
            tuple(f"{x.tag} {x.kind}: {x.what} {amount(x.cents) if x.cents else 'free'}" for x in kitchen.damage),
        )
    if kitchen.chef:
        yield CHEF, (chef_words(kitchen.chef),)
    if kitchen.hold is not None:
        yield "HOLD", (hold_words(kitchen.hold, settings),)
    for one in kitchen.sets:
        if one.box_left_open is not None:
            yield f"BOX {one.box_left_open}", (f"set {one.set.name} went out with it: close it out on the board",)


def counts_words(counts: Mapping[str, int]) -> str:
    """4 chef, 3 paring; in the order of the set."""
    return ", ".join(f"{count} {kind}" for kind, count in counts.items() if count)


def _trays(kitchen: Kitchen, where: str) -> tuple[str, ...]:
    return tuple(line for one in kitchen.sets if (line := _tray(one, where)))


def _tray(one: SetSeen, where: str) -> str:
    """Set B: 4 chef, 3 paring (7 of 12); empty where none of it is there."""
    counts = {kind.kind: int(getattr(kind, where)) for kind in one.kinds}
    there, whole = sum(counts.values()), sum(one.set.whole.values())
    return f"set {one.set.name}: {counts_words(counts)} ({there} of {whole})" if there else ""


def missing_words(one: MissingSeen, today: date) -> str:
    """1 boning of set B since Tue 3 Nov: on the statement from Tue 10 Nov on."""
    knife = one.knife
    said = f"1 {knife.kind} of set {one.set_name} since {date_words(one.since, today)}"
    if knife.found_at is not None:
        return f"{said}: found after {amount(knife.charged_cents or 0)} was charged; give it back or leave it"
    if knife.charged_cents is not None:
        return f"{said}: ON THE STATEMENT, {amount(knife.charged_cents)} charged"
    if one.on_statement:
        return f"{said}: ON THE STATEMENT, not charged yet"
    return f"{said}: on the statement from {day_words(one.due_on, today)} on"


def chef_words(chef: Mapping[str, int]) -> str:
    """Missing a second time: 1 boning. Please look for it."""
    it = "it" if sum(chef.values()) == 1 else "them"
    return f"Chef, missing for two rounds now: {counts_words(chef)}. Please look for {it}."
