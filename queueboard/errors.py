"""The one root error. Every sentence a person may read is the text of a QueueboardError."""


class QueueboardError(Exception):
    """Something a person must read: what happened, with the values, and what to do next."""


class TypedError(QueueboardError):
    """What was typed cannot be taken as it stands; nothing was stored."""


class SettingsError(QueueboardError):
    """The settings text has a mistake; the sentence names the line."""


class ChangedError(QueueboardError):
    """Somebody else has changed the same thing since this screen was drawn; nothing was stored."""


class RuleError(QueueboardError):
    """The shop's own rule forbids this now (a knife that is not ready cannot leave); nothing was stored."""


class ReasonNeededError(RuleError):
    """The action goes through once a reason is typed."""


class FileError(QueueboardError):
    """The shop file cannot be used: missing, foreign, newer, damaged, or not ours to read."""


class BusyError(FileError):
    """Another window was writing just then; nothing was stored, try again."""


class LostError(FileError):
    """The connection to the shop's server is lost; it is made again as soon as the server answers."""


class PasswordNeededError(FileError):
    """The shop's server wants a password, and none was found for it."""
