"""The numbers of a small invented shop, built by hand for tests."""

from datetime import time
from zoneinfo import ZoneInfo

from queueboard.settings.parcel_shapes import Parcels
from queueboard.settings.shapes import Belt, Handling, Kind, Process, Settings
from queueboard.words import Condition, Edge

ZONE = ZoneInfo("Europe/Berlin")

MINUTES = {Condition.TIRED: 3, Condition.DULL: 5, Condition.SMALL_CHIPS: 9, Condition.BIG_CHIPS: 16}

COARSE = Belt(label="P240", grit_um=58.5)
FINE = Belt(label="P400", grit_um=35.0)
POLISH = Belt(label="16 um", grit_um=16.0)

PROCESSES = (
    Process(name="plain", belts=(COARSE, FINE, POLISH), finish="felt wheel", set_up_seconds=90, run_size=12),
    Process(name="serrated", belts=(POLISH,), finish="strop the flat side", set_up_seconds=30, run_size=6),
    Process(name="thin", belts=(FINE, POLISH), finish="soft felt, light", set_up_seconds=60, run_size=6),
)


def _kind(
    name: str, process: str, *, price_cents: int, length_mm: int, edge: Edge = Edge.PLAIN, short: tuple[str, ...] = ()
) -> Kind:
    return Kind(
        name=name,
        process=process,
        edge=edge,
        price_cents=price_cents,
        minutes=MINUTES,
        short=short,
        length_mm=length_mm,
    )


KINDS = (
    _kind("chef", "plain", price_cents=900, length_mm=200, short=("c",)),
    _kind("paring", "plain", price_cents=600, length_mm=90, short=("p",)),
    _kind("slicer", "plain", price_cents=1000, length_mm=260),
    _kind("bread", "serrated", price_cents=1100, length_mm=230, edge=Edge.SERRATED),
    _kind("slim", "thin", price_cents=1800, length_mm=210, edge=Edge.SINGLE_RIGHT),
)


def settings(*, currency: str = "EUR", length_unit: str = "cm") -> Settings:
    """A small shop: five kinds, three processes, Monday to Saturday."""
    return Settings(
        name="Fernlea Edge",
        currency=currency,
        country="",
        region="",
        zone=ZONE,
        length_unit=length_unit,
        hours=dict.fromkeys(range(6), ((time(8), time(12)), (time(13), time(17, 30)))),
        bench=dict.fromkeys(range(6), ((time(8), time(10, 30)), (time(13), time(15)))),
        ready_by=time(16),
        closures=(),
        markets=(),
        kinds=KINDS,
        processes=PROCESSES,
        edges={Edge.SERRATED: "serrated"},
        handling=Handling(
            intake_per_knife=1,
            intake_per_box=4,
            test_per_knife=1,
            wrap_per_knife=1,
            pack_per_parcel=8,
            counter_per_box=3,
        ),
        parcels=Parcels(carrier_days=2, collection_weekdays=frozenset(range(5)), cut_off=time(15, 45)),
    )
