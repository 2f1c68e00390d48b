"""What papers are printed on, read from its table, which may be missing."""

from queueboard.settings.fields import Table, written
from queueboard.settings.shapes import Papers
from queueboard.words import PaperSize


def read_papers(whole: Table) -> Papers:
    """The shop's choices; what is not written is as in Papers."""
    if not whole.has("papers"):
        return Papers()
    table, usual = whole.table("papers"), Papers()
    table.only("size", "slips", "phone")
    return Papers(
        size=_size(table, "size", (PaperSize.A4, PaperSize.LETTER)) if table.has("size") else usual.size,
        slips=_size(table, "slips", tuple(PaperSize)) if table.has("slips") else usual.slips,
        phone=table.text("phone", longest=40, shortest=0) if table.has("phone") else usual.phone,
    )


def _size(table: Table, key: str, known: tuple[PaperSize, ...]) -> PaperSize:
    name = table.text(key, longest=20)
    found = next((size for size in known if size.value.casefold() == name.casefold()), None)
    if found is None:
        raise table.wrong(f"{key} is one of {', '.join(size.value for size in known)}, not {written(name)}", key)
    return found
