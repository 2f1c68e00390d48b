"""The standard library's `dataclass`, whose methods are written when the first value of a class is made.

It writes each method as text and compiles it, about six for a class, while a module is loaded. That was half of what
loading this house took, and of its classes a command needs a third. So a class gets its slots at once and the rest
by its first value, or by the first question for its fields; from then on it is what `dataclass(slots=True)` makes.
The price: a value must be made, not unpickled, before anything else is asked of its class.
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
        return lambda plain: _slotted(plain, options)


def _slotted(plain: type, options: dict[str, bool]) -> type:
    """The class with its slots, which takes over what the library makes of the plain one once that is asked for."""
    origins: dict[str, object] = {name: get_origin(kind) for name, kind in plain.__annotations__.items()}
    names = [name for name, origin in origins.items() if origin is not ClassVar]
    apart = {*names, "__dict__", "__weakref__", "__slots__"}

    def write() -> None:
        full: type = dataclasses.dataclass(slots=True, **options)(plain)
        for name, what in vars(full).items():
            if name not in apart and vars(cls).get(name, cls) is not what:
                setattr(cls, name, what)

    def first(self: object, *args: object, **kwargs: object) -> None:
        write()
        vars(cls)["__init__"](self, *args, **kwargs)

    body = {name: what for name, what in vars(plain).items() if name not in apart}
    body |= {"__qualname__": plain.__qualname__, "__slots__": tuple(names)}
    body |= {"__init__": first, "__dataclass_fields__": _Unwritten(write)}
    make: Callable[..., type] = type(plain)
    cls = make(plain.__name__, plain.__bases__, body)
    return cls


class _Unwritten:
    """Stands for the fields of a class until somebody asks for them."""

    def __init__(self, write: Callable[[], None]) -> None:
        self._write = write

    def __get__(self, one: object, owner: type[Any]) -> object:
        self._write()
        return owner.__dataclass_fields__
