"""Typed mistakes put right: a knife's line, a box, a customer, whose box it is, a customer entered twice."""

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.priced_words import Finding
from queueboard.records import asking
from queueboard.records.database import Cell
from queueboard.records.swaps import sets_of
from queueboard.records.swaps_tables import SwapSetRow
from queueboard.records.tables import BoxRow, CustomerRow, KnifeRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.shop.receiving import add_label, findings_cell, insert_customer
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box
from queueboard.values.customer import Customer
from queueboard.values.knife import Knife
from queueboard.values.new import NewCustomer, NewLabel
from queueboard.words import CameBy, Condition, Edge, GoesBy, LabelOwner, LabelState


@operation()
def correct_knife(
    writing: Writing,
    knife: Knife,
    *,
    kind: str | None = None,
    edge: Edge | None = None,
    length_mm: int | None = None,
    no_length: bool = False,
    condition: Condition | None = None,
    mark: str | None = None,
    wish: str | None = None,
    findings: tuple[Finding, ...] | None = None,
) -> None:
    """Correct a knife's line; None leaves a field as it is. A new kind keeps the price as it was quoted.

    no_length: it was not measured after all. Without a broken tip among the findings nothing is missing of it.
    """
    changes: dict[str, Cell] = {}
    if kind is not None:
        known = settings_in(writing.database).kind(kind)
        if known is None:
            raise TypedError(f"The shop has no kind called {clean(kind, field='kind')!r}.")
        changes["kind"] = known.name
    if edge is not None:
        changes["edge"] = edge.value
    if length_mm is not None:
        changes["length_mm"] = rows.checked_length(length_mm)
    elif no_length:
        changes["length_mm"] = None
    if condition is not None:
        changes["condition"] = condition.value
    if findings is not None:
        changes["findings"] = findings_cell(findings)
        if Finding.TIP_BROKEN not in findings:
            changes["tip_um"] = None
    if mark is not None:
        changes["mark"] = clean(mark, field="mark")
    if wish is not None:
        changes["wish"] = clean(wish, field="wish")
    writing.tell(tags=[knife.tag])
    rows.fresh_knife(writing, knife)
    writing.change(KnifeRow, knife.id, knife.version, **changes)
    rows.no_gauge_for(writing, settings_in(writing.database).gauge.by_cutting)


@operation()
def correct_box(
    writing: Writing,
    box: Box,
    *,
    number: int | None = None,
    counted: int | None = None,
    note_says: int | None = None,
    no_note: bool = False,
    carrier_days: int | None = None,
    came_by: CameBy | None = None,
    goes_by: GoesBy | None = None,
) -> None:
    """Correct a box; None leaves a field as it is. The tags follow a corrected number.

    no_note: there was no note that said how many.
    """
    changes: dict[str, Cell] = {}
    if number is not None and number != box.number:
        changes["number"] = rows.checked_number(writing.database, number)
    if counted is not None:
        if not 1 <= counted <= 999:
            raise TypedError(f"A count of {counted} is outside 1 to 999.")
        changes["counted"] = counted
    if note_says is not None:
        if not 0 <= note_says <= 9999:
            raise TypedError(f"The note cannot say {note_says} knives.")
        changes["note_says"] = note_says
    elif no_note:
        changes["note_says"] = None
    if carrier_days is not None:
        if not 0 <= carrier_days <= 60:
            raise TypedError(f"{carrier_days} carrier days is outside 0 to 60.")
        changes["carrier_days"] = carrier_days
    if came_by is not None:
        changes["came_by"] = came_by.value
    if goes_by is not None:
        changes["goes_by"] = goes_by.value
    writing.tell(number=number or box.number)
    writing.change(BoxRow, box.id, box.version, **changes)
    if goes_by is GoesBy.PARCEL and rows.newest_label(writing.database, box.id) is None:
        add_label(writing, box.id, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))


@operation()
def correct_customer(
    writing: Writing,
    customer: Customer,
    *,
    name: str | None = None,
    phone: str | None = None,
    town: str | None = None,
    address: str | None = None,
    notes: str | None = None,
    proof_card: bool | None = None,
) -> None:
    """Correct a customer, or say whether a proof card goes with their boxes; None leaves a field as it is."""
    typed = {"name": name, "phone": phone, "town": town, "address": address, "notes": notes}
    writing.change(
        CustomerRow,
        customer.id,
        customer.version,
        **rows.customer_fields(**{field: text for field, text in typed.items() if text is not None}),
        **({} if proof_card is None else {"proof_card": int(proof_card)}),
    )


@operation()
def give_box_to(writing: Writing, box: Box, to: Customer | NewCustomer) -> None:
    """Give a box that was entered for the wrong customer to the right one, a known or a new one."""
    writing.tell(number=box.number)
    if isinstance(to, NewCustomer):
        customer_id = insert_customer(writing, to)
    else:
        rows.known_customer(writing, to.id)
        customer_id = to.id
    writing.change(BoxRow, box.id, box.version, customer_id=customer_id)


@operation()
def merge_customers(writing: Writing, keep: Customer, double: Customer) -> None:
    """Put a customer entered twice together: the boxes of the double go to the one kept."""
    if keep.id == double.id:
        raise RuleError("That is the same customer; choose the other entry.")
    rows.known_customer(writing, keep.id)
    for box_id in asking.boxes_of_customer(writing.database, double.id):
        writing.change(BoxRow, box_id, None, customer_id=keep.id)
    for one in sets_of(writing.database, "s.customer_id = ?", double.id):
        writing.change(SwapSetRow, one.id, None, customer_id=keep.id)
    writing.change(CustomerRow, double.id, double.version, merged_into=keep.id)
