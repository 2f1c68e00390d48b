"""For every operation on runs: how to come to it, and the one act itself."""

from queueboard.records.runs import open_runs
from queueboard.shop import running
from queueboard.shop.opening import Shop
from queueboard.values.measured import BenchRun
from tests.shop.place import by, parcel
from tests.shop.undo_closing import Act


def only_run(shop: Shop) -> BenchRun:
    """The one run under way."""
    (run,) = open_runs(shop.database)
    return run


def begun(shop: Shop) -> BenchRun:
    """A run of the three knives of a parcel, begun by J."""
    running.start_run(shop, by(), "plain", parcel(shop).knives, 90)
    return only_run(shop)


def do_start_run(shop: Shop) -> Act:
    made = parcel(shop)
    return lambda actor: running.start_run(shop, actor, "plain", made.knives[:2], 90, 600)


def do_pause_run(shop: Shop) -> Act:
    run = begun(shop)
    return lambda actor: running.pause_run(shop, actor, run)


def do_go_on_run(shop: Shop) -> Act:
    running.pause_run(shop, by(), begun(shop))
    run = only_run(shop)
    return lambda actor: running.go_on_run(shop, actor, run)


def do_finish_run(shop: Shop) -> Act:
    run = begun(shop)
    return lambda actor: running.finish_run(shop, actor, run)


def do_finish_untimed(shop: Shop) -> Act:
    run = begun(shop)
    return lambda actor: running.finish_untimed(shop, actor, run)


def do_throw_away(shop: Shop) -> Act:
    run = begun(shop)
    return lambda actor: running.throw_away(shop, actor, run)


def do_leave_run(shop: Shop) -> Act:
    run = begun(shop)
    return lambda actor: running.leave_run(shop, actor, run)
