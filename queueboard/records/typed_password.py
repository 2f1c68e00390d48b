"""The password that somebody typed for the shop's server: in this program's memory until it ends, and nowhere else."""

_typed = list[str]()


def keep(password: str) -> None:
    """Use this one from here on, also where a lost connection is made anew."""
    _typed[:] = [password]


def kept() -> str | None:
    """What the driver is told besides the address; None where none was typed, and it looks into the person's file."""
    return _typed[0] if _typed else None
