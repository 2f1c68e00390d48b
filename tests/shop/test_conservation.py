"""Whatever is done in whatever order, no knife is lost or doubled and the board tells what the file holds."""

from contextlib import suppress
from pathlib import Path
from tempfile import mkdtemp

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from queueboard.errors import QueueboardError
from queueboard.shop.closing import (
    begin_close_out,
    confirm_label,
    confirm_names,
    count,
    found,
    send_off,
    settle,
    tick,
    ticks_done,
    why_missing,
)
from queueboard.shop.looking import look
from queueboard.shop.moving import move_knives
from queueboard.shop.noting import decline_knife
from queueboard.shop.opening import close_shop
from queueboard.shop.receiving import add_knife
from queueboard.shop.undoing import steps, undo
from queueboard.shop.waiting import knives_wait
from queueboard.words import ON_BOARD, Column, DeclineReason, Settling, WaitingFor
from tests.shop.place import NOW, by, chef, counter, parcel, small_shop

picks = st.integers(min_value=0, max_value=99)


class ShopDay(RuleBasedStateMachine):
    """A day of random actions; each either works or is refused with a sentence."""

    def __init__(self) -> None:
        super().__init__()
        self.shop = small_shop(Path(mkdtemp()))
        parcel(self.shop)

    def teardown(self) -> None:
        """Close the file."""
        close_shop(self.shop)

    @rule(knives=st.integers(min_value=1, max_value=4), by_mail=st.booleans())
    def receive(self, knives: int, *, by_mail: bool) -> None:
        """A box comes in."""
        (parcel if by_mail else counter)(self.shop, knives=knives)

    @rule(which=picks, act=st.integers(min_value=0, max_value=7), to=st.sampled_from(ON_BOARD))
    def work(self, which: int, act: int, to: Column) -> None:
        """Something is done to a box or its knives."""
        boxes = look(self.shop, NOW).boxes
        if not boxes:
            return
        chosen = boxes[which % len(boxes)]
        on_hand = chosen.on_hand or chosen.knives
        some = on_hand[: 1 + which % len(on_hand)]
        lost = [knife for knife in on_hand if knife.looking_for]
        acts = (
            lambda: move_knives(self.shop, by(), some, to),
            lambda: knives_wait(self.shop, by(), some, WaitingFor.BELTS if which % 2 else None),
            lambda: decline_knife(self.shop, by(), some[0], DeclineReason.CRACKED),
            lambda: add_knife(self.shop, by(), chosen.box, chef()),
            lambda: begin_close_out(self.shop, by(), chosen.box),
            lambda: found(self.shop, by(), lost[0]) if lost else None,
            lambda: undo(self.shop, by(), steps(self.shop, "J")[0].group_id, "tried"),
            lambda: undo(self.shop, by(), steps(self.shop, "J")[-1].group_id, "tried"),
        )
        with suppress(QueueboardError):  # refused with a sentence; what must hold is held by the invariants
            acts[act]()

    @rule(which=picks, n=st.integers(min_value=0, max_value=4))
    def close(self, which: int, n: int) -> None:
        """A close-out takes its next step."""
        under_way = [b for b in look(self.shop, NOW).boxes if b.close_out is not None]
        if not under_way:
            return
        chosen = under_way[which % len(under_way)]
        close = chosen.close_out
        assert close is not None
        acts = (
            lambda: count(self.shop, by(), close, n),
            lambda: tick(self.shop, by(), close, chosen.knives[n % len(chosen.knives)].id),
            lambda: ticks_done(self.shop, by(), close),
            lambda: why_missing(self.shop, by(), close, "the ferry leaves"),
            lambda: confirm_names(self.shop, by(), close),
            lambda: confirm_label(self.shop, by(), close, "self"),
            lambda: settle(self.shop, by(), close, Settling.ON_ACCOUNT),
            lambda: send_off(self.shop, by(), close),
        )
        with suppress(QueueboardError):
            acts[which % len(acts)]()

    @invariant()
    def every_knife_is_somewhere(self) -> None:
        """Each knife that came in is on hand or gone, in one box, and an open box has something left."""
        seen = look(self.shop, NOW)
        stored = self.shop.database.rows(
            "SELECT k.id FROM knife k JOIN box b ON b.id = k.box_id WHERE b.closed_us IS NULL ORDER BY k.id"
        )
        assert sorted(k.id for b in seen.boxes for k in b.knives) == [row[0] for row in stored]
        in_closed = self.shop.database.one(
            "SELECT count(*) FROM knife k JOIN box b ON b.id = k.box_id "
            "WHERE b.closed_us IS NOT NULL AND place <> 'gone'"
        )
        assert in_closed == 0

    @invariant()
    def planned_knives_are_on_the_board(self) -> None:
        """The day list holds only knives on hand, each once."""
        seen = look(self.shop, NOW)
        planned = [knife_id for run in seen.plan.runs for knife_id in run.knife_ids]
        assert len(planned) == len(set(planned))
        assert set(planned) <= {k.id for b in seen.boxes for k in b.on_hand}


ShopDay.TestCase.settings = settings(max_examples=25, stateful_step_count=25, deadline=None)
TestShopDay = ShopDay.TestCase
