"""What is charged beside the prices of knives: as the list says at intake, and by hand afterwards."""

from collections.abc import Sequence

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.money.bill import totals
from queueboard.money.pricing import quote, shipping_cents, tax_ppm, whole_box_charges
from queueboard.money.rounding import MILLION
from queueboard.priced_words import ChargeSort
from queueboard.records.charge_table import ChargeRow
from queueboard.records.charges import charges_of_boxes
from queueboard.records.tables import BoxRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Settings
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box, Charge
from queueboard.values.knife import Knife
from queueboard.values.new import NewCharge, NewKnife
from queueboard.words import GoesBy, LabelOwner

ONE_A_BOX = (ChargeSort.RUSH, ChargeSort.MINIMUM, ChargeSort.DISCOUNT, ChargeSort.SHIPPING)
"""Sorts that concern the whole box; a new one takes the place of the one before."""
SHARES = (ChargeSort.RUSH, ChargeSort.DISCOUNT)
"""Sorts that may be a share of the work."""


@operation()
def add_charge(writing: Writing, box: Box, new: NewCharge, knife: Knife | None = None) -> None:
    """Charge something for a knife, or for the whole box; a discount, rush, minimum or shipping replaces its like."""
    rows.fresh_box(writing, box)
    if knife is not None:
        rows.fresh_knife(writing, knife)
        if new.sort in ONE_A_BOX:
            raise RuleError(f"A {new.sort.value} is for the whole box, not for {knife.tag} alone.")
    writing.tell(
        number=box.number,
        tags=[] if knife is None else [knife.tag],
        to=new.sort.value,
        cents=new.cents if new.ppm is None else None,
    )
    if new.sort in ONE_A_BOX:
        for before in charges_of_boxes(writing.database, "?", box.id):
            if before.sort is new.sort:
                writing.remove(ChargeRow, before.id)
    insert_charge(writing, settings_in(writing.database), box.id, new, None if knife is None else knife.id)
    writing.touch(BoxRow, box.id)


@operation()
def strike_charge(writing: Writing, box: Box, charge: Charge) -> None:
    """Take a charge away."""
    rows.fresh_box(writing, box)
    writing.tell(number=box.number, to=charge.sort.value)
    writing.remove(ChargeRow, charge.id)
    writing.touch(BoxRow, box.id)


@operation()
def set_limit(writing: Writing, box: Box, cents: int | None) -> None:
    """Note the most that the customer has agreed to; None when nothing was said."""
    rows.fresh_box(writing, box)
    writing.tell(number=box.number, cents=cents, to="" if cents is None else "set")
    most = None if cents is None else rows.checked_cents(cents, lowest=1)
    writing.change(BoxRow, box.id, box.version, not_above_cents=most)


def insert_charge(
    writing: Writing, settings: Settings, box_id: int, new: NewCharge, knife_id: int | None = None
) -> None:
    """Store a charge as it is told now, with the shop's rate of tax for it."""
    if new.ppm is not None and (new.sort not in SHARES or not 0 <= new.ppm <= 2 * MILLION):
        raise TypedError("Only a rush or a discount is in percent, up to 200 % and 100 %.")
    if new.sort is ChargeSort.DISCOUNT and (new.ppm or 0) > MILLION:
        raise TypedError("A discount of more than 100 % would be a gift of money; type at most 100 %.")
    writing.insert(
        ChargeRow,
        box_id=box_id,
        knife_id=knife_id,
        sort=new.sort.value,
        text=clean(new.text, limit=120, field="what it is for"),
        cents=0 if new.ppm is not None else rows.checked_cents(new.cents, lowest=0),
        ppm=new.ppm,
        tax_ppm=tax_ppm(settings.prices, new.sort) if new.tax_ppm is None else new.tax_ppm,
    )


def charge_way_back(writing: Writing, settings: Settings, box: Box) -> None:
    """Charge the way back with a label of the shop's, where the list has a price for it and nothing was told yet."""
    charged = charges_of_boxes(writing.database, "?", box.id)
    sums = totals(rows.bill_of(writing.database, box.id))
    knives = [knife for knife in rows.knives_of_box(writing.database, box.id) if knife.on_hand]
    cents = shipping_cents(settings.prices, len(knives), sums.work_cents)
    if cents and not any(charge.sort is ChargeSort.SHIPPING for charge in charged):
        insert_charge(writing, settings, box.id, NewCharge(sort=ChargeSort.SHIPPING, cents=cents))


def charge_whole_box(writing: Writing, settings: Settings, box: Box, knives: Sequence[NewKnife]) -> None:
    """Charge what the list asks for the whole box, once its knives are known; what was typed before stays."""
    label = rows.newest_label(writing.database, box.id)
    ships = box.goes_by is GoesBy.PARCEL and label is not None and label.owner is LabelOwner.SHOP
    known = {charge.sort for charge in charges_of_boxes(writing.database, "?", box.id)}
    quotes = [quote(settings, kind, one) for one in knives if (kind := settings.kind(one.kind)) is not None]
    asked = whole_box_charges(settings.prices, came_by=box.came_by, rush=box.rush, shop_ships=ships, quotes=quotes)
    for charge in asked:
        if charge.sort not in known:
            insert_charge(writing, settings, box.id, charge)
