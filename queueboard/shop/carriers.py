"""What holds for a parcel with its carrier, for those who show it."""

from datetime import date

from queueboard.parcels.carriers import carrier_of, parcels_by
from queueboard.settings.parcel_shapes import LastShip, Parcels
from queueboard.values.box import ReturnLabel


def parcels_of(parcels: Parcels, label: ReturnLabel | None) -> Parcels:
    """What the shop has typed of the carrier on a label, and its usual for the rest."""
    return parcels_by(parcels, carrier_of(label))


def last_days(parcels: Parcels, today: date) -> tuple[LastShip, ...]:
    """The rows of last days that still concern somebody: their day of arrival is not over."""
    return tuple(row for row in parcels.last_ship if row.arrives_by >= today)
