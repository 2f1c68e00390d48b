"""What readings show, at one instant: before and after, how edges lasted, belt trials; and the charts."""

from datetime import datetime

from queueboard.records.edge_reads import read_knives
from queueboard.settings.shapes import Settings
from queueboard.shop.edges_seen import ChangesSeen, ChartSeen, changes_of, charts_seen
from queueboard.shop.lasting import LastedSeen, lasted_of
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in
from queueboard.shop.trial_results import TrialSeen, trials_seen
from queueboard.shop.wobbling import WobbleNow, wobble_in, wobble_now
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """What the work did, and for how long."""

    changes: ChangesSeen
    lasted: LastedSeen


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What is compared of the shop's readings."""

    settings: Settings
    now: datetime
    """Aware, in the shop's zone."""
    worked: Worked
    trials: tuple[TrialSeen, ...]
    """The newest first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Charted:
    """The shop's readings one by one."""

    settings: Settings
    now: datetime
    """Aware, in the shop's zone."""
    wobble: WobbleNow
    charts: tuple[ChartSeen, ...]


def worked_seen(shop: Shop) -> Worked:
    """All knives that were ever read, which ten years make many, read once for both."""
    with shop.reading() as database:
        read, wobble = read_knives(database), wobble_in(database)
        return Worked(changes=changes_of(read, wobble), lasted=lasted_of(database, read, wobble))


def compared(shop: Shop, now: datetime) -> Compared:
    """All that is compared."""
    settings = _settings(shop)
    return Compared(
        settings=settings, now=now.astimezone(settings.zone), worked=worked_seen(shop), trials=trials_seen(shop)
    )


def charted(shop: Shop, now: datetime) -> Charted:
    """The charts of all processes."""
    settings = _settings(shop)
    return Charted(
        settings=settings, now=now.astimezone(settings.zone), wobble=wobble_now(shop), charts=charts_seen(shop, now)
    )


def _settings(shop: Shop) -> Settings:
    with shop.reading() as database:
        return settings_in(database)
