"""What makes a function an operation: one action of a person, one transaction, one group of history lines."""

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from queueboard.clean import clean
from queueboard.errors import TypedError
from queueboard.records.writing import Writing
from queueboard.shop.laws import keep_laws
from queueboard.shop.opening import Shop
from queueboard.slotted import dataclass
from queueboard.values.actor import Actor

P = ParamSpec("P")
R = TypeVar("R")


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """What undo must know of an operation."""

    undo_needs_reason: bool
    """True where a parcel, a payment or a told promise is concerned: undo corrects the record, not the world."""
    step: bool
    """False for housekeeping that a person would not expect among the steps to undo."""
    for_good: bool
    """True for what cannot be taken back: a copy put in the place of the file, words that were erased."""


OPERATIONS: dict[str, Kind] = {}
"""Every operation by name; a test holds that each has an undo test."""


def operation(
    *, undo_needs_reason: bool = False, step: bool = True, for_good: bool = False
) -> Callable[[Callable[Concatenate[Writing, P], R]], Callable[Concatenate[Shop, Actor, P], R]]:
    """Turn a function over an open transaction into an operation over a shop and an actor."""

    def turn(body: Callable[Concatenate[Writing, P], R]) -> Callable[Concatenate[Shop, Actor, P], R]:
        name = body.__name__
        OPERATIONS[name] = Kind(undo_needs_reason=undo_needs_reason, step=step, for_good=for_good)

        @wraps(body)
        def run(shop: Shop, actor: Actor, /, *args: P.args, **kwargs: P.kwargs) -> R:
            with shop.writing(checked(actor), name) as writing:
                done = body(writing, *args, **kwargs)
                keep_laws(writing)
                return done

        return run

    return turn


def checked(actor: Actor) -> Actor:
    """The actor with initials that can stand in history: 1 to 8 signs."""
    initials = clean(actor.initials, limit=8, field="initials")
    if not initials:
        raise TypedError("Initials are empty; say who acts, with --as or on the first screen.")
    if actor.now.tzinfo is None:
        raise TypedError(f"The time {actor.now.isoformat()} has no time zone.")
    return Actor(initials=initials, now=actor.now, group_id=actor.group_id)
