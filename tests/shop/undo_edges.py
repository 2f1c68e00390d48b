"""For every operation on belts, studies, trials and stable periods: how to come to it, and the one act itself."""

from datetime import timedelta

from queueboard.records.belts import fitted_belts
from queueboard.records.studies import studies
from queueboard.records.trials import open_trials
from queueboard.seedfiles import seed_text
from queueboard.shop import fitting, gauging, stable, testing, trialling, wobbling
from queueboard.shop.moving import move_knives
from queueboard.shop.numbers import take_settings
from queueboard.shop.opening import Shop
from queueboard.values.edge import NewSpot
from queueboard.values.fitted import FittedBelt
from queueboard.values.knife import Knife
from queueboard.values.study import Study
from queueboard.words import BeltEnd, Column, SecondLook, Stage
from tests.shop.place import NOW, box, by, counter
from tests.shop.undo_closing import Act

ALWAYS = seed_text("settings.toml").replace("always = [] ", 'always = ["chef"] ')


def knives_now(shop: Shop, number: int) -> tuple[Knife, ...]:
    """The knives of a box as they stand."""
    return box(shop, number).knives


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


def at_the_test(shop: Shop, before_gf: int | None = None) -> Knife:
    """A chef's knife in testing for which the gauge is asked, read at three spots; the heel before too if given."""
    take_settings(shop, by(), ALWAYS)
    made = counter(shop, knives=1)
    if before_gf is not None:
        gauging.read_spot(shop, by(), made.knives[0], "heel", before_gf, Stage.BEFORE)
    move_knives(shop, by(), knives_now(shop, made.box.number), Column.ON_BENCH)
    move_knives(shop, by(), knives_now(shop, made.box.number), Column.TESTING)
    for spot, force in (("heel", 180), ("middle", 170), ("tip", 210)):
        gauging.read_spot(shop, by(), knives_now(shop, made.box.number)[0], spot, force)
    return knives_now(shop, made.box.number)[0]


def do_mark_spots(shop: Shop) -> Act:
    (knife,) = counter(shop, knives=1).knives
    return lambda actor: gauging.mark_spots(shop, actor, knife, [NewSpot(name="belly", from_heel_mm=90)])


def do_read_spot(shop: Shop) -> Act:
    knife = at_the_test(shop)
    return lambda actor: gauging.read_spot(shop, actor, knife, "tip", 190)


def do_correct_reading(shop: Shop) -> Act:
    knife = at_the_test(shop)
    reading = gauging.edge(shop, knife).readings[-1]
    return lambda actor: gauging.correct_reading(shop, actor, knife, reading, 201, "misread the display")


def do_judge_edge(shop: Shop) -> Act:
    knife = at_the_test(shop)
    return lambda actor: testing.judge_edge(shop, actor, knife, ok=True)


def do_let_go_by_eye(shop: Shop) -> Act:
    knife = at_the_test(shop)
    return lambda actor: testing.let_go_by_eye(shop, actor, knife)


def do_prove_tray(shop: Shop) -> Act:
    made = counter(shop, knives=3)
    move_knives(shop, by(), made.knives, Column.ON_BENCH)
    move_knives(shop, by(), knives_now(shop, made.box.number), Column.TESTING)
    knives = knives_now(shop, made.box.number)
    return lambda actor: testing.prove_tray(shop, actor, knives, knives[1:2])


def do_look_twice(shop: Shop) -> Act:
    knife = at_the_test(shop)
    testing.judge_edge(shop, by(), knife, ok=False)
    move_knives(shop, by(minutes=1), knives_now(shop, knife.box_number), Column.TESTING)
    (again,) = knives_now(shop, knife.box_number)
    return lambda actor: testing.look_twice(shop, actor, again, SecondLook.LOWER, "worn through; told her")


def do_set_stable(shop: Shop) -> Act:
    stable.set_stable(shop, by(), "plain", NOW - timedelta(days=9), NOW)
    return lambda actor: stable.set_stable(shop, actor, "plain", NOW - timedelta(days=5), NOW)
