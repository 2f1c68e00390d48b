"""Boxes that are ready and not fetched: since when, where they stand, and what their customers were told."""

from collections import defaultdict
from dataclasses import replace
from datetime import datetime

from queueboard.clean import clean
from queueboard.errors import RuleError, TypedError
from queueboard.records.shelf import notices_of
from queueboard.records.shelf_tables import NoticeRow
from queueboard.records.tables import BoxRow
from queueboard.records.writing import Writing
from queueboard.settings.shapes import Settings
from queueboard.shelf_words import MessageSort, NoticeWay
from queueboard.shop import rows
from queueboard.shop.opening import Shop
from queueboard.shop.operation import operation
from queueboard.shop.picture import BoxPicture, Picture
from queueboard.shop.settings_now import settings_in
from queueboard.slotted import dataclass
from queueboard.values.box import Box
from queueboard.values.shelf import Notice
from queueboard.words import GoesBy

LONGEST_PLACE, LONGEST_MESSAGE = 60, 8000


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfBox:
    """A box that is ready and not fetched."""

    box: BoxPicture
    since: datetime
    """When the last of what is here came to ready, in the shop's zone."""
    days: int
    """Calendar days since then."""
    notices: tuple[Notice, ...]
    """What was told since then, oldest first."""
    notice_due: int | None
    """Which notice is due by the shop's own days, 1 for the first; None for none."""
    too_long: bool
    """True when it stands there longer than the shop's own days."""


def ready_since(box: BoxPicture) -> datetime | None:
    """When the last of the knives that are here came to ready; None while not all of them are, or none is here."""
    here = box.on_hand
    if not here or not all(knife.can_leave for knife in here):
        return None
    return max(knife.moved_at for knife in here)


def on_shelf(shop: Shop, picture: Picture) -> tuple[ShelfBox, ...]:
    """Every box that is ready and waits to be fetched, the longest first; parcels wait for nobody."""
    by_box: defaultdict[int, list[Notice]] = defaultdict(list)
    with shop.reading() as database:
        for notice in notices_of(database, "box_id IN (SELECT id FROM box WHERE closed_us IS NULL)"):
            by_box[notice.box_id].append(_local(notice, picture.settings))
    there = (
        shelf_box(box, since.astimezone(picture.now.tzinfo), by_box[box.box.id], picture)
        for box in picture.boxes
        if box.box.goes_by is GoesBy.PICK_UP and (since := ready_since(box)) is not None
    )
    return tuple(sorted(there, key=lambda one: (one.since, one.box.box.number)))


def shelf_box(box: BoxPicture, since: datetime, told: list[Notice], picture: Picture) -> ShelfBox:
    """One of them, with what was told since it is ready."""
    days = (picture.now.date() - since.date()).days
    notices = tuple(notice for notice in told if notice.told_at >= since)
    return ShelfBox(
        box=box,
        since=since,
        days=days,
        notices=notices,
        notice_due=_notice_due(days, notices, picture.settings),
        too_long=days > picture.settings.shelf.long_days,
    )


def _notice_due(days: int, notices: tuple[Notice, ...], settings: Settings) -> int | None:
    """The next notice, once its days are reached; a word that it is ready is none of them."""
    sent = sum(notice.sort is MessageSort.UNCLAIMED for notice in notices)
    return sent + 1 if sent < len(settings.shelf.notice_days) and days >= settings.shelf.notice_days[sent] else None


def notices_of_box(shop: Shop, box_id: int) -> tuple[Notice, ...]:
    """Everything that was told of a box, oldest first, by the clock on the shop's wall."""
    with shop.reading() as database:
        settings = settings_in(database)
        return tuple(_local(notice, settings) for notice in notices_of(database, "box_id = ?", box_id))


def _local(notice: Notice, settings: Settings) -> Notice:
    return replace(notice, told_at=notice.told_at.astimezone(settings.zone))


@operation()
def put_on_shelf(writing: Writing, box: Box, place: str) -> None:
    """Note where a box stands, such as C4; an empty place takes it away."""
    text = clean(place, limit=LONGEST_PLACE, field="place")
    rows.fresh_box(writing, box)
    rows.only_here(box)
    writing.tell(number=box.number, to="noted" if text else "")
    writing.change(BoxRow, box.id, box.version, place=text)


@operation(undo_needs_reason=True)
def note_notice(writing: Writing, box_id: int, sort: MessageSort, way: NoticeWay, text: str) -> None:
    """Note that a customer was told, by one's own mail, phone or letter; nothing is sent by this."""
    box = rows.box_now(writing.database, box_id)
    if len(text) > LONGEST_MESSAGE:
        raise TypedError(f"That message has {len(text)} characters; at most {LONGEST_MESSAGE} are kept.")
    if sort is MessageSort.UNCLAIMED and box.closed_at is not None:
        raise RuleError(f"Box {box.number} was fetched meanwhile; nothing was stored.")
    writing.tell(number=box.number, to=way.value, was=sort.value)
    writing.insert(
        NoticeRow,
        box_id=box.id,
        sort=sort.value,
        way=way.value,
        text="\n".join(clean(line, limit=LONGEST_MESSAGE, field="message") for line in text.splitlines()),
        told_us=writing.now_us,
        told_by=writing.actor.initials,
    )
