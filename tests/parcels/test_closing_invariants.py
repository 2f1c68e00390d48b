"""What holds for every stored close-out, half done or undone by another window."""

from dataclasses import replace
from datetime import timedelta

from hypothesis import given
from hypothesis import strategies as st

from queueboard.parcels.closing import check
from queueboard.values.box import CloseCheck, CloseOut, ReturnLabel
from queueboard.values.knife import Knife, Thing
from queueboard.words import CloseStep, Column, GoesBy, LabelState, Settling, ThingState
from tests.parcels.bills import owing
from tests.pictures import knife, label, thing
from tests.plans import NOW, TODAY

STEPS = list(CloseStep)


class Stored:
    """A box with a close-out under way, as it might stand in the shop file."""

    def __init__(
        self,
        close_out: CloseOut,
        knives: tuple[Knife, ...],
        things: tuple[Thing, ...],
        goes_by: GoesBy,
        label_: ReturnLabel | None,
        owed_cents: int,
    ) -> None:
        self.close_out = close_out
        self.knives = knives
        self.things = things
        self.goes_by = goes_by
        self.label = label_
        self.owed_cents = owed_cents

    def stands(self, close_out: CloseOut | None = None) -> CloseCheck:
        """Where it stands, with this close-out or its own."""
        return check(
            close_out or self.close_out,
            self.knives,
            self.things,
            self.goes_by,
            self.label,
            owing(self.knives, self.owed_cents),
            TODAY,
        )

    def __repr__(self) -> str:
        return f"{self.close_out!r} {self.knives!r} {self.things!r} {self.goes_by} {self.label!r} {self.owed_cents}"


MOST_KNIVES, MOST_THINGS = 6, 3
KNIVES = st.lists(
    st.tuples(st.sampled_from((*Column, Column.READY, Column.READY)), st.sampled_from((False, False, False, True))),
    max_size=MOST_KNIVES,
)
LABELS = st.none() | st.builds(
    lambda state, days: label(
        box_number=1, state=state, expires_on=None if days is None else TODAY + timedelta(days=days)
    ),
    st.sampled_from(LabelState),
    st.none() | st.integers(-2, 2),
)
MOSTLY = st.sampled_from((True, True, True, False))
CLOSE_OUTS = st.builds(
    CloseOut,
    id=st.just(1),
    version=st.just(1),
    box_id=st.just(1),
    started_at=st.just(NOW),
    counted=st.none() | st.integers(0, 7),
    ticking=st.booleans(),
    ticked=st.frozensets(st.integers(0, MOST_KNIVES - 1)),
    ticked_things=st.frozensets(st.integers(0, MOST_THINGS - 1)),
    ticks_done=MOSTLY,
    things_done=MOSTLY,
    missing_reason=st.sampled_from(("", "cannot wait")),
    names_ok=MOSTLY,
    label_ok=MOSTLY,
    handed_to=st.sampled_from(("", "herself", "herself")),
    settled=st.none() | st.sampled_from(Settling),
    settled_why=st.sampled_from(("", "pays on Friday")),
)
"""Ticks by the place of what is ticked, of which there may be less."""


def _stored(
    *,
    knives: list[tuple[Column, bool]],
    states: list[ThingState],
    close_out: CloseOut,
    goes_by: GoesBy,
    label_: ReturnLabel | None,
    owed_cents: int,
    all_there: bool,
) -> Stored:
    """all_there: everything that can leave was counted and ticked, whatever else was drawn."""
    here = tuple(
        knife(f"1-{number}", column=column, looking_for=looking_for)
        for number, (column, looking_for) in enumerate(knives, start=1)
    )
    things = tuple(thing(f"roll {place}", box_number=1, id=place, state=state) for place, state in enumerate(states))
    ready = frozenset(one.id for one in here if one.can_leave)
    ticked = frozenset(one.id for place, one in enumerate(here) if place in close_out.ticked)
    ticked_things = frozenset(one.id for place, one in enumerate(things) if place in close_out.ticked_things)
    if all_there:
        close_out = replace(close_out, counted=len(ready))
        ticked, ticked_things = ready, frozenset(one.id for one in things)
    close_out = replace(close_out, ticked=ticked, ticked_things=ticked_things)
    return Stored(close_out, here, things, goes_by, label_, owed_cents)


STORED = st.builds(
    _stored,
    knives=KNIVES,
    states=st.lists(st.sampled_from(ThingState), max_size=MOST_THINGS),
    close_out=CLOSE_OUTS,
    goes_by=st.sampled_from(GoesBy),
    label_=LABELS,
    owed_cents=st.sampled_from((-100, 0, 900)),
    all_there=MOSTLY,
)
"""Any state that a file could hold, more often than not one that has come far."""


@given(STORED)
def test_the_same_file_stands_at_the_same_step(state: Stored) -> None:
    """The step follows from what is stored alone, so that a power cut changes nothing."""
    assert state.stands() == state.stands(replace(state.close_out))


@given(STORED)
def test_before_count_and_ticks_are_done_nothing_is_told(state: Stored) -> None:
    """At the count and while ticking no knife and no thing is named, unless the trouble is that nothing can go."""
    seen = state.stands()

    if seen.step in (CloseStep.COUNT, CloseStep.TICK) and not seen.trouble.startswith("No knife in hand"):
        assert (seen.going, seen.missing, seen.staying, seen.missing_things) == ((), (), (), ())


@given(STORED)
def test_without_count_or_tick_there_is_only_the_count(state: Stored) -> None:
    """Whatever else is stored, before a count or a tick there is the count and nothing else to see."""
    fresh = replace(state.close_out, counted=None, ticking=False, ticked=frozenset(), ticks_done=False)

    assert state.stands(fresh) == CloseCheck(step=CloseStep.COUNT)


@given(STORED)
def test_going_missing_and_staying_are_all_that_is_here(state: Stored) -> None:
    """After the count every knife on hand is in exactly one of the three, and only ready ones go."""
    seen = state.stands()

    if STEPS.index(seen.step) > STEPS.index(CloseStep.TICK):
        on_hand = [k for k in state.knives if k.on_hand]
        assert sorted(seen.going + seen.missing + seen.staying) == sorted(k.id for k in on_hand)
        assert {k.id for k in on_hand if k.can_leave} == set(seen.going + seen.missing)


@given(STORED)
def test_nothing_goes_before_all_is_asked(state: Stored) -> None:
    """At the last step names agree, what is missing has its reason, and money and label are settled."""
    seen, close_out = state.stands(), state.close_out

    if seen.step is CloseStep.GO:
        assert not seen.trouble
        assert close_out.names_ok
        assert seen.going or close_out.ticked_things
        assert close_out.missing_reason or not (seen.missing or seen.missing_things)
        assert state.owed_cents <= 0 or close_out.settled
        assert close_out.handed_to if state.goes_by is GoesBy.PICK_UP else state.label and close_out.label_ok


def answered(step: CloseStep, close_out: CloseOut, state: Stored) -> CloseOut:
    """What is stored when a person has left a step."""
    ready = frozenset(knife.id for knife in state.knives if knife.can_leave)
    things = frozenset(thing.id for thing in state.things)
    return {
        CloseStep.COUNT: replace(close_out, counted=len(ready)),
        CloseStep.TICK: replace(close_out, ticking=True, ticked=ready, ticks_done=True),
        CloseStep.MISSING: replace(close_out, missing_reason="cannot wait"),
        CloseStep.COMES_WITH: replace(close_out, ticked_things=things, things_done=True),
        CloseStep.NAMES: replace(close_out, names_ok=True),
        CloseStep.LABEL: replace(close_out, label_ok=True, handed_to="herself"),
        CloseStep.MONEY: replace(close_out, settled=Settling.ON_ACCOUNT),
    }[step]


@given(STORED)
def test_every_answer_leads_on(state: Stored) -> None:
    """From any stored state the answers lead forward only, and end at the last step or at a trouble that is said."""
    close_out, seen = state.close_out, state.stands()

    for _ in STEPS:
        if seen.step is CloseStep.GO:
            break
        close_out = answered(seen.step, close_out, state)
        after = state.stands(close_out)
        assert STEPS.index(after.step) > STEPS.index(seen.step) or after.trouble
        seen = after

    assert seen.step is CloseStep.GO or seen.trouble
