"""How a shop file stands, as text and as plain data."""

from queueboard.papers.facts import Fact
from queueboard.papers.text import columns, page
from queueboard.phrases.health import findings, verdict_words
from queueboard.values.health import Health


def health_sheet(health: Health) -> str:
    """The verdict, then each thing that was looked at, with what to do beneath."""
    rows = [
        row
        for found in findings(health)
        for row in ((found.standing.value, found.name, found.says), *((("", "", found.do),) if found.do else ()))
    ]
    return page((verdict_words(health), ""), columns(rows))


def health_facts(health: Health) -> dict[str, Fact]:
    """The same for scripts."""
    copies = health.copies
    return {
        "file": str(health.path),
        "now": health.now.isoformat(),
        "sound": health.sound,
        "sqlite": health.sqlite_version,
        "journal_mode": health.journal_mode,
        "wal_reset_fixed": health.wal_reset_fixed,
        "layout": health.layout,
        "history_lines": health.lines,
        "network_share": health.share,
        "last_good_copy": None if copies.made is None else copies.made.isoformat(),
        "last_copy_elsewhere": None if copies.elsewhere_at is None else copies.elsewhere_at.isoformat(),
        "findings": [
            {"name": found.name, "standing": found.standing.value, "says": found.says, "do": found.do}
            for found in findings(health)
        ],
    }
