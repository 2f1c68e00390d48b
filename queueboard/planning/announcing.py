"""A box that is only announced: nobody has counted its knives or seen them, so its seconds are a guess with a spread.

It is promised by that guess, and promised again when it is received.
"""

from queueboard.planning.queue import QueueBox, QueueKnife
from queueboard.slotted import dataclass
from queueboard.values.plan import UnseenWork


@dataclass(frozen=True, slots=True, kw_only=True)
class Guess:
    """What the shop expects of an announced box before its own boxes have taught it better."""

    process: int
    """Index of the process that most knives need."""
    knife_seconds: int
    """Of a knife on average over all that boxes hold, above 0."""
    knife_spread: float = 0.35
    """How far a box's own average strays from that by its kinds and sizes, as a share. A guess, no source."""
    count: int = 6
    """Knives when nobody said how many. A guess, no source."""
    count_spread: float = 0.60
    """How far the count strays when nobody said, as a share of it. A guess, no source."""
    said_spread: float = 0.15
    """How far the count strays from what was announced, as a share of it. A guess, no source."""


def announced(guess: Guess, box_id: int, first_knife_id: int, said: int | None) -> QueueBox:
    """The box as it is to be planned and promised until it is received, its knives numbered from the first id on.

    said: the number of knives announced, at least 1; None when nobody said. The variance is that of a product of two
    independent figures, count and average (Goodman, 1960); knife noise and condition are counted as for any box.
    """
    count = guess.count if said is None else said
    count_variance = (count * (guess.count_spread if said is None else guess.said_spread)) ** 2
    average_variance = (guess.knife_seconds * guess.knife_spread) ** 2
    variance = count**2 * average_variance + count_variance * (guess.knife_seconds**2 + average_variance)
    ids = range(first_knife_id, first_knife_id + count)
    return QueueBox(
        id=box_id,
        due=None,
        knives=tuple(QueueKnife(id=number, process=guess.process, seconds=guess.knife_seconds) for number in ids),
        unseen_variance=variance,
    )


def guessed_seconds(work: UnseenWork) -> int:
    """Hands-on seconds that a box nobody has opened should take."""
    guess = Guess(process=0, knife_seconds=work.knife_seconds)
    return sum(knife.seconds for knife in announced(guess, work.box_id, 0, work.knives).knives)
