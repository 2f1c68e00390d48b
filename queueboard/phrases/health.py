"""How a shop file stands, in sentences: what was found, and what to do about it."""

from collections.abc import Iterator
from datetime import datetime

from queueboard.phrases.dates import many, when_words
from queueboard.shop.restoring import Restored
from queueboard.slotted import dataclass
from queueboard.values.health import Health
from queueboard.words import Standing

STALE_DAYS = 7
"""From here on a copy off this machine is called old: a week's work would be lost with the machine."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing that was looked at."""

    name: str
    standing: Standing
    says: str
    do: str = ""


def findings(health: Health) -> tuple[Finding, ...]:
    """Everything that was looked at, in a steady order."""
    return tuple(_findings(health))


def verdict_words(health: Health) -> str:
    """The one sentence for a hurried person."""
    if not health.sound:
        return f"{health.path} is damaged. Close every board, and do what is said below before anything else."
    looks = sum(found.standing is Standing.LOOK for found in findings(health))
    return f"{health.path} is sound." + (f" {many(looks, 'thing')} to look at." if looks else "")


def share_words(share: str) -> str:
    """A line of warning about a file on another machine; nothing for one on this."""
    if not share:
        return ""
    apart = "two windows cannot be kept apart there"
    return f"It lies on a network share ({share}): {apart}. Use a disk of this machine.\n"


def only_read_words(path: str) -> str:
    """One line when a board opens on a file that may not be written."""
    return f"{path} may only be read: this board shows it and saves nothing. Check who owns the file and its folder."


def restored_words(done: Restored, path: str, copy: str, aside: str) -> str:
    """What became of a copy that was put in the place of the file; the paths as they can be pasted."""
    lines = [f"{path} is now what was in {copy}: {many(done.lines_kept, 'line')} of history, verified."]
    if done.aside is not None:
        lines.append(f"The file that stood there lies in {aside}, with all that belongs to it.")
    if done.aside is not None and done.lines_beyond is None:
        lines.append(
            "What it had beyond the copy cannot be told: look at the newest boxes, and type again what is gone."
        )
    elif done.lines_beyond:
        lines.append(f"It had {many(done.lines_beyond, 'line')} of history more: type again what is gone.")
    return "".join(f"{line}\n" for line in (*lines, *erased_again_words(done.erased_again)))


def erased_again_words(customers: int) -> tuple[str, ...]:
    """That customers are erased in what comes from before; nothing where there are none."""
    return (f"{many(customers, 'customer')} erased since then: erased in it too.",) if customers else ()


def _findings(health: Health) -> Iterator[Finding]:
    yield _finding("size", health.size_fits, _size(health), _go_back(health))
    said = "; ".join(health.integrity) or "SQLite finds nothing wrong"
    yield _finding("pages", not health.integrity, said, _go_back(health))
    said = f"rows that point to something which is not there: {health.unmatched}"
    said = said if health.unmatched else "every row has its own"
    yield _finding("links", not health.unmatched, said, _go_back(health))
    fits = f"{many(health.lines, 'line')}, the chain unbroken; the board is what they say"
    yield _finding("history", not health.history, "; ".join(health.history) or fits, _go_back(health))
    yield _library(health)
    yield _layout(health)
    yield from _place(health)
    yield from _copies(health)


def _finding(name: str, good: bool, says: str, do: str, *, bad: Standing = Standing.DAMAGED) -> Finding:  # noqa: FBT001
    return Finding(name=name, standing=Standing.GOOD if good else bad, says=says, do="" if good else do)


def _size(health: Health) -> str:
    pages = f"{health.pages} pages of {health.page_bytes} bytes"
    if health.unfinished:
        return f"{pages}; what is beside the file is not in it yet"
    if health.size_fits:
        return f"{pages} are the {health.file_bytes} bytes of the file"
    return f"{pages} would be {health.pages * health.page_bytes} bytes, but the file has {health.file_bytes}"


def _go_back(health: Health) -> str:
    copy = health.copies.newest_good
    which = f"the copy {copy}" if copy is not None else "a copy that you made"
    return f"Go back to {which} with `queueboard restore`; the damaged file is kept."


def _library(health: Health) -> Finding:
    waits = "waits for the disk"
    mended = "mended against the race in the write-ahead log"
    says = f"{health.sqlite_version}, mode {health.journal_mode}, {waits}"
    if health.wal_reset_fixed:
        return Finding(name="SQLite", standing=Standing.GOOD, says=f"{says}; {mended}")
    if health.journal_mode == "wal":
        return Finding(
            name="SQLite",
            standing=Standing.LOOK,
            says=f"{says}; not {mended}, which this file uses",
            do="Install a newer Python (its SQLite 3.51.3 or later), and open one board at a time until then.",
        )
    return Finding(name="SQLite", standing=Standing.GOOD, says=f"{says}; not {mended}, so that log is not used")


def _layout(health: Health) -> Finding:
    newest = health.layout == health.newest_layout
    says = f"layout {health.layout}" + ("" if newest else f"; this queueboard has {health.newest_layout}")
    return _finding("layout", newest, says, "It is led on when it is next opened, behind a copy.", bad=Standing.LOOK)


def _place(health: Health) -> Iterator[Finding]:
    yield _finding(
        "place",
        not health.share,
        f"on a network share ({health.share})" if health.share else "on a disk of this machine",
        "Two windows cannot be kept apart there. Move the file to a disk of this machine.",
        bad=Standing.LOOK,
    )
    yield _finding(
        "readers",
        not health.others_may_read,
        "others on this machine may read it" if health.others_may_read else "only its owner may read it",
        f"It holds customers' names and phones: chmod 600 {health.path}",
        bad=Standing.LOOK,
    )


def _copies(health: Health) -> Iterator[Finding]:
    copies = health.copies
    fresh = copies.made is not None and _days(copies.made, health) <= STALE_DAYS
    says = (
        "no good copy beside the file"
        if copies.made is None
        else f"last good copy {when_words(copies.made, health.now)}"
    )
    do = "Open the board once a day; it makes one. Or run `queueboard backup FILE`."
    yield _finding("copy", fresh, says, do, bad=Standing.LOOK)
    if copies.spoiled:
        yield Finding(
            name="spoiled",
            standing=Standing.LOOK,
            says=f"not as written any more: {', '.join(copy.name for copy in copies.spoiled)}",
            do="Do not go back to these, and look at the disk they lie on.",
        )
    away = copies.elsewhere_at is not None and _days(copies.elsewhere_at, health) <= STALE_DAYS
    says = "no copy off this disk is known of"
    if copies.elsewhere_at is not None:
        says = f"last copy off this disk {when_words(copies.elsewhere_at, health.now)}, in {copies.elsewhere}"
    do = "Name a folder on a stick as second_folder in the settings, or run `queueboard backup` onto one; take it home."
    yield _finding("elsewhere", away, says, do, bad=Standing.LOOK)
    if copies.aside:
        yield Finding(
            name="aside",
            standing=Standing.LOOK,
            says=f"kept aside, with customers' data as they were: {', '.join(one.name for one in copies.aside)}",
            do="Throw these away once nobody needs them any more; nothing else ever does.",
        )


def _days(moment: datetime, health: Health) -> int:
    return (health.now.date() - moment.date()).days
