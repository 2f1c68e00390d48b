"""What each step of a close-out shows: one question, what may be known by then, and the keys it takes."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from queueboard.board.desk import Desk
from queueboard.board.screens.close_lines import collector, cost_of_going, going_lines, look_alike_lines, things_here
from queueboard.phrases.bill import sums_words
from queueboard.phrases.carriers import rules_words
from queueboard.phrases.cautions import HAND_OVER, PACKING
from queueboard.phrases.closing import beside_words, label_check_words, missing_words, names_check_words, step_question
from queueboard.phrases.dates import many
from queueboard.phrases.knives import knife_line
from queueboard.phrases.money import money
from queueboard.phrases.parcels import parcel_words
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.weight_seen import parcel_weight
from queueboard.slotted import dataclass
from queueboard.values.box import CloseCheck, CloseOut
from queueboard.words import CloseStep, GoesBy

ANEW = "/ count anew · F1 keys · . leaves"
"""The keys that work in every step after the count."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """What one step shows."""

    question: str
    body: tuple[str, ...] = ()
    """Lines, each shown literally."""
    keys: str
    quick: frozenset[str] = frozenset()
    """Single keys that act at once on an empty line."""
    names: tuple[tuple[str, str], ...] = ()
    """Captions and names that are shown large, side by side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """Where a close-out stands, as the faces need it."""

    picture: Picture
    box: BoxPicture
    close: CloseOut
    check: CloseCheck
    beside: tuple[tuple[int, str], ...] = ()
    """By the id of each missing knife what lay beside it when it was last moved, in words."""


def title_of(picture: Picture, box_id: int) -> str:
    """Whose close-out it is; nothing of it tells how many. Without a name where the box is gone."""
    box = next((one for one in picture.boxes if one.box.id == box_id), None)
    return "Close-out" if box is None else f"Close-out · box {box.box.number} · {box.customer.name}"


def stand_of(picture: Picture, box_id: int) -> Stand | None:
    """Where the close-out of a box stands; None when the box is gone, or has no close-out under way."""
    box = next((b for b in picture.boxes if b.box.id == box_id), None)
    if box is None or box.close_out is None or box.close_check is None:
        return None
    return Stand(picture=picture, box=box, close=box.close_out, check=box.close_check)


def with_beside(stand: Stand, desk: Desk) -> Stand:
    """The same with what lay beside each missing knife when it was last moved; asked only where some are missing."""
    if stand.check.step is not CloseStep.MISSING:
        return stand
    lost = [knife for knife in stand.box.knives if knife.id in stand.check.missing]
    return replace(stand, beside=tuple((k.id, beside_words(k, desk.beside(k), stand.picture.now)) for k in lost))


def face(stand: Stand) -> Face:
    """What the step that is due shows."""
    return FACES[stand.check.step](stand)


def _question(stand: Stand) -> str:
    return step_question(stand.box, stand.check.step)


def _by_parcel(stand: Stand) -> bool:
    return stand.box.box.goes_by is GoesBy.PARCEL


def _count(stand: Stand) -> Face:
    """Blind: nothing on it tells how many there should be."""
    return Face(
        question=_question(stand),
        body=(
            "Every knife that goes today, one by one into the wrapping; declined ones too.",
            "What the board has is told only after your number.",
            "",
            *(PACKING if _by_parcel(stand) else HAND_OVER),
        ),
        keys="the number, Enter · . or Esc leaves, what is stored stays",
    )


def _tick(stand: Stand) -> Face:
    """The tags in hand, and still not those that are not."""
    ticked = [knife for knife in stand.box.knives if knife.id in stand.close.ticked]
    return Face(
        question=_question(stand),
        body=(
            _after_the_count(stand),
            f"{many(len(ticked), 'knife')} ticked" if ticked else "Nothing is ticked yet.",
            *(f"  ✓ {knife_line(knife, stand.picture.settings)}" for knife in ticked),
        ),
        keys=f"3 or {stand.box.box.number}-3, Enter ticks, again takes back · Enter alone: that is all\n{ANEW}",
        quick=frozenset("/"),
    )


def _after_the_count(stand: Stand) -> str:
    """What was counted against what the board has; nothing as long as no number was typed."""
    if stand.close.counted is None:
        return ""
    on_hand = stand.box.on_hand
    ready = sum(knife.can_leave for knife in on_hand)
    rest = f", and {len(on_hand) - ready} not ready that stay" if len(on_hand) > ready else ""
    return f"You counted {stand.close.counted}. The board has {ready} ready to go{rest}."


def _missing(stand: Stand) -> Face:
    """The missing by name, where each was last seen, and what looks like it elsewhere; or that more is in hand."""
    if not stand.check.missing:
        going = len(stand.check.going)
        goes = f"{many(going, 'knife')} of it {'goes' if going == 1 else 'go'}"
        return Face(
            question="More is in hand than this box has ready. Whose is it?",
            body=(
                _after_the_count(stand),
                f"{goes}. One too many is another box's, or not ready.",
                "",
                "Look at each tag, put back what is not this box's, and count again with /.",
            ),
            keys=f"a reason, Enter: it goes so · {ANEW}",
            quick=frozenset("/"),
        )
    lines: list[str] = []
    for knife in (knife for knife in stand.box.knives if knife.id in stand.check.missing):
        lines.append(missing_words(knife, stand.picture.settings, stand.picture.now))
        lines += [f"    {words}" for knife_id, words in stand.beside if knife_id == knife.id and words]
        lines += look_alike_lines(knife, stand.picture)
    return Face(
        question=_question(stand),
        body=(*lines, "", "Gone without, they stay on the board as looked for."),
        keys=f"a tag, Enter: found · 7 in 421 why: found in that tray · the reason: goes without\n{ANEW}",
        quick=frozenset("/"),
    )


def _comes_with(stand: Stand) -> Face:
    """What came with the box, ticked by line number."""
    lines = [
        f"  {place}  {'✓ in hand' if thing.id in stand.close.ticked_things else '·        '}  {thing.name}"
        for place, thing in enumerate(things_here(stand.box), start=1)
    ]
    return Face(
        question=_question(stand),
        body=tuple(lines),
        keys=f"number, Enter ticks, again takes back · + all of it · Enter alone: that is all · {ANEW}",
        quick=frozenset("+/"),
    )


def _names(stand: Stand) -> Face:
    """The names, large, side by side."""
    label = stand.box.label
    typed = label.name_on if label is not None else ""
    other = (
        ("on the label", typed or "(read it there)") if _by_parcel(stand) else ("on the wrapping", "(read it there)")
    )
    return Face(
        question=_question(stand)
        if _by_parcel(stand)
        else "Compare the names: on the wrapping, on this box. The same?",
        body=names_check_words(stand.box) if _by_parcel(stand) else (),
        names=(("on this box", stand.box.customer.name), other),
        keys=f"+ yes, the same · - no · {ANEW}",
        quick=frozenset("+-/"),
    )


def _label(stand: Stand) -> Face:
    """The return label for a parcel; who collects it for a pick-up."""
    if not _by_parcel(stand):
        return Face(
            question=_question(stand),
            body=(f"Enter alone: {stand.box.customer.name}", "", *HAND_OVER),
            keys=f"a name, Enter · Enter alone: the customer · {ANEW}",
            quick=frozenset("/"),
        )
    settings = stand.picture.settings
    weight = parcel_weight(stand.box, settings, stand.check.going)
    return Face(
        question=_question(stand),
        body=(
            *label_check_words(stand.box, stand.picture.now, settings),
            *(() if weight is None else parcel_words(weight, settings)),
            "",
            rules_words(settings.parcels, stand.box.label, stand.picture.now.date()),
        ),
        keys=f"+ yes · - no · 2.4 kg or 45x25x10, Enter · {ANEW}",
        quick=frozenset("+-/"),
    )


def _money(stand: Stand) -> Face:
    """What is owed, and the ways to settle it; what a part costs, where only a part goes."""
    settings = stand.picture.settings
    part: tuple[str, ...] = ()
    if stand.check.staying:
        part = (
            "  6  what goes today is paid; the rest is owed until it goes",
            "",
            f"What goes today costs {money(cost_of_going(stand.box, stand.check), settings)}.",
        )
    return Face(
        question=f"{_question(stand)} {money(stand.box.without_missing.owed_cents, settings)} to pay.",
        body=(
            *filter(None, (sums_words(stand.box.without_missing.totals, settings),)),
            "  1  paid in cash",
            "  2  paid by card",
            "  3  paid by transfer",
            "  4  on account",
            "  5  gone unpaid, because ... (5, then the reason)",
            *part,
            "",
            "A part of the money: the number, then the amount, such as 1 20.00 or 1*20.00",
        ),
        keys=f"number, Enter · {ANEW}",
        quick=frozenset("/"),
    )


def _go(stand: Stand) -> Face:
    """All that leaves, with whom, and all that stays."""
    return Face(
        question=_question(stand),
        body=(*going_lines(stand.box, stand.close, stand.picture), "", f"With: {collector(stand.box, stand.close)}"),
        keys=f"+ or Enter: it goes · {ANEW}",
        quick=frozenset("+/"),
    )


FACES: Mapping[CloseStep, Callable[[Stand], Face]] = {
    CloseStep.COUNT: _count,
    CloseStep.TICK: _tick,
    CloseStep.MISSING: _missing,
    CloseStep.COMES_WITH: _comes_with,
    CloseStep.NAMES: _names,
    CloseStep.LABEL: _label,
    CloseStep.MONEY: _money,
    CloseStep.GO: _go,
}
