"""The period in which the shop found the work of a process good; the limits of its chart come from it."""

from datetime import datetime

from queueboard.errors import TypedError
from queueboard.records.belts import stable_row
from queueboard.records.edge_tables import StablePeriodRow
from queueboard.records.instants import to_us
from queueboard.records.writing import Writing
from queueboard.shop.operation import operation
from queueboard.shop.settings_now import settings_in


@operation()
def set_stable(writing: Writing, process: str, first: datetime, last: datetime) -> None:
    """Say from when to when (aware, both included) the work of a process was good; the one before goes."""
    if process not in [known.name for known in settings_in(writing.database).processes]:
        raise TypedError(f"The shop has no process called {process!r}.")
    if last < first:
        raise TypedError("The stable period ends before it begins; type the earlier reading first.")
    writing.tell(to=process)
    stored = stable_row(writing.database, process)
    if stored is None:
        writing.insert(StablePeriodRow, process=process, first_us=to_us(first), last_us=to_us(last))
    else:
        writing.change(StablePeriodRow, stored[0], None, first_us=to_us(first), last_us=to_us(last))
