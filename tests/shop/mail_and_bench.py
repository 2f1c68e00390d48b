"""A shop in which random things happen: what comes by mail, and runs at the bench. Tests of whole days build on it."""

from collections import Counter
from collections.abc import Callable
from pathlib import Path
from tempfile import mkdtemp

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from queueboard.errors import QueueboardError
from queueboard.records.runs import open_runs
from queueboard.shop import announcing, running
from queueboard.shop.looking import look
from queueboard.shop.opening import close_shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import open_box
from queueboard.words import Column
from tests.shop.place import NOW, by, chef, parcel, small_shop
from tests.shop.undo_announcing import OAKE

picks = st.integers(min_value=0, max_value=99)


def attempt(act: Callable[[], object]) -> None:
    """Do it, or let it be refused with a sentence of the shop's own; the invariants hold what must hold."""
    told = ""
    try:
        act()
    except QueueboardError as error:
        told = str(error)
    assert "constraint" not in told


class MailAndBench(RuleBasedStateMachine):
    """Boxes that are announced and come, and runs that are begun and finished."""

    def __init__(self) -> None:
        super().__init__()
        self.shop = small_shop(Path(mkdtemp()))
        parcel(self.shop)

    def teardown(self) -> None:
        """Close the file."""
        close_shop(self.shop)

    def boxes(self) -> tuple[BoxPicture, ...]:
        """The open boxes."""
        return look(self.shop, NOW).boxes

    @rule(act=st.integers(min_value=0, max_value=3), which=picks)
    def mail(self, act: int, which: int) -> None:
        """A box is announced; or one that is not opened arrives, is opened, or is called off."""
        closed = [seen.box for seen in self.boxes() if not seen.box.opened]
        if act == 0 or not closed:
            announcing.announce_box(self.shop, by(), OAKE)
            return
        chosen = closed[which % len(closed)]
        acts = (
            lambda: announcing.arrived(self.shop, by(), chosen),
            lambda: open_box(self.shop, by(), chosen, 2, (chef(), chef())),
            lambda: announcing.call_off(self.shop, by(), chosen, "sold"),
        )
        attempt(acts[act - 1])

    @rule(which=picks, act=st.integers(min_value=0, max_value=5), who=st.sampled_from("JK"))
    def run(self, which: int, act: int, who: str) -> None:
        """A run is begun over some of two boxes, or something is done to one under way."""
        knives = [knife for seen in self.boxes()[which % 3 :][:2] for knife in seen.on_hand[: 1 + which % 3]]
        under_way = open_runs(self.shop.database)
        if act == 0 or not under_way:
            attempt(lambda: running.start_run(self.shop, by(who), "plain", knives, 90))
            return
        chosen = under_way[which % len(under_way)]
        acts = (
            running.pause_run,
            running.go_on_run,
            running.finish_run,
            running.throw_away,
            running.leave_run,
        )
        attempt(lambda: acts[act - 1](self.shop, by(who), chosen))

    @invariant()
    def nobody_has_anothers_knife(self) -> None:
        """A run under way has work at the bench, no knife there is in two, and a person has one run going on."""
        runs = open_runs(self.shop.database)
        here = {k.id for b in self.boxes() for k in b.in_column(Column.ON_BENCH) if k.waiting_for is None}
        at_work = [knife_id for run in runs for knife_id in run.knife_ids if knife_id in here]
        assert len(at_work) == len(set(at_work))
        assert all(here.intersection(run.knife_ids) for run in runs)
        assert max(Counter(run.started_by for run in runs if run.paused_at is None).values(), default=0) <= 1
