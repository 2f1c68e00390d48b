"""The bench screen and its questions, made over a shop with something to ask about."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.bench import BenchScreen
from queueboard.board.screens.dialogs import bench
from queueboard.shop.belt_counts import belt_places
from queueboard.shop.edges_seen import charts_seen
from queueboard.shop.fitting import fit_belt
from queueboard.shop.wobbling import begin_study
from tests.board.host import AnyScreen
from tests.shop.place import box, by
from tests.shop.readings import read
from tests.shop.undo_edges import only_belt

COUNTER = 101


def _off(desk: Desk) -> AnyScreen:
    fit_belt(desk.shop, by(), "plain", "P240")
    return bench.OffDialog(desk, only_belt(desk.shop), belt_places(desk.shop)[1:3])


def _study(desk: Desk) -> AnyScreen:
    begin_study(desk.shop, by())
    return bench.StudyDialog(desk)


def _stable(desk: Desk) -> AnyScreen:
    for place, knife in enumerate(box(desk.shop, COUNTER).knives):
        read(desk.shop, by(minutes=place), knife, {"heel": 180 + place})
    return bench.StableDialog(desk, charts_seen(desk.shop)[0])


BENCH_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {
    BenchScreen: BenchScreen,
    bench.BeginStudyDialog: bench.BeginStudyDialog,
    bench.OffDialog: _off,
    bench.SparesDialog: lambda desk: bench.SparesDialog(desk, belt_places(desk.shop)[0]),
    bench.StableDialog: _stable,
    bench.StudyDialog: _study,
    bench.TrialDialog: bench.TrialDialog,
}
