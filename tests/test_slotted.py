"""Our dataclass against the standard library's, whose behaviour it must have from the first value on."""

import dataclasses
import pickle
import re
from collections.abc import Callable
from copy import copy
from dataclasses import FrozenInstanceError, field, fields, is_dataclass, replace
from typing import Any, ClassVar

import pytest

from queueboard import slotted
from tests.house.tree import sources

Classes = tuple[Any, Any, Any]


def family(dataclass: Callable[..., Any]) -> Classes:
    """A frozen class with everything that the house uses, one that rests on it, and one that may change."""

    @dataclass(frozen=True, slots=True, kw_only=True, order=True)
    class Blade:
        LONGEST: ClassVar[int] = 400

        length_mm: int
        marks: tuple[str, ...] = ()
        notes: list[str] = field(default_factory=list, compare=False, repr=False)

        def __post_init__(self) -> None:
            if self.length_mm > self.LONGEST:
                raise ValueError(self.length_mm)

        @property
        def length_cm(self) -> float:
            return self.length_mm / 10

    @dataclass(frozen=True, slots=True, kw_only=True)
    class Boxed(Blade):
        box: int = 417

    @dataclass(slots=True)
    class Tally:
        knives: int
        boxes: int = 0
        one: str = "knife"

    return Blade, Boxed, Tally


@slotted.dataclass(frozen=True, slots=True, kw_only=True)
class MovedHere:
    """A class that nothing was asked of yet."""

    tag: str


@slotted.dataclass(frozen=True, slots=True, kw_only=True)
class WentThere:
    """Another one."""

    tag: str


OURS, THEIRS = family(slotted.dataclass), family(dataclasses.dataclass)


def told(classes: Classes) -> list[object]:
    """What can be asked of the classes and of values of them, told without the classes themselves."""
    blade, boxed, tally = classes
    short, long, in_box = blade(length_mm=150), blade(length_mm=210, marks=("nick",)), boxed(length_mm=150)
    counted = tally(3, one="blade")
    counted.boxes += 1
    return [
        *map(repr, (short, long, in_box, replace(long, length_mm=90), counted)),
        short == blade(length_mm=150, notes=["new"]),
        short == in_box,
        short < long,
        hash(short) == hash(blade(length_mm=150)),
        hash(long) == hash((210, ("nick",))),
        tally.__hash__ is None,
        long.length_cm,
        short.notes is blade(length_mm=150).notes,
        [[one.name for one in fields(kind)] for kind in classes],
        [kind.__match_args__ for kind in classes],
        [kind.__slots__ for kind in classes],
        [(kind.__name__, kind.__qualname__, kind.__module__) for kind in classes],
        [hasattr(one, "__dict__") for one in (short, in_box, counted)],
    ]


def refused(act: Callable[[], object]) -> tuple[type[BaseException], str]:
    """The error of something that must fail."""
    with pytest.raises((TypeError, ValueError, AttributeError)) as caught:
        act()
    return caught.type, str(caught.value)


def test_values_are_those_of_the_standard_library() -> None:
    """Values of our classes print, compare, sort, hash, copy and start like the standard library's."""
    assert told(OURS) == told(THEIRS)


def test_what_is_refused_is_refused_alike() -> None:
    """What a class refuses, it refuses with the same error and the same words, the very first value too."""

    def refusals(classes: Classes) -> list[object]:
        blade, boxed, tally = classes
        return [
            refused(boxed),
            refused(lambda: blade(150)),
            refused(lambda: blade(length_mm=401)),
            refused(lambda: tally(1, 2, "blade", 4)),
            refused(lambda: tally(1, knives=2)),
            refused(lambda: tally(boxes=2)),
            refused(lambda: tally(1, drawers=2)),
            refused(lambda: tally(boxes=1, drawers=2)),
            refused(lambda: setattr(blade(length_mm=1), "length_mm", 2)),
            refused(lambda: delattr(boxed(length_mm=1), "box")),
            refused(lambda: setattr(tally(1), "drawer", 2)),
        ]

    assert refusals(family(slotted.dataclass)) == refusals(family(dataclasses.dataclass))
    assert issubclass(FrozenInstanceError, AttributeError)


def test_a_field_may_have_any_name() -> None:
    """The first value of a class takes fields whose names our own code uses too."""

    @slotted.dataclass(frozen=True, slots=True, kw_only=True)
    class Named:
        one: int
        self: int
        args: int = 3

    assert Named(one=1, self=2) == Named(one=1, self=2, args=3)


def written(kind: Any) -> set[str]:
    """The methods of a class that the library has compiled from text."""
    own = ((name, getattr(what, "__code__", None)) for name, what in vars(kind).items())
    return {name for name, code in own if code is not None and code.co_filename == "<string>"}


def test_nothing_is_written_before_it_is_needed() -> None:
    """A class that is only loaded, or has few values, has nothing compiled; a comparison compiles it."""
    blade, boxed, tally = family(slotted.dataclass)
    assert not written(blade) | written(boxed) | written(tally)

    one = blade(length_mm=1)
    assert not written(blade)

    assert one == blade(length_mm=1)
    assert {"__init__", "__eq__", "__hash__", "__setattr__", "__delattr__"} <= written(blade)

    assert boxed(length_mm=1).box == 417
    assert written(boxed) == {"__init__", "__setattr__", "__delattr__"}  # it rests on fields that are asked for

    assert not written(tally)
    assert is_dataclass(tally)
    assert written(tally) == {"__init__"}


def test_a_class_of_many_values_is_written() -> None:
    """What makes a value is compiled once a class has had so many that it pays."""
    _, _, tally = family(slotted.dataclass)

    few = [tally(place) for place in range(slotted.FEW)]
    assert not written(tally)

    assert tally(7) not in few[:7]
    assert few[7] == tally(7)
    assert {"__init__", "__eq__"} <= written(tally)


def test_a_value_travels_before_its_class_is_written() -> None:
    """A value that is packed up and unpacked, the first of its class, is the same."""
    assert pickle.loads(pickle.dumps(MovedHere(tag="417-3"))) == MovedHere(tag="417-3")  # noqa: S301  # our own
    assert copy(WentThere(tag="417-3")) == WentThere(tag="417-3")


def test_a_class_without_slots_is_refused() -> None:
    """A class without slots would never get its methods, so it is refused where it stands."""
    ours: Callable[..., Any] = slotted.dataclass
    with pytest.raises(TypeError, match="slots"):
        ours(frozen=True, slots=False)


def test_every_slotted_class_of_the_house_waits() -> None:
    """Every module takes dataclass from queueboard.slotted; only a class with a __dict__ takes the library's."""
    taken = re.compile(r"^from dataclasses import .*\bdataclass\b", re.MULTILINE)

    library = [source for source in sources("queueboard") if taken.search(source.text)]

    assert not [source.where for source in library if "slots=True" in source.text]
