"""A shop in which everything happens at random, and what must hold in it whatever happens."""

import random
import shutil
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from functools import partial
from pathlib import Path
from tempfile import mkdtemp
from typing import ClassVar

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from queueboard.errors import QueueboardError
from queueboard.intake.adding_up import add_up
from queueboard.money.bill import totals, totals_of
from queueboard.priced_words import ChargeSort
from queueboard.records.accounts import left_owing, left_unpaid
from queueboard.records.auditing import audit
from queueboard.records.moved import moves_of, off_of
from queueboard.records.reading import BOX, box_of, by_box, knives_of
from queueboard.records.runs import open_runs
from queueboard.shop import charging, closing, fitting, moving, numbers, running, testing, trialling, undoing, wobbling
from queueboard.shop.looking import glance
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.rows import close_out_now
from queueboard.values.actor import Actor
from queueboard.values.found import Off
from queueboard.values.new import NewCharge
from queueboard.words import Column, Settling
from tests import lending
from tests.shop.acts import FAMILIES, LENIENT
from tests.shop.days_counted import is_counted_as_it_is_counted_anew
from tests.shop.kept_reading import hold_what_is_kept
from tests.shop.moment import Moment, NothingThereError
from tests.shop.place import NOW, another, box, by, cash, counter, parcel, started
from tests.shop.undo_announcing import announced
from tests.shop.undo_charging import gone_as
from tests.shop.undo_closing import begun as in_close_out
from tests.shop.undo_closing import lose_one
from tests.shop.undo_counting import found_one, one_too_many
from tests.shop.undo_edges import at_the_test, knives_now, only_study

chances = st.integers(0, 2**40)
LINES = "SELECT count(*) FROM history"


def attempt(act: Callable[[], object]) -> bool:
    """Do it, or let it be refused with a sentence of the shop's own; True when it was done."""
    try:
        act()
    except NothingThereError:
        return False
    except QueueboardError as error:
        told = str(error)
    else:
        return True
    assert "constraint" not in told
    assert "gave an error" not in told
    return False


def begun(path: Path) -> Shop:
    """A shop with something of every kind in it, so that few acts find nothing there; it may erase at once."""
    shop = another(started, path)
    knife = at_the_test(shop)
    numbers.take_settings(shop, by(), LENIENT)
    testing.judge_edge(shop, by(), knife, ok=False)
    moving.move_knives(shop, by(minutes=1), knives_now(shop, knife.box_number), Column.TESTING)
    at_the_test(shop)
    numbers.take_settings(shop, by(), LENIENT)
    parcel(shop, things=("sheath",))
    trayed = counter(shop, knives=3)
    moving.move_knives(shop, by(), trayed.knives, Column.TESTING)
    charging.add_charge(shop, by(), box(shop, trayed.box.number).box, NewCharge(sort=ChargeSort.RUST, cents=400))
    gone_as(shop, Settling.ON_ACCOUNT, name="Oake")
    lose_one(shop)
    one_too_many(shop)
    found_one(shop)
    announced(shop)
    running.start_run(shop, by(), "plain", parcel(shop).knives[:2], 90)
    in_close_out(shop, things=("sheath",))
    fitting.fit_belt(shop, by(), "plain", "P240")
    wobbling.begin_study(shop, by(), "", 5)
    for force in range(160, 174):
        wobbling.read_study(shop, by(), only_study(shop), force)
    trialling.begin_trial(shop, by(), kind="chef", process="plain", belt="16 um")
    return shop


class Day(RuleBasedStateMachine):
    """Acts by chance, each either done or refused with a sentence; what the shop promises holds behind each."""

    tried: ClassVar[Counter[tuple[str, bool]]] = Counter()
    """How often each operation was tried, done or refused."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(mkdtemp())
        self.shop = another(begun, self.folder / "day.qb")
        self.now = NOW
        self.seen: tuple[int, Picture] | None = None
        self.before: Picture | None = None
        """The picture behind the last act."""
        self.written = -1

    def teardown(self) -> None:
        """At the end of the day the file must be sound against its own history."""
        try:
            assert list(audit(self.shop.database.raw())) == []
        finally:
            close_shop(self.shop)
            lending.finished(self.shop.path)
            shutil.rmtree(self.folder)

    def moment(self, who: str = "J", chance: int = 0) -> Moment:
        """Now; the picture is taken anew only where something was stored.

        Small numbers are drawn most often; stirred with what was stored so far they choose differently each time.
        """
        lines = int(str(self.shop.database.one(LINES)))
        made = Moment(self.shop, self.now, who, random.Random(f"{chance} {lines}"))  # noqa: S311  # no secret
        if self.seen is None or self.seen[0] != lines or self.seen[1].now != self.now:
            self.seen = lines, made.picture
        else:
            made.picture = self.seen[1]
        return made

    def rows_written(self) -> int:
        """Rows ever written here, rolled back ones too; a server does not say, and the audit at the end does."""
        return int(getattr(self.shop.database.raw(), "total_changes", 0))

    def act(self, family: str, who: str, chance: int) -> None:
        """One operation of a family; each family is a rule, added below."""
        moment = self.moment(who, chance)
        name = moment.pick(sorted(FAMILIES[family]))
        self.tried[name, attempt(lambda: FAMILIES[family][name](moment))] += 1

    @rule(minutes=st.sampled_from((1, 1, 30, 60 * 24 * 3)))
    def time_goes_by(self, minutes: int) -> None:
        """It gets later."""
        self.now += timedelta(minutes=minutes)

    @rule(who=st.sampled_from("JK"))
    def undo_the_last_undo(self, who: str) -> None:
        """What was taken back is done again after all."""
        last = undoing.last_undo(self.shop, who)
        if last is not None:
            attempt(lambda: undoing.undo(self.shop, self.moment(who).by, last.group_id, "after all"))

    @rule(chance=chances, pays=st.booleans())
    def go(self, chance: int, *, pays: bool) -> None:
        """A part of a box, or all of it, is made ready and goes, as far as nothing is in the way."""
        moment = self.moment("J", chance)
        if not moment.picture.boxes:
            return
        first = moment.seen()
        attempt(lambda: moving.move_knives(self.shop, moment.by, moment.some(first.on_hand), Column.READY))
        now = self.again(first)
        attempt(lambda: closing.begin_close_out(self.shop, self.moment().by, now.box))
        for step in ("count", "things", "why", "names", "label", "money", "go"):
            attempt(partial(self.answer, now, step, pays=pays))

    def answer(self, seen: BoxPicture, step: str, *, pays: bool) -> None:
        """The answer that lets as much go as can."""
        out = close_out_now(self.shop.database, seen.box.id)
        if out is None:
            raise NothingThereError
        who = Actor(initials="J", now=self.now)
        paid = cash(seen.owed_cents, paid_before=seen.paid_cents) if pays and seen.owed_cents > 0 else None
        settled = Settling.PAID if paid else Settling.ON_ACCOUNT
        answers: dict[str, Callable[[], object]] = {
            "count": lambda: closing.count(self.shop, who, out, seen.ready_count),
            "things": lambda: closing.things_done(self.shop, who, out),
            "why": lambda: closing.why_missing(self.shop, who, out, "the ferry leaves"),
            "names": lambda: closing.confirm_names(self.shop, who, out),
            "label": lambda: closing.confirm_label(self.shop, who, out, "self"),
            "money": lambda: closing.settle(self.shop, who, out, settled, "", paid),
            "go": lambda: closing.send_off(self.shop, who, out),
        }
        answers[step]()

    def again(self, seen: BoxPicture) -> BoxPicture:
        """The box as it stands now; as it was seen once it has gone."""
        return next((now for now in self.moment().picture.boxes if now.box.id == seen.box.id), seen)

    @invariant()
    def what_the_shop_promises_holds(self) -> None:
        """Asked once behind each act: of the same moment, and the very file of which it was asked, all was held."""
        picture, written = self.moment().picture, self.rows_written()
        if picture is not self.before or written != self.written:
            hold_laws(self.shop, picture)
            self.written = written
        if self.before is not None:
            _is_seen_at_a_glance(self.shop, self.before, picture)
        self.before = picture


def _rule_of(family: str) -> Callable[..., None]:
    def act(self: Day, who: str, chance: int) -> None:
        self.act(family, who, chance)

    act.__name__ = family  # by which Hypothesis leaves some rules out of a day
    return rule(who=st.sampled_from("JJJK"), chance=chances)(act)


for one_family in FAMILIES:
    setattr(Day, f"act_{one_family}", _rule_of(one_family))


def hold_laws(shop: Shop, picture: Picture) -> None:
    """All that must hold of a shop at any moment."""
    is_counted_as_it_is_counted_anew(shop, picture)
    hold_what_is_kept(shop)
    with shop.reading():
        _is_owed_as_it_is_added_up(shop)
        _every_knife_is_somewhere(shop, picture)
        _an_open_box_can_go_on(shop, picture)
        _planned_knives_are_on_the_board(picture)
        _nobody_has_anothers_knife(shop, picture)
        _every_box_adds_up(shop, picture)


def _is_seen_at_a_glance(shop: Shop, before: Picture, picture: Picture) -> None:
    """What is shown before its plan is what is shown with it, but for the plan's own part."""
    glanced = glance(shop, picture.now, before)
    assert glanced.plan_follows
    assert [box.box.id for box in glanced.boxes] == [box.box.id for box in picture.boxes]
    for seen, whole in zip(glanced.boxes, picture.boxes, strict=True):
        of_the_plan = {name: getattr(whole, name) for name in ("forecast", "honest_day", "label_due")}
        assert replace(seen, **of_the_plan) == whole


def _is_owed_as_it_is_added_up(shop: Shop) -> None:
    """What the file adds up of boxes that have left comes to the same as their bills, knife by knife."""
    for whole, summed in zip(left_unpaid(shop.database), left_owing(shop.database), strict=True):
        left = {knife.id for knife in whole.bill.knives if whole.box.closed_at or knife.column is Column.GONE}
        assert (summed.box, summed.left_at, summed.settled) == (whole.box, whole.left_at, whole.settled)
        assert totals_of(summed.lines) == totals(whole.bill.only(left))


def _column(shop: Shop, sql: str) -> list[object]:
    return [row[0] for row in shop.database.rows(sql)]


def _every_knife_is_somewhere(shop: Shop, picture: Picture) -> None:
    """Each knife that came in is on hand or gone, in one box, and nothing stands in a closed one."""
    stored = _column(
        shop, "SELECT k.id FROM knife k JOIN box b ON b.id = k.box_id WHERE b.closed_us IS NULL ORDER BY k.id"
    )
    assert sorted(knife.id for seen in picture.boxes for knife in seen.knives) == stored
    for table, state in (("knife", "place"), ("thing", "state")):
        assert not _column(
            shop,
            f"SELECT k.id FROM {table} k JOIN box b ON b.id = k.box_id "
            f"WHERE b.closed_us IS NOT NULL AND k.{state} <> 'gone'",
        )


def _an_open_box_can_go_on(shop: Shop, picture: Picture) -> None:
    """An opened box has something in it, and no other has; a packed one is ready; one label is to be used."""
    for seen in picture.boxes:
        here = bool(seen.on_hand) or any(thing.state.value != "gone" for thing in seen.things)
        assert here or not seen.box.opened
        assert not here or not seen.box.announced
        if seen.box.packing is not None:
            assert all(knife.can_leave or knife.looking_for for knife in seen.on_hand)
    assert not _column(shop, "SELECT box_id FROM label WHERE state <> 'used' GROUP BY box_id HAVING count(*) > 1")
    assert not _column(
        shop,
        "SELECT c.id FROM close_out c JOIN box b ON b.id = c.box_id "
        "WHERE c.finished_us IS NULL AND b.closed_us IS NOT NULL",
    )


def _planned_knives_are_on_the_board(picture: Picture) -> None:
    """The day list holds only knives on hand, each once."""
    planned = [knife_id for run in picture.plan.runs for knife_id in run.knife_ids]
    assert len(planned) == len(set(planned))
    assert set(planned) <= {knife.id for seen in picture.boxes for knife in seen.on_hand}


def _nobody_has_anothers_knife(shop: Shop, picture: Picture) -> None:
    """A run under way has work at the bench, no knife there is in two, and a person has one run going on."""
    runs = open_runs(shop.database)
    here = {k.id for seen in picture.boxes for k in seen.in_column(Column.ON_BENCH) if k.waiting_for is None}
    at_work = [knife_id for run in runs for knife_id in run.knife_ids if knife_id in here]
    assert len(at_work) == len(set(at_work))
    assert all(here.intersection(run.knife_ids) for run in runs)
    assert max(Counter(run.started_by for run in runs if run.paused_at is None).values(), default=0) <= 1


def _every_box_adds_up(shop: Shop, picture: Picture) -> None:
    """Counted in + added + moved in = gone + moved out + on hand + struck + found, open or closed; so does money."""
    every = "SELECT id FROM box"
    knives = by_box(knives_of(shop.database, f"k.box_id IN ({every})"), lambda knife: knife.box_id)
    moves, off = moves_of(shop.database, every), off_of(shop.database, every)
    for one in map(box_of, shop.database.rows(BOX)):
        total = add_up(one, knives.get(one.id, ()), moves, off.get(one.id, Off()))
        assert total.adds_up, (one.number, total)
        assert min(total.added, total.moved_in, total.struck) >= 0
    for seen in picture.boxes:
        assert seen.sum.adds_up
        assert seen.totals.knives_cents == sum(knife.charged_cents for knife in seen.knives if not knife.apart)
        assert seen.paid_cents >= 0
    # What was told stays as it was told; a later date is a row of its own.
    changed = "SELECT count(*) FROM history WHERE entity = 'promise' AND operation <> 'erase_customer'"
    assert _column(shop, f"{changed} AND before IS NOT NULL AND after IS NOT NULL") == [0]
