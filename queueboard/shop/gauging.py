"""Spots marked on an edge and what the tester reads there. A reading is never changed: it is struck, and read again."""

from collections.abc import Sequence

from queueboard.clean import clean
from queueboard.errors import ChangedError, ReasonNeededError, RuleError, TypedError
from queueboard.records.edge_tables import ReadingRow, SpotRow
from queueboard.records.edge_tests import edge_of, readings_of, rows_of_edge, spots_of
from queueboard.records.instants import to_us
from queueboard.records.writing import Writing
from queueboard.settings.rules import knife_process, line_of
from queueboard.shop import rows
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import settings_in
from queueboard.shop.wobbling import checked_force
from queueboard.values.edge import KnifeEdge, NewSpot, Reading, Spot
from queueboard.values.knife import Knife
from queueboard.words import Edge, Stage

MOST_SPOTS = 20
SERRATED = (Edge.SERRATED, Edge.SCALLOPED)


def edge(shop: Shop, knife: Knife) -> KnifeEdge:
    """All that is known of one edge."""
    with shop.reading() as database:
        return edge_of(database, knife.id)


def usual_spots(knife: Knife) -> tuple[NewSpot, ...]:
    """Heel, middle and tip: an eighth, a half and seven eighths of the length, where it was measured.

    Of an edge with teeth only the names: which tooth each one is, the tester counts.
    """
    eighths = (("heel", 1), ("middle", 4), ("tip", 7))
    length = None if knife.edge in SERRATED else knife.length_mm
    return tuple(
        NewSpot(name=name, from_heel_mm=None if length is None else round(length * part / 8)) for name, part in eighths
    )


@operation()
def mark_spots(writing: Writing, knife: Knife, spots: Sequence[NewSpot]) -> None:
    """Mark the spots of a knife, 1 to 20, heel first; refused once one of those that it has was ever read.

    A spot of a serrated edge is told by its tooth, one of any other edge by its distance from the heel.
    """
    rows.fresh_knife(writing, knife)
    if rows_of_edge(writing.database, knife.id)["reading"]:
        raise RuleError(f"{knife.tag} was read at its spots already; readings of other ones could not be compared.")
    writing.tell(tags=[knife.tag])
    for spot in spots_of(writing.database, knife.id):
        writing.remove(SpotRow, spot.id)
    _insert_spots(writing, knife, spots)


@operation()
def read_spot(
    writing: Writing,
    knife: Knife,
    spot: str,
    force_gf: int,
    stage: Stage = Stage.AFTER,
    *,
    belt: str = "",
    deburred: bool = True,
) -> None:
    """Write down what a spot of a knife needed, 1 to 5000 gf; a knife without spots gets the usual ones first.

    belt: for a reading between belts, the one behind which it was taken. deburred: False where the burr was on.
    """
    rows.fresh_knife(writing, knife)
    checked_force(force_gf)
    if line_of(settings_in(writing.database), knife) is None:
        raise RuleError(f"{knife.tag} is tested by cutting the real material; no gauge reads {knife.kind}.")
    if stage is Stage.BETWEEN:
        _insist_on_belt(writing, knife, belt)
    elif stage is Stage.BEFORE:
        _insist_on_unworked(writing, knife)
    writing.tell(tags=[knife.tag], was=stage.value, to=str(force_gf))
    if not spots_of(writing.database, knife.id):
        _insert_spots(writing, knife, usual_spots(knife))
    if not rows_of_edge(writing.database, knife.id)["reading"]:
        _insist_on_teeth(knife, spots_of(writing.database, knife.id))
    _insert(writing, _spot(writing, knife, spot), force_gf, stage, belt=belt, deburred=deburred)


@operation()
def correct_reading(writing: Writing, knife: Knife, reading: Reading, force_gf: int | None, why: str) -> None:
    """Strike a reading, with the reason, and write down what it should have been; None strikes it alone.

    What it should have been keeps the moment of the one it stands for: it was read then, so it counts for the same
    work, and nobody has read the edge again.
    """
    rows.fresh_knife(writing, knife)
    text = clean(why, limit=500, field="reason")
    if not text:
        raise ReasonNeededError(f"Say why {reading.force_gf} gf is wrong; a reading never just vanishes.")
    if reading.id not in {one.id for one in readings_of(writing.database, knife.id)}:
        raise ChangedError(f"That reading of {knife.tag} was struck meanwhile; nothing was stored. Look again.")
    if force_gf is not None:
        checked_force(force_gf)
    writing.tell(tags=[knife.tag], was=str(reading.force_gf), to="nothing" if force_gf is None else str(force_gf))
    writing.change(ReadingRow, reading.id, reading.version, struck_us=writing.now_us, struck_why=text)
    if force_gf is not None:
        spot = next(spot for spot in spots_of(writing.database, knife.id) if spot.id == reading.spot_id)
        _insert(writing, spot, force_gf, reading.stage, belt=reading.belt, deburred=reading.deburred, like=reading)


def _spot(writing: Writing, knife: Knife, name: str) -> Spot:
    spots = spots_of(writing.database, knife.id)
    found = next((spot for spot in spots if spot.name.casefold() == name.strip().casefold()), None)
    if found is None:
        names = ", ".join(spot.name for spot in spots)
        raise TypedError(f"{knife.tag} has no spot called {clean(name) or 'nothing'}. Its spots are: {names}.")
    return found


def _insert_spots(writing: Writing, knife: Knife, spots: Sequence[NewSpot]) -> None:
    names = [clean(spot.name, limit=20, field="name of the spot") for spot in spots]
    if not 1 <= len(spots) <= MOST_SPOTS:
        raise TypedError(f"{len(spots)} spots cannot be read on one knife. Mark 1 to {MOST_SPOTS}.")
    if not all(names) or len({name.casefold() for name in names}) < len(names):
        raise TypedError("Each spot needs a name of its own, such as heel, middle, tip.")
    for place, (name, spot) in enumerate(zip(names, spots, strict=True), 1):
        writing.insert(
            SpotRow,
            knife_id=knife.id,
            place=place,
            name=name,
            from_heel_mm=_distance(knife, spot),
            tooth=_tooth(knife, spot),
        )


def _distance(knife: Knife, spot: NewSpot) -> int | None:
    most = knife.length_mm or 2000
    if spot.from_heel_mm is not None and not 0 <= spot.from_heel_mm <= most:
        raise TypedError(f"{spot.from_heel_mm} mm from the heel is not on this edge. Type 0 to {most}.")
    return spot.from_heel_mm


def _tooth(knife: Knife, spot: NewSpot) -> int | None:
    if spot.tooth is not None and knife.edge not in SERRATED:
        raise TypedError(f"{knife.tag} has a {knife.edge.value} edge and so no teeth; type the distance from the heel.")
    if spot.tooth is not None and not 1 <= spot.tooth <= 999:
        raise TypedError(f"Tooth {spot.tooth} cannot be counted. Type 1 to 999, from the heel on.")
    return spot.tooth


def lacks_teeth(knife: Knife, spots: Sequence[Spot]) -> bool:
    """True for an edge with teeth that has a spot of which nobody has said at which tooth it is."""
    return knife.edge in SERRATED and any(spot.tooth is None for spot in spots)


def _insist_on_teeth(knife: Knife, spots: Sequence[Spot]) -> None:
    """Checked at the first reading: before and after are compared at the same tooth, or not at all."""
    if lacks_teeth(knife, spots):
        names = ", ".join(spot.name for spot in spots if spot.tooth is None)
        raise RuleError(f"{knife.tag} is {knife.edge.value}: say first at which tooth each spot is ({names}); s does.")


def _insist_on_unworked(writing: Writing, knife: Knife) -> None:
    seen = edge_of(writing.database, knife.id)
    if seen.tests or any(one.stage is Stage.AFTER for one in seen.readings):
        raise RuleError(f"{knife.tag} was worked already: what it needed before can not be read any more. / after.")


def _insist_on_belt(writing: Writing, knife: Knife, belt: str) -> None:
    labels = [step.label for step in knife_process(settings_in(writing.database), knife).belts]
    if belt not in labels:
        raise TypedError(
            f"There is no belt {clean(belt) or 'without a name'} for {knife.tag}. Its belts: {', '.join(labels)}."
        )


def _insert(
    writing: Writing, spot: Spot, force_gf: int, stage: Stage, *, belt: str, deburred: bool, like: Reading | None = None
) -> None:
    writing.insert(
        ReadingRow,
        spot_id=spot.id,
        stage=stage.value,
        belt=belt if stage is Stage.BETWEEN else "",
        deburred=int(deburred or stage is not Stage.BETWEEN),
        force_gf=force_gf,
        read_us=writing.now_us if like is None else to_us(like.read_at),
        read_by=writing.actor.initials,
        struck_us=None,
        struck_why="",
    )
