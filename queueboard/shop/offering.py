"""What else can be done where a return label dies or cannot be used in time."""

from queueboard.errors import RuleError
from queueboard.records.writing import Writing
from queueboard.shop.charging import charge_way_back
from queueboard.shop.labelling import replace_label
from queueboard.shop.operation import operation
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.settings_now import settings_in
from queueboard.shop.weight_seen import parcel_weight
from queueboard.values.box import Box
from queueboard.values.new import NewLabel
from queueboard.values.offer import LabelOffer, OfferKind
from queueboard.words import LabelOwner, LabelState, LabelWord

DYING = frozenset({LabelWord.TOO_LATE, LabelWord.DIES_TODAY, LabelWord.DIES_TOMORROW})


def label_offers(box: BoxPicture, picture: Picture) -> tuple[LabelOffer, ...]:
    """The ways out for a box whose label dies or cannot be used in time; none for another.

    What is ready can go as long as the label's last day of use is not over. A customer's label can be asked for anew; a
    label of the shop's can be bought for any, at the price that the settings have for the box it goes into.
    """
    due, weight = box.label_due, parcel_weight(box, picture.settings)
    if due is None or due.word not in DYING or box.label is None:
        return ()
    offers: list[LabelOffer] = []
    lives = due.last_day is not None and due.last_day >= picture.now.date()
    if lives and box.ready_count:
        all_of_it = box.ready_count == len(box.on_hand)
        kind = OfferKind.ALL_TODAY if all_of_it else OfferKind.PART_TODAY
        offers.append(LabelOffer(kind=kind, ready=box.ready_count, here=len(box.on_hand)))
    if box.label.owner is LabelOwner.CUSTOMER:
        offers.append(LabelOffer(kind=OfferKind.ASK_NEW))
    return (*offers, LabelOffer(kind=OfferKind.SHOP_LABEL, cents=None if weight is None else weight.label_cents))


@operation()
def ask_new_label(writing: Writing, box: Box) -> None:
    """Note that the customer is asked for another label, in place of the one that dies."""
    replace_label(writing, box, NewLabel(owner=LabelOwner.CUSTOMER, state=LabelState.TO_BUY))


@operation()
def take_shop_label(writing: Writing, box: Box, price_cents: int | None) -> None:
    """Note that the shop buys a label, at about this price, in place of the one that dies.

    The way back is charged as the shop's list has it, unless something was told for it already.
    """
    if price_cents is not None and price_cents < 0:
        raise RuleError(f"A label at {price_cents / 100:.2f} is none; type its price once it is bought.")
    replace_label(writing, box, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY, price_cents=price_cents))
    charge_way_back(writing, settings_in(writing.database), box)
