"""What is printed on a return label, checked before it is stored."""

from datetime import date

from queueboard.clean import clean, clean_name
from queueboard.errors import TypedError
from queueboard.records.database import Cell
from queueboard.records.writing import Writing
from queueboard.settings.parcel_shapes import HEAVIEST_G
from queueboard.shop import rows
from queueboard.shop.days import checked_day, today_of
from queueboard.values.box import ReturnLabel
from queueboard.values.new import NewLabel


def printed(writing: Writing, new: NewLabel, before: ReturnLabel | None = None) -> dict[str, Cell]:
    """The columns of what was typed from a label; TypedError for what no label in hand can say.

    A label that is over already is refused, unless that day stood there before.
    """
    known = before is not None and new.expires_on == before.expires_on
    return {
        "carrier": clean(new.carrier, limit=60, field="carrier"),
        "expires_on": None if new.expires_on is None else _good_until(writing, new.expires_on, known=known),
        "name_on": _name(new.name_on),
        "address_on": clean(new.address_on, limit=500, field="address on the label"),
        "limit_g": None if new.limit_g is None else checked_weight(new.limit_g),
        "value_cents": None if new.value_cents is None else rows.checked_cents(new.value_cents, lowest=0),
        "price_cents": None if new.price_cents is None else rows.checked_cents(new.price_cents, lowest=0),
        "note_name": _name(new.note_name),
        "note_address": clean(new.note_address, limit=500, field="address on the note"),
    }


def checked_weight(grams: int) -> int:
    """A weight of 1 to HEAVIEST_G grams."""
    if not 1 <= grams <= HEAVIEST_G:
        raise TypedError(f"A weight of {grams} g is outside 1 g to {HEAVIEST_G // 1000} kg.")
    return grams


def _name(text: str) -> str:
    return clean_name(text) if text.strip() else ""


def _good_until(writing: Writing, day: date, *, known: bool) -> str:
    stored = checked_day(writing, day, "last day of the label")
    if not known:
        insist_not_over(day, today_of(writing))
    return stored


def insist_not_over(last_day: date, today: date) -> None:
    """Refuse a label whose last day is over."""
    if last_day < today:
        raise TypedError(
            f"A label that was good until {last_day.day} {last_day:%B %Y} cannot be used any more. Is the day right? "
            "If it is, note the label as to come, or to buy."
        )
