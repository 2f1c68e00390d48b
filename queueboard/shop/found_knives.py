"""Knives that are here and in no box: noted with where they lie, and settled once somebody knows whose they are."""

from queueboard.clean import clean
from queueboard.errors import ReasonNeededError, RuleError, TypedError
from queueboard.records.moved_tables import FoundKnifeRow
from queueboard.records.writing import Writing
from queueboard.shop import rows
from queueboard.shop.operation import operation
from queueboard.shop.receiving import bring_later
from queueboard.shop.settings_now import settings_in
from queueboard.values.box import Box
from queueboard.values.found import FoundKnife
from queueboard.values.new import NewKnife


@operation()
def note_found(writing: Writing, *, kind: str, length_mm: int | None = None, mark: str = "", place: str) -> None:
    """Note a knife that lies around and is in no box. place: where it lies, 1 to 200 signs."""
    known = settings_in(writing.database).kind(kind)
    if known is None:
        raise TypedError(f"The shop has no kind called {clean(kind, field='kind')!r}.")
    put_to_found(writing, known.name, length_mm, mark, place)


def put_to_found(
    writing: Writing, kind: str, length_mm: int | None, mark: str, place: str, from_box_id: int | None = None
) -> None:
    """Store a found knife with its place and the day."""
    where = clean(place, field="place")
    if not where:
        raise TypedError("Where does the knife lie? Type the place, so that it is found again.")
    writing.insert(
        FoundKnifeRow,
        kind=kind,
        length_mm=rows.checked_length(length_mm),
        mark=clean(mark, field="mark"),
        place=where,
        from_box_id=from_box_id,
        found_us=writing.now_us,
        found_by=writing.actor.initials,
    )


@operation(undo_needs_reason=True)
def settle_found(writing: Writing, found: FoundKnife, how: str) -> None:
    """Say what became of a found knife that goes into no box: given to its owner, sent after a box, kept for good."""
    text = clean(how, limit=500, field="what became of it")
    if not text:
        raise ReasonNeededError("Say what became of it: given to whom, and when; a knife never just vanishes.")
    _settle(writing, found, text)


@operation()
def found_into_box(writing: Writing, found: FoundKnife, box: Box, why: str) -> str:
    """Put a found knife into an open box as a knife that came later; returns its tag. Asks for the reason."""
    text = clean(why, limit=400, field="reason")
    if not text:
        raise ReasonNeededError("Say why it is theirs; a found knife never goes silently into a box.")
    kind = settings_in(writing.database).kind(found.kind)
    if kind is None:
        raise RuleError(f"The shop has no kind {found.kind} any more; settle it in words.")
    tag = bring_later(
        writing, box, NewKnife(kind=found.kind, edge=kind.edge, length_mm=found.length_mm, mark=found.mark)
    )
    _settle(writing, found, f"{tag}: {text}")
    return tag


def _settle(writing: Writing, found: FoundKnife, how: str) -> None:
    if found.settled_at is not None:
        raise RuleError("What became of that knife is said already.")
    writing.change(FoundKnifeRow, found.id, found.version, settled_us=writing.now_us, settled_how=how)
