"""The days of one carrier: the shop's calendar with what it has typed of that carrier in place of its usual."""

from dataclasses import replace
from datetime import date

from queueboard.calendar.days import ShopCalendar
from queueboard.settings.parcel_shapes import LastShip, Parcels
from queueboard.values.box import ReturnLabel


def carrier_of(label: ReturnLabel | None) -> str:
    """The carrier that a box goes with, as typed from its label; empty while nobody knows."""
    return "" if label is None else label.carrier


def with_carrier(calendar: ShopCalendar, name: str) -> ShopCalendar:
    """The calendar by which a box goes with this carrier; the same one where the shop has typed nothing of it."""
    if name not in calendar.by_carrier:
        parcels = parcels_by(calendar.settings.parcels, name)
        usual = parcels is calendar.settings.parcels
        calendar.by_carrier[name] = (
            calendar if usual else replace(calendar, settings=replace(calendar.settings, parcels=parcels))
        )
    return calendar.by_carrier[name]


def parcels_by(parcels: Parcels, name: str) -> Parcels:
    """What holds for a parcel with this carrier: what the shop has typed of it, and its usual for the rest."""
    carrier = parcels.carrier(name)
    if carrier is None:
        return parcels
    return replace(
        parcels,
        carrier_days=parcels.carrier_days if carrier.carrier_days is None else carrier.carrier_days,
        collection_weekdays=carrier.collection_weekdays or parcels.collection_weekdays,
        cut_off=carrier.cut_off or parcels.cut_off,
        last_ship=carrier.last_ship or parcels.last_ship,
        last_checked=carrier.last_checked or parcels.last_checked,
    )


def last_ship_row(parcels: Parcels, arrives_by: date) -> LastShip | None:
    """The row that says by when to leave so as to be there by a day, the strictest; None where no row speaks of it.

    A row for a later day counts too: what must leave by the 18th to be there by the 24th must so for the 23rd.
    """
    return min(
        (row for row in parcels.last_ship if row.arrives_by >= arrives_by),
        key=lambda row: row.ship_on,
        default=None,
    )
