"""The bench screen, the test of an edge and their questions, made over a shop with something to ask about."""

from collections.abc import Callable, Mapping

from queueboard.board.desk import Desk
from queueboard.board.screens.bench import BenchScreen
from queueboard.board.screens.dialogs import bench, edge
from queueboard.board.screens.edge import EdgeScreen
from queueboard.shop.belt_counts import belt_places
from queueboard.shop.edge_now import edge_now
from queueboard.shop.edges_seen import charts_seen
from queueboard.shop.fitting import fit_belt
from queueboard.shop.wobbling import begin_study
from queueboard.words import Stage
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
    return bench.StableDialog(desk, charts_seen(desk.shop, desk.clock())[0])


def _edge(desk: Desk) -> AnyScreen:
    read(desk.shop, by(), box(desk.shop, COUNTER).knives[0], {"heel": 180, "tip": 240}, ok=False)
    return EdgeScreen(desk, box(desk.shop, COUNTER).knives[0])


def _edge_dialog(what: str) -> Callable[[Desk], AnyScreen]:
    def make(desk: Desk) -> AnyScreen:
        knife = box(desk.shop, COUNTER).knives[0]
        read(desk.shop, by(), knife, {"heel": 180, "tip": 240}, ok=False)
        seen = edge_now(desk.shop, knife)
        return edge.edge_dialog(what, desk, seen, seen.spots[0], Stage.AFTER)

    return make


BENCH_SCREENS: Mapping[type[AnyScreen], Callable[[Desk], AnyScreen]] = {
    BenchScreen: BenchScreen,
    bench.BeginStudyDialog: bench.BeginStudyDialog,
    bench.OffDialog: _off,
    bench.SparesDialog: lambda desk: bench.SparesDialog(desk, belt_places(desk.shop)[0]),
    bench.StableDialog: _stable,
    bench.StudyDialog: _study,
    bench.TrialDialog: bench.TrialDialog,
    EdgeScreen: _edge,
    edge.SecondLookDialog: _edge_dialog("twice"),
    edge.SpotsDialog: _edge_dialog("spots"),
    edge.WrongDialog: _edge_dialog("wrong"),
}
