"""Kitchens with swap sets as sheets of text and as plain data."""

from collections.abc import Sequence

from queueboard.papers.facts import Fact
from queueboard.papers.text import page, section
from queueboard.phrases.swaps import NO_KITCHENS, SWITCHED_OFF, kitchen_words, sheet_parts
from queueboard.shop.picture import Picture
from queueboard.shop.swaps_seen import Kitchen, MissingSeen, SetSeen


def swap_sheets(seen: Sequence[Kitchen], picture: Picture) -> str:
    """A sheet for each kitchen, one below the other; a sentence where there is none."""
    if not picture.settings.swaps.on:
        return page((SWITCHED_OFF,))
    return "\n".join(swap_sheet(one, picture) for one in seen) or page((NO_KITCHENS,))


def swap_sheet(one: Kitchen, picture: Picture) -> str:
    """One kitchen: the clean tray above, the dull one below, what is missing and charged, what the chef is told."""
    today = picture.now.date()
    parts = (section(heading, lines) for heading, lines in sheet_parts(one, picture.settings, today))
    return page((one.customer.name, kitchen_words(one, today)), *parts)


def swap_facts(seen: Sequence[Kitchen], picture: Picture) -> dict[str, Fact]:
    """The same as plain data, by the kitchen's name."""
    return {
        "shop": picture.settings.name,
        "now": picture.now.isoformat(),
        "currency": picture.settings.currency,
        "on": picture.settings.swaps.on,
        "kitchens": [_kitchen(one) for one in seen],
    }


def _kitchen(one: Kitchen) -> dict[str, Fact]:
    customer, check = one.customer, one.check
    return {
        "customer": {"name": customer.name, "phone": customer.phone, "town": customer.town},
        "next_round": None if one.next_round is None else one.next_round.isoformat(),
        "next_set": None if one.next_set is None else one.next_set.name,
        "checked_complete": None if check is None else check.complete,
        "check_due": one.check_due,
        "hold": one.hold is not None,
        "sets": [_set(each) for each in one.sets],
        "missing": [_missing(each) for each in one.missing],
        "damage": [{"tag": x.tag, "kind": x.kind, "what": x.what, "cents": x.cents} for x in one.damage],
        "chef": dict(one.chef),
    }


def _set(one: SetSeen) -> dict[str, Fact]:
    return {
        "set": one.set.name,
        "kinds": [
            {
                "kind": kind.kind,
                "whole": kind.whole,
                "clean_here": kind.clean_here,
                "dull_here": kind.dull_here,
                "with_kitchen": kind.with_kitchen,
                "missing": kind.missing,
            }
            for kind in one.kinds
        ],
    }


def _missing(one: MissingSeen) -> dict[str, Fact]:
    return {
        "set": one.set_name,
        "kind": one.knife.kind,
        "since": one.since.isoformat(),
        "due_on": one.due_on.isoformat(),
        "on_statement": one.on_statement,
        "found": one.knife.found_at is not None,
        "charged_cents": one.knife.charged_cents,
    }
