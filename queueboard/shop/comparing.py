"""Everything that readings show, at one instant: before and after, how edges lasted, belt trials, charts."""

from datetime import datetime

from queueboard.settings.shapes import Settings
from queueboard.shop.edges_seen import ChangesSeen, ChartSeen, changes_seen, charts_seen
from queueboard.shop.lasting import LastedSeen, lasted_seen
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in
from queueboard.shop.trial_results import TrialSeen, trials_seen
from queueboard.slotted import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What the shop's readings show."""

    settings: Settings
    now: datetime
    """Aware, in the shop's zone."""
    changes: ChangesSeen
    lasted: LastedSeen
    trials: tuple[TrialSeen, ...]
    """The newest first."""
    charts: tuple[ChartSeen, ...]


def compared(shop: Shop, now: datetime) -> Compared:
    """All of it."""
    with shop.reading() as database:
        settings = settings_in(database)
    return Compared(
        settings=settings,
        now=now.astimezone(settings.zone),
        changes=changes_seen(shop),
        lasted=lasted_seen(shop),
        trials=trials_seen(shop),
        charts=charts_seen(shop),
    )
