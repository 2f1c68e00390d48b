"""For every operation on belts, studies, trials and stable periods: how to come to it, and the one act itself."""

from datetime import timedelta

from queueboard.records.belts import fitted_belts
from queueboard.records.studies import studies
from queueboard.records.trials import open_trials
from queueboard.shop import fitting, stable, trialling, wobbling
from queueboard.shop.opening import Shop
from queueboard.values.fitted import FittedBelt
from queueboard.values.study import Study
from queueboard.words import BeltEnd
from tests.shop.place import NOW, by
from tests.shop.undo_closing import Act


def only_belt(shop: Shop) -> FittedBelt:
    """The one belt that is up."""
    (belt,) = fitted_belts(shop.database)
    return belt


def only_study(shop: Shop) -> Study:
    """The one study."""
    (study,) = studies(shop.database)
    return study


def do_fit_belt(shop: Shop) -> Act:
    fitting.count_spares(shop, by(), "P400", 4)
    return lambda actor: fitting.fit_belt(shop, actor, "plain", "P400")


def do_move_belt(shop: Shop) -> Act:
    fitting.fit_belt(shop, by(), "plain", "P240")
    belt = only_belt(shop)
    return lambda actor: fitting.move_belt(shop, actor, belt, "plain", "P400")


def do_remove_belt(shop: Shop) -> Act:
    fitting.fit_belt(shop, by(), "plain", "P240")
    belt = only_belt(shop)
    return lambda actor: fitting.remove_belt(shop, actor, belt, BeltEnd.GOUGED, "bone in the edge")


def do_count_spares(shop: Shop) -> Act:
    fitting.count_spares(shop, by(), "P400", 4)
    return lambda actor: fitting.count_spares(shop, actor, "P400", 7)


def do_begin_study(shop: Shop) -> Act:
    return lambda actor: wobbling.begin_study(shop, actor, "new filament", 6)


def do_read_study(shop: Shop) -> Act:
    wobbling.begin_study(shop, by())
    study = only_study(shop)
    return lambda actor: wobbling.read_study(shop, actor, study, 180)


def do_finish_study(shop: Shop) -> Act:
    wobbling.begin_study(shop, by(), "", 5)
    for force in range(160, 175):
        wobbling.read_study(shop, by(), only_study(shop), force)
    study = only_study(shop)
    return lambda actor: wobbling.finish_study(shop, actor, study)


def do_begin_study_over(shop: Shop) -> Act:
    wobbling.begin_study(shop, by())
    wobbling.read_study(shop, by(), only_study(shop), 180)
    study = only_study(shop)
    return lambda actor: wobbling.begin_study_over(shop, actor, study, "another tester")


def do_begin_trial(shop: Shop) -> Act:
    return lambda actor: trialling.begin_trial(shop, actor, kind="chef", process="plain", belt="16 um")


def do_end_trial(shop: Shop) -> Act:
    trialling.begin_trial(shop, by(), kind="chef", process="plain", belt="16 um")
    (trial,) = open_trials(shop.database)
    return lambda actor: trialling.end_trial(shop, actor, trial)


def do_set_stable(shop: Shop) -> Act:
    stable.set_stable(shop, by(), "plain", NOW - timedelta(days=9), NOW)
    return lambda actor: stable.set_stable(shop, actor, "plain", NOW - timedelta(days=5), NOW)
