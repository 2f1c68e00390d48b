"""What the shop has typed of carriers, in words: days, cut-off, last days, and when that was last checked."""

from datetime import date

from queueboard.phrases.dates import date_words, many, time_words
from queueboard.settings.parcel_shapes import Parcels
from queueboard.shop.carriers import last_days, parcels_of
from queueboard.shop.picture import Picture
from queueboard.shop.wishing import Wish
from queueboard.values.box import ReturnLabel
from queueboard.words import GoesBy

_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
ROWS_SHOWN = 2
RULES = "Check the carrier's current knife rules and local age-check law"


def rules_words(parcels: Parcels, label: ReturnLabel | None, today: date) -> str:
    """The caution before a parcel leaves, with when the shop last looked: (last checked Mon 2 Nov)."""
    return f"{RULES} ({checked_words(parcels_of(parcels, label).last_checked, today)})."


def checked_words(day: date | None, today: date) -> str:
    """Last checked Mon 2 Nov; never checked, where the settings have no last_checked."""
    return "never checked" if day is None else f"last checked {date_words(day, today)}"


def carrier_words(parcels: Parcels, label: ReturnLabel | None, today: date) -> str:
    """Gull Post: by 14:00 Mon Wed, 2 carrier days, ship by Fri 18 Dec for Thu 24 Dec, last checked Mon 2 Nov."""
    own = parcels_of(parcels, label)
    known = label is not None and parcels.carrier(label.carrier) is not None
    whose = label.carrier if label is not None and known else "parcels"
    days = " ".join(_DAYS[day] for day in sorted(own.collection_weekdays))
    rows = (
        f"ship by {date_words(row.ship_on, today)} for {date_words(row.arrives_by, today)}"
        for row in last_days(own, today)[:ROWS_SHOWN]
    )
    parts = (
        f"{whose}: by {time_words(own.cut_off)} {days}",
        many(own.carrier_days, "carrier day"),
        *rows,
        checked_words(own.last_checked, today),
    )
    return ", ".join(parts)


def carriers_lines(picture: Picture) -> tuple[str, ...]:
    """What was typed of parcels, then of each carrier that a label here names, then the caution of the rules."""
    parcels, today = picture.settings.parcels, picture.now.date()
    labels = [box.label for box in picture.boxes if box.label is not None]
    by_name = {label.carrier.strip().casefold(): label for label in labels if parcels.carrier(label.carrier)}
    own = (carrier_words(parcels, by_name[name], today) for name in sorted(by_name))
    return (carrier_words(parcels, None, today), *own, f"{RULES}.")


def parcel_told_words(wish: Wish, picture: Picture) -> tuple[str, ...]:
    """By what a date of a parcel is told, in a line; nothing for a pick-up."""
    if wish.goes_by is GoesBy.PICK_UP:
        return ()
    label = next((box.label for box in picture.boxes if box.box.id == wish.again), None)
    return (carrier_words(picture.settings.parcels, label, picture.now.date()),)
