"""How the belts stand: which are up, how many knives each has done, which spares run low.

A knife counts when the bench is done with it, as history has it: it went on to testing or ready, in a run or without
one, and nobody has undone that. Counting runs and moves apart would count a knife of a run twice or need a rule for
who is left out; this counts each once, and one that is worked again once more.
"""

from collections.abc import Iterable, Sequence

from queueboard.edges.trial import Half
from queueboard.records.belts import fitted_belts, spares_rows
from queueboard.records.database import ShopDatabase
from queueboard.records.instants import to_us
from queueboard.records.measuring import Worked, still_so, worked_since
from queueboard.records.trials import drawn_knives
from queueboard.settings.rules import knife_process
from queueboard.settings.shapes import Belt, BeltKind, Settings
from queueboard.shop.opening import Shop
from queueboard.shop.settings_now import settings_in
from queueboard.slotted import dataclass
from queueboard.values.fitted import FittedBelt


@dataclass(frozen=True, slots=True, kw_only=True)
class BeltPlace:
    """A step of a process, and the belt that is up for it."""

    process: str
    step: str
    grit_um: float
    belt: FittedBelt | None
    done: int
    """Knives since the belt was fitted here; 0 without one."""
    kind: BeltKind | None
    """What the settings know of the label that is up, else of the step's."""
    spares: int | None
    """New belts of the step's label in the drawer; None until they were counted."""
    to_order: bool
    """True when there are so few spares that others should be ordered."""


def belt_places(shop: Shop) -> tuple[BeltPlace, ...]:
    """Every belt step of the shop's processes, in the order of the settings; then those that only a belt is left of.

    A step that the settings have no more stands there as long as its belt is up, with a grit of 0.
    """
    with shop.reading() as database:
        settings = settings_in(database)
        belts = fitted_belts(database)
        done = knives_done(database, settings, belts)
        spares = {label: count for label, (_, count) in spares_rows(database).items()}
    up = {(belt.process, belt.step): belt for belt in belts}
    known = {(process.name, step.label): step for process in settings.processes for step in process.belts}
    gone = {place: Belt(label=place[1], grit_um=0) for place in up if place not in known}
    return tuple(
        _place(settings, process, step, up.get((process, step.label)), spares.get(step.label), done)
        for (process, _), step in (*known.items(), *gone.items())
    )


def _place(
    settings: Settings, process: str, step: Belt, belt: FittedBelt | None, spares: int | None, done: dict[int, int]
) -> BeltPlace:
    ordered = settings.belt_kind(step.label)
    return BeltPlace(
        process=process,
        step=step.label,
        grit_um=step.grit_um,
        belt=belt,
        done=0 if belt is None else done[belt.id],
        kind=ordered if belt is None else settings.belt_kind(belt.label),
        spares=spares,
        to_order=spares is not None and ordered is not None and spares <= ordered.reorder_at,
    )


def knives_done(database: ShopDatabase, settings: Settings, belts: Iterable[FittedBelt]) -> dict[int, int]:
    """For each belt by its id, how many knives it has done since it was fitted.

    A knife that a belt trial puts into the half without a belt is none of that belt's.
    """
    return {belt_id: len(worked) for belt_id, worked in _worked_with(database, settings, tuple(belts)).items()}


def idle_processes(database: ShopDatabase, settings: Settings) -> frozenset[str]:
    """The names of the processes with a belt that is up and has done nothing yet.

    One knife shows that a belt has done something, as long as history says the same of it; only where there is none,
    history is read from the belt's fitting on.
    """
    belts, seen = fitted_belts(database), database.belts_at_work
    so = still_so(database, seen.values())
    left = tuple(
        belt for belt in belts if not (belt.id in seen and seen[belt.id] in so and _did(belt, seen[belt.id], settings))
    )
    worked = _worked_with(database, settings, left)
    drawn = {one.knife_id for one in drawn_knives(database)} if left else set[int]()
    shown = {belt_id: [one for one in ones if one.knife.id not in drawn] for belt_id, ones in worked.items()}
    database.belts_at_work = {**seen, **{belt_id: ones[-1] for belt_id, ones in shown.items() if ones}}
    return frozenset(belt.process for belt in left if not worked[belt.id])


def _worked_with(
    database: ShopDatabase, settings: Settings, belts: Sequence[FittedBelt]
) -> dict[int, tuple[Worked, ...]]:
    """For each belt by its id, what it has done since it was fitted, oldest first."""
    if not belts:
        return {}
    worked = worked_since(database, min(to_us(belt.fitted_at) for belt in belts))
    spared = {(one.knife_id, one.process, one.belt) for one in drawn_knives(database) if one.half is Half.WITHOUT}
    return {
        belt.id: tuple(
            one for one in worked if _did(belt, one, settings) and (one.knife.id, belt.process, belt.step) not in spared
        )
        for belt in belts
    }


def _did(belt: FittedBelt, worked: Worked, settings: Settings) -> bool:
    """True for a knife of the belt's process that was worked since the belt was fitted."""
    return worked.at_us >= to_us(belt.fitted_at) and knife_process(settings, worked.knife).name == belt.process
