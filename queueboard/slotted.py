"""The standard library's `dataclass`, whose methods are written when they are first needed.

It writes each method as text and compiles it, about six for a class, while a module is loaded. That was half of what
loading this house took, and of its classes a command needs a third. So a class gets its slots at once; its first values
are filled field by field, for most classes have no more in a short command; what makes a value is written by the value
after those, and what compares and prints by the first comparison. From then on it is what `dataclass(slots=True)`
makes.
"""

import dataclasses
from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Any, ClassVar, NoReturn, get_origin

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass  # noqa: PLC0414  # for whoever checks types it is the same
else:

    def dataclass(*, slots: bool, **options: bool) -> Callable[[type], type]:
        """As the standard library's; a class without slots gains nothing here and is refused."""
        if not slots:
            raise TypeError("queueboard.slotted makes classes with slots; take the standard library's dataclass.")
        return lambda plain: _Unwritten(plain, options).slotted


FEW = 100
"""Values of a class that are filled field by field; about so many take as long as writing what makes them."""

_ORDER = ("__lt__", "__le__", "__gt__", "__ge__")


class _Unwritten:
    """What is known of a class, so that the library can write it when it is asked for."""

    def __init__(self, plain: type, options: dict[str, bool]) -> None:
        self._options = options
        self._make: Callable[..., type] = type(plain)
        self._made_of = plain.__name__, plain.__bases__
        self._body = {name: what for name, what in vars(plain).items() if name not in {"__dict__", "__weakref__"}}
        self._body["__qualname__"] = plain.__qualname__
        origins: dict[str, object] = {name: get_origin(kind) for name, kind in plain.__annotations__.items()}
        self._names = {name: None for name, origin in origins.items() if origin is not ClassVar}
        body = {name: what for name, what in self._body.items() if name not in self._names}
        for name in ("__repr__", "__eq__", *_ORDER * options.get("order", False)):
            body.setdefault(name, self._late(name))
        if options.get("frozen", False):
            body |= {"__setattr__": _set_nothing, "__delattr__": _take_nothing}
            for name in ("__hash__", "__getstate__", "__setstate__"):
                body.setdefault(name, self._late(name))
        body |= {"__slots__": tuple(self._names), "__init__": self._first(), "__dataclass_fields__": self}
        self.slotted = self._make(*self._made_of, body)

    def __get__(self, one: object, owner: type[Any]) -> object:
        """The fields, which stand in this one's place from now on."""
        self._write(repr=False, eq=False, order=False)
        return owner.__dataclass_fields__

    def _write(self, **without: bool) -> None:
        """Let the library write the class, and take over what it wrote."""
        full: type = dataclasses.dataclass(slots=True, **self._options | without)(
            self._make(*self._made_of, dict(self._body))
        )
        for name, what in vars(full).items():
            if name not in self._names and vars(self.slotted).get(name, self) is not what and name != "__slots__":
                setattr(self.slotted, name, what)

    def _first(self) -> Callable[..., None]:
        left, filling, put = FEW, None, object.__setattr__
        rests_on_nothing = self._made_of[1] == (object,)

        def first(one: object, /, *args: object, **kwargs: object) -> None:
            nonlocal left, filling
            if filling is None and rests_on_nothing:
                filling = _Filling(self._names, self._body, self._options)
                setattr(self.slotted, "__match_args__", filling.by_place)  # noqa: B010  # the type has none yet
            left -= 1
            values = filling.values(args, kwargs) if filling is not None and left >= 0 else None
            if values is None:
                self._write(repr=False, eq=False, order=False)
                vars(self.slotted)["__init__"](one, *args, **kwargs)
                return
            for name, value in values.items():
                put(one, name, value)
            if "__post_init__" in self._body:
                self._body["__post_init__"](one)

        return first

    def _late(self, name: str) -> Callable[..., object]:
        def late(one: object, /, *args: object) -> object:
            self._write()
            return vars(self.slotted)[name](one, *args)

        return late


class _Filling:
    """What is needed to fill a value field by field: which fields there are, and what they hold if nothing is given."""

    def __init__(self, names: Mapping[str, None], body: Mapping[str, object], options: Mapping[str, bool]) -> None:
        told = {name: body[name] for name in names if name in body}
        fields = {name: field for name, field in told.items() if isinstance(field, dataclasses.Field)}
        self._names = names.keys()
        self._made = {name: field.default_factory for name, field in fields.items() if callable(field.default_factory)}
        self._told = {name: value for name, value in told.items() if name not in fields} | {
            name: field.default for name, field in fields.items() if field.default is not dataclasses.MISSING
        }
        self._not_given = {name for name, field in fields.items() if not field.init}
        self.by_place = () if options.get("kw_only") else tuple(name for name in names if name not in self._not_given)
        """The fields that may be given by their place alone."""

    def values(self, args: Sequence[object], kwargs: dict[str, object]) -> dict[str, object] | None:
        """The value of every field; None where what is given does not fit, which the library says best."""
        if kwargs.keys() == self._names and not args and not self._not_given:
            return kwargs
        placed = dict(zip(self.by_place, args, strict=False))
        if len(args) > len(placed) or not kwargs.keys().isdisjoint((*placed, *self._not_given)):
            return None
        made = {name: make() for name, make in self._made.items() if name not in kwargs and name not in placed}
        values = {**self._told, **made, **placed, **kwargs}
        return values if values.keys() == self._names else None


def _set_nothing(_one: object, name: str, _value: object) -> NoReturn:
    raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")


def _take_nothing(_one: object, name: str) -> NoReturn:
    raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")
