"""What a box would come to that is not taken in yet: the same sums as afterwards, from what is typed so far."""

from collections.abc import Sequence
from datetime import UTC, datetime

from queueboard.money.bill import Bill, totals
from queueboard.money.pricing import Quote, quote, tax_ppm, whole_box_charges
from queueboard.settings.shapes import Settings
from queueboard.values.box import Charge
from queueboard.values.knife import Knife
from queueboard.values.new import NewCharge, NewKnife
from queueboard.values.totals import Totals
from queueboard.words import CameBy, Column


def estimate(
    settings: Settings, knives: Sequence[NewKnife], *, came_by: CameBy, rush: bool = False, shop_ships: bool = False
) -> Totals:
    """All sums of a box with these knives, by the list of today; a kind that the shop does not have counts for nothing.

    shop_ships: it goes back with a label of the shop.
    """
    quotes = [
        (number, knife, quote(settings, kind, knife))
        for number, knife in enumerate(knives, 1)
        if (kind := settings.kind(knife.kind)) is not None
    ]
    only = [one for _, _, one in quotes]
    whole = whole_box_charges(settings.prices, came_by=came_by, rush=rush, shop_ships=shop_ships, quotes=only)
    add_ons = [(number, charge) for number, _, one in quotes for charge in one.add_ons]
    return totals(
        Bill(
            knives=tuple(_knife(number, knife, one, settings) for number, knife, one in quotes),
            charges=(
                *(_charge(charge, number, settings) for number, charge in add_ons),
                *(_charge(charge, None, settings) for charge in whole),
            ),
            rounding=settings.prices.rounding,
        )
    )


def _knife(number: int, knife: NewKnife, quoted: Quote, settings: Settings) -> Knife:
    return Knife(
        id=number,
        version=0,
        box_id=0,
        box_number=0,
        number=number,
        kind=knife.kind,
        edge=knife.edge,
        length_mm=knife.length_mm,
        condition=knife.condition,
        column=Column.RECEIVED,
        price_cents=quoted.price_cents if knife.price_cents is None else knife.price_cents,
        apart=knife.apart,
        moved_at=datetime.min.replace(tzinfo=UTC),
        moved_by="",
        tax_ppm=tax_ppm(settings.prices, None),
    )


def _charge(new: NewCharge, knife_id: int | None, settings: Settings) -> Charge:
    rate = tax_ppm(settings.prices, new.sort) if new.tax_ppm is None else new.tax_ppm
    return Charge(
        id=0, version=0, box_id=0, knife_id=knife_id, sort=new.sort, text=new.text,
        cents=0 if new.ppm is not None else new.cents, ppm=new.ppm, tax_ppm=rate,
    )  # fmt: skip
