"""Notes, declined knives, and things that came with a box."""

from queueboard.clean import clean
from queueboard.errors import RuleError
from queueboard.priced_words import Finding
from queueboard.records.tables import BoxRow, KnifeRow, ThingRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.shop.receiving import findings_cell
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box
from queueboard.values.knife import Knife
from queueboard.words import Column, DeclineReason, ThingState


@operation()
def note_box(writing: Writing, box: Box, text: str) -> None:
    """Write the note on a box; at most 2,000 signs."""
    writing.tell(number=box.number)
    writing.change(BoxRow, box.id, box.version, note=clean(text, limit=2000, field="note"))


@operation()
def note_knife(writing: Writing, knife: Knife, text: str) -> None:
    """Write the note on a knife; at most 2,000 signs."""
    writing.tell(tags=[knife.tag])
    rows.fresh_knife(writing, knife)
    writing.change(KnifeRow, knife.id, knife.version, note=clean(text, limit=2000, field="note"))


@operation()
def decline_knife(
    writing: Writing, knife: Knife, reason: DeclineReason, note: str = "", *, told_to: str = "", photo: bool = False
) -> None:
    """Decline a knife: it goes back unsharpened and free, stands in ready, and is counted at close-out.

    told_to: the customer who was told just now; it is noted with the time and who told it. photo: of the damage.
    """
    writing.tell(tags=[knife.tag], was=knife.column.value, to=reason.value)
    rows.fresh_knife(writing, knife)
    whom = clean(told_to, limit=300, field="name told")
    at = writing.actor.now.astimezone(settings_in(writing.database).zone)
    told = f"told {whom} {at:%Y-%m-%d %H:%M}, {writing.actor.initials}" if whom else ""
    decline(writing, knife, reason, "; ".join(filter(None, (note.strip(), told))))
    if photo and Finding.PHOTO not in knife.findings:
        writing.change(KnifeRow, knife.id, None, findings=findings_cell((*knife.findings, Finding.PHOTO)))


def decline(writing: Writing, knife: Knife, reason: DeclineReason, note: str = "") -> None:
    """Put a knife into ready as declined; a note takes the place of the one it has."""
    text = clean(note, limit=2000, field="note")
    writing.change(
        KnifeRow,
        knife.id,
        knife.version,
        declined=reason.value,
        place=Column.READY.value,
        waiting_for=None,
        waiting_since_us=None,
        moved_us=writing.now_us,
        moved_by=writing.actor.initials,
        **({"note": text} if text else {}),
    )


@operation()
def accept_knife(writing: Writing, knife: Knife) -> None:
    """Take a declined knife after all: it stands in received again."""
    if knife.declined is None:
        raise RuleError(f"{knife.tag} was not declined.")
    writing.tell(tags=[knife.tag])
    rows.fresh_knife(writing, knife)
    writing.change(
        KnifeRow,
        knife.id,
        knife.version,
        declined=None,
        place=Column.RECEIVED.value,
        moved_us=writing.now_us,
        moved_by=writing.actor.initials,
    )


@operation()
def add_thing(writing: Writing, box: Box, name: str) -> None:
    """Add something that came with a box and must go back: a sheath, a roll, a towel."""
    writing.tell(number=box.number)
    rows.fresh_box(writing, box)
    rows.only_here(box)
    writing.insert(ThingRow, box_id=box.id, name=rows.checked_thing(name), state=ThingState.HERE.value)
