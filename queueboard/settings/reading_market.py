"""What the shop does at market stalls, read from a table that may be missing."""

from queueboard.settings.fields import Table
from queueboard.settings.market_shape import HIGHEST_TAG, MOST_TAGS, Market
from queueboard.settings.shapes import Kind


def read_market(whole: Table, kinds: tuple[Kind, ...]) -> Market:
    """The shop's choices; what is not written is as in Market."""
    usual = Market()
    if not whole.has("market"):
        return usual
    table = whole.table("market")
    table.only("on", "kind", "first_tag", "last_tag")
    read = Market(
        on=table.yes("on") if table.has("on") else usual.on,
        kind=_kind(table, kinds) if table.has("kind") else usual.kind,
        first_tag=table.whole("first_tag", 1, HIGHEST_TAG, "tags") if table.has("first_tag") else usual.first_tag,
        last_tag=table.whole("last_tag", 1, HIGHEST_TAG, "tags") if table.has("last_tag") else usual.last_tag,
    )
    _insist_on_pad(table, read)
    return read


def _kind(table: Table, kinds: tuple[Kind, ...]) -> str:
    name = table.text("kind", longest=60, shortest=0)
    if name and name not in {kind.name for kind in kinds}:
        raise table.wrong(f"kind {name!r} is none of [[kinds]]; write the name of one", "kind")
    return name


def _insist_on_pad(table: Table, read: Market) -> None:
    """Refuse tags that are turned round, and more than are printed for one stall."""
    many = read.last_tag - read.first_tag + 1
    key = "last_tag" if table.has("last_tag") else "first_tag"
    if many < 1:
        raise table.wrong(f"the tags go from {read.first_tag} to {read.last_tag}; first_tag is the lower one", key)
    if many > MOST_TAGS:
        raise table.wrong(f"tags {read.first_tag} to {read.last_tag} are {many}; write at most {MOST_TAGS}", key)
