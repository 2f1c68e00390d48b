"""The close-out in words. Before the count nothing here tells how many are expected."""

from collections.abc import Mapping, Sequence
from datetime import datetime

from queueboard.phrases.comparing import compared_words
from queueboard.phrases.dates import date_words, many, when_words
from queueboard.phrases.knives import knife_name, last_seen_words, place_words
from queueboard.phrases.money import money, owed_words
from queueboard.settings.shapes import Settings
from queueboard.shop.comparing_names import compare_box
from queueboard.shop.picture import BoxPicture
from queueboard.values.gone import GoneBox
from queueboard.values.knife import Knife
from queueboard.words import CloseStep, Column, GoesBy, Settling

STEP_QUESTIONS: Mapping[CloseStep, str] = {
    CloseStep.COUNT: "Count what lies in front of you, then type the number.",
    CloseStep.TICK: "Take each knife in hand and tick or type its tag.",
    CloseStep.MISSING: "These should be in hand and are not. Look for them, or type why the box goes without.",
    CloseStep.COMES_WITH: "It came with these. Tick each one that is in the box.",
    CloseStep.NAMES: "Compare the names: on the wrapping, on this box, on the label. Are they the same?",
    CloseStep.LABEL: "Is this label on the box?",
    CloseStep.MONEY: "How does the money stand?",
    CloseStep.GO: "Everything is answered. Let it go?",
}
"""What each step asks for."""

WHO_COLLECTS = "Who collects it? Type the name."


def step_question(box: BoxPicture, step: CloseStep) -> str:
    """What a step asks of this box; a pick-up is asked who collects it instead of for its label."""
    if step is CloseStep.LABEL and box.box.goes_by is GoesBy.PICK_UP:
        return WHO_COLLECTS
    return STEP_QUESTIONS[step]


def missing_words(knife: Knife, settings: Settings, now: datetime) -> str:
    """A knife that is not in hand: 417-3 last seen on the bench, yesterday 16:20, MB: chef 20 cm, black handle."""
    return f"{knife.tag} last seen {last_seen_words(knife, now)}: {knife_name(knife, settings)}"


def beside_words(knife: Knife, beside: Sequence[Knife], now: datetime) -> str:
    """Where it was last handled, and the tags of its kind on the bench then: last at the test, 15:10, K. On the ..."""
    tested = knife.column is Column.READY and knife.declined is None
    at = when_words(knife.moved_at.astimezone(now.tzinfo), now)
    last = f"last {'at the test' if tested else place_words(knife.column)}, {at}, {knife.moved_by}"
    if not beside:
        return f"{last}; no other box had a {knife.kind} on the bench then"
    return f"{last}; on the bench then: {', '.join(other.tag for other in beside[:6])}. Look in their trays"


def names_check_words(box: BoxPicture) -> tuple[str, ...]:
    """The addresses under the names, a line each, then what differs in name or address, or was not compared."""
    return compared_words(compare_box(box), box)


def label_check_words(box: BoxPicture, now: datetime, settings: Settings) -> tuple[str, ...]:
    """What to hold against the label in hand, a line each; name and address typed from it last."""
    label = box.label
    if label is None:
        return ()
    until = f", good to {date_words(label.expires_on, now.date())}" if label.expires_on is not None else ""
    lines = (
        f"{label.owner.value} label, {label.state.value}{until}",
        f"carrier: {label.carrier}" if label.carrier else "",
        f"insured for {money(label.value_cents, settings)}" if label.value_cents is not None else "",
        f"name on the label: {label.name_on}" if label.name_on else "",
        f"address on the label: {label.address_on}" if label.address_on else "",
    )
    return tuple(line for line in lines if line)


def settle_choices(box: BoxPicture, settings: Settings) -> tuple[tuple[Settling, str], ...]:
    """The answers to "how does the money stand?", each with its words."""
    owed = owed_words(box.without_missing.owed_cents, settings)
    return (
        (Settling.PAID, f"paid now ({owed})"),
        (Settling.ON_ACCOUNT, "on account"),
        (Settling.UNPAID, "gone unpaid, because ..."),
    )


def going_words(box: BoxPicture) -> str:
    """What is about to leave: 11 knives go, 2 stay: 417-4, 417-9; 1 looked for: 417-3. Only after the count."""
    check = box.close_check
    if check is None or not check.going:
        return ""
    tags = {knife.id: knife.tag for knife in box.knives}
    parts = [f"{many(len(check.going), 'knife')} {'goes' if len(check.going) == 1 else 'go'}"]
    if check.staying:
        parts.append(f"{len(check.staying)} not ready: {', '.join(tags[i] for i in check.staying)}")
    if check.missing:
        parts.append(f"{len(check.missing)} looked for: {', '.join(tags[i] for i in check.missing)}")
    return "; ".join(parts)


def gone_sentence(gone: GoneBox, settings: Settings) -> str:
    """The sentence after the last step: Box 417 is gone: 11 knives, roll, paid."""
    left = [many(len(gone.knives), "knife")] if gone.knives else []
    left += [thing.name for thing in gone.things]
    start = f"Box {gone.box.number} is gone" if gone.closed else f"A part of box {gone.box.number} is gone"
    rest = f" {_staying(gone.staying)}" if gone.staying else ""
    lost = f" Looked for: {', '.join(knife.tag for knife in gone.missing)}." if gone.missing else ""
    return f"{start}: {', '.join((*left, settled_words(gone, settings)))}.{rest}{lost}"


def settled_words(gone: GoneBox, settings: Settings) -> str:
    """How the money stood: paid; on account, 46.00 EUR to pay; gone unpaid, 46.00 EUR to pay, because ..."""
    owed = gone.totals.owed_cents
    if gone.settled is Settling.PAID and owed == 0:
        return Settling.PAID.value
    because = f", because {gone.settled_why}" if gone.settled_why else ""
    if gone.settled is Settling.PAID and not gone.closed:
        return f"what went is paid, {owed_words(owed, settings)} with the rest{because}"
    return f"{gone.settled.value}, {owed_words(owed, settings)}{because}"


def _staying(knives: Sequence[Knife]) -> str:
    verb = "stays" if len(knives) == 1 else "stay"
    return f"{', '.join(knife.tag for knife in knives)} {verb} on the board."
