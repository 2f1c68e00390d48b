"""What the shop file's own guards refuse, said as a person would say it."""

import re

from queueboard.errors import RuleError
from queueboard.records.lost import code_of, first_line

_TAKEN = {
    "box.number": "Another box has that number by now; correct its number first.",
    "knife.box_id": "Another knife has that tag by now; strike it, or take its adding back, first.",
    "close_out.box_id": "Another close-out of that box is under way; leave it first.",
    "tick.close_out_id": "That is ticked already.",
    "bench_run.started_by": "Another run of that person is going on by now; finish or pause it first.",
    "run_knife.run_id": "That knife is in the run already.",
    "study_reading.study_id": "That reading of the study is there by now; look again.",
    "trial.kind": "Another trial with that kind goes on by now; end it first.",
    "trial_knife.trial_id": "That knife is in the trial already.",
    "spot.knife_id": "Other spots of that knife are marked by now; look again.",
    "stable_period.process": "Another stable period of that process is set by now; look again.",
    "day_close.day": "That day is closed by now; look again.",
    "till_count.day": "That was counted by somebody else by now; look again.",
    "dust_look.after_id": "Somebody else has looked at the dust tray again by now.",
    "belt_spares.label": "Those spares are counted by now; look again.",
}
"""By the first column of the guard that refused (sqlite.org/rescode.html#constraint_unique names them in its text)."""

ONLY_ADDED = "history is only ever added to"
"""What the guards of history itself say: the same action came a second time."""


def refused(error: Exception) -> RuleError:
    """The sentence for one refused write; nothing of its action was stored."""
    told = _as_sqlite_says(error)
    if told.startswith("FOREIGN KEY"):
        return RuleError(
            "Later steps rest on this one (a payment, a reading, a test, a close-out, another box of the customer); "
            "take those back first. Nothing was stored."
        )
    if told == ONLY_ADDED:
        return RuleError("That action was stored already; nothing was stored again.")
    _, _, columns = told.partition("UNIQUE constraint failed: ")
    taken = _TAKEN.get(columns.split(",")[0])
    if taken is not None:
        return RuleError(f"{taken} Nothing was stored.")
    return RuleError(f"The shop file refused that ({told}); nothing was stored.")


def _as_sqlite_says(error: Exception) -> str:
    """What a guard says in SQLite's words; a server names the rule by a code and the columns in its detail.

    The codes are those of PostgreSQL's appendix A, "PostgreSQL Error Codes".
    """
    code, told = code_of(error), str(error)
    if code is None:
        return told
    about = getattr(getattr(error, "orig", None), "diag", None)
    if code == "23505":
        columns = re.search(r"\(([^)]*)\)", getattr(about, "message_detail", None) or "")
        named = [] if columns is None else columns[1].split(", ")
        table = getattr(about, "table_name", "")
        return "UNIQUE constraint failed: " + ", ".join(f"{table}.{name}" for name in named)
    if code == "23503":
        return "FOREIGN KEY constraint failed"
    return ONLY_ADDED if code == "23000" else first_line(error)
