"""What a server says, as sentences of the shop; told by the standard's own five-sign codes, without the driver."""

from pathlib import Path

from peewee import InterfaceError, OperationalError

from queueboard.errors import BusyError, FileError, LostError, PasswordNeededError

BUSY = ("55P03", "40P01", "40001", "57014")
"""A lock that was not given in time, two that waited for each other, a writer who was faster, a stopped statement."""

GONE = ("57P01", "57P02", "57P03", "25P03", "57P05")
"""The server is stopped, was killed, is not up yet, or let an idle connection go."""

NOT_LET_IN = ("28000", "28P01")
NONE_GIVEN = "no password supplied"
REFUSED = (NONE_GIVEN, "password authentication failed", "no pg_hba.conf entry", "does not exist", "SSL")
"""What stands in the text where no connection is made: that comes without a code."""

AWAY = (
    "The shop's server does not answer. What was said to be saved is saved there; what you typed stays here. "
    "It is tried again by itself."
)
"""Said of an open shop, always in the same words: they are said once for as long as it lasts."""

FULL = ("53100", "53200")
ONLY_TO_READ = ("25006", "42501")


def code_of(error: BaseException) -> str | None:
    """The server's code for an error; empty for one that came without (no connection), None for another engine's."""
    cause = getattr(error, "orig", None) or error.__cause__ or error
    if not hasattr(cause, "sqlstate"):
        return None
    return str(cause.sqlstate or "")


def is_lost(error: BaseException) -> bool:
    """True when an error says that there is no connection any more, or none to be had."""
    code = code_of(error)
    if code is None or not isinstance(error, OperationalError | InterfaceError):
        return False
    return not code or code[:2] == "08" or code in GONE


def server_sentence(path: Path, error: BaseException) -> FileError | None:
    """The sentence for an error that a server gave; None for one of another engine."""
    code = code_of(error)
    if code is None:
        return None
    if code in NOT_LET_IN:
        return _not_let_in(error)
    if is_lost(error):
        return LostError(AWAY)
    if code in BUSY:
        return BusyError("Busy: another window was just writing. Nothing was lost; try again.")
    if code in FULL:
        return FileError("The server's disk is full. Nothing stored was lost; free some room there and try again.")
    if code in ONLY_TO_READ:
        return FileError(f"The server lets you only read: {first_line(error)}. Ask who looks after it.")
    return FileError(f"The server gave an error for {path.name}: {first_line(error)}. Nothing was stored; try again.")


def not_reached(error: BaseException) -> FileError:
    """The sentence for a server to which no connection can be made when a shop is opened."""
    said = str(error)
    if NONE_GIVEN in said:
        return PasswordNeededError(
            "The server wants a password. Write it into ~/.pgpass (chmod 600) or the file that PGPASSFILE names, "
            "or open the shop from a terminal, where it is asked for."
        )
    if code_of(error) in NOT_LET_IN or any(words in said for words in REFUSED):
        return _not_let_in(error)
    return FileError(
        f"The shop's server cannot be reached: {first_line(error)}. Check the address, and that the server runs."
    )


def _not_let_in(error: BaseException) -> FileError:
    return FileError(
        f"The server did not let you in: {first_line(error)}. Check the name and the database in the address, and "
        "the password in your ~/.pgpass (chmod 600) or the file that PGPASSFILE names."
    )


def first_line(error: BaseException) -> str:
    """The first line of what a server or its driver says; neither ever says a password."""
    return " ".join(str(error).strip().splitlines()[0].split()) if str(error).strip() else type(error).__name__
