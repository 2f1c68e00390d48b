"""Whatever is done in whatever order, the knives of every box add up, and no promise is overwritten."""

from hypothesis import Phase, given, settings
from hypothesis import strategies as st
from hypothesis.stateful import invariant, rule

from queueboard.intake.adding_up import add_up
from queueboard.records.moved import found_of, moves_of, off_of
from queueboard.records.reading import BOX, box_of
from queueboard.shop import counting, found_knives, receiving, rehoming
from queueboard.shop.promising import promise
from queueboard.shop.rows import knives_of_box
from queueboard.values.found import Off
from queueboard.values.new import NewBox, NewCustomer, NewPromise
from queueboard.words import CameBy, GoesBy, PromiseKind
from tests.shop.carried import carried
from tests.shop.mail_and_bench import attempt, picks
from tests.shop.place import NOW, by, chef
from tests.shop.test_conservation import ShopDay


class CountedDay(ShopDay):
    """A day of random actions in which counts differ, and knives come later, change boxes, are struck and found."""

    @rule(counted=st.integers(1, 4), note=st.integers(0, 4))
    def receive_by_note(self, counted: int, note: int) -> None:
        """A box comes in whose note may say another number."""
        new = NewBox(
            new_customer=NewCustomer(name="Oake"),
            came_by=CameBy.COUNTER,
            goes_by=GoesBy.PICK_UP,
            counted=counted,
            knives=tuple(chef() for _ in range(counted)),
            note_says=note,
        )
        receiving.receive_box(self.shop, by(), new)

    @rule(which=picks, act=st.integers(0, 5), other=picks)
    def count(self, which: int, act: int, other: int) -> None:
        """The count is answered, a knife changes its box, one is found."""
        boxes = self.boxes()
        chosen = [b for b in boxes if b.apart] if act < 2 else [b for b in boxes if b.knives]
        found = found_of(self.shop.database, "f.settled_us IS NULL")
        if not chosen or (act == 3 and not found):
            return
        one, to = chosen[which % len(chosen)], boxes[other % len(boxes)]
        knife = one.knives[other % len(one.knives)]
        acts = (
            lambda: counting.yes_to_count(self.shop, by(), one.box),
            lambda: counting.not_theirs(self.shop, by(), one.box, "shelf F"),
            lambda: rehoming.move_to_box(self.shop, by(), knife, to.box, "theirs"),
            lambda: found_knives.found_into_box(self.shop, by(), found[0], to.box, "theirs"),
            lambda: rehoming.found_among(self.shop, by(), knife, to.box, "in that tray"),
            lambda: found_knives.note_found(self.shop, by(), kind="chef", place="sink"),
        )
        attempt(acts[act])

    @rule(which=picks, days=st.integers(0, 9), why=st.sampled_from(["", "belts late"]))
    def tell(self, which: int, days: int, why: str) -> None:
        """A date is told, the first or a later one."""
        boxes = self.boxes()
        if boxes:
            day = NOW.date().replace(day=9 + days)
            new = NewPromise(kind=PromiseKind.DAY, day=day, told_to="them" if why else "", reason=why)
            attempt(lambda: promise(self.shop, by(), boxes[which % len(boxes)].box, new))

    @invariant()
    def every_box_adds_up(self) -> None:
        """Counted in + added + moved in = gone + moved out + on hand + struck + found, open or closed."""
        database = self.shop.database
        for box in map(box_of, database.rows(BOX)):
            knives, moves = knives_of_box(database, box.id), moves_of(database, "?", box.id)
            total = add_up(box, knives, moves, off_of(database, "?", box.id).get(box.id, Off()))
            assert total.adds_up, (box.number, total)
            assert min(total.added, total.moved_in, total.struck) >= 0
        for seen in self.boxes():
            assert seen.sum.adds_up
            assert seen.totals.knives_cents == sum(knife.charged_cents for knife in seen.knives if not knife.apart)

    @invariant()
    def no_promise_is_overwritten(self) -> None:
        """What was told stays as it was told; a later date is a row of its own."""
        lines = "SELECT count(*) FROM history WHERE entity = 'promise' AND before IS NOT NULL AND after IS NOT NULL"
        assert self.rows(lines) == [0]


CountedDay.TestCase.settings = settings(
    max_examples=25, stateful_step_count=25, deadline=None, phases=set(Phase) - {Phase.shrink}
)
TestCountedDay = CountedDay.TestCase


@given(count=st.integers(1, 9), moves=st.lists(st.tuples(st.integers(0, 8), st.integers(0, 2)), max_size=9))
def test_knives_carried_between_three_boxes_add_up(count: int, moves: list[tuple[int, int]]) -> None:
    """Held against a plain count of who lies where, worked out without the sum."""
    sums, lying = carried(count, moves)

    assert all(total.adds_up for total in sums)
    assert [total.on_hand for total in sums] == lying
    assert [total.counted for total in sums] == [count, 0, 0]
