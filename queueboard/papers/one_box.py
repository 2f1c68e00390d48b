"""Everything about one box on paper: knives, what it comes with, promises, label, money."""

from queueboard.papers.text import columns, page, section
from queueboard.phrases.bill import charge_words, payment_words
from queueboard.phrases.boxes import batch_totals, box_signs
from queueboard.phrases.call_backs import call_back_lines
from queueboard.phrases.counts import box_sum_words, moved_lines
from queueboard.phrases.knives import found_words, knife_name, knife_signs, wait_words, wish_in_capitals
from queueboard.phrases.labels import label_words
from queueboard.phrases.phone import phone_sentence
from queueboard.phrases.whole_box import told_lines
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.values.knife import Knife


def box_sheet(box: BoxPicture, picture: Picture) -> str:
    """The box with all its knives; the sentence to read aloud on the phone stands first."""
    now = picture.now
    moved = () if box.sum.plain else (box_sum_words(box.sum), *moved_lines(box, now))
    stands = ((f"stands at {box.box.place}",) if box.box.place else ()) + call_back_lines(box)
    return page(
        (phone_sentence(box, picture), " ".join(box_signs(box, now))),
        section("TOTALS", (*batch_totals(box, picture.settings, now), *moved, *stands)),
        section("KNIVES", columns([_row(knife, picture) for knife in box.knives]) if box.knives else ()),
        section("COMES WITH", (f"{thing.state.value}: {thing.name}" for thing in box.things)),
        section("TOLD", told_lines(box, now)),
        section("LABEL", (label_words(box, now.date()),) if box.label is not None else ()),
        section("CHARGED", (charge_words(charge, box) for charge in box.charges)),
        section(
            "PAID",
            (payment_words(paid, picture).removeprefix("paid ") for paid in box.payments),
        ),
        section("NOTES", filter(None, (box.box.note, *(f"{k.tag}: {k.note}" for k in box.knives if k.note)))),
        section("CUSTOMER", filter(None, (box.customer.phone, box.customer.town, box.customer.notes))),
    )


def _row(knife: Knife, picture: Picture) -> tuple[str, ...]:
    declined = f"{knife.declined.value}; " if knife.declined is not None else ""
    waits = wait_words(knife, picture.now)
    wish = f"; {wish_in_capitals(knife)}" if knife.wish else ""
    return (
        knife.tag,
        knife.column.value,
        " ".join(knife_signs(knife)),
        "; ".join(filter(None, (knife.condition.value, found_words(knife)))),
        f"{declined}{f'waits for {waits}; ' if waits else ''}{knife_name(knife, picture.settings)}{wish}",
    )
