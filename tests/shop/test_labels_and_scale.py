"""What is typed from a label and from the scale is stored whole or not at all."""

from dataclasses import replace
from datetime import date

import pytest

from queueboard.errors import ChangedError, RuleError, TypedError
from queueboard.shop.comparing_names import compare_box
from queueboard.shop.correcting import correct_customer
from queueboard.shop.labelling import label_bought, set_label
from queueboard.shop.opening import Shop
from queueboard.shop.weighing import weigh_parcel
from queueboard.shop.weight_seen import parcel_weight
from queueboard.values.box import ReturnLabel
from queueboard.values.compared import Part, Source
from queueboard.values.new import NewLabel
from queueboard.words import LabelOwner, LabelState
from tests.shop.place import box, by, counter, parcel, picture, state

NEW = NewLabel(
    owner=LabelOwner.CUSTOMER,
    state=LabelState.HERE,
    carrier="Gull Post",
    expires_on=date(2026, 11, 30),
    name_on="R. Tallis",
    address_on="21 Harbour Street, Dunmere",
    limit_g=2000,
    value_cents=30_000,
    note_name="R. Tallis",
    note_address="12 Harbour St, Dunmere",
)


def label_of(shop: Shop, number: int) -> ReturnLabel:
    """The label of a box as it is stored."""
    found = box(shop, number).label
    assert found is not None
    return found


def test_everything_printed_on_a_label_is_kept(shop: Shop) -> None:
    """Carrier, expiry, name, address, limit and value come back as they were typed, and what the note says."""
    number = parcel(shop).box.number
    set_label(shop, by(), box(shop, number).box, NEW)

    found = label_of(shop, number)
    for name in NewLabel.__slots__:
        assert getattr(found, name) == getattr(NEW, name)


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (replace(NEW, expires_on=date(2025, 12, 12)), "good until 12 December 2025 cannot be used any more"),
        (replace(NEW, expires_on=date(2026, 11, 8)), "good until 8 November 2026 cannot be used any more"),
        (replace(NEW, expires_on=date(2022, 1, 1)), "too far from today"),
        (replace(NEW, address_on="x" * 2000), "address on the label has 2000 characters; at most 500 fit"),
        (replace(NEW, note_address="x" * 2000), "address on the note has 2000 characters; at most 500 fit"),
        (replace(NEW, limit_g=0), "A weight of 0 g is outside 1 g to 200 kg"),
        (replace(NEW, limit_g=-1), "A weight of -1 g is outside"),
        (replace(NEW, value_cents=-300), "outside 0.00 to 99999.99"),
        (replace(NEW, price_cents=10**11), "outside 0.00 to 99999.99"),
    ],
)
def test_what_no_label_can_say_is_refused(shop: Shop, typed: NewLabel, sentence: str) -> None:
    """A sentence comes, and the label that was there stays as it was."""
    made = parcel(shop)
    before = state(shop)
    with pytest.raises(TypedError, match=sentence):
        set_label(shop, by(), made.box, typed)

    assert state(shop) == before


def test_a_label_that_died_meanwhile_can_still_be_corrected(shop: Shop) -> None:
    """The expiry that stood there before is not asked about again when another field is mended."""
    number = parcel(shop).box.number
    later = by(minutes=60 * 24 * 14)
    old = label_of(shop, number)
    assert old.expires_on is not None
    assert old.expires_on < later.now.date()
    set_label(shop, later, box(shop, number).box, replace(NEW, expires_on=old.expires_on))

    assert label_of(shop, number).carrier == "Gull Post"


def test_a_label_that_is_bought_keeps_what_is_printed(shop: Shop) -> None:
    """Buying stores price, limit and address together."""
    made = parcel(shop)
    set_label(shop, by(), made.box, NewLabel(owner=LabelOwner.SHOP, state=LabelState.TO_BUY))
    label_bought(shop, by(), label_of(shop, made.box.number), replace(NEW, owner=LabelOwner.SHOP, price_cents=1250))

    found = label_of(shop, made.box.number)
    assert (found.owner, found.price_cents, found.limit_g) == (LabelOwner.SHOP, 1250, 2000)


def test_file_label_and_note_are_held_against_each_other(shop: Shop) -> None:
    """The house number that only the label has is named, with all three; the town of the customer counts as address."""
    made = parcel(shop)
    correct_customer(shop, by(), made.customer, address="12 Harbour St.")
    set_label(shop, by(), box(shop, made.box.number).box, NEW)

    found = compare_box(box(shop, made.box.number))

    assert [one.part for one in found.differences] == [Part.HOUSE]
    assert found.differences[0].says == {Source.FILE: "12", Source.LABEL: "21", Source.NOTE: "12"}


def test_the_scale_is_stored_and_wins(shop: Shop) -> None:
    """Weight and size are kept with the box, above its label's limit by what size counts for; None takes them back."""
    made = parcel(shop)
    set_label(shop, by(), made.box, NEW)
    weigh_parcel(shop, by(), box(shop, made.box.number).box, 1240, (450, 250, 100))

    seen = box(shop, made.box.number)
    found = parcel_weight(seen, picture(shop).settings)
    assert found is not None
    assert (found.weight_g, found.billable_g, found.over_g) == (1240, 2722, 722)

    weigh_parcel(shop, by(), seen.box, None)
    again = box(shop, made.box.number).box
    assert (again.packed_g, again.parcel_mm) == (None, ())


@pytest.mark.parametrize(
    ("grams", "size_mm", "sentence"),
    [
        (0, (), "outside 1 g to 200 kg"),
        (-1, (), "outside 1 g to 200 kg"),
        (200_001, (), "outside 1 g to 200 kg"),
        (900, (450, 250), "has no size"),
        (900, (450, 250, 0), "has no size"),
        (900, (450, 250, 2001), "has no size"),
    ],
)
def test_an_impossible_weight_or_size_is_refused(
    shop: Shop, grams: int, size_mm: tuple[int, ...], sentence: str
) -> None:
    """A sentence comes, and nothing is stored."""
    made = parcel(shop)
    with pytest.raises(TypedError, match=sentence):
        weigh_parcel(shop, by(), made.box, grams, size_mm)

    assert box(shop, made.box.number).box == made.box


def test_a_pick_up_is_not_weighed_and_an_old_look_is_refused(shop: Shop) -> None:
    """What is picked up has no parcel; who weighs a box that was changed meanwhile looks again."""
    with pytest.raises(RuleError, match="is picked up"):
        weigh_parcel(shop, by(), counter(shop).box, 900)
    made = parcel(shop)
    weigh_parcel(shop, by(), made.box, 900)
    with pytest.raises(ChangedError):
        weigh_parcel(shop, by(), made.box, 950)


def test_without_a_limit_nothing_is_above_it(shop: Shop) -> None:
    """A parcel without a limit is never above it, and a pick-up has no parcel weight at all."""
    settings = picture(shop).settings
    found = parcel_weight(parcel(shop), settings)

    assert found is not None
    assert (found.limit_g, found.over_g) == (None, 0)
    assert parcel_weight(counter(shop), settings) is None
