"""Looks and checks that several operations share."""

from collections.abc import Collection, Mapping
from itertools import chain

from queueboard.clean import clean, clean_name
from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.money.bill import Bill, totals
from queueboard.records import asking
from queueboard.records.charge_table import ChargeRow
from queueboard.records.charges import charges_of, charges_of_boxes
from queueboard.records.close_outs import close_outs_of
from queueboard.records.database import Cell, ShopDatabase
from queueboard.records.edge_tables import EdgeTestRow, ReadingRow, SecondLookRow, SpotRow, TrialKnifeRow
from queueboard.records.edge_tests import rows_of_edge
from queueboard.records.moved import moves_of
from queueboard.records.reading import knives_of, labels_of, payments_of, things_of
from queueboard.records.runs import runs_of_knife
from queueboard.records.shelf import pairs_of_knife
from queueboard.records.shelf_tables import CallBackKnifeRow
from queueboard.records.tables import BoxRow, CloseOutRow, CustomerRow, KnifeRow, RunKnifeRow, TickRow
from queueboard.records.trials import drawn_rows
from queueboard.records.writing import Writing
from queueboard.settings.shapes import MOST_CENTS
from queueboard.values.box import Box, CloseOut, ReturnLabel
from queueboard.values.knife import Knife, Thing

FIRST_NUMBER, LAST_SHORT_NUMBER, HIGHEST_NUMBER = 100, 999, 9999
"""Box numbers have three figures as long as they last, so that a tag stays short on the handle."""

NONE_KEPT = range(0)

SHORTEST_MM, LONGEST_MM = 20, 900

NOT_COUNTED: Mapping[str, Cell] = {
    "counted": None,
    "ticking": 0,
    "ticks_done": 0,
    "things_done": 0,
    "missing_reason": "",
    "names_ok": 0,
    "label_ok": 0,
    "handed_to": "",
    "settled": None,
    "settled_why": "",
    "finished_us": None,
}
"""A close-out before its first step."""


def free_number(database: ShopDatabase, kept: range = NONE_KEPT) -> int:
    """The next box number: one more than the newest box's, going round from 999 to 100, never one that is open.

    Nor one of those that are kept, for they stand on tags that were printed before.

    Only a shop with 900 open boxes gets longer numbers.
    """
    newest = asking.newest_box_number(database) or FIRST_NUMBER - 1
    taken = asking.open_numbers(database)
    short = range(FIRST_NUMBER, LAST_SHORT_NUMBER + 1)
    later = (number for number in short if number > newest)
    for number in chain(later, short, range(LAST_SHORT_NUMBER + 1, HIGHEST_NUMBER + 1)):
        if number not in taken and number not in kept:
            return number
    raise RuleError("Every box number is in use; close some boxes out first.")


def checked_number(database: ShopDatabase, number: int | None, kept: range = NONE_KEPT) -> int:
    """A free box number: the one typed, or the next that is not kept for printed tags."""
    if number is None:
        return free_number(database, kept)
    if not 1 <= number <= HIGHEST_NUMBER:
        raise TypedError(f"Box number {number} is outside 1 to {HIGHEST_NUMBER}.")
    if number in asking.open_numbers(database):
        raise TypedError(
            f"Box {number} is on the board already; the next free number is {free_number(database, kept)}."
        )
    return number


def checked_length(length_mm: int | None) -> int | None:
    """An edge length in millimetres, 20 to 900, or None."""
    if length_mm is not None and not SHORTEST_MM <= length_mm <= LONGEST_MM:
        raise TypedError(f"A length of {length_mm} mm is outside {SHORTEST_MM} to {LONGEST_MM} mm; cm or inches?")
    return length_mm


def checked_cents(cents: int, *, lowest: int) -> int:
    """An amount in cents, not below the lowest and at most MOST_CENTS."""
    if not lowest <= cents <= MOST_CENTS:
        raise TypedError(f"An amount of {cents / 100:.2f} is outside {lowest / 100:.2f} to {MOST_CENTS / 100:.2f}.")
    return cents


def checked_thing(name: str) -> str:
    """The name of a thing that came with a box, 1 to 60 signs."""
    text = clean(name, limit=60, field="name of the thing")
    if not text:
        raise TypedError("What it comes with is empty; name it, or leave the line out.")
    return text


def customer_fields(**typed: str) -> dict[str, Cell]:
    """A customer's typed fields, cleaned and within their lengths."""
    limits = {"phone": 60, "town": 120, "address": 500, "notes": 2000}
    return {
        name: clean_name(text) if name == "name" else clean(text, limit=limits[name], field=name)
        for name, text in typed.items()
    }


def box_now(database: ShopDatabase, box_id: int) -> Box:
    """The box as it is stored now."""
    box = asking.box_by_id(database, box_id)
    if box is None:
        raise ChangedError("That box is not in the shop file any more; look again.")
    return box


def knives_of_box(database: ShopDatabase, box_id: int) -> tuple[Knife, ...]:
    """All knives of one box, by number."""
    return knives_of(database, "k.box_id = ?", box_id)


def next_knife_number(database: ShopDatabase, box_id: int) -> int:
    """The second half of the next tag: never one that a knife has now, or had before it was moved to another box."""
    left = (move.from_number for move in moves_of(database, "?", box_id) if move.from_box_id == box_id)
    return 1 + max((*(knife.number for knife in knives_of_box(database, box_id)), *left), default=0)


def count_again(writing: Writing, box_id: int) -> None:
    """Let a close-out under way count anew, and a packed box be opened: other knives are in it now."""
    close = close_out_now(writing.database, box_id)
    if close is not None:
        for tick_id in asking.ticks_of(writing.database, close.id):
            writing.remove(TickRow, tick_id)
        writing.change(CloseOutRow, close.id, None, **NOT_COUNTED)
    writing.change(BoxRow, box_id, None, packing=None)


def knives_of_run(database: ShopDatabase, run_id: int) -> tuple[Knife, ...]:
    """The knives of one run, by tag."""
    return knives_of(database, "k.id IN (SELECT knife_id FROM run_knife WHERE run_id = ?)", run_id)


def things_of_box(database: ShopDatabase, box_id: int) -> tuple[Thing, ...]:
    """All things that came with one box."""
    return things_of(database, "box_id = ?", box_id)


def labels_of_box(database: ShopDatabase, box_id: int) -> tuple[ReturnLabel, ...]:
    """All return labels of one box, used ones included, oldest first."""
    return labels_of(database, "box_id = ?", box_id)


def newest_label(database: ShopDatabase, box_id: int) -> ReturnLabel | None:
    """The newest return label of one box."""
    labels = labels_of_box(database, box_id)
    return labels[-1] if labels else None


def bill_of(database: ShopDatabase, box_id: int) -> Bill:
    """What a box is charged for and what was paid for it, as it is stored now."""
    return Bill(
        knives=knives_of_box(database, box_id),
        charges=charges_of_boxes(database, "?", box_id),
        payments=payments_of(database, "box_id = ?", box_id),
        rounding=box_now(database, box_id).rounding,
    )


def owed_cents(database: ShopDatabase, box_id: int) -> int:
    """What a box comes to, less what was paid."""
    return totals(bill_of(database, box_id)).owed_cents


def close_out_now(database: ShopDatabase, box_id: int) -> CloseOut | None:
    """The close-out under way for one box."""
    return next((close for close in close_outs_of(database) if close.box_id == box_id), None)


def fresh_box(writing: Writing, box: Box) -> None:
    """Refuse when the stored box has moved on since the screen was drawn, was closed out, or is gone."""
    stored = writing.row(BoxRow, box.id)
    if stored is not None and stored["closed_us"] is not None:
        raise ChangedError(f"Box {box.number} was closed out meanwhile; nothing was stored.")
    if stored is None or stored["row_version"] != box.version:
        raise ChangedError(f"Box {box.number} was changed meanwhile; nothing was stored. Look again, then decide.")


def only_here(box: Box) -> None:
    """Refuse what needs the box itself while it is only announced."""
    if box.announced:
        raise RuleError(f"Box {box.number} is not in the door yet; say that it arrived, or open it.")


def only_opened(box: Box) -> None:
    """Refuse what needs the knives of a box before they were counted."""
    only_here(box)
    if not box.opened:
        raise RuleError(f"Box {box.number} is not opened yet; open and count it first.")


def fresh_knife(writing: Writing, knife: Knife) -> None:
    """Refuse when the stored knife has moved on since the screen was drawn, or is gone."""
    stored = writing.row(KnifeRow, knife.id)
    if stored is None or stored["row_version"] != knife.version:
        raise ChangedError(f"{knife.tag} was changed meanwhile; nothing was stored. Look again, then decide.")
    if not knife.on_hand:
        raise RuleError(f"{knife.tag} has left the shop; undo its close-out first if that was wrong.")


def known_customer(writing: Writing, customer_id: int) -> None:
    """Refuse a customer who is not in the file, or was put together with another."""
    row = writing.row(CustomerRow, customer_id)
    if row is None or row["merged_into"] is not None:
        raise RuleError("That customer is not in the shop file any more; look again.")


def no_ticks(writing: Writing, knife_id: int) -> None:
    """Take away the ticks of a knife in close-outs under way."""
    for tick_id in asking.ticks_of_knife(writing.database, knife_id):
        writing.remove(TickRow, tick_id)


def no_runs(writing: Writing, knife_id: int) -> None:
    """Take a knife out of every run it was ever in."""
    for row_id in runs_of_knife(writing.database, knife_id):
        writing.remove(RunKnifeRow, row_id)


def no_trials(writing: Writing, knife_id: int) -> None:
    """Take a knife out of every belt trial it was drawn for."""
    for row_id in drawn_rows(writing.database, knife_id):
        writing.remove(TrialKnifeRow, row_id)


def no_edge(writing: Writing, knife_id: int) -> None:
    """Take everything away that was read or found of a knife's edge."""
    tables = {"reading": ReadingRow, "spot": SpotRow, "edge_test": EdgeTestRow, "second_look": SecondLookRow}
    for name, ids in rows_of_edge(writing.database, knife_id).items():
        for row_id in ids:
            writing.remove(tables[name], row_id)


def no_call_backs(writing: Writing, knife_id: int) -> None:
    """Take away what links a knife to the one that it was before it came back."""
    for row_id in pairs_of_knife(writing.database, knife_id):
        writing.remove(CallBackKnifeRow, row_id)


def no_charges(writing: Writing, knife_id: int) -> None:
    """Take away what is charged beside the price of a knife."""
    for charge in charges_of(writing.database, "c.knife_id = ?", knife_id):
        writing.remove(ChargeRow, charge.id)


def no_gauge_for(writing: Writing, kinds: Collection[str]) -> None:
    """Ask the gauge no more for knives on hand of kinds that are tested by cutting: nothing could be read on them."""
    for kind in kinds:
        for knife in knives_of(writing.database, "k.gauge IS NOT NULL AND k.place <> 'gone' AND k.kind = ?", kind):
            writing.change(KnifeRow, knife.id, None, gauge=None)


def compare_again(writing: Writing, box_id: int) -> None:
    """Let a close-out under way ask again for the names and the label: the label is another one now."""
    close = close_out_now(writing.database, box_id)
    if close is not None and (close.names_ok or close.label_ok):
        writing.change(CloseOutRow, close.id, None, names_ok=0, label_ok=0)
