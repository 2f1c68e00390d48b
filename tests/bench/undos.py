"""Undo of random acts: python -m tests.bench.undos [EXAMPLES] [SEED].

In each example a few acts of any family are done, then taken back one by one, the newest first, and then done again one
by one by undoing the undos. Behind each step back every row must be as it was before the act, and behind each step
forth as it was behind it. What is done for good is left out. The control takes them back the oldest first, where newer
ones may rest on it, and must now and then be refused or come to another state.
"""

import random
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from queueboard.records.auditing import audit
from queueboard.shop import undoing
from queueboard.shop.opening import Shop, close_shop
from queueboard.shop.operation import OPERATIONS
from queueboard.values.actor import Actor
from tests import engines, lending
from tests.bench.machine import asked, heading
from tests.shop.acts import FAMILIES
from tests.shop.moment import Moment
from tests.shop.place import NOW, Table, another, state
from tests.shop.random_day import attempt, begun

ACTS = {name: act for family in FAMILIES.values() for name, act in family.items() if not OPERATIONS[name].for_good}
TRIES = 12
"""Acts tried in each example; about half of them are refused."""

State = dict[str, Table]


@dataclass
class Tally:
    """What became of the examples."""

    examples: int = 0
    undone: int = 0
    wrong: int = 0
    """Steps back or forth that were refused, or came to another state."""
    control: int = 0
    """Examples in which taking back the oldest first was refused, or did not lead to the beginning."""


@dataclass(frozen=True, slots=True)
class Done:
    """An act that was done."""

    group_id: str
    before: State
    after: State


def act_at_random(shop: Shop, draw: random.Random) -> list[Done]:
    """Try some acts, minute by minute; those that were done and changed something."""
    done: list[Done] = []
    before = state(shop)
    for minute in range(TRIES):
        family = FAMILIES[draw.choice(sorted(FAMILIES))]
        name = draw.choice(sorted(set(family) & set(ACTS)))
        moment = Moment(shop, NOW + timedelta(minutes=minute), "J", draw)
        if attempt(lambda: ACTS[name](moment)):  # noqa: B023  # it is called at once
            after = state(shop)
            if after != before:
                done.append(Done(moment.by.group_id, before, after))
            before = after
    return done


def takes_back(shop: Shop, group_id: str, minute: int) -> str:
    """Undo one action; the id of the undo, empty where it was refused."""
    actor = Actor(initials="J", now=NOW + timedelta(minutes=minute))
    return actor.group_id if attempt(lambda: undoing.undo(shop, actor, group_id, "tried")) else ""


def example(path: Path, draw: random.Random, tally: Tally) -> None:
    """One sequence there, back and there again."""
    shop = another(begun, path)
    done = act_at_random(shop, draw)
    undos = []
    tally.examples += 1
    for step, act in enumerate(reversed(done)):
        undos.append(takes_back(shop, act.group_id, 100 + step))
        tally.undone += 1
        tally.wrong += state(shop) != act.before
    for step, (act, undo) in enumerate(zip(done, reversed(undos), strict=True)):
        takes_back(shop, undo, 200 + step)
        tally.wrong += state(shop) != act.after
    tally.wrong += list(audit(shop.database.raw())) != []
    in_order = [takes_back(shop, act.group_id, 300) for act in done]
    tally.control += "" in in_order or (done != [] and state(shop) != done[0].before)
    close_shop(shop)
    lending.finished(path)
    path.unlink()


def undo_at_random(examples: int, seed: int) -> Tally:
    """So many sequences, drawn from a seed."""
    draw, tally = random.Random(seed), Tally()  # noqa: S311  # no secret hangs on it
    with TemporaryDirectory() as folder:
        for _ in range(examples):
            example(Path(folder) / "undo.qb", draw, tally)
    return tally


def main() -> None:
    """Print the table."""
    examples, seed = asked(1000, 7)
    with engines.measured():
        print(heading("tests.bench.undos", seed))
        tally = undo_at_random(examples, seed)
    for says, count in (
        ("sequences of random acts", tally.examples),
        ("acts taken back and done again", tally.undone),
        ("that came to another state, or were refused", tally.wrong),
        ("control: taken back the oldest first, the same", tally.control),
    ):
        print(f"{says:<52} {count:>7}")


if __name__ == "__main__":
    main()
