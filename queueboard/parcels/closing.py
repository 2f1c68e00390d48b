"""Where a close-out stands, worked out afresh from what is stored: after a power cut it is where it was.

The count is blind. Until it is known nothing of what is expected is told, and while tags are ticked nothing either:
who is told the answer finds it. Each step is left only when what it asks for is stored.
"""

from collections.abc import Iterable
from datetime import date

from queueboard.money.bill import Bill, totals
from queueboard.slotted import dataclass
from queueboard.values.box import CloseCheck, CloseOut, ReturnLabel
from queueboard.values.knife import Knife, Thing
from queueboard.words import CloseStep, Column, GoesBy, LabelState, Settling, ThingState


@dataclass(frozen=True, slots=True, kw_only=True)
class _InHand:
    """What is on hand, split by what happens to it; going, missing and staying together are all of it."""

    going: tuple[Knife, ...]
    missing: tuple[Knife, ...]
    staying: tuple[Knife, ...]
    missing_things: tuple[Thing, ...]
    things_going: bool
    """True when at least one thing is in hand."""
    surplus: int
    """Knives counted that are none of those going: another box's, or not ready."""

    @property
    def rest_stays(self) -> bool:
        """True when knives that are not ready stay behind, and things may stay with them."""
        return any(not knife.looking_for for knife in self.staying)


def check(  # noqa: PLR0917 - what the shop reads for one box, in the order of the steps
    close_out: CloseOut,
    knives: tuple[Knife, ...],
    things: tuple[Thing, ...],
    goes_by: GoesBy,
    label: ReturnLabel | None,
    bill: Bill,
    today: date,
) -> CloseCheck:
    """The step to show, what it may show, and a sentence where it cannot go on as it stands.

    knives and things are all those of the box, gone ones included. Knives that are ready and found should be in hand;
    the others on hand stay (part of a box can go today). A right count means that all of them go. Tags ticked say
    exactly which go, and the rest is missing: with a typed reason, the box goes without it.
    bill says what is owed without the missing; 0 or less needs no settling. today is the shop's day, for the label's
    last day.
    """
    on_hand = tuple(knife for knife in knives if knife.on_hand)
    by_tags = close_out.ticking or close_out.ticks_done or bool(close_out.ticked)
    if close_out.counted is None and not by_tags:
        return CloseCheck(step=CloseStep.COUNT)
    by_count = not by_tags and close_out.counted == sum(knife.can_leave for knife in on_hand)
    wrong = _ticked_but_not_ready(close_out, on_hand)
    if not by_count and (wrong or not close_out.ticks_done):
        return CloseCheck(step=CloseStep.TICK, trouble=wrong)
    in_hand = _in_hand(close_out, on_hand, things, by_count=by_count)
    if not in_hand.going and (in_hand.missing or not any(thing.state is ThingState.HERE for thing in things)):
        step = CloseStep.COUNT if by_count else CloseStep.TICK
        return _told(step, in_hand, "No knife in hand is ready to go. Leave the close-out, and make them ready first.")
    owed_now = totals(bill.without({knife.id for knife in in_hand.missing})).owed_cents
    for step, open_yet, trouble in _steps(
        close_out, in_hand, goes_by=goes_by, label=label, owed_cents=owed_now, today=today
    ):
        if open_yet or trouble:
            return _told(step, in_hand, trouble)
    return _told(CloseStep.GO, in_hand, "")


def _in_hand(close_out: CloseOut, on_hand: tuple[Knife, ...], things: tuple[Thing, ...], *, by_count: bool) -> _InHand:
    expected = tuple(knife for knife in on_hand if knife.can_leave)
    going = expected if by_count else tuple(k for k in expected if k.id in close_out.ticked)
    here = tuple(thing for thing in things if thing.state is ThingState.HERE)
    counted = len(going) if close_out.counted is None else close_out.counted
    return _InHand(
        surplus=max(0, counted - len(going)),
        going=going,
        missing=tuple(knife for knife in expected if not (by_count or knife.id in close_out.ticked)),
        staying=tuple(knife for knife in on_hand if not knife.can_leave),
        missing_things=tuple(thing for thing in here if thing.id not in close_out.ticked_things),
        things_going=any(thing.id in close_out.ticked_things for thing in here),
    )


def _ticked_but_not_ready(close_out: CloseOut, on_hand: tuple[Knife, ...]) -> str:
    wrong = [k for k in on_hand if k.id in close_out.ticked and not k.can_leave]
    if not wrong:
        return ""
    return " ".join(f"{k.tag} is ticked, but {_stands(k)}." for k in wrong) + " Untick it, or make it ready first."


def _stands(knife: Knife) -> str:
    if knife.looking_for:
        return "is being looked for: say first that it was found"
    return "is on the bench" if knife.column is Column.ON_BENCH else f"stands in {knife.column}"


def _steps(
    close_out: CloseOut,
    in_hand: _InHand,
    *,
    goes_by: GoesBy,
    label: ReturnLabel | None,
    owed_cents: int,
    today: date,
) -> Iterable[tuple[CloseStep, bool, str]]:
    """The steps after the count in order: the step, whether it is still open, and its trouble."""
    wrong_count = bool(in_hand.missing) or in_hand.surplus > 0
    yield CloseStep.MISSING, wrong_count and not _said(close_out.missing_reason), ""
    yield CloseStep.COMES_WITH, *_comes_with(close_out, in_hand)
    trouble = "" if goes_by is GoesBy.PICK_UP else _label_trouble(label, today)
    if trouble:
        yield CloseStep.LABEL, True, trouble  # before the names: they are compared with the label's
    yield CloseStep.NAMES, not close_out.names_ok, ""
    if goes_by is GoesBy.PICK_UP:
        yield CloseStep.LABEL, not _said(close_out.handed_to), ""
    else:
        yield CloseStep.LABEL, not close_out.label_ok, ""
    yield CloseStep.MONEY, *_money(close_out, in_hand, owed_cents)


def _comes_with(close_out: CloseOut, in_hand: _InHand) -> tuple[bool, str]:
    if not in_hand.missing_things:
        return False, ""
    if not close_out.things_done:
        return True, ""
    if not in_hand.going and not in_hand.things_going:
        return True, "Nothing of this box is in hand. Tick what goes, or leave the close-out."
    if in_hand.rest_stays or _said(close_out.missing_reason):
        return False, ""
    names = ", ".join(thing.name for thing in in_hand.missing_things)
    return True, f"Not in hand: {names}. Say why the box goes without."


def _label_trouble(label: ReturnLabel | None, today: date) -> str:
    if label is None:
        return "This box has no return label. Set one, or let it be picked up."
    if label.state is LabelState.TO_BUY:
        return "The return label is still to be bought. Buy it, note that, and come back: what is counted stays."
    if label.state is LabelState.USED:
        return "The return label was used already. Set a new one for this parcel."
    if label.expires_on is not None and label.expires_on < today:
        last = f"{label.expires_on.day} {label.expires_on:%B %Y}"
        return f"The return label was good until {last}. Set a new one."
    return ""


def _money(close_out: CloseOut, in_hand: _InHand, owed_cents: int) -> tuple[bool, str]:
    if owed_cents <= 0:
        return False, ""
    if close_out.settled is None:
        return True, ""
    if close_out.settled is Settling.UNPAID and not _said(close_out.settled_why):
        return True, "Say why it goes unpaid."
    if close_out.settled is Settling.PAID and not (in_hand.staying or in_hand.missing):
        # A part may be paid when a part goes; once all of it goes, paid means all of it.
        return True, "It is marked paid, yet money is owed. Take the payment, or say on account or unpaid."
    return False, ""


def _said(text: str) -> bool:
    return bool(text.strip())


def _told(step: CloseStep, in_hand: _InHand, trouble: str) -> CloseCheck:
    return CloseCheck(
        step=step,
        going=tuple(knife.id for knife in in_hand.going),
        missing=tuple(knife.id for knife in in_hand.missing),
        staying=tuple(knife.id for knife in in_hand.staying),
        missing_things=() if in_hand.rest_stays else tuple(thing.id for thing in in_hand.missing_things),
        trouble=trouble,
    )
