"""Story 9: a cracked slicer is declined: no charge, counted all the same. Names and numbers are invented."""

from queueboard.papers.slips import gone_summary
from queueboard.priced_words import ChargeSort, Finding
from queueboard.shop import closing, moving, noting
from queueboard.shop.opening import Shop
from queueboard.shop.receiving import receive_box
from queueboard.values.box import CloseOut
from queueboard.values.new import NewBox, NewCustomer, NewKnife
from queueboard.words import CameBy, CloseStep, Column, DeclineReason, Edge, GoesBy, Settling
from tests.shop.place import box, by, cash, picture

CHEF = NewKnife(kind="chef", edge=Edge.PLAIN, length_mm=200)
SLICER = NewKnife(
    kind="slicer", edge=Edge.PLAIN, length_mm=250, chip_um=1000, findings=(Finding.FRECKLES, Finding.PHOTO)
)


def received(shop: Shop) -> None:
    """Box 380 with two chef's knives and the slicer, which has a chip and rust beside its crack."""
    new = NewBox(
        new_customer=NewCustomer(name="Ines Morel"),
        came_by=CameBy.COUNTER,
        goes_by=GoesBy.PICK_UP,
        counted=3,
        knives=(CHEF, CHEF, SLICER),
        number=380,
    )
    receive_box(shop, by(), new)


def declined(shop: Shop) -> None:
    """The slicer declined, the others ready."""
    received(shop)
    note, knife = "9 mm crack from the heel", box(shop, 380).knives[2]
    noting.decline_knife(shop, by(minutes=5), knife, DeclineReason.CRACKED, note, told_to="R. Tallis", photo=True)
    moving.move_knives(shop, by(minutes=9), box(shop, 380).knives[:2], Column.READY)


def close(shop: Shop) -> CloseOut:
    """The close-out under way."""
    found = box(shop, 380).close_out
    assert found is not None
    return found


def test_nothing_is_charged_for_it(shop: Shop) -> None:
    """Slicer, chip and rust were 9.00, 3.00 and 4.00; declined they cost nothing, taken after all the same again."""
    received(shop)
    assert {one.sort: one.cents for one in box(shop, 380).charges} == {ChargeSort.CHIPS: 300, ChargeSort.RUST: 400}
    assert box(shop, 380).price_cents == 1800 + 1600

    noting.decline_knife(shop, by(), box(shop, 380).knives[2], DeclineReason.CRACKED, "9 mm from the heel")
    assert box(shop, 380).price_cents == 1800

    noting.accept_knife(shop, by(), box(shop, 380).knives[2])
    assert box(shop, 380).price_cents == 1800 + 1600


def test_it_is_counted_and_goes_back_unsharpened(shop: Shop) -> None:
    """The count still expects three; the summary names it as declined, free of charge and of any word on safety."""
    declined(shop)
    slicer = box(shop, 380).knives[2]
    assert Finding.PHOTO in slicer.findings
    assert slicer.note == "9 mm crack from the heel; told R. Tallis 2026-11-09 09:05, J"
    closing.begin_close_out(shop, by(minutes=20), box(shop, 380).box)
    closing.count(shop, by(minutes=21), close(shop), 2)
    check = box(shop, 380).close_check
    assert check is not None
    assert check.step is CloseStep.TICK  # two are not three
    closing.count(shop, by(minutes=22), close(shop), 3)
    closing.confirm_names(shop, by(minutes=23), close(shop))
    closing.confirm_label(shop, by(minutes=24), close(shop), "herself")
    closing.settle(shop, by(minutes=25), close(shop), Settling.PAID, "", cash(1800))

    gone = closing.send_off(shop, by(minutes=26), close(shop))

    summary = gone_summary(gone, picture(shop).settings)
    assert len(gone.knives) == 3
    assert (gone.totals.total_cents, gone.totals.owed_cents) == (1800, 0)
    assert "NOT SHARPENED\n  380-3: cracked" in summary
    assert not {word for word in ("safe", "unsafe") if word in summary.casefold().split()}
