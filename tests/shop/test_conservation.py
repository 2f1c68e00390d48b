"""Whatever is done in whatever order, no knife is lost or doubled and the board tells what the file holds."""

from collections.abc import Callable, Sequence
from functools import partial

from hypothesis import Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import invariant, rule

from queueboard.shop import closing, undoing
from queueboard.shop.labelling import set_label
from queueboard.shop.looking import look
from queueboard.shop.losing import found, settle_lost
from queueboard.shop.money import take_payment
from queueboard.shop.moving import move_knives, pack_box
from queueboard.shop.noting import add_thing, decline_knife
from queueboard.shop.opening import Shop
from queueboard.shop.picture import BoxPicture
from queueboard.shop.receiving import add_knife, strike_knife
from queueboard.shop.waiting import knives_wait
from queueboard.values.box import CloseOut
from queueboard.values.knife import Knife
from queueboard.values.new import NewLabel
from queueboard.words import (
    ON_BOARD,
    Column,
    DeclineReason,
    LabelOwner,
    LabelState,
    Packing,
    Settling,
    WaitingFor,
)
from tests.shop.mail_and_bench import MailAndBench, attempt, picks
from tests.shop.place import NOW, by, cash, chef, counter, parcel


def works(
    shop: Shop, chosen: BoxPicture, some: Sequence[Knife], to: Column, *, odd: bool
) -> tuple[Callable[[], object], ...]:
    """What can be done to a box and some of its knives."""
    lost = next((knife for knife in chosen.on_hand if knife.looking_for), some[0])
    label = NewLabel(owner=LabelOwner.SHOP, state=LabelState.HERE)
    return (
        lambda: move_knives(shop, by(), some, to),
        lambda: knives_wait(shop, by(), some, WaitingFor.BELTS if odd else None),
        lambda: decline_knife(shop, by(), some[0], DeclineReason.CRACKED),
        lambda: add_knife(shop, by(), chosen.box, chef()),
        lambda: strike_knife(shop, by(), some[0], "typed twice"),
        lambda: add_thing(shop, by(), chosen.box, "sheath"),
        lambda: pack_box(shop, by(), chosen.box, Packing.WRAPPED),
        lambda: take_payment(shop, by(), chosen.box, cash(100 + len(some), paid_before=chosen.paid_cents)),
        lambda: set_label(shop, by(), chosen.box, label),
        lambda: found(shop, by(), lost),
        lambda: settle_lost(shop, by(), lost, "paid for"),
    )


def next_steps(shop: Shop, chosen: BoxPicture, out: CloseOut, n: int) -> tuple[Callable[[], object], ...]:
    """What can be answered in a close-out."""
    return (
        lambda: closing.count(shop, by(), out, n),
        lambda: closing.tick(shop, by(), out, chosen.knives[n % len(chosen.knives)].id),
        lambda: closing.ticks_done(shop, by(), out),
        lambda: closing.why_missing(shop, by(), out, "the ferry leaves"),
        lambda: closing.things_done(shop, by(), out),
        lambda: closing.confirm_names(shop, by(), out),
        lambda: closing.confirm_label(shop, by(), out, "self"),
        lambda: closing.settle(shop, by(), out, Settling.ON_ACCOUNT),
        lambda: closing.leave_close_out(shop, by(), out),
        lambda: closing.send_off(shop, by(), out),
    )


def answer(shop: Shop, now: BoxPicture, step: str, *, pays: bool) -> None:
    """The answer that lets as much go as can."""
    out = now.close_out
    assert out is not None
    paid = cash(now.owed_cents, paid_before=now.paid_cents) if pays and now.owed_cents > 0 else None
    settled = Settling.PAID if paid else Settling.ON_ACCOUNT
    answers: dict[str, Callable[[], object]] = {
        "count": lambda: closing.count(shop, by(), out, now.ready_count),
        "things": lambda: closing.things_done(shop, by(), out),
        "why": lambda: closing.why_missing(shop, by(), out, "the ferry leaves"),
        "names": lambda: closing.confirm_names(shop, by(), out),
        "label": lambda: closing.confirm_label(shop, by(), out, "self"),
        "money": lambda: closing.settle(shop, by(), out, settled, "", paid),
        "go": lambda: closing.send_off(shop, by(), out),
    }
    answers[step]()


class ShopDay(MailAndBench):
    """A day of random actions; each either works or is refused with a sentence."""

    @rule(knives=st.integers(min_value=1, max_value=4), by_mail=st.booleans())
    def receive(self, knives: int, *, by_mail: bool) -> None:
        """A box comes in."""
        (parcel if by_mail else counter)(self.shop, knives=knives)

    @rule(which=picks, act=st.integers(min_value=0, max_value=10), to=st.sampled_from(ON_BOARD))
    def work(self, which: int, act: int, to: Column) -> None:
        """Something is done to a box or its knives."""
        boxes = self.boxes()
        if not boxes:
            return
        chosen = boxes[which % len(boxes)]
        on_hand = chosen.on_hand or chosen.knives
        if not on_hand:
            return
        some = on_hand[: 1 + which % len(on_hand)]
        attempt(works(self.shop, chosen, some, to, odd=bool(which % 2))[act])

    @rule(back=st.integers(min_value=0, max_value=30), again=st.booleans())
    def undo(self, back: int, *, again: bool) -> None:
        """A step is taken back, the newest or an older one; or the last undo is itself undone."""
        last = undoing.last_undo(self.shop, "J")
        done = undoing.steps(self.shop, "J", 40)
        step = last if again and last is not None else done[back % len(done)]
        attempt(lambda: undoing.undo(self.shop, by(), step.group_id, "tried"))

    @rule(which=picks, n=st.integers(min_value=0, max_value=4), act=st.integers(min_value=0, max_value=9))
    def close(self, which: int, n: int, act: int) -> None:
        """A close-out begins, or takes some next step."""
        boxes = self.boxes()
        if not boxes:
            return
        chosen = boxes[which % len(boxes)]
        out = chosen.close_out
        if out is None:
            attempt(lambda: closing.begin_close_out(self.shop, by(), chosen.box))
            return
        attempt(next_steps(self.shop, chosen, out, n)[act])

    @rule(which=picks, n=st.integers(min_value=1, max_value=4), pays=st.booleans())
    def go(self, which: int, n: int, *, pays: bool) -> None:
        """A part of a box, or all of it, is made ready and goes, as far as nothing is in the way."""
        boxes = self.boxes()
        if not boxes:
            return
        first = boxes[which % len(boxes)]
        attempt(lambda: move_knives(self.shop, by(), first.on_hand[:n], Column.READY))
        attempt(lambda: closing.begin_close_out(self.shop, by(), self.again(first).box))
        if self.again(first).close_out is not None:
            for step in ("count", "things", "why", "names", "label", "money", "go"):
                attempt(partial(answer, self.shop, self.again(first), step, pays=pays))

    def again(self, seen: BoxPicture) -> BoxPicture:
        """The box as it stands now; as it was seen once it has gone."""
        return next((now for now in self.boxes() if now.box.id == seen.box.id), seen)

    def rows(self, sql: str) -> list[object]:
        """The first column of a query."""
        return [row[0] for row in self.shop.database.rows(sql)]

    @invariant()
    def every_knife_is_somewhere(self) -> None:
        """Each knife that came in is on hand or gone, in one box, and nothing stands in a closed one."""
        stored = self.rows(
            "SELECT k.id FROM knife k JOIN box b ON b.id = k.box_id WHERE b.closed_us IS NULL ORDER BY k.id"
        )
        assert sorted(k.id for b in self.boxes() for k in b.knives) == stored
        for belongs in ("knife k", "thing k"):
            state = "k.place" if belongs.startswith("knife") else "k.state"
            assert not self.rows(
                f"SELECT k.id FROM {belongs} JOIN box b ON b.id = k.box_id "
                f"WHERE b.closed_us IS NOT NULL AND {state} <> 'gone'"
            )

    @invariant()
    def an_open_box_can_go_on(self) -> None:
        """An opened box has something in it, and no other has; a packed one is ready; one label is to be used."""
        for seen in self.boxes():
            here = bool(seen.on_hand) or any(thing.state.value != "gone" for thing in seen.things)
            assert here or not seen.box.opened
            assert not here or not seen.box.announced
            if seen.box.packing is not None:
                assert all(knife.can_leave or knife.looking_for for knife in seen.on_hand)
        assert not self.rows("SELECT box_id FROM label WHERE state <> 'used' GROUP BY box_id HAVING count(*) > 1")
        assert not self.rows(
            "SELECT c.id FROM close_out c JOIN box b ON b.id = c.box_id "
            "WHERE c.finished_us IS NULL AND b.closed_us IS NOT NULL"
        )

    @invariant()
    def planned_knives_are_on_the_board(self) -> None:
        """The day list holds only knives on hand, each once."""
        seen = look(self.shop, NOW)
        planned = [knife_id for run in seen.plan.runs for knife_id in run.knife_ids]
        assert len(planned) == len(set(planned))
        assert set(planned) <= {k.id for b in seen.boxes for k in b.on_hand}


# A failing day is told as it was found: shortening one of 25 steps over a file takes minutes.
ShopDay.TestCase.settings = settings(
    max_examples=25, stateful_step_count=25, deadline=None, phases=set(Phase) - {Phase.shrink}
)
TestShopDay = ShopDay.TestCase
