"""Days of random acts: python -m tests.bench.fuzz [DAYS] [SEED] [ACTS].

Every operation of the shop is tried in random order by two people (tests/shop/acts.py). Each act must be done or
refused with a sentence, never end in a traceback; behind each the laws of every box must hold, and at the end of each
day the file must be sound against its own history. The first day for which that is not so ends it, with its acts. In
the control each day ends with a price changed behind the back of history, and every one of them must be noticed.
"""

from hypothesis import Phase, seed, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.bench.machine import asked, heading
from tests.shop.acts import FAMILIES
from tests.shop.random_day import Day

ACTS = 12
CONTROLS = 20
CARELESS = "UPDATE knife SET price_cents = coalesce(price_cents, 0) + 100 WHERE id = (SELECT max(id) FROM knife)"


class CarelessDay(Day):
    """A day at whose end somebody writes a price into the file, and history does not know."""

    def teardown(self) -> None:
        """Change it, then look the file over as ever."""
        self.shop.database.raw().execute(CARELESS)
        super().teardown()


def live(wanted: int, start: int, acts: int = ACTS, day: type[Day] = Day) -> None:
    """Live through so many days of so many acts, drawn from a seed."""

    @seed(start)
    class Seeded(day):  # type: ignore[misc, valid-type]  # a class that is handed in
        """The days of this seed."""

    run_state_machine_as_test(
        Seeded,
        settings=settings(
            max_examples=wanted,
            stateful_step_count=acts,
            deadline=None,
            database=None,
            # A failing day is told as it was found: shortening one over a file takes minutes.
            phases=set(Phase) - {Phase.shrink},
        ),
        _min_steps=acts,  # short days find little, and it likes them
    )


def noticed(wanted: int, start: int, acts: int = ACTS) -> int:
    """How many of so many careless days are noticed: each must be."""
    count = 0
    for place in range(wanted):
        try:
            live(1, start + place, acts, CarelessDay)
        except AssertionError:
            count += 1
    return count


def main() -> None:
    """Live through the days, and print how many acts were done."""
    wanted, start, acts = asked(20_000, 7, ACTS)
    print(heading("tests.bench.fuzz", start))
    live(wanted, start, acts)
    done = {name for name, was_done in Day.tried if was_done}
    every = {name for family in FAMILIES.values() for name in family}
    for says, count in (
        ("days of random acts", wanted),
        ("acts tried, closing out and undo of undo besides", Day.tried.total()),
        ("of these done, the others refused", sum(count for (_, was_done), count in Day.tried.items() if was_done)),
        (f"operations done at least once, of {len(every)}", len(done)),
        ("tracebacks, laws broken, unsound files", 0),
    ):
        print(f"{says:<52} {count:>8}")
    print(f"{f'control: a price that history does not know, of {CONTROLS}':<52} {noticed(CONTROLS, start):>8}")
    if missing := sorted(every - done):
        print("never done:", *missing)


if __name__ == "__main__":
    main()
