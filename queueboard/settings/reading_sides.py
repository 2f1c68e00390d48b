"""Swap sets and market days, read from the settings; what is not written is as in their shapes."""

from queueboard.settings.fields import Table, written
from queueboard.settings.shapes import Kind
from queueboard.settings.side_shapes import Market, Swaps


def read_swaps(whole: Table) -> Swaps:
    """The table [swaps]."""
    usual = Swaps()
    if not whole.has("swaps"):
        return usual
    table = whole.table("swaps")
    table.only("on", "wait_days", "round_days", "nick_um", "missing")
    return Swaps(
        on=table.yes("on") if table.has("on") else usual.on,
        wait_days=table.whole("wait_days", 0, 365, "days") if table.has("wait_days") else usual.wait_days,
        round_days=table.whole("round_days", 1, 60, "days") if table.has("round_days") else usual.round_days,
        nick_um=table.whole("nick_um", 0, 10_000, "micrometres") if table.has("nick_um") else usual.nick_um,
        missing_cents=table.cents("missing") if table.has("missing") else usual.missing_cents,
    )


def read_market(whole: Table, kinds: tuple[Kind, ...]) -> Market:
    """The table [market]."""
    usual = Market()
    if not whole.has("market"):
        return usual
    table = whole.table("market")
    table.only("on", "kind")
    kind = table.text("kind", longest=60) if table.has("kind") else usual.kind
    if kind not in {known.name for known in kinds}:
        raise table.wrong(f"the shop has no kind {written(kind)}; write the name of one of its [[kinds]]", "kind")
    return Market(on=table.yes("on") if table.has("on") else usual.on, kind=kind)
