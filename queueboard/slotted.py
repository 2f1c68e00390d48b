"""The standard library's `dataclass`, whose methods are written when they are first needed.

It writes each method as text and compiles it, about six for a class, while a module is loaded. That was half of what
loading this house took, and of its classes a command needs a third. So a class gets its slots at once, what makes a
value by the first value, and what compares and prints by the first comparison; from then on it is what
`dataclass(slots=True)` makes. The price: a value must be made, not unpickled, before anything else is asked of its
class.
"""

import dataclasses
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, ClassVar, get_origin

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass  # noqa: PLC0414  # for whoever checks types it is the same
else:

    def dataclass(*, slots: bool, **options: bool) -> Callable[[type], type]:
        """As the standard library's; a class without slots gains nothing here and is refused."""
        if not slots:
            raise TypeError("queueboard.slotted makes classes with slots; take the standard library's dataclass.")
        return lambda plain: _Unwritten(plain, options).slotted


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
            body.setdefault("__hash__", self._late("__hash__"))
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
        def first(one: object, /, *args: object, **kwargs: object) -> None:
            self._write(repr=False, eq=False, order=False)
            vars(self.slotted)["__init__"](one, *args, **kwargs)

        return first

    def _late(self, name: str) -> Callable[..., object]:
        def late(one: object, /, *args: object) -> object:
            self._write()
            return vars(self.slotted)[name](one, *args)

        return late
